#include "bench/tape_check.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "bench/samples.h"

using namespace tubewright;

TEST_CASE("legs measured to the outside read as the template did") {
    // Given to the outside, 6, 5 and 4 in, the finished part has to read just that again.
    Line line = line_of({6, 5, 4}, {{90, 0}, {45, 90}});
    line.route.measured_to = TapeEdge::outside;
    const std::vector<TapeLeg> legs = tape_legs(bend_sheet(line));
    REQUIRE(legs.size() == 3);
    CHECK(legs[0].outside.inch() == Approx(6));
    CHECK_FALSE(legs[0].after);
    CHECK(legs[0].before == 0u);
    CHECK(legs[1].outside.inch() == Approx(5));
    CHECK(legs[2].outside.inch() == Approx(4));
    CHECK(legs[2].after == 1u);
    CHECK_FALSE(legs[2].before);
}

TEST_CASE("a leg to the centre reads half the tube more at a square corner") {
    // 3/16 tube: 3/32 = 0.09375
    const std::vector<TapeLeg> legs = tape_legs(bend_sheet(line_of({6, 5}, {{90, 0}})));
    CHECK(legs[0].outside.inch() == Approx(6.09375));
    CHECK(legs[1].outside.inch() == Approx(5.09375));
}

TEST_CASE("corners that a tape can't touch are left out, points that do not bend are passed over") {
    CHECK(tape_legs(bend_sheet(line_of({6, 12, 6}, {{90, 0}, {150, 0}}))).size() == 1);
    const std::vector<TapeLeg> legs = tape_legs(bend_sheet(line_of({6, 5, 4}, {{0, 0}, {90, 0}})));
    REQUIRE(legs.size() == 2);
    CHECK(legs[0].outside.inch() == Approx(11.09375));
}

TEST_CASE("before trimming and flaring the end legs still carry their waste") {
    // 1/8 in of allowance at A; at B 1/8 and 1/2 in of trim: 6 + 0.125 and 8 + 0.625, and the outside at the corner
    // 0.09375. Across: sqrt(6.125^2 + 8.625^2) = 10.5786
    Line line = line_of({6, 8}, {{90, 0}});
    line.a.allowance = Length{0.125 * 25.4};
    line.b.allowance = Length{0.125 * 25.4};
    line.b.trim = Length{0.5 * 25.4};
    const Sheet sheet = bend_sheet(line);
    const std::vector<TapeLeg> legs = tape_legs(sheet);
    CHECK(legs[0].outside.inch() == Approx(6.21875));
    CHECK(legs[1].outside.inch() == Approx(8.71875));
    CHECK(straight_across(sheet).inch() == Approx(10.5786).margin(0.0001));
}

TEST_CASE("straight across an L of 6 and 8 in is 10 in") {
    CHECK(straight_across(bend_sheet(line_of({6, 8}, {{90, 0}}))).inch() == Approx(10));
}
