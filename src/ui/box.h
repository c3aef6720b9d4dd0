#pragma once
// A rectangle on the screen, in pixels, that is cut into smaller ones: all layout is done with it.

#include <imgui.h>

#include <algorithm>

namespace tubewright {

/// The nearest whole pixel. The library's round() is a call, and a screen asks a thousand times.
inline float whole_pixel(float at) { return static_cast<float>(static_cast<int>(at < 0 ? at - 0.5f : at + 0.5f)); }

struct Box {
    ImVec2 min{0, 0}, max{0, 0};

    float width() const { return max.x - min.x; }
    float height() const { return max.y - min.y; }
    ImVec2 centre() const { return {(min.x + max.x) / 2, (min.y + max.y) / 2}; }
    bool holds(ImVec2 p) const { return p.x >= min.x && p.x < max.x && p.y >= min.y && p.y < max.y; }
    Box inside(float by) const { return inside(by, by); }
    Box inside(float across, float down) const {
        return {{min.x + across, min.y + down}, {std::max(min.x + across, max.x - across), std::max(min.y + down, max.y - down)}};
    }

    /// Cuts a slice off, which is returned; what is left stays in this box.
    Box cut_top(float by) { const float y = std::min(min.y + by, max.y); Box slice{min, {max.x, y}}; min.y = y; return slice; }
    Box cut_bottom(float by) { const float y = std::max(max.y - by, min.y); Box slice{{min.x, y}, max}; max.y = y; return slice; }
    Box cut_left(float by) { const float x = std::min(min.x + by, max.x); Box slice{min, {x, max.y}}; min.x = x; return slice; }
    Box cut_right(float by) { const float x = std::max(max.x - by, min.x); Box slice{{x, min.y}, max}; max.x = x; return slice; }

    /// One of `count` equal parts side by side, or one above the other, with a gap between them.
    Box column(int index, int count, float gap) const {
        const float each = (width() - gap * static_cast<float>(count - 1)) / static_cast<float>(count);
        const float x = min.x + static_cast<float>(index) * (each + gap);
        return {{x, min.y}, {x + each, max.y}};
    }
    Box row(int index, int count, float gap) const {
        const float each = (height() - gap * static_cast<float>(count - 1)) / static_cast<float>(count);
        const float y = min.y + static_cast<float>(index) * (each + gap);
        return {{min.x, y}, {max.x, y + each}};
    }
};

inline bool overlap(const Box& a, const Box& b) {
    return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y;
}

inline Box around(ImVec2 centre, float width, float height) {
    return {{centre.x - width / 2, centre.y - height / 2}, {centre.x + width / 2, centre.y + height / 2}};
}

}  // namespace tubewright
