#include "bench/order_search.h"

#include <catch2/catch.hpp>
#include <random>
#include <set>
#include <tuple>

#include "bench/order_samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

bool anything(std::uint64_t, const Placing&) { return true; }

std::vector<std::size_t> bends_of(const std::vector<Placing>& order) {
    std::vector<std::size_t> bends;
    for (const Placing& placing : order) bends.push_back(placing.bend);
    return bends;
}

Line five_bends() { return line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}}); }

/// A coin for each made set and placing, the same whenever it is asked.
struct Coins {
    std::uint64_t seed;
    double heads;
    bool operator()(std::uint64_t made, const Placing& placing) const {
        std::mt19937_64 dice(seed ^ (made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
        return std::uniform_real_distribution<double>()(dice) < heads;
    }
};

}  // namespace

TEST_CASE("each cost is what its one line says") {
    const Line line = line_of({10, 10, 20}, {{90, 0}, {90, 180}});
    OrderWeights weights;
    const Layout laid = layout(line, {});
    const OrderCosts costs(laid, weights, {});
    // Setback 0.5625, arc 0.883573: straights 9.4375, 8.875, 19.4375; cut 39.517146 in.
    // Bend 1 spoiled: 29.196073 in of straight is left beyond it, 10.321073 in are lost: 262.1553 mm.
    //   0.05 * 10 a metre * 0.2621553 m = 0.1310776 points
    CHECK(costs.step(0, {0, End::A}).lost == 131);
    // With bend 2 made, bend 1 spoiled leaves 19.4375 in: 20.079646 in lost, 510.0230 mm: 0.2550115 points.
    CHECK(costs.step(0b10, {0, End::A}).lost == 255);
    // The lever side of bend 1 with A held, still straight: 29.196073 in, 0.741580 m.
    CHECK(costs.reach(0, {0, End::A}).mm == Approx(741.5803).margin(0.001));
    CHECK(costs.step(0, {0, End::A}).reach == 742);
    // With bend 2 made: 8.875 + 0.5625 along, 0.5625 + 19.4375 aside: sqrt(9.4375^2 + 20^2) = 22.114882 in.
    CHECK(costs.reach(0b10, {0, End::A}).inch() == Approx(22.114882).margin(1e-5));
    CHECK(costs.step(0b10, {0, End::A}).reach == 562);
    CHECK(costs.reach(0b01, {1, End::B}).inch() == Approx(std::hypot(9.4375, 10)).margin(1e-5));
    CHECK(costs.between({0, End::A}, {1, End::B}).swaps == 1000);
    CHECK(costs.between({0, End::A}, {1, End::B}).turns == 0);
    CHECK(costs.between({0, End::A}, {1, End::A}).turns == 500);  // 180 to turn
    CHECK(costs.between({0, End::A}, {1, End::A}).swaps == 0);
    const EndSpread spread = end_spread(laid.part, {{1, End::A}, {0, End::B}}, {});
    const double squares = std::pow(within(spread.a).mm / 3.2, 2) + std::pow(within(spread.b).mm / 3.2, 2);
    CHECK(costs.start(1).ends == Approx(4000 * squares).margin(1));
}

TEST_CASE("a bend beside no made one floats, the first does not") {
    const OrderCosts costs(layout(five_bends(), {}), {}, {});
    CHECK(costs.step(0, {2, End::A}).floating == 0);
    CHECK(costs.step(0b00100, {0, End::A}).floating == 6000);
    CHECK(costs.step(0b00100, {1, End::A}).floating == 0);
    CHECK(costs.step(0b01000, {2, End::A}).floating == 0);
}

TEST_CASE("a bend beside nothing but a U-turn floats: the leg past that has no side to be turned against") {
    Line line = line_of({6, 6, 6}, {{180, 0}, {90, 0}});
    line.route.form = RouteForm::straights;
    const OrderCosts costs(layout(line, {}), {}, {});
    CHECK(costs.step(0b01, {1, End::A}).floating == 6000);
    CHECK(costs.step(0b10, {0, End::A}).floating == 0);
}

TEST_CASE("a wish for a bend that the line no longer has is no wish") {
    OrderQuestion question;
    const Line line = line_of({10, 10, 20}, {{90, 0}, {90, 180}});
    question.layout = layout(line, {});
    question.bender = line.bender;
    question.wish.opening = {4, 0};
    const auto answer = best_order(question, [](std::uint64_t, const Placing&) { return true; });
    question.wish.opening.clear();
    const auto without = best_order(question, [](std::uint64_t, const Placing&) { return true; });
    REQUIRE(std::holds_alternative<OrderFound>(answer));
    CHECK(std::get<OrderFound>(answer).order == std::get<OrderFound>(without).order);
}

TEST_CASE("an order's cost is the sum of its steps'") {
    const OrderCosts costs(layout(five_bends(), {}), {}, {});
    const std::vector<Placing> order{{2, End::A}, {0, End::A}, {1, End::B}};
    const OrderCost whole = costs.of(order);
    CHECK(whole.ends == costs.start(2).ends);
    CHECK(whole.swaps == 1000);
    CHECK(whole.floating == 6000);
    CHECK(whole.reach == costs.step(0, order[0]).reach + costs.step(4, order[1]).reach + costs.step(5, order[2]).reach);
    CHECK(whole.total() == whole.ends + whole.floating + whole.swaps + whole.turns + whole.lost + whole.reach);
}

TEST_CASE("the reach looked up is the reach walked") {
    const Line line = line_of({4, 3, 5, 4, 6, 3, 5}, {{60, 0}, {90, 70}, {30, -20}, {0, 0}, {120, 100}, {45, 180}});
    const OrderCosts costs(layout(line, {}), {}, {});
    for (std::uint64_t made = 0; made < 64; ++made)
        for (std::size_t bend = 0; bend < 6; ++bend)
            for (const End hook : {End::A, End::B})
                if (bend != 3 && !(made & 8) && !(made >> bend & 1))
                    CHECK(costs.step(made, {bend, hook}).reach == std::lround(costs.reach(made, {bend, hook}).mm));
}

TEST_CASE("with nothing in the way work starts in the middle") {
    const OrderAnswer answer = best_order(question_for(five_bends()), anything);
    const auto& found = std::get<OrderFound>(answer);
    CHECK(found.proven);
    REQUIRE(found.order.size() == 5);
    CHECK(found.order.front().bend == 2);
    CHECK(found.cost.floating == 0);
}

TEST_CASE("a pinned start, an order by hand and an end always held are kept") {
    OrderQuestion question = question_for(five_bends());
    question.wish.opening = {4};
    CHECK(std::get<OrderFound>(best_order(question, anything)).order.front().bend == 4);
    question.wish.opening = {1, 3, 0, 4, 2};
    CHECK(bends_of(std::get<OrderFound>(best_order(question, anything)).order) == question.wish.opening);
    question.wish = {};
    question.wish.hook = End::B;
    const auto held = std::get<OrderFound>(best_order(question, anything));
    for (const Placing& placing : held.order) CHECK(placing.hook == End::B);
}

TEST_CASE("a bend of no degrees has no place in the order, and its bit stays clear") {
    const Line line = line_of({5, 5, 5, 5}, {{45, 0}, {0, 0}, {45, 90}});
    const auto can = [](std::uint64_t made, const Placing&) { CHECK((made & 2) == 0); return true; };
    CHECK(std::get<OrderFound>(best_order(question_for(line), can)).order.size() == 2);
    CHECK(std::get<OrderFound>(best_order(question_for(line_of({12}, {})), can)).order.empty());
}

TEST_CASE("the geometry is asked once for each pair at most, and only a few times where it allows all") {
    std::set<std::tuple<std::uint64_t, std::size_t, End>> asked;
    int times = 0;
    const auto can = [&](std::uint64_t made, const Placing& placing) {
        ++times;
        CHECK(asked.emplace(made, placing.bend, placing.hook).second);
        return Coins{7, 0.5}(made, placing);
    };
    (void)best_order(question_for(five_bends()), can);
    times = 0;
    (void)best_order(question_for(five_bends()), [&](std::uint64_t, const Placing&) { ++times; return true; });
    CHECK(times == 5);
}

TEST_CASE("where bends block each other, it says how far one gets and what stops the rest") {
    // Bend 2 only before bend 4, and bend 4 only before bend 2.
    const auto can = [](std::uint64_t made, const Placing& placing) {
        return !(placing.bend == 1 && (made >> 3 & 1)) && !(placing.bend == 3 && (made >> 1 & 1));
    };
    const auto none = std::get<NoOrder>(best_order(question_for(five_bends()), can));
    CHECK(none.proven);
    CHECK(none.furthest.size() == 4);
    REQUIRE(none.blocked.size() == 2);
    for (const Blocked& block : none.blocked) {
        CHECK((block.placing.bend == 1 || block.placing.bend == 3));
        CHECK(block.why == WhyNot{InTheWay{}});
    }
}

TEST_CASE("patience bounds the look for any order, and what it runs out before is not said to be so") {
    // Twelve bends, of which 6 and 7 block each other: neither can come second. Each set is asked about with 12 bends and 2 hooks at most.
    const OrderQuestion question = question_for(line_of(std::vector<double>(13, 5.0), std::vector<std::pair<double, double>>(12, {45, 30})));
    std::size_t asked = 0;
    const CanBend blocking = [&](std::uint64_t made, const Placing& placing) {
        ++asked;
        return !(placing.bend == 5 && (made >> 6 & 1)) && !(placing.bend == 6 && (made >> 5 & 1));
    };
    Patience little{100};
    CHECK(order_exists(question, blocking, {}, &little) == std::nullopt);
    CHECK(little.sets == 0);
    CHECK(asked <= 100 * 12 * 2);
    Patience plenty{100000};
    CHECK(order_exists(question, blocking, {}, &plenty) == false);
    // Where all is allowed the way through is found long before.
    Patience enough{100};
    CHECK(order_exists(question, anything, {}, &enough) == true);
    CHECK(enough.sets > 50);
}

TEST_CASE("an angle beyond the bender and a straight too short are named with their figures") {
    Line line = five_bends();
    line.bender.max_angle = 40_deg;
    const auto none = std::get<NoOrder>(best_order(question_for(line), anything));
    CHECK(none.furthest.empty());
    CHECK(none.blocked.size() == 10);
    CHECK(none.blocked.front().why == WhyNot{BeyondAngle{45_deg, 40_deg}});
    const auto stop = bender_stops(question_for(line_of({6, 1.6, 6}, {{90, 0}, {90, 180}})), 1, {1, End::A});
    REQUIRE(stop);
    // 1.6 less two setbacks of 0.5625: 0.475 in where 3/4 in is needed.
    const auto& straight = std::get<ShortStraight>(*stop);
    CHECK(straight.hook_side);
    CHECK(straight.has.inch() == Approx(0.475));
    CHECK(straight.needed.inch() == Approx(0.75));
}

TEST_CASE("progress never falls, and saying no ends the search") {
    std::vector<double> legs(13, 5.0);
    const Line line = line_of(legs, std::vector<std::pair<double, double>>(12, {45, 90}));
    double last = 0;
    int told = 0;
    (void)best_order(question_for(line), Coins{3, 0.4}, [&](double share) {
        CHECK(share >= last);
        CHECK(share <= 1);
        last = share;
        ++told;
        return true;
    });
    CHECK(told > 5);
    CHECK(std::holds_alternative<Cancelled>(best_order(question_for(line), anything, [](double) { return false; })));
}

TEST_CASE("a line of very many bends gets an order, not called proven") {
    std::vector<double> legs(25, 5.0);
    const Line line = line_of(legs, std::vector<std::pair<double, double>>(24, {30, 60}));
    const auto found = std::get<OrderFound>(best_order(question_for(line), anything));
    CHECK_FALSE(found.proven);
    CHECK(found.order.size() == 24);
}
