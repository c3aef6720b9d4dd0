#include "base/result.h"

#include <catch2/catch.hpp>
#include <string>

using namespace tubewright;

namespace {

struct TooShort { int missing; };

Result<std::string, TooShort> cut_from(int stick, int length) {
    if (stick < length) return TooShort{length - stick};
    return std::string("cut");
}

}  // namespace

TEST_CASE("a result is what was asked for, or what stood in the way") {
    const auto good = cut_from(72, 40);
    REQUIRE(good.ok());
    CHECK(good.value() == "cut");
    const auto bad = cut_from(30, 40);
    REQUIRE_FALSE(bad.ok());
    CHECK(bad.trouble().missing == 10);
}
