#include "bench/order.h"

#include <catch2/catch.hpp>
#include <random>
#include <set>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

std::vector<Placing> order_of(const Line& line) { return default_order(layout(line, {}), line.bender); }

}  // namespace

TEST_CASE("work starts at the bend in the middle and grows outward, the formed part on the hook") {
    // Five bends 5 in apart: bend 3 lies in the middle. First towards B with A held, then towards A with B held,
    // or the other way round: either is one swap.
    const std::vector<Placing> order = order_of(line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}}));
    REQUIRE(order.size() == 5);
    CHECK(order[0] == Placing{2, End::A});
    CHECK(order[1] == Placing{3, End::A});
    CHECK(order[2] == Placing{4, End::A});
    CHECK(order[3] == Placing{1, End::B});
    CHECK(order[4] == Placing{0, End::B});
}

TEST_CASE("where the straight to a made bend is too short for the lever but not for the hook, the hook gets it") {
    // The two bends leave about 0.8 in between them: enough for the hook (3/4), too little for the lever (0.9).
    // 2 setbacks of 0.5625: legs 5, 1.925, 5.
    const Line line = line_of({5, 1.925, 5}, {{90, 0}, {90, 180}});
    const Layout laid = layout(line, {});
    const std::vector<Placing> order = default_order(laid, line.bender);
    REQUIRE(order.size() == 2);
    for (std::size_t step = 0; step < 2; ++step) {
        const Room room = room_for(laid, order, step);
        CHECK(room.hook >= line.bender.hook_straight);
        CHECK(room.lever >= line.bender.lever_straight);
    }
}

TEST_CASE("the room beside a bend ends at the nearest bend already made") {
    const Line line = line_of({6, 4, 5}, {{90, 0}, {90, 90}});
    const Layout laid = layout(line, {});
    const std::vector<Placing> order{{0, End::A}, {1, End::A}};
    // Setbacks 0.5625, arcs 0.883573: straights 5.4375, 2.875, 4.4375; cut 14.517146
    const Room first = room_for(laid, order, 0);
    CHECK(first.hook.inch() == Approx(5.4375));
    CHECK(first.hook_at_end);
    CHECK(first.lever.inch() == Approx(2.875 + 0.883573 + 4.4375).margin(1e-6));
    const Room second = room_for(laid, order, 1);
    CHECK(second.hook.inch() == Approx(2.875));
    CHECK_FALSE(second.hook_at_end);
    CHECK(second.lever.inch() == Approx(4.4375));
    CHECK(second.lever_at_end);
}

TEST_CASE("every bend that turns comes once, each beside the ones already made, for any line") {
    std::mt19937 dice(20240603);
    std::uniform_real_distribution<double> leg(2, 12), angle(0, 120), turn(-180, 180);
    for (int i = 0; i < 300; ++i) {
        const int n = std::uniform_int_distribution<int>(1, 12)(dice);
        std::vector<double> legs{leg(dice)};
        std::vector<std::pair<double, double>> bends;
        std::set<std::size_t> real;
        for (int k = 0; k < n; ++k) {
            const double a = std::max(0.0, angle(dice) - 20);
            if (a > 0) real.insert(static_cast<std::size_t>(k));
            bends.emplace_back(a, k ? turn(dice) : 0);
            legs.push_back(leg(dice));
        }
        INFO("line " << i);
        const Line line = line_of(legs, bends);
        const Layout laid = layout(line, {});
        std::set<std::size_t> made;
        for (const Placing& placing : default_order(laid, line.bender)) {
            const auto before = next_towards(laid.part, placing.bend, End::A), after = next_towards(laid.part, placing.bend, End::B);
            CHECK((made.empty() || (before && made.contains(*before)) || (after && made.contains(*after))));
            CHECK(made.insert(placing.bend).second);
        }
        CHECK(made == real);
    }
}

TEST_CASE("a straight line has nothing to bend") { CHECK(order_of(line_of({12}, {})).empty()); }
