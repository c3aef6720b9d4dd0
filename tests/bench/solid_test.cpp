#include "bench/solid.h"

#include <catch2/catch.hpp>

using namespace tubewright;

namespace {

const Eigen::Matrix3d as_it_stands = Eigen::Matrix3d::Identity();

double gap_to(const Shape& shape, const Capsule& capsule) { return PlacedSolid(shape, as_it_stands).gap(capsule); }

}  // namespace

TEST_CASE("a tube's gap to a box, worked by hand") {
    const Block box{{0, 0, 0}, {10, 20, 30}};
    // level with the top face, 5 above it: 35 - 30 - 1
    CHECK(gap_to(box, {{-50, 10, 35}, {50, 10, 35}, 1}) == Approx(4));
    // past the edge x = 10, z = 30, running along it: sqrt(3^2 + 4^2) - 1
    CHECK(gap_to(box, {{13, -40, 34}, {13, 60, 34}, 1}) == Approx(4));
    // its end is nearest to the corner 10, 20, 30: sqrt(2^2 + 3^2 + 6^2) - 1
    CHECK(gap_to(box, {{12, 23, 36}, {40, 60, 90}, 1}) == Approx(6));
    // crossing the edge x = 10, z = 30 at 45 degrees: the line x + z = 50 is (50 - 40) / sqrt 2 away
    CHECK(gap_to(box, {{0, 10, 50}, {50, 10, 0}, 1}) == Approx(10 / std::sqrt(2.0) - 1));
    // a ball, and corners given the other way round
    CHECK(gap_to(Block{{10, 20, 30}, {0, 0, 0}}, {{5, 10, -7}, {5, 10, -7}, 2}) == Approx(5));
}

TEST_CASE("a tube that runs into a box says how deep") {
    const Block box{{0, 0, 0}, {10, 20, 30}};
    // its end is 4 below the top: 4 + 1; right through the middle of the 10 side: 5 + 1
    CHECK(gap_to(box, {{5, 10, 26}, {5, 10, 80}, 1}) == Approx(-5));
    CHECK(gap_to(box, {{5, 10, -80}, {5, 10, 80}, 1}) == Approx(-6));
    // the line only grazes: 0.5 above the top, a radius of 2 reaches 1.5 in
    CHECK(gap_to(box, {{-50, 10, 30.5}, {50, 10, 30.5}, 2}) == Approx(-1.5));
}

TEST_CASE("a tube's gap to a cylinder, worked by hand") {
    const Cylinder post{{0, 0, 0}, {0, 0, 40}, Length{5}};
    // beside it, across: 12 - 5 - 2; along it: the same
    CHECK(gap_to(post, {{12, -30, 20}, {12, 30, 20}, 2}) == Approx(5));
    CHECK(gap_to(post, {{12, 0, -30}, {12, 0, 90}, 2}) == Approx(5));
    // above its flat end: 47 - 40 - 2
    CHECK(gap_to(post, {{-30, 1, 47}, {30, 1, 47}, 2}) == Approx(5));
    // the end nearest to the rim at (5, 0, 40): sqrt(3^2 + 4^2) - 2
    CHECK(gap_to(post, {{8, 0, 44}, {60, 0, 80}, 2}) == Approx(3));
    // straight through the middle: 5 + 2; end 3 under the flat end, on the axis: 3 + 2
    CHECK(gap_to(post, {{-30, 0, 20}, {30, 0, 20}, 2}) == Approx(-7));
    CHECK(gap_to(post, {{0, 0, 37}, {0, 0, 90}, 2}) == Approx(-5));
    // lying along x, 100 up
    CHECK(gap_to(Cylinder{{-50, 0, 100}, {50, 0, 100}, Length{10}}, {{20, 0, 0}, {20, 0, 80}, 1}) == Approx(9));
}

TEST_CASE("a half space is all that lies beyond its plane") {
    const HalfSpace bench{{0, 0, -100}, {0, 0, -2}};
    CHECK(gap_to(bench, {{0, 0, 0}, {300, 0, -70}, 3}) == Approx(27));
    CHECK(gap_to(bench, {{0, 0, 0}, {0, 0, -130}, 3}) == Approx(-33));
    // slanted: the plane x + z = 0, into it where both grow
    CHECK(gap_to(HalfSpace{{0, 0, 0}, {1, 0, 1}}, {{-10, 5, 0}, {-20, 5, -20}, 0}) == Approx(10 / std::sqrt(2.0)));
}

TEST_CASE("a solid turned over is met where it then is") {
    // A quarter turn about x brings y to z and z to -y.
    Eigen::Matrix3d turn;
    turn << 1, 0, 0, 0, 0, -1, 0, 1, 0;
    CHECK(PlacedSolid(HalfSpace{{0, 0, -100}, {0, 0, -1}}, turn).gap({{0, 60, 0}, {0, 0, 0}, 1}) == Approx(39));
    CHECK(PlacedSolid(Block{{0, 0, 0}, {10, 20, 30}}, turn).gap({{5, -40, 10}, {5, -50, 10}, 1}) == Approx(9));
    CHECK(PlacedSolid(Cylinder{{0, 0, 0}, {0, 0, 40}, Length{5}}, turn).gap({{12, -20, -9}, {12, -20, 9}, 1}) == Approx(6));
}

TEST_CASE("two tubes' gap, crossing, side by side and end to end") {
    CHECK(gap(Capsule{{-9, 0, 0}, {9, 0, 0}, 1}, Capsule{{0, -9, 7}, {0, 9, 7}, 2}) == Approx(4));
    CHECK(gap(Capsule{{0, 0, 0}, {9, 0, 0}, 1}, Capsule{{4, 5, 0}, {20, 5, 0}, 1}) == Approx(3));
    CHECK(gap(Capsule{{0, 0, 0}, {9, 0, 0}, 1}, Capsule{{12, 4, 0}, {20, 4, 0}, 1}) == Approx(3));
    CHECK(gap(Capsule{{0, 0, 0}, {0, 0, 0}, 1}, Capsule{{3, 4, 0}, {3, 4, 0}, 1}) == Approx(3));
}
