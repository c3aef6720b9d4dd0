#pragma once
// The place of a picture in space, drawn by somebody else, with our labels on it.

#include <map>

#include "ui/ui.h"

namespace tubewright {

/// A finished picture. Anchors are shares of its width and height from the upper left corner.
struct PictureHandle {
    ImTextureID texture = nullptr;      ///< none yet
    std::map<Anchor, ImVec2> anchors;   ///< those that can be seen
    ImVec2 uv_min{0, 1}, uv_max{1, 0};  ///< a framebuffer has its first row at the bottom
};

void draw_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture);

}  // namespace tubewright
