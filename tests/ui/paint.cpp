#include "ui/paint.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wsign-conversion"
#define STB_IMAGE_WRITE_STATIC
#define STB_IMAGE_WRITE_IMPLEMENTATION
#include <stb/stb_image_write.h>
#pragma GCC diagnostic pop

namespace tubewright {
namespace {

struct Canvas {
    int width, height;
    std::vector<unsigned char> rgb;
};

struct Atlas {
    unsigned char* alpha = nullptr;
    int width = 0, height = 0;

    /// Between the four nearest texels, as a graphics driver does it.
    float at(float u, float v) const {
        const float x = u * static_cast<float>(width) - 0.5f, y = v * static_cast<float>(height) - 0.5f;
        const float left = std::floor(x), top = std::floor(y), fx = x - left, fy = y - top;
        const auto texel = [&](float tx, float ty) {
            const int ix = std::clamp(static_cast<int>(tx), 0, width - 1), iy = std::clamp(static_cast<int>(ty), 0, height - 1);
            return static_cast<float>(alpha[iy * width + ix]) / 255.0f;
        };
        return (texel(left, top) * (1 - fx) + texel(left + 1, top) * fx) * (1 - fy) + (texel(left, top + 1) * (1 - fx) + texel(left + 1, top + 1) * fx) * fy;
    }
};

float cross(ImVec2 a, ImVec2 b, ImVec2 c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

float channel(ImU32 colour, int shift) { return static_cast<float>(colour >> shift & 0xff); }

void blend(Canvas& canvas, int x, int y, const std::array<float, 4>& rgba) {
    unsigned char* pixel = &canvas.rgb[static_cast<std::size_t>(y * canvas.width + x) * 3];
    for (std::size_t i = 0; i < 3; ++i)
        pixel[i] = static_cast<unsigned char>(std::lround(static_cast<float>(pixel[i]) + (rgba[i] - static_cast<float>(pixel[i])) * rgba[3]));
}

/// Pixels on an edge that two triangles share belong to one of them: the one they lie to the left of.
bool inside(float weight, ImVec2 from, ImVec2 to) {
    if (weight != 0) return weight > 0;
    return to.y < from.y || (to.y == from.y && to.x > from.x);
}

void fill(Canvas& canvas, const Atlas& atlas, const ImDrawVert& p, ImDrawVert q, ImDrawVert r, const ImVec4& clip) {
    float area = cross(p.pos, q.pos, r.pos);
    if (area == 0) return;
    if (area < 0) {
        std::swap(q, r);
        area = -area;
    }
    const auto [left, right] = std::minmax({p.pos.x, q.pos.x, r.pos.x});
    const auto [top, bottom] = std::minmax({p.pos.y, q.pos.y, r.pos.y});
    const int x0 = static_cast<int>(std::max({left, clip.x, 0.0f})), y0 = static_cast<int>(std::max({top, clip.y, 0.0f}));
    const int x1 = std::min(static_cast<int>(std::ceil(std::min(right, clip.z))), canvas.width), y1 = std::min(static_cast<int>(std::ceil(std::min(bottom, clip.w))), canvas.height);
    for (int y = y0; y < y1; ++y)
        for (int x = x0; x < x1; ++x) {
            const ImVec2 at{static_cast<float>(x) + 0.5f, static_cast<float>(y) + 0.5f};
            const float a = cross(q.pos, r.pos, at), b = cross(r.pos, p.pos, at), c = cross(p.pos, q.pos, at);
            if (!inside(a, q.pos, r.pos) || !inside(b, r.pos, p.pos) || !inside(c, p.pos, q.pos)) continue;
            const auto mix = [&](float of_p, float of_q, float of_r) { return (of_p * a + of_q * b + of_r * c) / area; };
            std::array<float, 4> rgba{};
            for (std::size_t i = 0; i < 4; ++i) {
                const int shift = static_cast<int>(i) * 8;
                rgba[i] = mix(channel(p.col, shift), channel(q.col, shift), channel(r.col, shift));
            }
            rgba[3] = rgba[3] / 255.0f * atlas.at(mix(p.uv.x, q.uv.x, r.uv.x), mix(p.uv.y, q.uv.y, r.uv.y));
            blend(canvas, x, y, rgba);
        }
}

}  // namespace

bool paint_png(const std::string& path, const ImDrawData& data) {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    Canvas canvas{static_cast<int>(size.x), static_cast<int>(size.y), {}};
    canvas.rgb.assign(static_cast<std::size_t>(canvas.width * canvas.height) * 3, 0);
    Atlas atlas;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&atlas.alpha, &atlas.width, &atlas.height);
    for (int i = 0; i < data.CmdListsCount; ++i) {
        const ImDrawList& list = *data.CmdLists[i];
        for (const ImDrawCmd& command : list.CmdBuffer)
            for (unsigned at = 0; at + 2 < command.ElemCount; at += 3) {
                const auto corner = [&](unsigned k) { return list.VtxBuffer[static_cast<int>(command.VtxOffset + list.IdxBuffer[static_cast<int>(command.IdxOffset + at + k)])]; };
                fill(canvas, atlas, corner(0), corner(1), corner(2), command.ClipRect);
            }
    }
    return stbi_write_png(path.c_str(), canvas.width, canvas.height, 3, canvas.rgb.data(), canvas.width * 3) != 0;
}

}  // namespace tubewright
