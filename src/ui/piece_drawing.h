#pragma once
// A piece that a bender is learned from, drawn flat with what is taped on it.

#include "ui/ui.h"

namespace tubewright {

void draw_piece(Ui& ui, const Box& box, const PieceView& view);

}  // namespace tubewright
