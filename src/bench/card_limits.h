#pragma once
// How far the numbers of a bender card may go. Our choice: well beyond any hand bender, so that a slip of a
// decimal point or a unit is caught. In mm where nothing else is said.

namespace tubewright::card_limits {

inline constexpr double reach = 1000;         ///< offsets of marks and straights
inline constexpr double body_reach = 10000;   ///< places of solids
/// Of the radius, in outside diameters: at half of one the inside has no radius left; beyond fifty the
/// springback rule is out of its depth.
inline constexpr double least_radius = 0.5, most_radius = 50;
inline constexpr double most_angle = 360;     ///< degrees
inline constexpr double least_stretch = -0.1, most_stretch = 0.5;  ///< shares of a bend's length

}  // namespace tubewright::card_limits
