#include "bench/order_reasons.h"

#include <algorithm>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// Part of the whole work told as such: the n-th of `of` equal parts.
Progress part_of(const Progress& progress, std::size_t n, std::size_t of) {
    if (!progress) return {};
    return [&progress, n, of](double share) { return progress((static_cast<double>(n) + share) / static_cast<double>(of)); };
}

std::optional<StartFacts> start_facts(const OrderQuestion& question, const CanBend& can_bend, std::size_t bend, const Progress& progress) {
    const EndSpread spread = end_spread(question.layout.part, outward_order(question.layout.part, bend), question.hand, question.bender.stretch);
    StartFacts facts{bend, within(spread.a), within(spread.b), false, {}};
    OrderQuestion pinned = question;
    pinned.wish.opening = {bend};
    const OrderAnswer answer = best_order(pinned, can_bend, progress);
    if (std::holds_alternative<Cancelled>(answer)) return std::nullopt;
    if (const auto* found = std::get_if<OrderFound>(&answer)) {
        facts.possible = true;
        facts.cost = found->cost;
    }
    return facts;
}

std::optional<InARow> in_a_row(const OrderQuestion& question, const CanBend& can_bend, const std::vector<std::size_t>& row, const Progress& progress) {
    const auto start = start_facts(question, can_bend, row.front(), progress);
    if (!start) return std::nullopt;
    OrderQuestion by_hand = question;
    by_hand.wish.opening = row;
    const OrderAnswer answer = best_order(by_hand, can_bend);
    if (const auto* none = std::get_if<NoOrder>(&answer)) return InARow{*start, none->blocked, none->furthest.size()};
    return InARow{*start, {}, row.size()};
}

std::vector<std::size_t> bends_in_order(const Part& part) {
    std::vector<std::size_t> bends;
    for (std::size_t i = 0; i < part.bends.size(); ++i)
        if (is_made(part.bends[i])) bends.push_back(i);
    return bends;
}

}  // namespace

std::optional<OrderReasons> order_reasons(const OrderQuestion& question, const CanBend& can_bend, const OrderFound& found, const Progress& progress) {
    std::vector<std::size_t> row = bends_in_order(question.layout.part);
    if (found.order.empty()) return std::nullopt;
    OrderQuestion free = question;
    free.wish.opening.clear();
    const EndSpread spread = end_spread(question.layout.part, outward_order(question.layout.part, found.order.front().bend), question.hand, question.bender.stretch);
    const StartFacts chosen{found.order.front().bend, within(spread.a), within(spread.b), true, found.cost};
    const auto from_a = in_a_row(free, can_bend, row, part_of(progress, 0, 2));
    std::reverse(row.begin(), row.end());
    if (!from_a) return std::nullopt;
    const auto from_b = in_a_row(free, can_bend, row, part_of(progress, 1, 2));
    if (!from_b) return std::nullopt;
    return OrderReasons{chosen, *from_a, *from_b, on_the_way(found.cost, question.weights)};
}

}  // namespace tubewright
