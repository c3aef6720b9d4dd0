#include "bench/hand_order.h"

#include "bench/line_question.h"
#include "bench/spread.h"

namespace tubewright {
namespace {

/// One line at its bender, asked bend by bend.
class Bench {
public:
    explicit Bench(const Sheet& sheet) : sheet_(sheet), question_(question_of(sheet, {})), handling_(handling_of(question_, sheet.line.tube.od)) {}

    std::optional<Blocked> stops(std::uint64_t made, const Placing& placing) {
        return blocked(question_, [&](std::uint64_t m, const Placing& p) { return handling_.is_free(m, p); }, made, placing);
    }
    StoppedBend looked_into(const Blocked& why) {
        StoppedBend stop{why, std::nullopt, ""};
        if (!std::holds_alternative<InTheWay>(why.why)) return stop;
        stop.obstacle = handling_.obstacle(why.made, why.placing);
        if (stop.obstacle && stop.obstacle->solid) stop.solid = sheet_.line.bender.body[*stop.obstacle->solid].name;
        return stop;
    }

private:
    const Sheet& sheet_;
    OrderQuestion question_;
    Handling handling_;
};

/// The order takes one search, telling why it two more, each told from 0 to 1: they become one share that never falls.
Progress in_one(const Progress& progress) {
    if (!progress) return {};
    return [&progress, order_done = false, before = 0.0, most = 0.0](double share) mutable {
        order_done = order_done || share < before;
        before = share;
        most = std::max(most, order_done ? (1 + 2 * share) / 3 : share / 3);
        return progress(most);
    };
}

}  // namespace

EndsWithin ends_within(const Sheet& sheet, const std::vector<Placing>& order) {
    const EndSpread spread = end_spread(sheet.layout->part, order, sheet.hand, sheet.line.bender.stretch);
    return {within(spread.a), within(spread.b)};
}

HandFacts hand_facts(const Sheet& sheet, const std::vector<Placing>& order) {
    Bench bench(sheet);
    HandFacts facts{order, {}, {}, {}};
    std::uint64_t made = 0;
    for (Placing& placing : facts.order) {
        if (const auto stop = bench.stops(made, placing)) {
            const Placing swapped{placing.bend, other(placing.hook)};
            if (bench.stops(made, swapped)) facts.breaks.push_back(bench.looked_into(*stop));
            else placing = swapped;
        }
        made |= std::uint64_t{1} << placing.bend;
    }
    facts.ends = ends_within(sheet, facts.order);
    const OrderQuestion question = question_of(sheet, {});
    facts.on_the_way = on_the_way(OrderCosts(question.layout, question.weights, question.hand).of(facts.order), question.weights);
    return facts;
}

LookedFor look_for_order(const Sheet& sheet, const OrderWish& wish, const Progress& progress, const std::vector<Bender>& benders) {
    using Outcome = OrderVerdict::Outcome;
    if (wish.begun) return {find_order(sheet, wish, Asked::order_or_way_out, in_one(progress), benders), {}};
    const bool by_hand = !wish.opening.empty() && wish.opening.size() == sheet.steps.size();
    LookedFor looked{find_order(sheet, wish, by_hand ? Asked::order : Asked::order_and_why, in_one(progress), benders), {}};
    if (!by_hand || (looked.verdict.outcome != Outcome::found && looked.verdict.outcome != Outcome::none)) return looked;
    looked.by_hand = hand_facts(sheet, looked.verdict.order);
    looked.verdict.order = looked.by_hand->order;
    return looked;
}

}  // namespace tubewright
