#pragma once
// The bare tube as it is bought.

#include <string>

#include "base/quantity.h"

namespace tubewright {

/// Round tube. `material` is the id of a material, such as "stainless-304".
struct Tube {
    Length od;    ///< outside diameter
    Length wall;  ///< wall thickness, less than half of od
    std::string material;
    bool operator==(const Tube&) const = default;
};

}  // namespace tubewright
