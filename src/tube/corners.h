#pragma once
// The ends and corners of a part's centre line: where the lines of neighbouring straights would meet.

#include <optional>
#include <vector>

#include "tube/centreline.h"

namespace tubewright {

/// End A, the corner of each bend, end B, in mm; end A at `start`, as for centreline(). None where a bend is too
/// sharp to have a corner (tolerance::sharpest_corner).
std::optional<std::vector<Eigen::Vector3d>> corners(const Part& part, const Frame& start = {});

}  // namespace tubewright
