#pragma once
// How far the numbers of a route, and of the tube it is bent of, may go. Our choice: well beyond what anyone bends by hand, so that a slip
// of a decimal point or a unit is caught at the door. In mm where nothing else is said.

#include <cstddef>

namespace tubewright::limits {

inline constexpr double longest_run = 100000;   ///< a leg, a straight, a coordinate: 100 m
inline constexpr double points_apart = 0.001;   ///< nearer ones are the same point
inline constexpr double most_rotation = 360;    ///< degrees, either way round
inline constexpr std::size_t most_bends = 200;
inline constexpr double least_od = 0.5, most_od = 100;
inline constexpr double least_wall = 0.05;

}  // namespace tubewright::limits
