#pragma once
// How an end of the tube is finished, and what has to be on the tube first.

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"

namespace tubewright {

/// A loose piece that is slid on before the end is finished, in this order from the tube's middle
/// towards the end. `facing` says which way round, for the person who holds it.
struct SlideOn {
    std::string id, name, facing;
    Length length;  ///< along the tube
    bool operator==(const SlideOn&) const = default;
};

struct Fitting {
    std::string id, name;
    bool flared = false;
    Length allowance;        ///< tube used beyond the measured end
    Length straight_needed;  ///< from the finished end to the first bend
    std::optional<Length> heaviest_wall;  ///< for the flare; none where no limit is known
    std::string wall_source;
    std::vector<SlideOn> slide_on;
    std::vector<std::string> advice;  ///< sentences for the person finishing the end
    bool operator==(const Fitting&) const = default;
};

/// Tube that the pieces cover when they are pushed together up to the end.
Length stack_length(const Fitting& fitting);

}  // namespace tubewright
