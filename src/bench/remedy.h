#pragma once
// What one touch can do about a finding while a line is entered: single changes, each tried on the sheet before it
// is offered.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bench/sheet.h"

namespace tubewright {

/// A corner that is none, taken out.
struct BendOut {
    std::size_t bend;
    bool operator==(const BendOut&) const = default;
};
/// Tube of the same diameter and material with this wall.
struct OtherWall {
    Length wall;
    bool operator==(const OtherWall&) const = default;
};
struct OtherFitting {
    End end;
    std::string fitting;  ///< id
    bool operator==(const OtherFitting&) const = default;
};
/// LongerStraight makes the leg longer in which the straight lies. OtherBender counts in Shop::benders.
using Remedy = std::variant<LongerStraight, BendOut, OtherBender, OtherWall, OtherFitting>;

/// What there is to take instead.
struct Shop {
    std::vector<Bender> benders;
    std::vector<Length> walls;          ///< that tube of this diameter is sold with
    std::vector<std::string> fittings;  ///< ids
    Length step;                        ///< lengths come in whole ones: what the tape shows
};

/// One for each finding of the sheet, or none where no single change takes the finding away. A longer straight or
/// another bender or wall is offered only where the sheet then lacks this finding and has fewer stops than now. A
/// longer straight makes up for all that this straight lacks, for bender and fitting alike.
std::vector<std::optional<Remedy>> remedies(const Sheet& sheet, const Shop& shop);

}  // namespace tubewright
