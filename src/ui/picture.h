#pragma once
// The place of a picture in space, drawn by somebody else, with our labels on it.

#include "ui/picture_handle.h"
#include "ui/ui.h"

namespace tubewright {

/// A colour of the picture's legend, as whoever draws the picture has to use it.
Rgb swatch_colour(const Palette& palette, Swatch swatch);

/// The legend stands below the picture.
void draw_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture);

/// The same, and where the view says so a finger on it turns it.
void draw_turning_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture, std::vector<Action>& actions);

}  // namespace tubewright
