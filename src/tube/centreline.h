#pragma once
// The part's centre line in space.

#include <Eigen/Core>
#include <vector>

#include "tube/part.h"

namespace tubewright {

/// A place on the tube: where it is (mm), which way A to B runs there, and which side carries the
/// index line. `along` and `aside` are unit vectors at right angles.
struct Frame {
    Eigen::Vector3d at = Eigen::Vector3d::Zero();
    Eigen::Vector3d along = Eigen::Vector3d::UnitX();
    Eigen::Vector3d aside = Eigen::Vector3d::UnitY();
};

/// `aside` turned about `along`, right-handed: the direction of a side of the tube.
Eigen::Vector3d side(const Frame& frame, Angle turned);

/// Straight on by `length`, which may be negative.
Frame gone_straight(const Frame& frame, Length length);

/// Round a bend whose centre lies at `direction` from the index line, keeping the tube untwisted.
//   along the old direction  = R sin(a)
//   towards the centre       = R (1 - cos(a))
Frame gone_round(const Frame& frame, Length radius, Angle angle, Angle direction);

/// One straight or one bend of the centre line.
struct Stretch {
    Frame start;
    Length length;         ///< along the centre line
    Angle angle;           ///< 0 for a straight
    Angle direction;       ///< of a bend, in the tube's section
    Length radius;         ///< of a bend
    int bend = -1;         ///< which bend, from 0; -1 for a straight
};

/// Straight 0, bend 0, straight 1, ... straight n, beginning with `start` at measured end A: as made
/// up of 2n + 1 stretches. Bend 1 turns towards start.aside.
std::vector<Stretch> centreline(const Part& part, const Frame& start = {});

/// The place `length` into a stretch.
Frame frame_in(const Stretch& stretch, Length length);

/// Measured end B, when measured end A is `start`.
Frame far_end(const Part& part, const Frame& start = {});

}  // namespace tubewright
