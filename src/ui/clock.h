#pragma once
// The clock face: a direction around the tube, as seen along it from the hook side.

#include "ui/ui.h"

namespace tubewright {

/// The face, the words around it, and under it what each hand stands for.
void draw_clock(Ui& ui, const Box& box, const ClockView& clock, const Skin& skin);

}  // namespace tubewright
