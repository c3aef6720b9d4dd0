#pragma once
// Where a tape can touch a route's wire, how far these points are apart, and how much each measured leg, bend and
// rotation moves that distance.

#include <Eigen/Core>
#include <vector>

#include "tube/route.h"

namespace tubewright {

/// The wire, or the old tube, that a route was measured on. The route is one that part_from() takes.
struct Wire {
    Route route;
    Length od;      ///< for legs measured to an edge
    Length radius;  ///< of its bends, to the centre; for routes given as straights
    bool operator==(const Wire&) const = default;
};

/// Two touch points, the one nearer to A first. Point 0 is end A, point i the corner of bend i (from 1), and the
/// last one end B.
struct Span {
    std::size_t from = 0, to = 0;
    auto operator<=>(const Span&) const = default;
};

/// The wire in space, in mm: A at the origin, the first leg along +X, bend 1 towards +Y.
struct WireShape {
    std::vector<Eigen::Vector3d> points;  ///< touch points, ends included: two more than bends
    std::vector<Eigen::Vector3d> along;   ///< the legs' directions from A to B
    std::vector<Eigen::Vector3d> normal;  ///< of each bend's plane: the leg before x the leg past it
    std::vector<Eigen::Vector3d> pivot;   ///< what the rest turns about when the bend's angle grows
};

/// With the corners touched on this edge. A bend sharper than tolerance::sharpest_corner has no corner; its point
/// is where the bend starts.
WireShape shape_of(const Wire& wire, TapeEdge touched);

/// Whether a tape finds the point: the ends, and corners of 5 to 120 degrees. A flatter corner can't be seen, a
/// sharper one lies too far from the tube (tolerance::sharpest_touched).
bool can_be_touched(const Route& route, std::size_t point);

Length apart(const WireShape& shape, Span span);

/// By how much the span grows for each mm of a leg, then for each rad of a bend's angle, then for each rad of a
/// bend's rotation: 3 bends + 1 numbers. To first order, edges taken as points of the centre line.
//   u = unit vector of the span, Q its far point, C what the bend turns about
//   leg:       u . along,   angle: u . (normal x (Q - C)),   rotation: u . (along x (Q - C))
// Legs and bends outside the span move nothing.
Eigen::VectorXd growth_of(const WireShape& shape, Span span);

/// The most that any distance between two touch points of the one differs from the same in the other; they have
/// equally many. Mirror images differ by nothing.
Length most_different(const WireShape& one, const WireShape& other);

}  // namespace tubewright
