#pragma once
// The colours of the picture in space that go with a theme.

#include "gl/picture_maker.h"
#include "ui/palette.h"

namespace tubewright {

PictureColours picture_colours(const Palette& palette);

}  // namespace tubewright
