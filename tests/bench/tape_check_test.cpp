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

TEST_CASE("with a bend kept off its target the tape reads what the bend as it is makes of it") {
    // Straights from tangent to tangent on both sides, 90 asked, 96 made. The legs lie at 96: the centre leg past the
    // corner is R tan(48), and A's side starts at the mark, so it keeps its straight. The arc takes R * 6 degrees more,
    // which comes off the straight on the lever side (B). All worked from R, od and the asked legs.
    const Sheet sheet = bend_sheet(line_of({6, 8}, {{90, 0}}));
    const double deg = 3.14159265358979323846 / 180, radius = sheet.layout->part.radius.mm, half = sheet.line.tube.od.mm / 2;
    const double a = 6 * 25.4 - radius, b = 8 * 25.4 - radius - radius * 6 * deg;
    REQUIRE(sheet.line.bender.stretch == 0);
    REQUIRE(sheet.steps[0].hook == End::A);
    const AsMeasured measured{{0, Angle{96}}};
    const std::vector<TapeLeg> legs = tape_legs(sheet, measured);
    const double corner = (radius + half) * std::tan(48 * deg);
    CHECK(legs[0].outside.mm == Approx(a + corner));
    CHECK(legs[1].outside.mm == Approx(b + corner));
    // Across, by the law of cosines between the centre legs, 180 - 96 = 84 degrees apart.
    const double p = a + radius * std::tan(48 * deg), q = b + radius * std::tan(48 * deg);
    CHECK(straight_across(sheet, measured).mm == Approx(std::sqrt(p * p + q * q - 2 * p * q * std::cos(84 * deg))));
    CHECK(straight_across(sheet).inch() == Approx(10));
}
