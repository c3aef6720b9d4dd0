#include <catch2/catch.hpp>

#include "present/text.h"

namespace tubewright {
namespace {

constexpr Tape sixteenths{Unit::inch, 16}, thirty_seconds{Unit::inch, 32}, sixty_fourths{Unit::inch, 64}, metric{Unit::mm, 16};

Length inches(double value) { return {value * 25.4}; }

}  // namespace

TEST_CASE("an inch length is said to the nearest fraction of the tape, in lowest terms") {
    CHECK(text(inches(19.1875), sixteenths) == "19 3/16\"");
    CHECK(text(inches(19.5), sixteenths) == "19 1/2\"");
    CHECK(text(inches(19), sixteenths) == "19\"");
    CHECK(text(inches(0.75), sixteenths) == "3/4\"");
    CHECK(text(inches(0), sixteenths) == "0\"");
    // 19.21 · 16 = 307.36 -> 307 = 19 3/16;  · 32 = 614.72 -> 615 = 19 7/32;  · 64 = 1229.44 -> 1229 = 19 13/64
    CHECK(text(inches(19.21), sixteenths) == "19 3/16\"");
    CHECK(text(inches(19.21), thirty_seconds) == "19 7/32\"");
    CHECK(text(inches(19.21), sixty_fourths) == "19 13/64\"");
    CHECK(text(inches(0.97), sixteenths) == "1\"");   // 15.52 -> 16
    CHECK(text(inches(0.03), sixteenths) == "0\"");   // 0.48 -> 0
    CHECK(text(inches(0.03125), sixteenths) == "1/16\"");  // 0.5 rounds away from 0
}

TEST_CASE("a metric length is said to half a millimetre") {
    CHECK(text(Length{487}, metric) == "487 mm");
    CHECK(text(Length{481.24}, metric) == "481 mm");
    CHECK(text(Length{481.25}, metric) == "481.5 mm");
    CHECK(text(Length{481.74}, metric) == "481.5 mm");
    CHECK(text(Length{481.75}, metric) == "482 mm");
    CHECK(text(Length{1203.5}, metric) == "1203.5 mm");
    CHECK(bare(Length{0.2}, metric) == "0");
}

TEST_CASE("what is less than nothing has a minus, and what shows as nothing has none") {
    CHECK(text(inches(-0.5625), sixteenths) == "\u22129/16\"");
    CHECK(text(inches(-0.01), sixteenths) == "0\"");
    CHECK(text(Length{-12.5}, metric) == "\u221212.5 mm");
    CHECK(text(Angle{-0.1}, metric) == "0°");
    CHECK(text(Angle{-45}, metric) == "\u221245°");
}

TEST_CASE("an angle is said to half a degree") {
    CHECK(text(Angle{92.5}, sixteenths) == "92 1/2°");
    CHECK(text(Angle{92.5}, metric) == "92.5°");
    CHECK(text(Angle{92.2}, sixteenths) == "92°");
    CHECK(text(Angle{92.25}, sixteenths) == "92 1/2°");
    CHECK(text(Angle{0.5}, sixteenths) == "1/2°");
    CHECK(text(Angle{90}, metric) == "90°");
}

TEST_CASE("tube is said as it is sold: a fraction where it is one") {
    CHECK(size_text({inches(0.1875), inches(0.028), ""}, sixteenths) == "3/16\" × 0.028\"");
    CHECK(size_text({Length{4.75}, Length{0.7}, ""}, metric) == "4.75 × 0.7 mm");
    CHECK(size_text({Length{10}, Length{1.5}, ""}, metric) == "10 × 1.5 mm");
    CHECK(od_text(Length{4.75}, sixteenths) == "3/16\"");  // common practice, no source
    CHECK(od_text(Length{6}, sixteenths) == "0.236\"");    // 6 / 25.4 = 0.23622, no fraction
    CHECK(od_text(inches(0.5), metric) == "12.7 mm");
}

TEST_CASE("fine measures and shares round half away from nothing") {
    CHECK(fine(inches(0.5625), sixteenths) == "0.563\"");
    CHECK(fine(Length{1.005}, metric) == "1.01 mm");  // though 1.005 lies a hair under in binary
    CHECK(fine(Length{14.2875}, metric) == "14.29 mm");
    CHECK(percent(0.056) == "5.6 %");
    CHECK(percent(1) == "100.0 %");
    CHECK(two_places(5.866) == "5.87");
    CHECK(counted(1, "bend", "bends") == "1 bend");
    CHECK(counted(0, "bend", "bends") == "0 bends");
}

TEST_CASE("readings from both ends add up to the cut length as it is shown") {
    // 34.66 in shows as 34 11/16 and 5.84 as 5 13/16: that leaves 28 7/8, though 28.82 alone would show as 28 13/16.
    const Tape tape{Unit::inch, 16};
    for (const double part : {0.01, 5.80, 5.84, 11.62, 20.45, 34.2}) {
        const Length whole{34.66 * 25.4}, piece{part * 25.4};
        INFO(part);
        CHECK((on_tape(piece, tape) + rest_of(whole, piece, tape)).mm == Approx(on_tape(whole, tape).mm));
        CHECK(text(on_tape(piece, tape), tape) == text(piece, tape));
    }
    CHECK(text(on_tape(Length{34.66 * 25.4}, tape), tape) == "34 11/16\"");
    CHECK(on_tape(Length{100.3}, Tape{Unit::mm, 16}).mm == Approx(100.5));
}

TEST_CASE("three eighths are 9.53 mm however they were come by") {
    // 0.375 * 25.4 falls a hair under 9.525 in a double, 9525 / 1000 does not.
    CHECK(od_text(inches(0.375), metric) == "9.53 mm");
    CHECK(od_text(Length{9525 / 1000.0}, metric) == "9.53 mm");
    CHECK(fine(inches(0.375), metric) == "9.53 mm");
}

TEST_CASE("what is kept or left is never shown longer than it is") {
    // 8.1125 in lies between 8 1/16 (8.0625) and 8 1/8 (8.125), nearer to the second.
    CHECK(text(down_on_tape(inches(8.1125), sixteenths), sixteenths) == "8 1/16\"");
    CHECK(text(down_on_tape(inches(8.125), sixteenths), sixteenths) == "8 1/8\"");
    CHECK(text(down_on_tape(Length{8.9}, metric), metric) == "8.5 mm");
    // Cut to 20.05, shown 20 1/16; formed 11.9375: left 8.1125, shown 8 1/16, and both make up what is shown.
    const Tally tally = tally_of(inches(20.05), inches(11.9375), sixteenths);
    CHECK(text(tally.left, sixteenths) == "8 1/16\"");
    CHECK(text(tally.formed, sixteenths) == "12\"");
    CHECK(tally_of(inches(20.05), {}, sixteenths).formed == Length{});
}

TEST_CASE("a lever is never sent past the set angle, and stops at most half a degree short of it") {
    for (const Tape& tape : {sixteenths, metric})
        for (int hundredths = 0; hundredths <= 18000; ++hundredths) {
            const Angle set{hundredths / 100.0};
            const std::string shown = lever_text(set, tape);
            // 92 1/2° or 92.5°
            const double degrees = std::stod(shown) + (shown.find("1/2") == std::string::npos || shown == "1/2°" ? 0 : 0.5) - (shown == "1/2°" ? 0.5 : 0);
            if (degrees > set.deg + 1e-9 || degrees <= set.deg - 0.5) FAIL(shown << " for " << set.deg);
        }
    CHECK(lever_text(Angle{93.75}, sixteenths) == "93 1/2°");  // the nearest would be over-bent: 94
}

TEST_CASE("shares that follow each other add up to their sum as it is shown") {
    // Thirds: 33.33, 66.67 and 100 are shown as 33.3, 66.7 and 100.0, and so the steps between them.
    CHECK(percents({1.0 / 3, 1.0 / 3, 1.0 / 3}) == std::vector<std::string>{"33.3 %", "33.4 %", "33.3 %"});
    CHECK(percents({0.0004, 0.0004, 0.0004}) == std::vector<std::string>{"0.0 %", "0.1 %", "0.0 %"});  // 0.04, 0.08, 0.12
    CHECK(percents({}).empty());
}

TEST_CASE("how far something is moved is said as coarsely as still shows it, whichever way it goes") {
    CHECK(moved_text(inches(-3.0 / 16), sixteenths) == "3/16\"");
    CHECK(moved_text(inches(1.0 / 64), sixteenths) == "1/64\"");
    CHECK(moved_text(inches(0.005), sixteenths) == "0.005\"");
    CHECK(moved_text(Length{-0.2}, metric) == "0.2 mm");
    CHECK(moved_text(Length{0.03}, metric) == "0.03 mm");
}

}  // namespace tubewright
