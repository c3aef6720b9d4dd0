#pragma once
// The ways out for a line on its sheet that has no order of bends.

#include "bench/order_search.h"
#include "bench/sheet.h"
#include "bench/way_out.h"

namespace tubewright {

/// What a way out makes of a line. `wish` is what is left of it.
struct FreedLine {
    Line line;
    SetUp set_up;
    OrderWish wish;
};
/// `benders`: the list that OtherBender counts in.
FreedLine freed(const Sheet& sheet, const OrderWish& wish, const WayOut& way, const std::vector<Bender>& benders);

/// Each has been tried: the line changed in that way, laid out and looked over anew, has an order. Lengths are full
/// sixteenths of an inch, and hold in full half millimetres as well. An angle is offered only where no straight does it; of
/// other benders those of the list whose groove takes the tube. The easiest to do first. Of a tube that is begun only another
/// stance. Nothing where the search was stopped. `every_way` as in ways_out().
std::optional<std::vector<WayOut>> ways_for(const Sheet& sheet, const OrderWish& wish, const std::vector<Bender>& benders, const Progress& progress = {}, bool* every_way = nullptr);

}  // namespace tubewright
