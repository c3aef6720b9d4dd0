#include "tube/route.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <random>

using namespace tubewright;

namespace {

Route through(std::vector<Eigen::Vector3d> points) { return route_through(points, RouteForm::points); }

}  // namespace

TEST_CASE("forward, left, up: two square corners, the second turned a quarter to the right hand") {
    // Along x, then y, then z. Plane normals: x cross y = z, y cross z = x. Looking along y (A to B),
    // turning z into x is right-handed about y, since z cross x = y: +90.
    const Route route = through({{0, 0, 0}, {100, 0, 0}, {100, 80, 0}, {100, 80, 60}});
    REQUIRE(route.bends.size() == 2);
    CHECK(route.runs[0].mm == Approx(100));
    CHECK(route.runs[1].mm == Approx(80));
    CHECK(route.runs[2].mm == Approx(60));
    CHECK(route.bends[0].angle.deg == Approx(90));
    CHECK(route.bends[0].rotation.deg == 0);
    CHECK(route.bends[1].angle.deg == Approx(90));
    CHECK(route.bends[1].rotation.deg == Approx(90));
}

TEST_CASE("a C goes on round the same way, a Z turns the opposite way") {
    CHECK(through({{0, 0, 0}, {5, 0, 0}, {5, 4, 0}, {0, 4, 0}}).bends[1].rotation.deg == Approx(0).margin(1e-12));
    CHECK(through({{0, 0, 0}, {5, 0, 0}, {5, 4, 0}, {9, 4, 0}}).bends[1].rotation.deg == Approx(180));
}

TEST_CASE("a mirrored route has the same legs and angles, and the rotations the other way") {
    std::mt19937 dice(20240601);
    std::uniform_real_distribution<double> place(-100, 100);
    for (int i = 0; i < 200; ++i) {
        std::vector<Eigen::Vector3d> points, mirrored;
        for (int k = 0; k < 6; ++k) {
            points.push_back({place(dice), place(dice), place(dice)});
            mirrored.push_back({points.back().x(), -points.back().y(), points.back().z()});
        }
        INFO("route " << i);
        const Route here = through(points), there = through(mirrored);
        for (std::size_t k = 0; k < here.bends.size(); ++k) {
            CHECK(there.bends[k].angle.deg == Approx(here.bends[k].angle.deg));
            CHECK(there.bends[k].rotation.deg == Approx(-here.bends[k].rotation.deg).margin(1e-9));
        }
    }
}

TEST_CASE("a corner that does not turn keeps its number, and the next bend is measured against the last real one") {
    // The third point lies on the way; the plane goes on as it was, then turns a quarter.
    const Route route = through({{0, 0, 0}, {10, 0, 0}, {10, 4, 0}, {10, 8, 0}, {10, 8, 6}});
    REQUIRE(route.bends.size() == 3);
    CHECK(route.bends[1].angle.deg == 0);
    CHECK(route.bends[1].rotation.deg == 0);
    CHECK(route.bends[2].rotation.deg == Approx(90));
}

TEST_CASE("a leg that doubles back on itself is a corner of 180 degrees") {
    const Route route = through({{0, 0, 0}, {10, 0, 0}, {4, 0, 0}});
    CHECK(route.bends[0].angle.deg == Approx(180));
}
