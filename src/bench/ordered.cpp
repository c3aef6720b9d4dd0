#include "bench/ordered.h"

#include <algorithm>

#include "bench/line_question.h"
#include "bench/line_ways.h"
#include "bench/settled_order.h"

namespace tubewright {
namespace {

StoppedBend looked_into(const OrderQuestion& question, Length od, const Blocked& blocked) {
    StoppedBend stop{blocked, std::nullopt, ""};
    if (!std::holds_alternative<InTheWay>(blocked.why)) return stop;
    Handling handling = handling_of(question, od);
    stop.obstacle = handling.obstacle(blocked.made, blocked.placing);
    if (stop.obstacle && stop.obstacle->solid) stop.solid = question.bender.body[*stop.obstacle->solid].name;
    return stop;
}

std::optional<StoppedBend> first_stop(const OrderQuestion& question, Length od, const InARow& row) {
    if (row.blocked.empty()) return std::nullopt;
    return looked_into(question, od, row.blocked.front());
}

/// The wished order as far as it goes, then the rest of it on the same end: shown, though it can't be made.
std::vector<Placing> by_hand(const OrderWish& wish, const std::vector<Placing>& made) {
    std::vector<Placing> order = made;
    for (std::size_t i = made.size(); i < wish.opening.size(); ++i) order.push_back({wish.opening[i], made.empty() ? End::A : made.back().hook});
    return order;
}

/// A straight that is short for the order on the sheet is told to become longer by what makes some order possible: one number
/// for one thing. The bender's lack alone is less where the geometry wants more, and more where another hook wants less.
void tell_what_is_enough(Sheet& sheet, const std::vector<WayOut>& ways) {
    for (Finding& finding : sheet.findings) {
        auto* fact = std::get_if<NoRoomInBender>(&finding.fact);
        if (!fact) continue;
        fact->no_order = true;
        const auto step = std::find_if(sheet.steps.begin(), sheet.steps.end(), [&](const Step& s) { return s.bend == fact->bend; });
        const End side = fact->hook_side ? step->hook : other(step->hook);
        for (const WayOut& way : ways)
            if (const auto* longer = std::get_if<LongerStraight>(&way); longer && longer->straight == (side == End::A ? fact->bend : fact->bend + 1)) fact->enough = longer->by;
    }
}

}  // namespace

OrderVerdict find_order(const Sheet& sheet, const OrderWish& wish, Asked asked, const Progress& progress, const std::vector<Bender>& benders) {
    OrderVerdict verdict;
    if (!has_question(sheet)) return verdict;
    const Length od = sheet.line.tube.od;
    const OrderQuestion question = question_of(sheet, wish);
    const CanBend can_bend = geometry_of(question, od);
    const OrderAnswer answer = best_order(question, can_bend, progress);
    using Outcome = OrderVerdict::Outcome;
    if (const auto* found = std::get_if<OrderFound>(&answer)) {
        verdict.outcome = Outcome::found;
        verdict.order = found->order;
        if (asked != Asked::order_and_why) return verdict;
        verdict.reasons = order_reasons(question, can_bend, *found, progress);
        if (!verdict.reasons) return verdict;
        verdict.from_a_stop = first_stop(question, od, verdict.reasons->from_a);
        verdict.from_b_stop = first_stop(question, od, verdict.reasons->from_b);
    } else if (const auto* none = std::get_if<NoOrder>(&answer)) {
        verdict.outcome = Outcome::none;
        verdict.furthest = none->furthest;
        verdict.order = by_hand(wish, none->furthest);
        for (const Blocked& blocked : none->blocked) verdict.stops.push_back(looked_into(question, od, blocked));
        if (asked == Asked::order) return verdict;
        if (const auto ways = ways_for(sheet, wish, benders, progress, &verdict.every_way)) verdict.ways = *ways;
    } else {
        verdict.outcome = Outcome::cancelled;
    }
    return verdict;
}

Sheet in_order(const Line& line, SheetChoice choice, const OrderVerdict& verdict) {
    choice.order = verdict.order;
    Sheet sheet = bend_sheet(line, choice);
    if (verdict.outcome == OrderVerdict::Outcome::cancelled) add_finding(sheet, {Severity::caution, "order-not-looked", std::nullopt, OrderNotLooked{true}});
    if (verdict.outcome != OrderVerdict::Outcome::none) return sheet;
    NoOrderPossible fact{verdict.furthest.size(), std::nullopt, std::nullopt, std::nullopt, "", verdict.ways, std::nullopt, verdict.every_way};
    tell_what_is_enough(sheet, verdict.ways);
    // The geometry's stop says most: a straight too short has a finding of its own.
    for (const StoppedBend& stop : verdict.stops)
        if (!fact.bend || (!fact.depth && stop.obstacle)) {
            fact.bend = stop.blocked.placing.bend;
            fact.hook = stop.blocked.placing.hook;
            if (stop.obstacle) fact.depth = stop.obstacle->depth;
            fact.solid = stop.solid;
            fact.short_of.reset();
            if (const auto* straight = std::get_if<ShortStraight>(&stop.blocked.why)) fact.short_of = StraightShort{straight->hook_side, straight->has, straight->needed};
        }
    sheet.findings.insert(sheet.findings.begin(), Finding{Severity::stop, "no-order", fact.bend, fact});
    return sheet;
}

Sheet ordered_sheet(const Line& line, const SheetChoice& choice, const std::vector<Bender>& benders) {
    Sheet sheet = bend_sheet(line, choice);
    const OrderVerdict verdict = find_order(sheet, {}, Asked::order_or_way_out, {}, benders);
    // Then the sheet stands in the default order, as that without a wish is.
    const bool nothing_found = choice.order.empty() && verdict.order.empty() && verdict.outcome != OrderVerdict::Outcome::none;
    return nothing_found ? sheet : in_order(line, choice, verdict);
}

}  // namespace tubewright
