#include "bench/ordered.h"

#include <set>

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

/// The best order without any wish; empty where there is none.
std::vector<Placing> freely(OrderQuestion question, const CanBend& can_bend) {
    question.wish = {};
    const OrderAnswer answer = best_order(question, can_bend);
    const auto* found = std::get_if<OrderFound>(&answer);
    return found ? found->order : std::vector<Placing>{};
}

int swaps(const std::vector<Placing>& order) {
    int count = 0;
    for (std::size_t i = 1; i < order.size(); ++i) count += order[i].hook != order[i - 1].hook;
    return count;
}

/// Bends turned against no made neighbour. The first one has none and needs none.
std::set<std::size_t> by_ink_alone(const Part& part, const std::vector<Placing>& order) {
    std::set<std::size_t> bends;
    const auto against = turned_against(part, order);
    for (std::size_t i = 1; i < order.size(); ++i)
        if (!against[i]) bends.insert(order[i].bend);
    return bends;
}

void add_costs(const OrderQuestion& question, const std::vector<Placing>& by_hand, const std::vector<Placing>& best, std::vector<OrderBreak>& breaks) {
    constexpr Length shown{0.5};  // less than this more no tape shows
    const Part& part = question.layout.part;
    const EndSpread here = end_spread(part, by_hand, question.hand), there = end_spread(part, best, question.hand);
    for (const End end : {End::A, End::B}) {
        const Length to = within(end == End::A ? here.a : here.b), from = within(end == End::A ? there.a : there.b);
        if (to - from > shown) breaks.push_back(EndFurtherOff{end, from, to});
    }
    const std::set<std::size_t> floating = by_ink_alone(part, best);
    for (const std::size_t bend : by_ink_alone(part, by_hand))
        if (!floating.contains(bend)) breaks.push_back(TurnedByInkAlone{bend});
    if (swaps(by_hand) > swaps(best)) breaks.push_back(MoreSwaps{swaps(best), swaps(by_hand)});
}

}  // namespace

std::vector<OrderBreak> what_breaks(const Sheet& sheet, const std::vector<Placing>& by_hand, const std::vector<Placing>& best) {
    std::vector<OrderBreak> breaks;
    if (!has_question(sheet)) return breaks;
    const Length od = sheet.line.tube.od;
    const OrderQuestion question = question_of(sheet, {});
    const CanBend can_bend = geometry_of(question, od);
    std::uint64_t made = 0;
    for (const Placing& placing : by_hand) {
        const auto stop = blocked(question, can_bend, made, placing);
        if (stop && blocked(question, can_bend, made, {placing.bend, other(placing.hook)})) breaks.push_back(looked_into(question, od, *stop));
        made |= std::uint64_t{1} << placing.bend;
    }
    if (by_hand.size() == best.size()) add_costs(question, by_hand, best, breaks);
    return breaks;
}

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
        if (!wish.opening.empty()) verdict.breaks = what_breaks(sheet, verdict.order, freely(question, can_bend));
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
        if (!wish.opening.empty()) verdict.breaks = what_breaks(sheet, verdict.order, freely(question, can_bend));
        if (const auto ways = ways_for(sheet, wish, benders, progress)) verdict.ways = *ways;
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
    NoOrderPossible fact{verdict.furthest.size(), std::nullopt, std::nullopt, std::nullopt, "", verdict.ways};
    // The geometry's stop says most: a straight too short has a finding of its own.
    for (const StoppedBend& stop : verdict.stops)
        if (!fact.bend || (!fact.depth && stop.obstacle)) {
            fact.bend = stop.blocked.placing.bend;
            fact.hook = stop.blocked.placing.hook;
            if (stop.obstacle) fact.depth = stop.obstacle->depth;
            fact.solid = stop.solid;
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
