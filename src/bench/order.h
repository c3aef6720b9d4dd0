#pragma once
// In which order the bends are made, and which end is held for each.

#include <vector>

#include "bench/bender.h"
#include "bench/layout.h"

namespace tubewright {

/// One bend's turn on the bender. `bend` counts from 0.
struct Placing {
    std::size_t bend;
    End hook;
    bool operator==(const Placing&) const = default;
};

/// Straight tube at both sides of a bend when its turn comes, up to the nearest bend already made
/// or to the tube's end.
struct Room {
    Length hook, lever;
    bool hook_at_end, lever_at_end;  ///< whether that side runs to the tube's end
    bool operator==(const Room&) const = default;
};
Room room_for(const Layout& layout, const std::vector<Placing>& order, std::size_t step);

/// The order of work: begins near the middle, goes outward over adjoining bends to one end, then
/// from the middle to the other, so that the formed part is held in the hook and the end that
/// swings is still straight. Among such orders the one with the least missing straight, then the
/// fewest swaps end for end, then the start nearest the tube's middle. Bends of 0 degrees are left out.
std::vector<Placing> default_order(const Layout& layout, const Bender& bender);

}  // namespace tubewright
