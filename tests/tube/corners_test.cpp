#include "tube/corners.h"

#include <catch2/catch.hpp>
#include <random>

namespace tubewright {

TEST_CASE("corners of a line with a square bend up and a square bend aside") {
    // By hand. Legs 100, 60, 80 to the corners, radius 20: straights 80, 20, 60. Along +x, then the first bend
    // turns to +y; the second turns a quarter right-handed about +y, from -x (the first bend's way on) to +z:
    // y cross -x = z.
    const Part part{{{80}, {20}, {60}}, {{{90}, {0}}, {{90}, {90}}}, {20}};
    const auto places = corners(part);
    REQUIRE(places);
    REQUIRE(places->size() == 4);
    CHECK((*places)[0].norm() == Approx(0).margin(1e-9));
    CHECK(((*places)[1] - Eigen::Vector3d(100, 0, 0)).norm() == Approx(0).margin(1e-9));
    CHECK(((*places)[2] - Eigen::Vector3d(100, 60, 0)).norm() == Approx(0).margin(1e-9));
    CHECK(((*places)[3] - Eigen::Vector3d(100, 60, 80)).norm() == Approx(0).margin(1e-9));
}

TEST_CASE("the route through a part's corners is the part's, whatever its turns") {
    std::mt19937 dice(20261125);
    std::uniform_real_distribution<double> length(60, 200), angle(5, 150), rotation(-179, 179);
    for (int i = 0; i < 200; ++i) {
        Part part{{{length(dice)}}, {}, {15}};
        for (int n = i % 8; n >= 0; --n) {
            part.bends.push_back({{angle(dice)}, {part.bends.empty() ? 0 : rotation(dice)}});
            part.straights.push_back({length(dice)});
        }
        const auto places = corners(part);
        REQUIRE(places);
        const Part back = part_from(route_through(*places, RouteForm::points), part.radius, {6});
        for (std::size_t k = 0; k < part.straights.size(); ++k) CHECK(back.straights[k].mm == Approx(part.straights[k].mm));
        for (std::size_t k = 0; k < part.bends.size(); ++k) {
            CHECK(back.bends[k].angle.deg == Approx(part.bends[k].angle.deg));
            CHECK(wrapped(back.bends[k].rotation - part.bends[k].rotation).deg == Approx(0).margin(1e-6));
        }
    }
}

TEST_CASE("a bend that goes right round has no corner") {
    CHECK_FALSE(corners({{{10}, {10}}, {{{175}, {0}}}, {20}}));
    CHECK(corners({{{10}, {10}}, {{{170}, {0}}}, {20}}));
    CHECK(corners({{{10}}, {}, {20}})->size() == 2);
}

}  // namespace tubewright
