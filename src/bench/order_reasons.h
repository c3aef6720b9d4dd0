#pragma once
// Why this order: facts for the sentences that tell it, and for a line that has none.

#include "bench/order_search.h"
#include "bench/way_out.h"

namespace tubewright {

/// What comes of beginning at one bend.
struct StartFacts {
    std::size_t bend;
    Length a, b;  ///< what the ends land within, 95 times in 100, working outward from there
    bool possible;                  ///< that any order which begins there is
    std::optional<OrderCost> cost;  ///< of the best such order
};

/// Bends taken one after the other from an end. The first that stops it, and on which hooks.
struct InARow {
    StartFacts start;
    std::vector<Blocked> blocked;  ///< empty where the row can be made
    std::size_t made;              ///< bends made before it stops
};

struct OrderReasons {
    StartFacts chosen;
    InARow from_a, from_b;
    OnTheWay on_the_way;  ///< of the order that was found
};

/// For an order that was found; nothing where the search was stopped. A line without bends has no reasons.
std::optional<OrderReasons> order_reasons(const OrderQuestion& question, const CanBend& can_bend, const OrderFound& found, const Progress& progress = {});

/// The geometry for a changed question.
using CanBendFor = std::function<CanBend(const OrderQuestion&)>;

/// Single changes that make an order possible where there is none: another set-up, the nearest to this one first; straights
/// longer, then shorter, each kind by how much; where neither does it, all between bends longer; other benders. A straight is right to a sixteenth of an inch, to
/// tolerance::straight_slack where only the bender's straights are short. `other_benders`: the same line,
/// laid out for each of them. Nothing where the search was stopped. `every_way` turns false where a change was given up before it
/// was known whether it frees the line.
std::optional<std::vector<WayOut>> ways_out(const OrderQuestion& question, const CanBendFor& geometry, const std::vector<OrderQuestion>& other_benders, const Progress& progress = {}, bool* every_way = nullptr);

/// The layout with one straight longer, or shorter.
Layout lengthened(Layout layout, std::size_t straight, Length by);

}  // namespace tubewright
