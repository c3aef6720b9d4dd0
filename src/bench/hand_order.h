#pragma once
// An order of bends that somebody made by hand: everything that it breaks, and what it costs.

#include <algorithm>
#include <optional>
#include <vector>

#include "bench/ordered.h"

namespace tubewright {

/// What the ends keep within 95 times in 100, made in one order, seen from the bend made first.
struct EndsWithin {
    Length a, b;
    Length worse() const { return std::max(a, b); }
    bool operator==(const EndsWithin&) const = default;
};

EndsWithin ends_within(const Sheet& sheet, const std::vector<Placing>& order);

struct HandFacts {
    std::vector<Placing> order;       ///< with the end on the hook that serves best
    std::vector<StoppedBend> breaks;  ///< every bend that can't be made where it stands, in order of work
    EndsWithin ends;
    OnTheWay on_the_way = {};
};

/// Looks at each bend of `order` with those before it made, whether these can be or not. A bend that can't be made
/// with the end on the hook that the order says is tried with the other one; only what goes neither way is broken.
HandFacts hand_facts(const Sheet& sheet, const std::vector<Placing>& order);

/// What comes of looking for an order for the bench.
struct LookedFor {
    OrderVerdict verdict;
    std::optional<HandFacts> by_hand;  ///< where every bend's place was asked for
};

/// find_order() with that wish. An order by hand is shown as it is, whatever it breaks: no time is spent on
/// other starts and ways out. Of a tube that is begun the order of the rest, or a stance in which there is one.
/// `progress` as in best_order(), over all of it; `benders` as in find_order().
LookedFor look_for_order(const Sheet& sheet, const OrderWish& wish, const Progress& progress = {}, const std::vector<Bender>& benders = {});

}  // namespace tubewright
