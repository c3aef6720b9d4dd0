#pragma once
// The rack in words.

#include <string>

#include "state/rack.h"
#include "stock/buy_list.h"

namespace tubewright {

/// stick, coil, offcut.
std::string kind_word(PieceKind kind);
/// 3/16" × 0.028" stainless 304.
std::string tube_words(const State& state, const StockTube& tube);
std::string material_words(const State& state, const std::string& id);
/// "left rack, lot B7"; empty where neither was told.
std::string place_words(const RackLength& length);
/// 12.50, in whatever the shop pays with.
std::string money_text(Money money);
/// The line's name out of the key of its work.
std::string line_of_key(const State& state, const std::string& key);
/// One thing to buy: "tube nut, 37° single flare, 3/16"".
std::string item_words(const State& state, const BuyItem& item);

}  // namespace tubewright
