#include "bench/order_reasons.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "bench/order_samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

OrderQuestion five_bends() { return question_for(line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}})); }

bool anything(std::uint64_t, const Placing&) { return true; }
bool nothing(std::uint64_t, const Placing&) { return false; }

/// Stands in for a bench that the formed tube hits: bend 5 can't come once all the others are made.
bool fifth_not_last(std::uint64_t made, const Placing& placing) { return !(placing.bend == 4 && made == 0b1111); }

}  // namespace

TEST_CASE("a start in the middle is told against the starts from both ends") {
    const OrderQuestion question = five_bends();
    const auto found = std::get<OrderFound>(best_order(question, fifth_not_last));
    const auto reasons = order_reasons(question, fifth_not_last, found);
    REQUIRE(reasons);
    CHECK(reasons->chosen.bend == 2);
    CHECK(reasons->from_a.start.bend == 0);
    CHECK(reasons->from_b.start.bend == 4);
    // End B hangs on five bends when begun at A, on three when begun in the middle.
    CHECK(reasons->from_a.start.b > 1.3 * std::max(reasons->chosen.a, reasons->chosen.b));
    CHECK(reasons->from_b.start.a > 1.3 * std::max(reasons->chosen.a, reasons->chosen.b));
    // In a row from A one gets to the fifth bend; begun at A in another order one gets through.
    CHECK(reasons->from_a.made == 4);
    REQUIRE(reasons->from_a.blocked.size() == 2);
    CHECK(reasons->from_a.blocked.front().placing.bend == 4);
    CHECK(reasons->from_a.blocked.front().made == 0b1111);
    CHECK(reasons->from_a.blocked.front().why == WhyNot{InTheWay{}});
    CHECK(reasons->from_a.start.possible);
    CHECK(reasons->from_b.blocked.empty());
    CHECK(reasons->from_b.made == 5);
    REQUIRE(reasons->from_b.start.cost);
    CHECK(reasons->from_b.start.cost->total() >= reasons->chosen.cost->total());
    CHECK_FALSE(order_reasons(question, anything, found, [](double) { return false; }));
}

TEST_CASE("what the ends are told to land within is what the order was chosen by, on a bender that stretches the tube, too") {
    // Of the cost, the ends' part is 4 for each end, times (its distance over 3.2 mm) squared, in thousandths: see order_weights.
    for (const double stretch : {0.0, 0.3}) {
        OrderQuestion question = five_bends();
        question.bender.stretch = stretch;
        Line line = line_of({5, 5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}});
        line.bender.stretch = stretch;
        question.layout = layout(line, {});
        const auto found = std::get<OrderFound>(best_order(question, anything));
        const auto reasons = order_reasons(question, anything, found);
        REQUIRE(reasons);
        const auto points = [](const StartFacts& start) { return 4000 * (std::pow(start.a.mm / 3.2, 2) + std::pow(start.b.mm / 3.2, 2)); };
        INFO("stretch " << stretch);
        CHECK(points(reasons->chosen) == Approx(found.cost.ends).margin(1));
        REQUIRE(reasons->from_a.start.cost);
        CHECK(points(reasons->from_a.start) == Approx(reasons->from_a.start.cost->ends).margin(1));
    }
}

TEST_CASE("where no straight alone does it, all between bends are made longer together") {
    // Three bends with two straights between, both too short for what stands in for an obstacle: each has to grow by 20 mm.
    const OrderQuestion question = question_for(line_of({5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}}));
    const std::vector<Length> now = question.layout.part.straights;
    const CanBendFor geometry = [now](const OrderQuestion& asked) -> CanBend {
        const std::vector<Length>& then = asked.layout.part.straights;
        const bool free = then[1] >= now[1] + 20_mm && then[2] >= now[2] + 20_mm;
        return [free](std::uint64_t, const Placing&) { return free; };
    };
    const auto ways = ways_out(question, geometry, {});
    REQUIRE(ways.has_value());
    REQUIRE(ways->size() == 1);
    CHECK(std::get<LongerBetween>(ways->front()).by >= 20_mm);
    CHECK(std::get<LongerBetween>(ways->front()).by <= 21.6_mm);
}

TEST_CASE("a straight made longer moves all that lies after it") {
    const Layout before = five_bends().layout, after = lengthened(before, 2, 10_mm);
    CHECK(after.cut_length.mm == Approx(before.cut_length.mm + 10));
    CHECK(after.spans[1] == before.spans[1]);
    CHECK(after.spans[2].start.mm == Approx(before.spans[2].start.mm + 10));
    CHECK(after.spans[4].end.mm == Approx(before.spans[4].end.mm + 10));
    CHECK(after.part.straights[2].mm == Approx(before.part.straights[2].mm + 10));
    CHECK(lengthened(before, 5, 10_mm).spans == before.spans);
}

TEST_CASE("another way to stand the bender, or another bender, is a way out where it frees the line") {
    const OrderQuestion question = five_bends();
    const CanBendFor only_right_up = [](const OrderQuestion& asked) -> CanBend {
        const bool free = asked.set_up == SetUp{HookHand::right, Swing::up} || asked.bender.id == "the-other";
        return [free](std::uint64_t, const Placing&) { return free; };
    };
    OrderQuestion other = question;
    other.bender.id = "the-other";
    OrderQuestion weak = other;
    weak.bender.max_angle = 40_deg;
    const auto ways = ways_out(question, only_right_up, {weak, other});
    REQUIRE(ways.has_value());
    REQUIRE(ways->size() == 2);
    CHECK(std::get<OtherSetUp>((*ways)[0]).set_up == SetUp{HookHand::right, Swing::up});
    CHECK(std::get<OtherBender>((*ways)[1]).bender == 1);
    CHECK(ways_out(question, [](const OrderQuestion&) { return CanBend(nothing); }, {})->empty());
    CHECK_FALSE(ways_out(question, only_right_up, {}, [](double) { return false; }).has_value());
}

TEST_CASE("of more than 8 bends a change may be given up before it is known what comes of it, and that is told") {
    // Stands in for a bench that is in the way once half of the bends are made, whichever those are: it is looked from both sides,
    // no bend made and all of them. Behind the middle lie 93 sets of 8 bends, 386 of 10: of two sides together 512 are looked at.
    for (const auto& [bends, every_way_there_is] : {std::pair{8, true}, std::pair{10, false}}) {
        INFO(bends << " bends");
        std::vector<double> straights(static_cast<std::size_t>(bends) + 1, 5);
        std::vector<std::pair<double, double>> turns;
        for (int i = 0; i < bends; ++i) turns.push_back({45, i % 2 * 90.0});
        const OrderQuestion question = question_for(line_of(straights, turns));
        const CanBendFor geometry = [n = bends](const OrderQuestion&) -> CanBend { return [n](std::uint64_t made, const Placing&) { return __builtin_popcountll(made) != n / 2; }; };
        bool every_way = true;
        const auto ways = ways_out(question, geometry, {}, {}, &every_way);
        REQUIRE(ways.has_value());
        CHECK(ways->empty());
        CHECK(every_way == every_way_there_is);
    }
}

TEST_CASE("what the geometry needs of a straight is looked for in lengths one would try") {
    // Stands in for an obstacle that is cleared once the third straight has grown by 20 mm: 1/2 in is too little, 1 in
    // does; nearer to what is needed it is told to a sixteenth, 1.6 mm.
    const OrderQuestion question = five_bends();
    const double now = question.layout.part.straights[2].mm;
    const CanBendFor geometry = [now](const OrderQuestion& asked) -> CanBend {
        const bool free = asked.layout.part.straights[2].mm >= now + 20;
        return [free](std::uint64_t, const Placing&) { return free; };
    };
    const auto ways = ways_out(question, geometry, {});
    REQUIRE(ways.has_value());
    REQUIRE(ways->size() == 1);
    CHECK(std::get<LongerStraight>(ways->front()).straight == 2);
    CHECK(std::get<LongerStraight>(ways->front()).by >= 20_mm);
    CHECK(std::get<LongerStraight>(ways->front()).by <= 21.6_mm);
}
