#include "ui/signs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/ui.h"

namespace tubewright {

void draw_check(ImDrawList& list, ImVec2 centre, float size, ImU32 ink, float thickness) {
    const ImVec2 points[] = {{centre.x - size * 0.45f, centre.y + size * 0.02f},
                             {centre.x - size * 0.12f, centre.y + size * 0.35f},
                             {centre.x + size * 0.48f, centre.y - size * 0.36f}};
    list.AddPolyline(points, 3, ink, 0, thickness);
}

void draw_cross(ImDrawList& list, ImVec2 centre, float size, ImU32 ink, float thickness) {
    const float half = size / 2;
    list.AddLine({centre.x - half, centre.y - half}, {centre.x + half, centre.y + half}, ink, thickness);
    list.AddLine({centre.x - half, centre.y + half}, {centre.x + half, centre.y - half}, ink, thickness);
}

void draw_tone_sign(Ui& ui, ImVec2 c, float size, Tone tone) {
    ImDrawList& list = ui.list();
    const Skin strong = ui.strong(tone);
    const ImU32 fill = colour(strong.fill), ink = colour(strong.ink);
    const float half = size / 2, line = size * 0.13f;
    const auto exclaim = [&](float lift) {
        list.AddLine({c.x, c.y - size * 0.22f + lift}, {c.x, c.y + size * 0.1f + lift}, ink, line);
        list.AddCircleFilled({c.x, c.y + size * 0.26f + lift}, line * 0.62f, ink);
    };
    switch (tone) {
        case Tone::plain: list.AddCircleFilled(c, size * 0.16f, colour(ui.palette().ink_soft)); break;
        case Tone::go:
            list.AddCircleFilled(c, half, fill);
            draw_check(list, c, size * 0.58f, ink, line);
            break;
        case Tone::now:
            list.AddCircleFilled(c, half, fill);
            list.AddTriangleFilled({c.x - size * 0.15f, c.y - size * 0.24f}, {c.x - size * 0.15f, c.y + size * 0.24f}, {c.x + size * 0.27f, c.y}, ink);
            break;
        case Tone::caution:
            list.AddTriangleFilled({c.x, c.y - half}, {c.x + size * 0.56f, c.y + half * 0.94f}, {c.x - size * 0.56f, c.y + half * 0.94f}, fill);
            exclaim(size * 0.1f);
            break;
        case Tone::stop: {
            list.PathClear();
            for (int i = 0; i < 8; ++i) {
                const float turn = (static_cast<float>(i) + 0.5f) * std::numbers::pi_v<float> / 4;
                list.PathLineTo({c.x + half * 1.06f * std::cos(turn), c.y + half * 1.06f * std::sin(turn)});
            }
            list.PathFillConvex(fill);
            exclaim(-size * 0.02f);
            break;
        }
    }
}

namespace {

/// Writes the rule's rectangle; the room for it has been reserved.
void write_rule(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float thickness) {
    const float wide = std::max(1.0f, whole_pixel(thickness));
    const bool upright = std::fabs(to.x - from.x) < std::fabs(to.y - from.y);
    ImVec2 min{std::min(from.x, to.x), std::min(from.y, to.y)}, max{std::max(from.x, to.x), std::max(from.y, to.y)};
    (upright ? min.x : min.y) -= wide / 2;
    min = {whole_pixel(min.x), whole_pixel(min.y)};
    max = {whole_pixel(max.x), whole_pixel(max.y)};
    (upright ? max.x : max.y) = (upright ? min.x : min.y) + wide;
    list.PrimRect(min, max, ink);
}

}  // namespace

void draw_rule(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float thickness) {
    list.PrimReserve(6, 4);
    write_rule(list, from, to, ink, thickness);
}

void draw_dashes(ImDrawList& list, ImVec2 from, ImVec2 to, ImU32 ink, float thickness, float dash, float gap) {
    const float length = std::hypot(to.x - from.x, to.y - from.y);
    if (length <= 0) return;
    const bool straight = from.x == to.x || from.y == to.y;
    const ImVec2 along{(to.x - from.x) / length, (to.y - from.y) / length};
    int dashes = 0;
    for (float at = 0; at < length; at += dash + gap) ++dashes;
    if (straight) list.PrimReserve(6 * dashes, 4 * dashes);
    for (float at = 0; at < length; at += dash + gap) {
        const float end = std::min(at + dash, length);
        const ImVec2 start{from.x + along.x * at, from.y + along.y * at}, stop{from.x + along.x * end, from.y + along.y * end};
        if (straight) write_rule(list, start, stop, ink, thickness);
        else list.AddLine(start, stop, ink, thickness);
    }
}

void draw_dashed_box(ImDrawList& list, ImVec2 min, ImVec2 max, ImU32 ink, float thickness, float dash, float gap) {
    draw_dashes(list, min, {max.x, min.y}, ink, thickness, dash, gap);
    draw_dashes(list, {max.x, min.y}, max, ink, thickness, dash, gap);
    draw_dashes(list, max, {min.x, max.y}, ink, thickness, dash, gap);
    draw_dashes(list, {min.x, max.y}, min, ink, thickness, dash, gap);
}

void draw_rod(ImDrawList& list, ImVec2 from, ImVec2 to, float thickness, Rgb outline, Rgb body, Rgb bright) {
    const auto stroke = [&](float width, Rgb ink) {
        list.AddLine(from, to, colour(ink), width);
        list.AddCircleFilled(from, width / 2, colour(ink));
        list.AddCircleFilled(to, width / 2, colour(ink));
    };
    stroke(thickness * 1.3f, outline);
    stroke(thickness, body);
    const float length = std::max(1.0f, std::hypot(to.x - from.x, to.y - from.y));
    const ImVec2 aside{(to.y - from.y) / length * thickness * 0.2f, -(to.x - from.x) / length * thickness * 0.2f};
    list.AddLine({from.x + aside.x, from.y + aside.y}, {to.x + aside.x, to.y + aside.y}, colour(bright), thickness * 0.16f);
}

}  // namespace tubewright
