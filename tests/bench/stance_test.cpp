#include "bench/stance.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

void check_direction(const Eigen::Vector3d& got, double x, double y, double z) {
    CHECK(got.x() == Approx(x).margin(1e-12));
    CHECK(got.y() == Approx(y).margin(1e-12));
    CHECK(got.z() == Approx(z).margin(1e-12));
}

}  // namespace

TEST_CASE("hook on the left, swing away: a quarter roll faces up") {
    // a = right (x), w = away (y), n = x cross y = up (z)
    const Stance here = stance({HookHand::left, Swing::away});
    check_direction(here.axis, 1, 0, 0);
    check_direction(here.normal, 0, 0, 1);
    check_direction(facing(here, 0_deg), 0, 1, 0);
    check_direction(facing(here, 90_deg), 0, 0, 1);
    CHECK(pointing(here, 45_deg).slanted);
    CHECK(pointing(here, 30_deg) == Pointing{Way::away, true, Way::up});
    CHECK(pointing(here, -120_deg) == Pointing{Way::down, true, Way::toward});
    CHECK(pointing(here, 180_deg) == Pointing{Way::toward});
}

TEST_CASE("hook on the right, swing away: a quarter roll faces down") {
    // a = left (-x), w = y, n = -x cross y = -z
    const Stance here = stance({HookHand::right, Swing::away});
    check_direction(here.axis, -1, 0, 0);
    check_direction(facing(here, 90_deg), 0, 0, -1);
}

TEST_CASE("hook on the left, swing up: a quarter roll faces toward the operator") {
    // a = x, w = z, n = x cross z = -y
    const Stance here = stance({HookHand::left, Swing::up});
    check_direction(facing(here, 90_deg), 0, -1, 0);
    CHECK(pointing(here, 90_deg) == Pointing{Way::toward});
}

TEST_CASE("hook on the right, swing toward or down") {
    check_direction(stance({HookHand::right, Swing::toward}).normal, 0, 0, 1);   // -x cross -y = z
    check_direction(stance({HookHand::right, Swing::down}).normal, 0, -1, 0);    // -x cross -z = -y, since z cross x = y
}

TEST_CASE("a direction within two degrees of a word is just that word") {
    const Stance here = stance({HookHand::left, Swing::away});
    CHECK_FALSE(pointing(here, 1.9_deg).slanted);
    CHECK(pointing(here, 2.1_deg).slanted);
    CHECK_FALSE(pointing(here, -179_deg).slanted);
}
