#pragma once
// Whether one stretch of the part comes too close to another.

#include <Eigen/Core>
#include <optional>

#include "tube/part.h"

namespace tubewright {

/// Least distance between the straight lines from a to b and from c to d; either may be a point.
double segment_distance(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& c, const Eigen::Vector3d& d);

/// The closest approach of two stretches that are not neighbours along the tube. Stretches count
/// straight 0, bend 1, straight 1, ... : 2k is the straight after bend k, 2k - 1 is bend k.
struct Approach {
    std::size_t first, second;
    Length gap;  ///< surface to surface; negative where they run through each other
};

/// Closest approach, counting only places that are further apart along the tube than it takes to turn
/// back on itself; nothing where no two places come within `within` of each other (surface to surface).
std::optional<Approach> closest_approach(const Part& part, Length od, Length within);

}  // namespace tubewright
