#pragma once
// A bender card as the text of a file of its own.

#include <string>

#include "base/words.h"
#include "bench/bender.h"

namespace tubewright {

/// Reading it gives this very card. In `unit` where every length of the card can be said in it to the last
/// bit; else in mm, in which a card is held. `before` is the text that the card came from, or empty: its
/// keys that begin with x- are kept.
std::string card_text(const Bender& bender, Unit unit, const std::string& before = "");

}  // namespace tubewright
