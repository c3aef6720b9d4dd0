#pragma once
// Published limits and names that belong to the bare tube.

#include <optional>

#include "base/quantity.h"

namespace tubewright {

/// The dash number of a tube: its outside diameter in sixteenths of an inch; none where it is no
/// whole number of them. Source: FAA-H-8083-30, chapter 7; TM 1-1500-204-23-2, table 4-9.
std::optional<int> dash_number(Length od);

/// The smallest diameter that a flattened bend may have: 75 % of the outside diameter.
/// Source: FAA-H-8083-30, chapter 7, Tube Bending.
Length least_flattened(Length od);

/// Strain of the fibre on the outside of a bend: OD / (2 R). Geometry of a bent round bar.
double outer_strain(Length od, Length radius);

}  // namespace tubewright
