#include "stock/buy_list.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

const StockTube brake_line{exact(4.75_mm), exact(0.71_mm), "steel"};

const std::string flare = "45 double";
EndNeeds end_of(std::optional<Joint> joint = {}) { return {"nut 3/8-24", "", flare, joint}; }
constexpr Joint rear_tee{JointKind::tee, 1};
const BuyItem nut{BuyKind::nut, "nut 3/8-24", {brake_line.outside, {}, {}}};
BuyItem tee_of(std::vector<JointEnd> ends) { return {BuyKind::tee, "", {}, {}, std::move(ends)}; }

/// A trailer's rear: the long line into a tee, a short one to each wheel.
std::vector<LineNeeds> rear() {
    return {{"trailer", brake_line, SupportRow::steel, exact(120_in), end_of(), end_of(rear_tee)},
            {"trailer", brake_line, SupportRow::steel, exact(30_in), end_of(rear_tee), end_of()},
            {"trailer", brake_line, SupportRow::steel, exact(20_in), end_of(rear_tee), end_of()}};
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
    const BuyList parts = parts_for(rear());
    const JointEnd end{brake_line.outside, flare};
    CHECK(parts == BuyList{{nut, 6}, {tee_of({end, end, end}), 1}, {{BuyKind::clip, "", {brake_line.outside, {}, {}}}, 13}});

    // Two nuts are in the drawer; a nut costs 1.20, a tee 9.50, a clip is not priced: 4 x 1.20 + 9.50 = 14.30.
    const BuyList list = without(parts, {{nut, 2}});
    const BuyCost costs = cost(list, {{nut, {120}}, {tee_of({end, end, end}), {950}}});
    CHECK(costs.known.cents == 1430);
    REQUIRE(costs.unpriced.size() == 1);
    CHECK(costs.unpriced[0].kind == BuyKind::clip);
}

TEST_CASE("a tee is bought as long as one of its lines is missing, for all of its ends, and once for each job") {
    auto lines = rear();
    const JointEnd end{brake_line.outside, flare}, wide{exact(6_mm), flare};
    lines[0].missing = 0;
    CHECK(parts_for(lines) == BuyList{{nut, 4}, {tee_of({end, end, end}), 1}, {{BuyKind::clip, "", {brake_line.outside, {}, {}}}, 3}});
    lines[1].missing = lines[2].missing = 0;
    CHECK(parts_for(lines).empty());
    // A tee with one wide end is another thing to buy, the ends in the order of their size; the same number in another job is another tee.
    lines = rear();
    lines[0].tube.outside = exact(6_mm);
    lines.push_back(rear()[0]);
    lines.back().job = "sprayer";
    const BuyList parts = parts_for(lines);
    CHECK(parts.at(tee_of({end, end, wide})) == 1);
    CHECK(parts.at(tee_of({end})) == 1);
    // Four of everything: twelve ends, four tees, each with one wide end.
    std::vector<LineNeeds> four = rear();
    four[0].tube.outside = exact(6_mm);
    for (LineNeeds& line : four) line.pieces = line.missing = 4;
    CHECK(parts_for(four).at(tee_of({end, end, wide})) == 4);
    // Two pieces of a line, one of them made: both go into the union, one nut at each end is still to buy.
    const Joint both{JointKind::union_piece, 1};
    const BuyList pair = parts_for({{"sprayer", brake_line, SupportRow::steel, exact(10_in), end_of(both), end_of(), 2, 1}});
    CHECK(pair == BuyList{{nut, 2}, {{BuyKind::union_piece, "", {}, {}, {end, end}}, 1}});
}

TEST_CASE("sticks are bought as the plan says") {
    // 120 + 120 fill one of 240 with a saw that takes nothing; 30 and 20 more open a second.
    const CuttingQuestion question{{{exact(120_in), 2, "a"}, {exact(30_in), 1, "b"}, {exact(20_in), 1, "c"}}, {}, {exact(240_in)}, {}, exact(12_in), {}};
    const BuyList sticks = sticks_for(brake_line, std::get<PlanFound>(best_plan(question)));
    CHECK(sticks == BuyList{{{BuyKind::stick, "", brake_line, exact(240_in)}, 2}});
    CHECK(together(sticks, sticks).begin()->second == 4);
    CHECK(cost(sticks, {{{BuyKind::stick, "", brake_line, exact(240_in)}, {2150}}}).known.cents == 4300);
}
