#pragma once
// A whole screen: header, ribbon, body, notice and footer.

#include "ui/bodies.h"
#include "ui/picture.h"

namespace tubewright {

/// Draws the view and adds what the finger, or the key, asked for. Between begin_frame and end_frame.
void draw_screen(Ui& ui, const ScreenView& view, const PictureHandle& picture, std::vector<Action>& actions);

}  // namespace tubewright
