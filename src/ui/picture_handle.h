#pragma once
// A picture in space that somebody else has drawn.

#include <imgui.h>

#include <algorithm>
#include <map>

#include "base/words.h"

namespace tubewright {

/// A finished picture. Anchors are shares of its width and height from the upper left corner.
struct PictureHandle {
    ImTextureID texture = nullptr;      ///< none yet
    std::map<Anchor, ImVec2> anchors;   ///< those that can be seen
    ImVec2 uv_min{0, 1}, uv_max{1, 0};  ///< a framebuffer has its first row at the bottom

    bool operator==(const PictureHandle& other) const {
        const auto same = [](const ImVec2& a, const ImVec2& b) { return a.x == b.x && a.y == b.y; };
        const auto same_anchor = [&](const auto& a, const auto& b) { return a.first == b.first && same(a.second, b.second); };
        return texture == other.texture && same(uv_min, other.uv_min) && same(uv_max, other.uv_max) &&
               std::equal(anchors.begin(), anchors.end(), other.anchors.begin(), other.anchors.end(), same_anchor);
    }
};

}  // namespace tubewright
