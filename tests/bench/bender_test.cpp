#include <catch2/catch.hpp>

#include "bench/samples.h"

using namespace tubewright;

TEST_CASE("a bender's usual mark is the one its card prefers, else the first") {
    Bender bender = small_bender();
    CHECK(usual_mark(bender) == 0);
    bender.preferred_mark = "L";
    CHECK(usual_mark(bender) == 1);
}
