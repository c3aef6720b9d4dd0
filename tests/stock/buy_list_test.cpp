#include "stock/buy_list.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

const StockTube brake_line{exact(4.75_mm), exact(0.71_mm), "steel"};

EndNeeds end_of(Joint joint = {}) { return {"nut 3/8-24", "", std::move(joint)}; }
Joint rear_tee() { return {Joint::Kind::tee, "rear tee", "tee 3/16", false}; }

/// A trailer's rear: the long line into a tee, a short one to each wheel.
std::vector<LineNeeds> rear() {
    return {{"long", brake_line, SupportRow::steel, exact(120_in), end_of(), end_of(rear_tee())},
            {"left", brake_line, SupportRow::steel, exact(30_in), end_of(rear_tee()), end_of()},
            {"right", brake_line, SupportRow::steel, exact(20_in), end_of(rear_tee()), end_of()}};
}

}  // namespace

TEST_CASE("clips stand no further apart than the tables say") {
    // MIL-H-8891A table II: 3/8 steel 20 in, 1/4 16 in, 5/8 25 1/2 in, 1 in 30 in.
    CHECK(support_spacing(SupportRow::steel, exact(0.375_in), false) == exact(20_in));
    CHECK(support_spacing(SupportRow::steel, exact(0.25_in), false) == exact(16_in));
    CHECK(support_spacing(SupportRow::steel, exact(0.625_in), false) == exact(25.5_in));
    CHECK(support_spacing(SupportRow::steel, exact(1_in), false) == exact(30_in));
    // FAA handbook, from memory: 3/16 steel 14 in (4.75 and 4.76 mm are that size), 3/8 aluminium 16 1/2 in.
    CHECK(support_spacing(SupportRow::steel, exact(4.75_mm), false) == exact(14_in));
    CHECK(support_spacing(SupportRow::aluminium, exact(0.375_in), false) == exact(16.5_in));
    // 10 mm has the 3/8 in tube's. A fifth less with a tee or union on it: 20 in becomes 16.
    CHECK(support_spacing(SupportRow::steel, exact(10_mm), false) == exact(20_in));
    CHECK(support_spacing(SupportRow::steel, exact(0.375_in), true) == exact(16_in));
    // 60 in at 20: three stretches, two clips; a hair more and it takes a third.
    CHECK(clips_for(exact(60_in), exact(20_in)) == 2);
    CHECK(clips_for(exact(60_in) + ExactLength{1}, exact(20_in)) == 3);
    CHECK(clips_for(exact(20_in), exact(20_in)) == 0);
}

TEST_CASE("the rear of a trailer: six nuts, one tee for its three ends, and clips") {
    // 3/16 steel with a tee: 14 in less a fifth is 11.2 in. 120 / 11.2 = 10.7: 11 stretches, 10 clips; 30: 3, 2; 20: 2, 1.
    const auto parts = parts_for(rear());
    REQUIRE(parts.ok());
    CHECK(parts.value() == BuyList{{{BuyKind::nut, "nut 3/8-24", {brake_line.outside, {}, {}}}, 6}, {{BuyKind::tee, "tee 3/16", {}}, 1}, {{BuyKind::clip, "", {brake_line.outside, {}, {}}}, 13}});

    // Two nuts are in the drawer; a nut costs 1.20, a tee 9.50, a clip is not priced: 4 x 1.20 + 9.50 = 14.30.
    const BuyList list = without(parts.value(), {{{BuyKind::nut, "nut 3/8-24", {brake_line.outside, {}, {}}}, 2}});
    const BuyCost costs = cost(list, {{{BuyKind::nut, "nut 3/8-24", {brake_line.outside, {}, {}}}, {120}}, {{BuyKind::tee, "tee 3/16", {}}, {950}}});
    CHECK(costs.known.cents == 1430);
    REQUIRE(costs.unpriced.size() == 1);
    CHECK(costs.unpriced[0].kind == BuyKind::clip);
}

TEST_CASE("a tee that is on the vehicle is not bought, and no tee holds four ends") {
    auto lines = rear();
    lines[1].a.joint.there = true;
    CHECK(parts_for(lines).value().count({BuyKind::tee, "tee 3/16", {}}) == 0);
    lines[2].b.joint = rear_tee();
    const auto four = parts_for(lines);
    REQUIRE_FALSE(four.ok());
    CHECK(std::get<TooManyEnds>(four.trouble()).ends == 4);
    lines = rear();
    lines[2].a.joint.part = "tee 1/4";
    CHECK(std::get<TwoPartsForOne>(parts_for(lines).trouble()).other == "tee 1/4");
}

TEST_CASE("sticks are bought as the plan says") {
    // 120 + 120 fill one of 240 with a saw that takes nothing; 30 and 20 more open a second.
    const CuttingQuestion question{{{exact(120_in), 2, "a"}, {exact(30_in), 1, "b"}, {exact(20_in), 1, "c"}}, {}, {exact(240_in)}, {}, exact(12_in), {}};
    const BuyList sticks = sticks_for(brake_line, std::get<PlanFound>(best_plan(question)));
    CHECK(sticks == BuyList{{{BuyKind::stick, "", brake_line, exact(240_in)}, 2}});
    CHECK(together(sticks, sticks).begin()->second == 4);
    CHECK(cost(sticks, {{{BuyKind::stick, "", brake_line, exact(240_in)}, {2150}}}).known.cents == 4300);
}
