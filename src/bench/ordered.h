#pragma once
// A line's bend sheet in the best order there is, and why it is that order.

#include <optional>
#include <string>
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

/// What came of looking for an order.
struct OrderVerdict {
    enum class Outcome { found, none, cancelled, not_looked } outcome = Outcome::not_looked;
    std::vector<Placing> order;             ///< found; or, of none, the order by hand that was asked for
    std::optional<OrderReasons> reasons;    ///< of a found one, where asked for
    std::optional<StoppedBend> from_a_stop, from_b_stop;  ///< what stops the row from that end, if anything
    std::vector<Placing> furthest;          ///< none: how far one gets
    std::vector<StoppedBend> stops;         ///< none: what stops each bend that is left, on either hook
    std::vector<WayOut> ways;               ///< none: what would free it, where asked for
    bool every_way = true;                  ///< none: whether every way out was tried to its end, or there were too many sets to look at
};

/// How much to find out besides the order itself.
enum class Asked { order, order_or_way_out, order_and_why };

/// Looks for the best order for the line as it stands on the sheet. A line that is stopped already, whatever
/// the order, is not looked at. `progress` as in best_order(). `benders`: those there are, this one or other sizes
/// among them or not; those that take the tube are tried for a way out.
OrderVerdict find_order(const Sheet& sheet, const OrderWish& wish = {}, Asked asked = Asked::order, const Progress& progress = {}, const std::vector<Bender>& benders = {});

/// The sheet with the verdict's order taken; with a stop where there is none.
Sheet in_order(const Line& line, SheetChoice choice, const OrderVerdict& verdict);

/// bend_sheet(), find_order() and in_order() in one go.
Sheet ordered_sheet(const Line& line, const SheetChoice& choice = {}, const std::vector<Bender>& benders = {});

}  // namespace tubewright
