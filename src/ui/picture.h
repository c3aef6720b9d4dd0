#pragma once
// The place of a picture in space, drawn by somebody else, with our labels on it.

#include "ui/picture_handle.h"
#include "ui/ui.h"

namespace tubewright {

void draw_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture);

}  // namespace tubewright
