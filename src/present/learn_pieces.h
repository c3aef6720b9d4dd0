#pragma once
// Inside present: what the pages of a bender being learned share.

#include "present/learn_words.h"
#include "present/pieces.h"

namespace tubewright {

/// As the reader's, but to a 32nd at least: that is what a piece is read to.
Tape piece_tape(const State& state);
/// Undo and Redo of this walk alone, and Back.
FooterView learn_footer(const State& state);
void add_main(FooterView& footer, ButtonView main);
/// One step of the piece in hand, a reading taken once more, the choice of a line, or its name.
void fill_learn_step(const State& state, ScreenView& view);

}  // namespace tubewright
