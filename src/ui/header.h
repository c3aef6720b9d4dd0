#pragma once
// The dark bar along the top: which line, where in the work, and the chips.

#include "ui/ui.h"

namespace tubewright {

float header_height(const Ui& ui);
void draw_header(Ui& ui, const Box& box, const HeaderView& header);

}  // namespace tubewright
