#include "bench/ordered.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "bench/order_samples.h"

using namespace tubewright;
using namespace tubewright::literals;
using Outcome = OrderVerdict::Outcome;

namespace {

/// The bender of the samples over a bench top 8 in below.
Line over_a_bench(Line line) {
    line.bender.body = {{"bench top", Stands::bench, Block{{-1000, -300, -300}, {1000, 800, -203.2}}}};
    return line;
}

/// Three corners, each a quarter turn from the one before, with legs as given.
Line stairs(std::vector<double> legs_in) { return over_a_bench(line_of(std::move(legs_in), {{90, 0}, {90, 90}, {90, 90}})); }

std::vector<Placing> bends_in_a_row(std::size_t bends, End hook) {
    std::vector<Placing> row;
    for (std::size_t i = 0; i < bends; ++i) row.push_back({i, hook});
    return row;
}

const StoppedBend* stop_in(const std::vector<OrderBreak>& breaks) {
    for (const OrderBreak& one : breaks)
        if (const auto* stop = std::get_if<StoppedBend>(&one)) return stop;
    return nullptr;
}

}  // namespace

TEST_CASE("an order by hand that runs into the bench says which bend, the bench, and by how much") {
    // Bend 2 in hand with both others made. With A on the hook bend 1's leg points down (see handling_test), with B bend 3's.
    // Legs of 8.3 and 8.4 from the axis, and the tube's radius of 0.09375: 0.394 or 0.494 too far.
    const Sheet sheet = bend_sheet(stairs({8.3, 5, 5, 8.4}));
    const std::vector<OrderBreak> breaks = what_breaks(sheet, {{0, End::A}, {2, End::A}, {1, End::A}}, {});
    const StoppedBend* stop = stop_in(breaks);
    REQUIRE(stop);
    CHECK(stop->blocked.placing.bend == 1);
    CHECK(stop->blocked.made == 0b101);
    CHECK(stop->solid == "bench top");
    REQUIRE(stop->obstacle);
    CHECK(stop->obstacle->depth.inch() == Approx(0.394).margin(0.02));
    // Short legs, nothing breaks.
    CHECK_FALSE(stop_in(what_breaks(bend_sheet(stairs({6, 5, 5, 6})), {{0, End::A}, {2, End::A}, {1, End::A}}, {})));
}

TEST_CASE("an order by hand that can be made says which end is further off, from what to what") {
    const Sheet sheet = bend_sheet(line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}}));
    const OrderVerdict best = find_order(sheet);
    REQUIRE(best.order.front().bend == 2);
    const std::vector<Placing> row = bends_in_a_row(5, End::A);
    const std::vector<OrderBreak> breaks = what_breaks(sheet, row, best.order);
    // Begun at A everything piles up at B; A itself is nearer than in the best order.
    REQUIRE(breaks.size() == 1);
    const auto& further = std::get<EndFurtherOff>(breaks.front());
    CHECK(further.end == End::B);
    const Part& part = sheet.layout->part;
    CHECK(further.from == within(end_spread(part, best.order, {}).b));
    CHECK(further.to == within(end_spread(part, row, {}).b));
    CHECK(further.to > 1.3 * further.from);
    CHECK(what_breaks(sheet, best.order, best.order).empty());
}

TEST_CASE("an order by hand that leaves a gap turns a bend by the ink line alone, and one that swaps more says so") {
    const Sheet sheet = bend_sheet(line_of({5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}}));
    const std::vector<Placing> row = bends_in_a_row(3, End::A);
    const std::vector<OrderBreak> breaks = what_breaks(sheet, {{0, End::A}, {2, End::B}, {1, End::A}}, row);
    bool floats = false, swapped = false;
    for (const OrderBreak& one : breaks) {
        if (const auto* floating = std::get_if<TurnedByInkAlone>(&one)) floats = floating->bend == 2;
        if (const auto* swaps = std::get_if<MoreSwaps>(&one)) swapped = swaps->from == 0 && swaps->to == 2;
    }
    CHECK(floats);
    CHECK(swapped);
}

TEST_CASE("the verdict on an order that was wished for brings what it breaks along") {
    const Sheet sheet = bend_sheet(line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}}));
    OrderWish wish;
    wish.opening = {0, 1, 2, 3, 4};
    const OrderVerdict verdict = find_order(sheet, wish, Asked::order_and_why);
    REQUIRE(verdict.outcome == Outcome::found);
    REQUIRE_FALSE(verdict.breaks.empty());
    CHECK(std::get<EndFurtherOff>(verdict.breaks.front()).end == End::B);
    CHECK(find_order(sheet, {}, Asked::order_and_why).breaks.empty());
    // One that can't be made: the way out is not to insist.
    const Sheet low = bend_sheet(stairs({8.3, 5, 5, 8.4}));
    wish.opening = {0, 2, 1};
    const OrderVerdict none = find_order(low, wish, Asked::order_and_why);
    REQUIRE(none.outcome == Outcome::none);
    REQUIRE(stop_in(none.breaks));
    CHECK(stop_in(none.breaks)->blocked.placing.bend == 1);
    REQUIRE(none.ways.size() == 1);
    CHECK(std::holds_alternative<FreeOrderOfWork>(none.ways.front()));
    CHECK(find_order(low).outcome == Outcome::found);
}

TEST_CASE("nut and sleeve of a flared end are not held under hook or follower") {
    // The straight at end A is 2.4 less the setback of some 0.57 in: 1.83. The lever asks for 0.9, the hook for 3/4: both have
    // room. With a nut of 1 in on it the lever has none (it asks for 1.9), the hook has (1.75); a sleeve takes that as well.
    Line line = line_of({2.4, 5, 6}, {{90, 0}, {90, 0}});
    line.a.fitting.slide_on = {{"nut", "tube nut", "", 1_in}};
    const auto hooks_of_bend_1 = [](const Line& of) {
        std::vector<End> possible;
        for (const End hook : {End::A, End::B}) {
            OrderWish wish;
            wish.opening = {0};
            wish.hook = hook;
            if (find_order(bend_sheet(of), wish).outcome == Outcome::found) possible.push_back(hook);
        }
        return possible;
    };
    CHECK(hooks_of_bend_1(line) == std::vector<End>{End::A});
    Line bare = line;
    bare.a.fitting.slide_on.clear();
    CHECK(hooks_of_bend_1(bare) == std::vector<End>{End::A, End::B});
    Line crowded = line;
    crowded.a.fitting.slide_on.push_back({"sleeve", "sleeve", "", 0.2_in});
    const OrderVerdict none = find_order(bend_sheet(crowded));
    REQUIRE(none.outcome == Outcome::none);
    for (const StoppedBend& stop : none.stops) CHECK(std::holds_alternative<ShortStraight>(stop.blocked.why));
}
