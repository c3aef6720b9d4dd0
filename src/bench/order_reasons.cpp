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
    const EndSpread spread = end_spread(question.layout.part, outward_order(question.layout.part, bend), question.hand);
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

/// Looks for ways out one after the other; what it was told to stop at is not a way out.
class Exits {
public:
    Exits(const OrderQuestion& question, const CanBendFor& geometry, const Progress& progress) : question_(question), geometry_(geometry), progress_(progress) {}

    bool possible(const OrderQuestion& changed, bool with_geometry) {
        const CanBend can = with_geometry ? geometry_(changed) : CanBend([](std::uint64_t, const Placing&) { return true; });
        const OrderAnswer answer = best_order(changed, can, [this](double) { return go_on(); });
        return std::holds_alternative<OrderFound>(answer);
    }
    std::optional<LongerStraight> longer(std::size_t straight);
    void tried(double share) { share_ = share; }
    bool go_on() { return !stopped_ && !(stopped_ = progress_ && !progress_(share_)); }

private:
    bool with(std::size_t straight, Length by, bool with_geometry) {
        OrderQuestion changed = question_;
        changed.layout = lengthened(changed.layout, straight, by);
        return possible(changed, with_geometry);
    }

    const OrderQuestion& question_;
    const CanBendFor& geometry_;
    const Progress& progress_;
    double share_ = 0;
    bool stopped_ = false;
};

std::optional<LongerStraight> Exits::longer(std::size_t straight) {
    // More straight never takes room from the bender, so the least that it asks for is found by halving. What the
    // geometry asks for may come and go with the length: from there on, lengths one would try at the bench.
    const Length most = question_.bender.hook_straight + question_.bender.lever_straight;
    Length low, high = most;
    if (!with(straight, {}, false)) {
        if (!with(straight, most, false)) return std::nullopt;
        while (high - low > tolerance::straight_slack / 4 && go_on()) {
            const Length middle = (low + high) / 2;
            (with(straight, middle, false) ? high : low) = middle;
        }
    } else {
        high = {};
    }
    for (const double more_mm : {0.0, 12.7, 25.4, 50.8, 101.6}) {
        const Length by = high + Length{more_mm};
        if (by.mm > 0 && go_on() && with(straight, by, true)) return LongerStraight{straight, by};
    }
    return std::nullopt;
}

}  // namespace

Layout lengthened(Layout layout, std::size_t straight, Length by) {
    layout.part.straights[straight] += by;
    layout.cut_length += by;
    for (std::size_t i = straight; i < layout.spans.size(); ++i) {
        layout.spans[i].start += by;
        layout.spans[i].end += by;
    }
    return layout;
}

std::optional<OrderReasons> order_reasons(const OrderQuestion& question, const CanBend& can_bend, const OrderFound& found, const Progress& progress) {
    std::vector<std::size_t> row = bends_in_order(question.layout.part);
    if (found.order.empty()) return std::nullopt;
    OrderQuestion free = question;
    free.wish.opening.clear();
    const EndSpread spread = end_spread(question.layout.part, outward_order(question.layout.part, found.order.front().bend), question.hand);
    const StartFacts chosen{found.order.front().bend, within(spread.a), within(spread.b), true, found.cost};
    const auto from_a = in_a_row(free, can_bend, row, part_of(progress, 0, 2));
    std::reverse(row.begin(), row.end());
    if (!from_a) return std::nullopt;
    const auto from_b = in_a_row(free, can_bend, row, part_of(progress, 1, 2));
    if (!from_b) return std::nullopt;
    return OrderReasons{chosen, *from_a, *from_b};
}

HandOrder what_breaks(const OrderQuestion& question, const CanBend& can_bend, const std::vector<Placing>& order) {
    HandOrder result{{}, {}, OrderCosts(question.layout, question.weights, question.hand).of(order), end_spread(question.layout.part, order, question.hand)};
    std::uint64_t made = 0;
    for (std::size_t step = 0; step < order.size() && !result.blocked; ++step) {
        result.blocked = blocked(question, can_bend, made, order[step]);
        if (result.blocked) result.step = step;
        made |= std::uint64_t{1} << order[step].bend;
    }
    return result;
}

std::optional<std::vector<WayOut>> ways_out(const OrderQuestion& question, const CanBendFor& geometry, const std::vector<OrderQuestion>& other_benders, const Progress& progress) {
    Exits exits(question, geometry, progress);
    const std::size_t straights = question.layout.part.straights.size(), steps = straights + 8 + other_benders.size();
    std::size_t done = 0;
    const auto tried = [&] { exits.tried(static_cast<double>(++done) / static_cast<double>(steps)); };
    std::vector<LongerStraight> longer;
    for (std::size_t i = 0; i < straights && exits.go_on(); ++i, tried())
        if (const auto way = exits.longer(i)) longer.push_back(*way);
    std::stable_sort(longer.begin(), longer.end(), [](const LongerStraight& a, const LongerStraight& b) { return a.by < b.by; });
    std::vector<WayOut> ways(longer.begin(), longer.end());
    for (const HookHand hand : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down}) {
            OrderQuestion turned = question;
            turned.set_up = {hand, swing};
            if (turned.set_up != question.set_up && exits.go_on() && exits.possible(turned, true)) ways.push_back(OtherSetUp{turned.set_up});
            tried();
        }
    for (std::size_t i = 0; i < other_benders.size() && exits.go_on(); ++i, tried())
        if (exits.possible(other_benders[i], true)) ways.push_back(OtherBender{i});
    if (!exits.go_on()) return std::nullopt;
    return ways;
}

}  // namespace tubewright
