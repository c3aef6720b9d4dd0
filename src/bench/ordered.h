#pragma once
// A line's bend sheet in the best order there is, and why it is that order.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bench/handling.h"
#include "bench/order_reasons.h"
#include "bench/sheet.h"

namespace tubewright {

/// What stops one bend, with everything that stands at the bender looked at.
struct StoppedBend {
    Blocked blocked;
    std::optional<Obstacle> obstacle;  ///< where the geometry stops it
    std::string solid;                 ///< its name, where the obstacle is part of bender or bench
};

/// What an order costs that is not the best one. An end: what it lands within, 95 times in 100.
struct EndFurtherOff {
    End end;
    Length from, to;
};
/// Its plane is set by the ink line alone: no adjoining bend is made before. In the best order it isn't.
struct TurnedByInkAlone {
    std::size_t bend;
};
/// The tube is taken out and turned end for end more often.
struct MoreSwaps {
    int from, to;
};
using OrderBreak = std::variant<StoppedBend, EndFurtherOff, TurnedByInkAlone, MoreSwaps>;

/// What came of looking for an order.
struct OrderVerdict {
    enum class Outcome { found, none, cancelled, not_looked } outcome = Outcome::not_looked;
    std::vector<Placing> order;             ///< found; or, of none, the order by hand that was asked for
    std::optional<OrderReasons> reasons;    ///< of a found one, where asked for
    std::optional<StoppedBend> from_a_stop, from_b_stop;  ///< what stops the row from that end, if anything
    std::vector<Placing> furthest;          ///< none: how far one gets
    std::vector<StoppedBend> stops;         ///< none: what stops each bend that is left, on either hook
    std::vector<WayOut> ways;               ///< none: what would free it, where asked for
    std::vector<OrderBreak> breaks;         ///< of an order that was wished for: what it costs against the best, where asked why
};

/// How much to find out besides the order itself.
enum class Asked { order, order_or_way_out, order_and_why };

/// Looks for the best order for the line as it stands on the sheet. A line that is stopped already, whatever
/// the order, is not looked at. `progress` as in best_order(). `benders`: those there are, this one or other sizes
/// among them or not; those that take the tube are tried for a way out.
OrderVerdict find_order(const Sheet& sheet, const OrderWish& wish = {}, Asked asked = Asked::order, const Progress& progress = {}, const std::vector<Bender>& benders = {});

/// What an order by hand breaks: every bend that can't be made when its turn comes, held by either end, as if those before it
/// had been made all the same; then what it costs against `best`, where that is an order of the same bends.
std::vector<OrderBreak> what_breaks(const Sheet& sheet, const std::vector<Placing>& by_hand, const std::vector<Placing>& best);

/// The sheet with the verdict's order taken; with a stop where there is none.
Sheet in_order(const Line& line, SheetChoice choice, const OrderVerdict& verdict);

/// bend_sheet(), find_order() and in_order() in one go.
Sheet ordered_sheet(const Line& line, const SheetChoice& choice = {}, const std::vector<Bender>& benders = {});

}  // namespace tubewright
