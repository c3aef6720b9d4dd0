#include "tube/part.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Route legs(std::vector<Length> runs, std::vector<Bend> bends, TapeEdge edge = TapeEdge::centre) {
    return {RouteForm::legs, edge, std::move(runs), std::move(bends)};
}

}  // namespace

TEST_CASE("a square corner on an 18 in radius, legs 48 and 72") {
    // NAVEDTRA 14119, chapter 16, figure 16-3: straights 30 and 54, arc 18 x 1.57 = 28.26, total
    // 112.26 as printed; with pi/2 in full 28.2743 and 112.2743.
    const Part part = part_from(legs({48_in, 72_in}, {{90_deg, 0_deg}}), 18_in, 2_in);
    CHECK(part.straights[0].inch() == Approx(30));
    CHECK(part.straights[1].inch() == Approx(54));
    CHECK(centreline_length(part).inch() == Approx(112.26).margin(0.02));
    CHECK(centreline_length(part).inch() == Approx(112.2743).margin(0.00005));
}

TEST_CASE("setback is the radius times the tangent of half the angle") {
    // tan(22.5), tan(45), tan(60) from a table of tangents
    CHECK(setback(1_in, 45_deg).inch() == Approx(0.414214).margin(5e-7));
    CHECK(setback(1_in, 90_deg).inch() == Approx(1));
    CHECK(setback(1_in, 120_deg).inch() == Approx(1.732051).margin(5e-7));
}

TEST_CASE("a tape on the outside reads longer, one on the inside shorter, by half the tube at a square corner") {
    // 3/16 tube, one bend of 90: each leg by 3/32 = 0.09375 in
    const Part centre = part_from(legs({6_in, 4_in}, {{90_deg, 0_deg}}), 1_in, 0.1875_in);
    const Part outside = part_from(legs({6.09375_in, 4.09375_in}, {{90_deg, 0_deg}}, TapeEdge::outside), 1_in, 0.1875_in);
    const Part inside = part_from(legs({5.90625_in, 3.90625_in}, {{90_deg, 0_deg}}, TapeEdge::inside), 1_in, 0.1875_in);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(outside.straights[i].mm == Approx(centre.straights[i].mm));
        CHECK(inside.straights[i].mm == Approx(centre.straights[i].mm));
    }
}

TEST_CASE("a middle leg counts the edge at both of its corners") {
    // od/2 tan(30) = 0.09375 * 0.577350 = 0.054127; od/2 tan(45) = 0.09375
    const Route outside = legs({5_in, 8_in, 5_in}, {{60_deg, 0_deg}, {90_deg, 30_deg}}, TapeEdge::outside);
    const Part part = part_from(outside, 1_in, 0.1875_in);
    CHECK(part.straights[1].inch() == Approx(8 - 0.054127 - 0.09375 - 0.577350 - 1).margin(2e-6));
}

TEST_CASE("straights between tangent points are taken as they are, U-turns too") {
    const Route route{RouteForm::straights, TapeEdge::centre, {3_in, 4_in}, {{180_deg, 0_deg}}};
    const Part part = part_from(route, 1_in, 0.25_in);
    CHECK(part.straights == route.runs);
    CHECK(centreline_length(part).inch() == Approx(3 + 4 + 3.14159265).margin(1e-8));
}

TEST_CASE("a bend's direction in the tube's section is the sum of the rotations so far") {
    Part part;
    part.straights = {1_in, 1_in, 1_in, 1_in};
    part.bends = {{90_deg, 0_deg}, {45_deg, 90_deg}, {30_deg, 135_deg}};
    CHECK(direction_in_section(part, 0) == Angle{0});
    CHECK(direction_in_section(part, 1) == Angle{90});
    CHECK(direction_in_section(part, 2) == Angle{-135});
}
