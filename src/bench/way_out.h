#pragma once
// What would make a line possible that has no order of bends: single changes, each tried by searching again.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity.h"
#include "bench/bender.h"

namespace tubewright {

/// Straights count from end A: 0 lies before bend 0, the last one after the last bend.
struct LongerStraight {
    std::size_t straight;
    Length by;
    bool operator==(const LongerStraight&) const = default;
};
struct ShorterStraight {
    std::size_t straight;
    Length by;
    bool operator==(const ShorterStraight&) const = default;
};
/// Every straight between two bends, each by that much.
struct LongerBetween {
    Length by;
    bool operator==(const LongerBetween&) const = default;
};
/// The bend made to another angle, the route's runs as they are.
struct OtherAngle {
    std::size_t bend;
    Angle from, to;
    bool operator==(const OtherAngle&) const = default;
};
struct OtherSetUp {
    SetUp set_up;
    bool operator==(const OtherSetUp&) const = default;
};
struct OtherBender {
    std::size_t bender;    ///< place in the list that was given
    std::string name = {}; ///< on its card
    bool operator==(const OtherBender&) const = default;
};
/// Only the order that was asked for is impossible; the line is not.
struct FreeOrderOfWork {
    bool operator==(const FreeOrderOfWork&) const = default;
};
using WayOut = std::variant<FreeOrderOfWork, OtherSetUp, LongerStraight, ShorterStraight, LongerBetween, OtherAngle, OtherBender>;

}  // namespace tubewright
