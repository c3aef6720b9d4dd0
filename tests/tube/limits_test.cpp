#include "tube/limits.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

TEST_CASE("a dash number counts sixteenths of an inch of outside diameter") {
    // TM 1-1500-204-23-2, table 4-9; FAA-H-8083-30, chapter 7: -3 is 3/16, -6 is 3/8, -10 is 5/8.
    CHECK(dash_number(0.1875_in) == 3);
    CHECK(dash_number(0.25_in) == 4);
    CHECK(dash_number(0.3125_in) == 5);
    CHECK(dash_number(0.375_in) == 6);
    CHECK(dash_number(0.5_in) == 8);
    CHECK(dash_number(0.625_in) == 10);
    CHECK_FALSE(dash_number(4.75_mm));
    CHECK_FALSE(dash_number(0_mm));
}

TEST_CASE("a flattened bend keeps three quarters of its diameter") {
    // FAA-H-8083-30, chapter 7, Tube Bending: 75 %. Inch values worked out from that, to four places.
    CHECK(least_flattened(0.1875_in).inch() == Approx(0.1406).margin(0.00005));
    CHECK(least_flattened(0.25_in).inch() == Approx(0.1875).margin(0.00005));
    CHECK(least_flattened(0.3125_in).inch() == Approx(0.2344).margin(0.00005));
    CHECK(least_flattened(0.375_in).inch() == Approx(0.2812).margin(0.00006));
    CHECK(least_flattened(0.5_in).inch() == Approx(0.375).margin(0.00005));
}

TEST_CASE("the outside of a bend stretches by half the diameter over the radius") {
    CHECK(outer_strain(1_in, 2_in) == Approx(0.25));          // 2 OD: 25 %
    CHECK(outer_strain(1_in, 3.5_in) == Approx(0.142857).margin(1e-6));  // 3.5 OD: 14.3 %
}
