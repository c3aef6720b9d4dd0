#pragma once
// A view as a reader would see it, for tests and reviews.

#include <string>

#include "present/views.h"

namespace tubewright {

/// [label] is a button, (label: why not) a disabled one, [label*] the main one, [label=] the chosen one.
std::string as_text(const ScreenView& view);

}  // namespace tubewright
