#pragma once
// Which picture in space a screen wants.

#include "present/views.h"
#include "scene/scene.h"

namespace tubewright {

/// None: the screen has no picture.
const PictureView* picture_in(const ScreenView& view);

PictureKind kind_of(PictureView::Kind kind);

}  // namespace tubewright
