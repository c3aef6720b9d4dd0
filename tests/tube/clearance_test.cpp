#include "tube/clearance.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Part part(Length radius, std::vector<Length> straights, std::vector<Bend> bends) { return {std::move(straights), std::move(bends), radius}; }

}  // namespace

TEST_CASE("a U-turn keeps its two legs two radii apart, less one diameter") {
    // Radius 5.5, tube 10: axes 11 apart, 1 mm of air. Radius 7: 14 apart, 4 mm of air.
    const auto near = closest_approach(part(5.5_mm, {100_mm, 100_mm}, {{180_deg, 0_deg}}), 10_mm, 2_mm);
    REQUIRE(near);
    CHECK(near->gap.mm == Approx(1).margin(1e-6));
    CHECK_FALSE(closest_approach(part(7_mm, {100_mm, 100_mm}, {{180_deg, 0_deg}}), 10_mm, 2_mm));
}

TEST_CASE("a square of four corners that closes on itself runs into its own start") {
    // Legs 100, radius 15: the fifth leg lies in the same line as the first and overlaps it.
    const Bend corner{90_deg, 0_deg};
    const Part square = part(15_mm, {50_mm, 70_mm, 70_mm, 70_mm, 50_mm}, {corner, corner, corner, corner});
    const auto hit = closest_approach(square, 6_mm, 2_mm);
    REQUIRE(hit);
    CHECK(hit->gap.mm < 0);
}

TEST_CASE("a loop that crosses over itself clears by the height it climbed") {
    // Three square corners bring the tube back across its first leg, 12 up. First straight along x from 0
    // to 100; the way back crosses it at right angles at x = 50, at height 12 (by the tilt of the loop the
    // crossing is where the fourth straight passes). Corner points: (0,0,0) (100,0,0) (100,50,12) (50,50,12) (50,-40,12).
    const std::vector<Eigen::Vector3d> corners{{0, 0, 0}, {100, 0, 0}, {100, 50, 12}, {50, 50, 12}, {50, -40, 12}};
    const Part loop = part_from(route_through(corners, RouteForm::points), 10_mm, 5_mm);
    const auto near = closest_approach(loop, 5_mm, 10_mm);
    REQUIRE(near);
    CHECK(near->first == 0);
    CHECK(near->second == 6);
    CHECK(near->gap.mm == Approx(12 - 5).margin(1e-9));
}

TEST_CASE("a plain bend, however sharp it may be made, does not touch itself") {
    // The tightest that holds: 1.5 OD to the centre.
    CHECK_FALSE(closest_approach(part(15_mm, {200_mm, 200_mm}, {{170_deg, 0_deg}}), 10_mm, 2_mm));
    CHECK_FALSE(closest_approach(part(15_mm, {200_mm, 0_mm, 200_mm}, {{90_deg, 0_deg}, {90_deg, 180_deg}}), 10_mm, 2_mm));
}

TEST_CASE("an arc that meets a straight is found, not only straights that meet") {
    // A full turn of 350 degrees comes back to the straight it left.
    const auto hit = closest_approach(part(20_mm, {100_mm, 5_mm}, {{350_deg, 0_deg}}), 8_mm, 2_mm);
    REQUIRE(hit);
    CHECK(hit->gap.mm < 0);
}
