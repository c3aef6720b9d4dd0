#pragma once
// The finished part: straights between tangent points, and bends of one radius.

#include <vector>

#include "base/quantity.h"
#include "tube/route.h"

namespace tubewright {

/// n + 1 straights and n bends, measured end to measured end, from A to B. A straight is negative
/// where the route leaves no room for its bends.
struct Part {
    std::vector<Length> straights;
    std::vector<Bend> bends;
    Length radius;  ///< of every bend, to the tube's centre, after springback
    bool operator==(const Part&) const = default;
};

/// From a bend's tangent point to its corner. angle < 180.
Length setback(Length radius, Angle angle);

/// From the centre-line corner to the outside or inside corner, along the leg: od/2 * tan(angle/2).
Length edge_shift(Length od, Angle angle);

/// The part that follows the route with bends of this radius on tube of this diameter. Every corner
/// of a corner form is at most tolerance::sharpest_corner.
Part part_from(const Route& route, Length finished_radius, Length od);

/// Length of the centre line between the measured ends.
Length centreline_length(const Part& part);

/// Which way bend i turns in the tube's own cross-section: the sum of the rotations up to it (`bend` counts from 0),
/// right-handed about A to B, from the index line; -180 < x <= 180.
Angle direction_in_section(const Part& part, std::size_t bend);

}  // namespace tubewright
