#pragma once
// The bender's frame as the operator sees it. Operator: x = right, y = away, z = up.

#include <Eigen/Core>

#include "base/quantity.h"
#include "bench/bender.h"

namespace tubewright {

/// Unit vectors in the operator's frame: `axis` along the straight tube from hook side to lever
/// side, `swing` where the lever bends it, `normal` = axis x swing.
struct Stance {
    Eigen::Vector3d axis, swing, normal;
};
Stance stance(const SetUp& set_up);

/// Where a side of the tube with this roll faces. Roll: right-handed about the axis, from the swing.
Eigen::Vector3d facing(const Stance& stance, Angle roll);

/// A direction across the tube in the operator's words: one or two of up, down, away, toward.
/// `main` is the word it is nearest to; `also` is empty when it is within tolerance::same_direction of main.
enum class Way { up, down, away, toward };
struct Pointing {
    Way main;
    bool slanted = false;  ///< whether `also` counts
    Way also = Way::up;
    bool operator==(const Pointing&) const = default;
};
Pointing pointing(const Stance& stance, Angle roll);

/// The word for the side that roll +90 faces, and for the swing itself.
Way way_of(const Eigen::Vector3d& direction);

}  // namespace tubewright
