#pragma once
// The clock that shows how the tube lies around its own axis, seen from the hook. Only for use inside paper.

#include "paper/flow.h"
#include "present/views.h"

namespace tubewright {

inline constexpr double clock_width_mm = 54, clock_height_mm = 36;
PrintBlock clock_block(const ClockView& clock, const Lettering& lettering);

}  // namespace tubewright
