#pragma once
// The outline of one bend laid flat, at full size.

#include <vector>

#include "base/quantity.h"
#include "paper/page.h"

namespace tubewright {

/// A bend between two legs. Frame of its paths: the bend starts at the origin, the leg before it comes from the left, it turns
/// upwards; y counts downwards as on paper.
struct FlatBend {
    Length radius;  ///< to the tube's centre
    Angle angle;    ///< 0 to 360
    Length leg;     ///< of both
};

/// What runs along the tube `inward` of its centre line: half the diameter is the inside edge, minus half the outside.
std::vector<Spot> path_of(const FlatBend& bend, Length inward);
/// The same without the leg before the bend.
std::vector<Spot> path_from_start(const FlatBend& bend, Length inward);

/// The card to be cut out: the inside edge, closed on the side that the bend turns to. A flat bend's gets some width
/// there, so that there is a card at all.
std::vector<Spot> card_of(const FlatBend& bend, Length inward);

/// The longest legs up to `wanted` that don't run into each other where the bend turns by more than half a turn.
Length legs_for(Length radius, Angle angle, Length od, Length wanted);

bool is_inside(const std::vector<Spot>& path, Spot spot);

struct Bounds {
    Spot least, most;
};
Bounds bounds_of(const std::vector<Spot>& path);

}  // namespace tubewright
