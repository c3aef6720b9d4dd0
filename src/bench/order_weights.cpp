#include "bench/order_weights.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>

#include "base/tolerance.h"
#include "tube/centreline.h"

namespace tubewright {
namespace {

/// Lines up to this many bends keep a table of every lever side there can be: 2^16 numbers for each end.
constexpr std::size_t most_in_table = 18;

std::int32_t thousandths(double points) { return static_cast<std::int32_t>(std::lround(std::min(points, 1e5) * 1000)); }


/// From the lever side of `from` straight to the near side of `to`, and round it.
Frame gone_past(const Layout& layout, const Frame& frame, std::size_t from, std::size_t to, Angle direction) {
    const BendSpan &here = layout.spans[from], &there = layout.spans[to];
    const Length straight = to > from ? there.start - here.end : here.start - there.end;
    return gone_round(gone_straight(frame, straight), layout.part.radius, layout.part.bends[to].angle, direction);
}

Frame gone_to_end(const Layout& layout, const Frame& frame, std::size_t from, End end) {
    return gone_straight(frame, end == End::B ? layout.cut_length - layout.spans[from].end : layout.spans[from].start);
}

/// The corner-like places of a formed tube: where a bend starts and where it ends.
double further(double far, const Layout& layout, const Frame& past, const Frame& before, std::size_t from, std::size_t to) {
    const BendSpan &here = layout.spans[from], &there = layout.spans[to];
    const Length straight = to > from ? there.start - here.end : here.start - there.end;
    return std::max({far, past.at.norm(), gone_straight(before, straight).at.norm()});
}

}  // namespace

OrderCost operator+(const OrderCost& a, const OrderCost& b) {
    return {a.ends + b.ends, a.floating + b.floating, a.swaps + b.swaps, a.turns + b.turns, a.lost + b.lost, a.reach + b.reach};
}

OnTheWay on_the_way(const OrderCost& cost, const OrderWeights& weights) {
    const auto count = [](std::int32_t paid, double each) { return each > 0 ? paid / thousandths(each) : 0; };
    return {count(cost.swaps, weights.swap), count(cost.turns, weights.turn_over), count(cost.floating, weights.floating)};
}

std::vector<Placing> outward_order(const Part& part, std::size_t start) {
    std::vector<Placing> order{{start, End::A}};
    for (auto next = next_towards(part, start, End::B); next; next = next_towards(part, *next, End::B)) order.push_back({*next, End::A});
    for (auto next = next_towards(part, start, End::A); next; next = next_towards(part, *next, End::A)) order.push_back({*next, End::B});
    return order;
}

OrderCosts::OrderCosts(const Layout& layout, const OrderWeights& weights, const Hand& hand) : layout_(layout), weights_(weights) {
    const Part& part = layout_.part;
    assert(part.bends.size() <= 64);
    for (std::size_t i = 0; i < part.bends.size(); ++i) {
        rank_.push_back(bends_.size());
        directions_.push_back(direction_in_section(part, i));
        if (is_made(part.bends[i])) bends_.push_back(i);
    }
    const auto squared = [&](const Spread& spread) { return std::pow(within(spread) / weights_.end_tolerance, 2); };
    for (const std::size_t bend : bends_) {
        const Length arc = arc_length(part.radius, part.bends[bend].angle), taken = layout_.spans[bend].end - layout_.spans[bend].start;
        const EndSpread spread = end_spread(part, outward_order(part, bend), hand, 1 - taken / arc);
        starts_.push_back(thousandths(weights_.ends * (squared(spread.a) + squared(spread.b))));
    }
    if (bends_.size() > most_in_table) return;
    for (std::size_t rank = 0; rank < bends_.size(); ++rank) {
        reach_a_.push_back(all_reaches(rank, End::A));
        reach_b_.push_back(all_reaches(rank, End::B));
    }
}

/// Each way the lever side can be formed costs one step beyond a shorter one.
std::vector<std::int32_t> OrderCosts::all_reaches(std::size_t rank, End lever) const {
    const std::size_t beyond = lever == End::B ? bends_.size() - 1 - rank : rank;
    std::vector<std::int32_t> reaches(std::size_t{1} << beyond);
    const auto at = [&](std::size_t steps) { return bends_[lever == End::B ? rank + steps : rank - steps]; };
    const std::function<void(const Frame&, std::size_t, std::size_t, double)> walk = [&](const Frame& frame, std::size_t steps, std::size_t formed, double far) {
        const double end = gone_to_end(layout_, frame, at(steps), lever).at.norm();
        reaches[formed] = thousandths(weights_.reach_per_metre * std::max(far, end) / 1000);
        for (std::size_t next = steps + 1; next <= beyond; ++next) {
            const Frame past = gone_past(layout_, frame, at(steps), at(next), directions_[at(next)]);
            walk(past, next, formed | std::size_t{1} << (next - 1), further(far, layout_, past, frame, at(steps), at(next)));
        }
    };
    walk({}, 0, 0, 0);
    return reaches;
}

Length OrderCosts::reach(std::uint64_t made, const Placing& placing) const {
    // Seen from the other end everything is mirrored, which no distance notices.
    const End lever = other(placing.hook);
    Frame frame;
    double far = 0;
    std::size_t from = placing.bend;
    for (auto next = next_towards(layout_.part, from, lever); next; next = next_towards(layout_.part, *next, lever)) {
        if (!(made & bend_bit(*next))) continue;
        const Frame past = gone_past(layout_, frame, from, *next, directions_[*next]);
        far = further(far, layout_, past, frame, from, *next);
        frame = past;
        from = *next;
    }
    return {std::max(far, gone_to_end(layout_, frame, from, lever).at.norm())};
}

std::int32_t OrderCosts::reach_points(std::uint64_t made, const Placing& placing) const {
    if (reach_a_.empty()) return thousandths(weights_.reach_per_metre * reach(made, placing).mm / 1000);
    const std::size_t rank = rank_[placing.bend];
    std::size_t formed = 0;
    if (placing.hook == End::A) {
        for (std::size_t i = rank + 1; i < bends_.size(); ++i)
            if (made & bend_bit(bends_[i])) formed |= std::size_t{1} << (i - rank - 1);
        return reach_b_[rank][formed];
    }
    for (std::size_t i = 0; i < rank; ++i)
        if (made & bend_bit(bends_[i])) formed |= std::size_t{1} << (rank - 1 - i);
    return reach_a_[rank][formed];
}

OrderCost OrderCosts::start(std::size_t bend) const {
    OrderCost cost;
    cost.ends = starts_[rank_[bend]];
    return cost;
}

OrderCost OrderCosts::step(std::uint64_t made, const Placing& placing) const {
    const std::size_t rank = rank_[placing.bend];
    const auto guides = [&](std::size_t at) { return (made & bend_bit(bends_[at])) && leg_has_side(layout_.part.bends[bends_[at]]); };
    const bool before = rank > 0 && guides(rank - 1), after = rank + 1 < bends_.size() && guides(rank + 1);
    const std::uint64_t spoiled = made | bend_bit(placing.bend);
    std::size_t first = 0, last = bends_.size() - 1;
    while (!(spoiled & bend_bit(bends_[first]))) ++first;
    while (!(spoiled & bend_bit(bends_[last]))) --last;
    const Length left = std::max(layout_.spans[bends_[first]].start, layout_.cut_length - layout_.spans[bends_[last]].end);
    OrderCost cost;
    if (made && !before && !after) cost.floating = thousandths(weights_.floating);
    cost.lost = thousandths(weights_.chance_wrong * weights_.lost_per_metre * (layout_.cut_length - left).mm / 1000);
    cost.reach = reach_points(made, placing);
    return cost;
}

OrderCost OrderCosts::between(const Placing& before, const Placing& placing) const {
    OrderCost cost;
    if (before.hook != placing.hook) {
        cost.swaps = thousandths(weights_.swap);
    } else {
        const Angle turned = wrapped(directions_[placing.bend] - directions_[before.bend]);
        if (std::abs(turned.deg) > 90 + tolerance::no_bend.deg) cost.turns = thousandths(weights_.turn_over);
    }
    return cost;
}

OrderCost OrderCosts::of(const std::vector<Placing>& order) const {
    OrderCost cost;
    std::uint64_t made = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        cost = cost + (i == 0 ? start(order[i].bend) : between(order[i - 1], order[i])) + step(made, order[i]);
        made |= bend_bit(order[i].bend);
    }
    return cost;
}

}  // namespace tubewright
