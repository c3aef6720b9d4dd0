#pragma once
// Numbers as they go into a file: in as few digits as read back to exactly the same number, so that what was
// typed as 6.5 stays 6.5.

#include <string>

#include "base/quantity.h"
#include "base/words.h"

namespace tubewright {

/// The shortest decimal for a finite number; never -0.
std::string typed(double value);
std::string typed(Angle angle);

/// In the file's unit: the shortest decimal that is read to exactly this length. Not every length in mm is some
/// decimal of inches times 25.4; of those that are not, the nearest that is, a hair of some 1e-16 away.
std::string typed(Length length, Unit unit);

/// The factor from a file's unit to mm.
constexpr double mm_in(Unit unit) { return unit == Unit::inch ? 25.4 : 1.0; }

}  // namespace tubewright
