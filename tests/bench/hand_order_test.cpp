#include "bench/hand_order.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

/// Given by its straights in mm; the bender needs 19.05 mm of straight on the hook side, 22.86 mm on the lever side.
Sheet sheet_with(std::vector<double> straights_mm, std::vector<std::pair<double, double>> bends_deg, std::vector<Solid> body = {}) {
    Line line = line_of({}, bends_deg);
    line.bender.body = std::move(body);
    line.route.form = RouteForm::straights;
    for (const double straight : straights_mm) line.route.runs.push_back({straight});
    return bend_sheet(line, {});
}

const Solid bench_top{"bench top", Stands::bench, HalfSpace{{0, 0, -90}, {0, 0, -1}}};
const Solid shelf{"shelf", Stands::bench, HalfSpace{{0, 0, 90}, {0, 0, 1}}};

std::vector<std::size_t> broken(const HandFacts& facts) {
    std::vector<std::size_t> bends;
    for (const StoppedBend& stop : facts.breaks) bends.push_back(stop.blocked.placing.bend);
    return bends;
}

}  // namespace

TEST_CASE("an order by hand is looked at to its end, whatever it breaks on the way") {
    // 10 mm between the bends is less than either side needs, so a bend next to a made one can't be made.
    const Sheet tight = sheet_with({100, 10, 10, 100}, {{60, 0}, {60, 90}, {60, 0}});
    const HandFacts row = hand_facts(tight, {{0, End::A}, {1, End::A}, {2, End::A}});
    CHECK(broken(row) == std::vector<std::size_t>{1, 2});
    CHECK(row.breaks[0].blocked.why == WhyNot{ShortStraight{true, 10_mm, tight.line.bender.hook_straight}});
    CHECK(broken(hand_facts(tight, {{0, End::A}, {2, End::A}, {1, End::A}})) == std::vector<std::size_t>{1});
    CHECK(broken(hand_facts(sheet_with({100, 60, 60, 100}, {{60, 0}, {60, 90}, {60, 0}}), {{0, End::A}, {1, End::A}, {2, End::A}})).empty());
}

TEST_CASE("a bend that goes with the other end on the hook is not broken; one that goes neither way says what it hits and how far") {
    // As in handling_test: the made leg of 100 hangs down with A on the hook, and stands up with B on it.
    const std::vector<Placing> order{{0, End::A}, {1, End::A}};
    const HandFacts swapped = hand_facts(sheet_with({100, 60, 100}, {{90, 0}, {90, 90}}, {bench_top}), order);
    CHECK(swapped.breaks.empty());
    CHECK(swapped.order == std::vector<Placing>{{0, End::A}, {1, End::B}});
    const Sheet between = sheet_with({100, 60, 100}, {{90, 0}, {90, 90}}, {bench_top, shelf});
    const HandFacts neither = hand_facts(between, order);
    REQUIRE(broken(neither) == std::vector<std::size_t>{1});
    CHECK(neither.breaks[0].solid == "bench top");
    REQUIRE(neither.breaks[0].obstacle);
    // Down by the bend's radius and the leg, and half the tube's diameter round its end, to a top that is 90 below.
    const double down = between.layout->part.radius.mm + 100 + between.line.tube.od.mm / 2 - 90;
    CHECK(neither.breaks[0].obstacle->depth.mm == Approx(down).margin(0.3));
}

TEST_CASE("the ends of a row from A are further off than those of an order from the middle") {
    const Sheet sheet = sheet_with({150, 150, 150, 150, 150, 150}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}});
    const EndsWithin row = ends_within(sheet, {{0, End::A}, {1, End::A}, {2, End::A}, {3, End::A}, {4, End::A}});
    const EndsWithin middle = ends_within(sheet, {{2, End::A}, {3, End::A}, {4, End::A}, {1, End::B}, {0, End::B}});
    CHECK(row.worse() == row.b);  // everything hangs on the bend made first, at A
    CHECK(row.worse() > 1.3 * middle.worse());
}

TEST_CASE("the ends' distances are those of the bender's own stretch") {
    // An over-bent bend takes so much less straight tube from the lever side; spread_test works that by hand.
    Sheet sheet = sheet_with({150, 150, 150, 150}, {{90, 0}, {90, 90}, {90, 0}});
    Line line = sheet.line;
    line.bender.stretch = 0.4;
    sheet = bend_sheet(line, {});
    const std::vector<Placing> row{{0, End::A}, {1, End::A}, {2, End::A}};
    const EndsWithin ends = ends_within(sheet, row);
    CHECK(ends.b == within(end_spread(sheet.layout->part, row, {}, 0.4).b));
    CHECK(ends.b != within(end_spread(sheet.layout->part, row, {}, 0).b));
}

TEST_CASE("looking for an order by hand tells what it breaks, and spends no time on other starts") {
    const Sheet tight = sheet_with({100, 10, 10, 100}, {{60, 0}, {60, 90}, {60, 0}});
    const LookedFor by_hand = look_for_order(tight, {{2, 1, 0}});
    CHECK(by_hand.verdict.outcome == OrderVerdict::Outcome::none);
    REQUIRE(by_hand.by_hand);
    CHECK(broken(*by_hand.by_hand) == std::vector<std::size_t>{1, 0});
    CHECK(by_hand.verdict.order == by_hand.by_hand->order);
    CHECK(by_hand.verdict.ways.empty());
    const Sheet roomy = sheet_with({100, 60, 60, 100}, {{60, 0}, {60, 90}, {60, 0}});
    CHECK_FALSE(look_for_order(roomy, {}).by_hand);
    CHECK_FALSE(look_for_order(roomy, {{1}}).by_hand);
    const LookedFor good = look_for_order(roomy, {{2, 1, 0}});
    CHECK(good.verdict.outcome == OrderVerdict::Outcome::found);
    CHECK_FALSE(good.verdict.reasons);
    REQUIRE(good.by_hand);
    CHECK(good.by_hand->breaks.empty());
}

TEST_CASE("the share of the looking that is done never falls, though it is three searches one after the other") {
    const Sheet sheet = sheet_with({150, 150, 150, 150, 150, 150}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}});
    std::vector<double> shares;
    const LookedFor looked = look_for_order(sheet, {}, [&](double share) {
        shares.push_back(share);
        return true;
    });
    REQUIRE(looked.verdict.reasons);
    CHECK(std::is_sorted(shares.begin(), shares.end()));
    CHECK(shares.front() < 0.34);
    CHECK(shares.back() <= 1);
    CHECK(std::any_of(shares.begin(), shares.end(), [](double share) { return share > 0.3 && share < 0.7; }));
    const LookedFor stopped = look_for_order(sheet, {}, [](double) { return false; });
    CHECK(stopped.verdict.outcome == OrderVerdict::Outcome::cancelled);
}
