#pragma once
// A lever bender of our own simple making: grooved form, hook over the tube, lever with follower.

#include <vector>

#include "bench/stance.h"
#include "scene/mesh.h"

namespace tubewright {

/// Where things of the bender lie. All in mm; the frame is the bender's: origin at the hook-side tangent
/// point, `stand` turns it to the operator.
struct BenderShape {
    Stance stand;
    double radius, od;
    double hook_back;     ///< from the tangent point back to the hook's middle
    double mark_offset;   ///< of the reference mark in use
    Eigen::Vector3d front() const;   ///< the side that is turned to the operator: up, or toward
    Eigen::Vector3d place(double along, double swing, double front_side) const;
    /// The same place once the lever has gone this far about the form's centre.
    Eigen::Vector3d swung(const Eigen::Vector3d& place, Angle lever) const;
    Eigen::Vector3d lever_grip() const;  ///< the middle of the grip, lever at 0
    double reach_of_grip() const;        ///< of that place, from the form's centre
};

/// Everything but its foot, lever at 0.
std::vector<Mesh> bender_solids(const BenderShape& shape);

/// What carries the form, down to the bench top.
std::vector<Mesh> bender_foot(const BenderShape& shape, double bench_top_z);

/// An arrow round the form's centre where the grip goes, from lever angle `from` to `to`.
std::vector<Mesh> sweep_arrow(const BenderShape& shape, Angle from, Angle to);

}  // namespace tubewright
