#include "bench/digit_slips.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <optional>

using namespace tubewright;

namespace {

/// The kind of slip that makes `typed` of `meant`, if any; in the unit.
std::optional<DigitSlip> made_of(double meant, double typed, Unit unit) {
    const double mm = unit == Unit::inch ? 25.4 : 1;
    for (const MeantLength& length : meant_lengths({typed * mm}, unit))
        if (std::abs(length.length.mm - meant * mm) < 0.001) return length.slip;
    return std::nullopt;
}

}  // namespace

TEST_CASE("lengths in inches that are mistaken for one another") {
    CHECK(made_of(12.25, 13.25, Unit::inch) == DigitSlip::inch_off);
    CHECK(made_of(12.25, 11.25, Unit::inch) == DigitSlip::inch_off);
    CHECK(made_of(12.25, 12.5, Unit::inch) == DigitSlip::fraction);
    CHECK(made_of(12, 12.75, Unit::inch) == DigitSlip::fraction);
    CHECK(made_of(12.25, 21.25, Unit::inch) == DigitSlip::transposed);
    CHECK(made_of(12.25, 15.25, Unit::inch) == DigitSlip::wrong_key);
    CHECK(made_of(12.25, 42.25, Unit::inch) == DigitSlip::wrong_key);
    CHECK(made_of(12.25, 2.25, Unit::inch) == DigitSlip::lost_digit);
    CHECK(made_of(12.25, 112.25, Unit::inch) == DigitSlip::lost_digit);
    CHECK_FALSE(made_of(12.25, 17.5, Unit::inch));  // two slips
    CHECK_FALSE(made_of(12.25, 12.25, Unit::inch));
}

TEST_CASE("lengths in millimetres") {
    CHECK(made_of(305, 3050, Unit::mm) == DigitSlip::tenfold);
    CHECK(made_of(305, 30.5, Unit::mm) == DigitSlip::tenfold);
    CHECK(made_of(305, 350, Unit::mm) == DigitSlip::transposed);
    CHECK(made_of(305, 295, Unit::mm) == DigitSlip::inch_off);
    CHECK(made_of(305, 605, Unit::mm) == DigitSlip::wrong_key);
    CHECK(made_of(305, 35, Unit::mm) == DigitSlip::lost_digit);
}

TEST_CASE("every meant length is there once, above nothing, and has a weight") {
    for (const double typed : {0.5, 1.0, 9.875, 12.0, 100.0, 11.6875}) {
        const std::vector<MeantLength> all = meant_lengths({typed * 25.4}, Unit::inch);
        CHECK(all.size() > 10);
        for (std::size_t i = 0; i < all.size(); ++i) {
            INFO(typed << " for " << all[i].length.inch());
            CHECK(all[i].length.mm > 0);
            CHECK(all[i].weight > 0);
            CHECK(std::count_if(all.begin(), all.end(), [&](const MeantLength& m) { return std::abs(m.length.mm - all[i].length.mm) < 0.01; }) == 1);
        }
    }
}
