#pragma once
// The straight, cut tube, true to scale, with its bends, its ink mark and a tape under it.

#include "ui/ui.h"

namespace tubewright {

float ribbon_height(const Ui& ui, const RibbonView& ribbon);
void draw_ribbon(Ui& ui, const Box& box, const RibbonView& ribbon);

}  // namespace tubewright
