#pragma once
// What a tape can prove of the bent tube before it leaves the bench, without template or vehicle.

#include <map>
#include <optional>
#include <vector>

#include "bench/sheet.h"

namespace tubewright {

/// One leg as a tape reads it: from the cut end, or from the outside of one bend's corner, to the outside
/// of the next bend's corner or the other cut end. The ends are as cut: neither trimmed nor flared yet, so
/// that allowance and trim are in the reading. Bends count from 0.
struct TapeLeg {
    std::optional<std::size_t> after, before;  ///< the bends at its two corners; none at the end of the tube
    Length outside;
    bool operator==(const TapeLeg&) const = default;
};

/// Bends, from 0, and what the protractor said of them. The others count as made to their target.
using AsMeasured = std::map<std::size_t, Angle>;

/// The part with its bends at the angles measured. A bend starts where its hook side lies on the mark, so
/// the tube that a wider or narrower arc takes comes off, or goes to, the straight on its lever side.
Part part_as_measured(const Sheet& sheet, const AsMeasured& measured);

/// Legs between bends that are made, from A to B, measured with a straight block held along the outside of
/// the neighbouring legs: leg to the centre + od/2 tan(angle/2) at each corner. A corner sharper than 120
/// degrees lies too far from the tube to be touched so; its legs are left out. The sheet has a layout.
std::vector<TapeLeg> tape_legs(const Sheet& sheet, const AsMeasured& measured = {});

/// From cut end A to cut end B, straight across, centre to centre; the ends neither trimmed nor flared yet.
Length straight_across(const Sheet& sheet, const AsMeasured& measured = {});

}  // namespace tubewright
