#pragma once
// The route as it was measured on the machine, before any bender is known.

#include <Eigen/Core>
#include <vector>

#include "base/quantity.h"

namespace tubewright {

/// The edge of the tube that the tape touched at every corner.
enum class TapeEdge { centre, outside, inside };

/// How far the tube turns at a bend, and how that bend's plane lies against the one before.
/// `rotation` is right-handed about the direction from A to B; 0 goes on round the same way,
/// 180 turns the opposite way. Bend 1's is 0; of a tube that is saved after it was inked it is against the index line.
struct Bend {
    Angle angle;
    Angle rotation;
    bool operator==(const Bend&) const = default;
};

enum class RouteForm { legs, straights, points, moves };

/// n + 1 runs and n bends, from A to B.
struct Route {
    RouteForm form = RouteForm::legs;            ///< how it was given; points and moves hold legs to the centre here
    TapeEdge measured_to = TapeEdge::centre;     ///< for legs
    std::vector<Length> runs;                    ///< legs from corner to corner, or straights between tangent points
    std::vector<Bend> bends;
    bool operator==(const Route&) const = default;
};

/// The legs and bends through these ends and corners, in mm. At least two points, neighbours apart.
/// A corner that turns by less than tolerance::no_bend stays a bend of exactly 0 degrees, so that
/// numbers keep to the points given; its rotation is 0 and the next bend's is against the last real one.
/// Rotations are the signed angles between the planes' normals, right-handed about the leg between.
Route route_through(const std::vector<Eigen::Vector3d>& points_mm, RouteForm form);

}  // namespace tubewright
