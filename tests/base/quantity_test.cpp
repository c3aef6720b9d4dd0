#include "base/quantity.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace tubewright;
using namespace tubewright::literals;

TEST_CASE("an inch is 25.4 mm, exactly, by its definition") {
    CHECK((1_in).mm == 25.4);
    CHECK((38.1_mm).inch() == Approx(1.5).epsilon(1e-15));
}

TEST_CASE("an arc of 90 degrees on a radius of 2 in uses pi inches of tube") {
    CHECK(arc_length(2_in, 90_deg).inch() == Approx(3.14159265358979).epsilon(1e-14));
}

TEST_CASE("a direction is given between -180, which is left out, and 180") {
    CHECK(wrapped(270_deg) == Angle{-90});
    CHECK(wrapped(-180_deg) == Angle{180});
    CHECK(wrapped(180_deg) == Angle{180});
    CHECK(wrapped(540_deg) == Angle{180});
    CHECK(wrapped(-190_deg) == Angle{170});
    CHECK(wrapped(360_deg) == Angle{0});
    CHECK_FALSE(std::signbit(wrapped(-360_deg).deg));
}

TEST_CASE("lengths add, scale and divide as they do on a tape") {
    CHECK((6_in + 0.5_in - 1.5_in).inch() == Approx(5));
    CHECK((2 * 4.25_in).inch() == Approx(8.5));
    CHECK(12_in / 3_in == Approx(4));
    CHECK(-(3_mm) < 0_mm);
}
