#pragma once
// Which way the tube is turned wrongly, where it is.

#include "bench/sheet.h"

namespace tubewright {

/// Where the leg past the neighbouring bend would lie: at the mirrored roll. In one plane with the bend in hand that is the same, and
/// the usual mistake is the other side, a U in place of a Z. None where there is no neighbour.
std::optional<Angle> wrong_leg_roll(const Step& step);

}  // namespace tubewright
