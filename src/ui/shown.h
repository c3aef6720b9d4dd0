#pragma once
// What a screen was drawn from last, to see which of its parts look as they did.

#include "present/views.h"
#include "ui/picture_handle.h"

namespace tubewright {

struct Shown {
    ScreenView view;
    PictureHandle picture;
};

/// A keypad is two parts, its keys and all the rest of it.
struct SameParts {
    bool header = false, ribbon = false, body = false, keys = false, footer = false, notice = false;
};

/// Says what is the same, and takes in what is not.
SameParts take_in(Shown& shown, const ScreenView& view, const PictureHandle& picture);

}  // namespace tubewright
