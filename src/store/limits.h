#pragma once
// How far numbers in files may go. Our choice: well beyond what anyone bends by hand, so that a slip of
// a decimal point or a unit is caught at the door. In mm where nothing else is said.

#include <cstddef>

#include "bench/card_limits.h"
#include "tube/route_limits.h"

namespace tubewright::limits {

inline constexpr double longest_allowance = 1000;
inline constexpr double longest_trim = 10000;
inline constexpr double bender_reach = card_limits::reach;      ///< offsets and straights of a bender
inline constexpr double bench_reach = card_limits::body_reach;  ///< places of solids that the tube may run into
inline constexpr std::size_t most_lines = 1000;

}  // namespace tubewright::limits
