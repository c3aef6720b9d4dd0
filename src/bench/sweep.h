#pragma once
// A stretch of tube that moves past something, looked at so closely that no contact is passed over.

#include <Eigen/Core>
#include <limits>
#include <optional>

#include "bench/solid.h"

namespace tubewright {

/// A motion in the bender's frame, in mm and radians (or mm, where nothing turns). At `t` the place p has come to
///   centre + turned by (turn * t) about the normal of (p - t * shift - centre), centre = (0, centre_swing, 0).
struct Motion {
    double turn = 0;
    Eigen::Vector3d shift = Eigen::Vector3d::Zero();
    double centre_swing = 0;
    double from = 0, to = 0;
    /// Of a stretch along the axis only what lies beyond this after the shift counts; the rest is on the
    /// form by then, or held.
    double only_beyond = -std::numeric_limits<double>::infinity();
};

Eigen::Vector3d moved(const Motion& motion, const Eigen::Vector3d& place, double t);

/// The capsule at `t`; none where nothing of it counts.
std::optional<Capsule> moved(const Motion& motion, const Capsule& capsule, double t);

/// The first moment at which the gap is less than tolerance::handling_room. Between two moments looked at,
/// no place moves further than what is left of the gap and tolerance::handling_step: so the gap nowhere
/// falls below the room less the step unseen.
std::optional<double> first_contact(const Capsule& moving, const PlacedSolid& still, const Motion& motion);
std::optional<double> first_contact(const Capsule& moving, const Capsule& still, const Motion& motion);

/// Whether a ball stays clear of a solid, or of another ball, by more than the room for certain, told from how far
/// both are from the centre and how high they lie. False says nothing.
bool surely_clear(const Capsule& ball, const PlacedSolid& still, const Motion& motion);
bool surely_clear(const Capsule& ball, const Capsule& still, const Motion& motion);

}  // namespace tubewright
