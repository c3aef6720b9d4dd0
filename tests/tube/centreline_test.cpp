#include "tube/centreline.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Part two_bends() {
    Part part;
    part.straights = {100_mm, 150_mm, 80_mm};
    part.bends = {{90_deg, 0_deg}, {45_deg, 90_deg}};
    part.radius = 38_mm;
    return part;
}

Part random_part(std::mt19937& dice) {
    std::uniform_real_distribution<double> length(1, 200), angle(1, 179), turn(-180, 180);
    Part part;
    part.radius = {20};
    part.straights.push_back({length(dice)});
    for (int n = std::uniform_int_distribution<int>(1, 8)(dice); n > 0; --n) {
        part.bends.push_back({{angle(dice)}, {part.bends.empty() ? 0.0 : turn(dice)}});
        part.straights.push_back({length(dice)});
    }
    return part;
}

}  // namespace

TEST_CASE("a second bend, turned a quarter, leaves the plane of the first") {
    // By hand, start along +x, first bend towards +y. Rotation +90 about the way of travel (+y) turns
    // the bend direction -x into +z: after bend 1 the inside of the first bend lies towards -x, and
    // y cross (-x) = z.
    //   x:  100 + 38                                      = 138
    //   y:  38 + 150 + 38 sin 45 + 80 cos 45              = 271.439
    //   z:  38 (1 - cos 45) + 80 sin 45                   =  67.699
    const Frame end = far_end(two_bends());
    CHECK(end.at.x() == Approx(138.000).margin(0.001));
    CHECK(end.at.y() == Approx(271.439).margin(0.001));
    CHECK(end.at.z() == Approx(67.699).margin(0.001));
    CHECK(end.along.y() == Approx(std::sqrt(0.5)));
    CHECK(end.along.z() == Approx(std::sqrt(0.5)));
}

TEST_CASE("a half circle comes back beside itself, two radii away") {
    const Frame end = gone_round({}, 30_mm, 180_deg, 0_deg);
    CHECK(end.at.x() == Approx(0).margin(1e-12));
    CHECK(end.at.y() == Approx(60));
    CHECK(end.along.x() == Approx(-1));
    CHECK(end.aside.y() == Approx(-1));  // the inked side still faces the middle of the circle
}

TEST_CASE("the index line is carried along without twist") {
    // A bend towards +z leaves a line inked on the +y side where it is.
    const Frame end = gone_round({}, 30_mm, 70_deg, 90_deg);
    CHECK(end.aside.y() == Approx(1));
    CHECK(end.at.z() == Approx(30 * (1 - std::cos(70 * std::acos(-1.0) / 180))));
}

TEST_CASE("frames stay square, and stretches join end to end, for any part") {
    std::mt19937 dice(20240602);
    for (int i = 0; i < 200; ++i) {
        const Part part = random_part(dice);
        INFO("part " << i);
        const std::vector<Stretch> line = centreline(part);
        REQUIRE(line.size() == 2 * part.bends.size() + 1);
        for (std::size_t k = 0; k + 1 < line.size(); ++k) {
            const Frame end = frame_in(line[k], line[k].length);
            CHECK((end.at - line[k + 1].start.at).norm() < 1e-9);
            CHECK((end.along - line[k + 1].start.along).norm() < 1e-9);
            CHECK(std::abs(end.along.dot(end.aside)) < 1e-12);
        }
    }
}

TEST_CASE("a part read from its other end has the same length and the same span") {
    std::mt19937 dice(20240501);
    for (int i = 0; i < 200; ++i) {
        const Part part = random_part(dice);
        Part back;
        back.radius = part.radius;
        back.straights.assign(part.straights.rbegin(), part.straights.rend());
        for (std::size_t k = part.bends.size(); k-- > 0;)
            back.bends.push_back({part.bends[k].angle, k + 1 < part.bends.size() ? part.bends[k + 1].rotation : Angle{}});
        INFO("part " << i);
        CHECK(centreline_length(back).mm == Approx(centreline_length(part).mm));
        CHECK(far_end(back).at.norm() == Approx(far_end(part).at.norm()).margin(1e-9));
    }
}
