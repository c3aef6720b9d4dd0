#include "store/number_text.h"

#include <catch2/catch.hpp>
#include <charconv>
#include <limits>
#include <random>

namespace tubewright {
namespace {

double read(const std::string& text) {
    double value = 0;
    const auto [end, wrong] = std::from_chars(text.data(), text.data() + text.size(), value);
    CHECK((wrong == std::errc{} && end == text.data() + text.size()));
    return value;
}

/// thousandths as a person writes them: 6500 is 6.5
std::string by_hand(int thousandths) {
    std::string text = std::to_string(thousandths / 1000), rest = std::to_string(1000 + thousandths % 1000).substr(1);
    rest.erase(rest.find_last_not_of('0') + 1);
    return rest.empty() ? text : text + "." + rest;
}

}  // namespace

TEST_CASE("every thousandth that can be typed comes back as it was typed, in both units") {
    for (int i = 1; i <= 120000; ++i) {
        const std::string as_typed = by_hand(i);
        const double value = read(as_typed);
        if (typed(Length{value}, Unit::mm) != as_typed || typed(Length{value * 25.4}, Unit::inch) != as_typed)
            FAIL(as_typed << " comes back as " << typed(Length{value}, Unit::mm) << " mm, " << typed(Length{value * 25.4}, Unit::inch) << " in");
    }
}

TEST_CASE("whole numbers, tape fractions and the smallest bit above one") {
    CHECK(typed(0.0) == "0");
    CHECK(typed(-0.0) == "0");
    CHECK(typed(90.0) == "90");
    CHECK(typed(100000.0) == "100000");
    CHECK(typed(-22.5) == "-22.5");
    CHECK(typed(Length{25.4 * 11 / 64}, Unit::inch) == "0.171875");
    CHECK(typed(1.0 + std::numeric_limits<double>::epsilon()) == "1.0000000000000002");
    CHECK(typed(Angle{0.1}) == "0.1");
}

TEST_CASE("any number reads back as itself, and a length in inches as itself or a hair beside it, for good") {
    std::mt19937_64 dice(20261125);
    std::uniform_real_distribution<double> wide(-1e5, 1e5), fine(-1, 1);
    for (int i = 0; i < 20000; ++i) {
        const double value = i % 2 ? wide(dice) : fine(dice);
        REQUIRE(read(typed(value)) == value);
        REQUIRE(read(typed(value * 1e-12)) == value * 1e-12);
        REQUIRE(read(typed(value * 1e18)) == value * 1e18);
        const std::string inches = typed(Length{value}, Unit::inch);
        const double back = read(inches) * 25.4;
        REQUIRE(std::abs(back - value) <= 4e-16 * std::abs(value));
        REQUIRE(typed(Length{back}, Unit::inch) == inches);
    }
}

}  // namespace tubewright
