#pragma once
// In which order the bends are made, and which end is held for each.

#include <optional>
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

/// Straight tube that the bender needs on one side of a bend: what it holds, and where that side runs to the tube's end
/// the pieces slid on there, which must not come to lie under hook or follower.
Length straight_needed(const Bender& bender, bool hook_side, Length pieces_at_end);

/// Whether this bend is one to be made: it turns by at least tolerance::no_bend.
bool is_made(const Bend& bend);

/// The bend to be made that comes next from `bend` towards that end; none where the tube's end comes first.
std::optional<std::size_t> next_towards(const Part& part, std::size_t bend, End end);

/// Whether the leg beyond this bend points to a side, seen along the straight before it. That of a U-turn, or of
/// hardly any bend, runs along that straight: nothing can be turned against it.
bool leg_has_side(const Bend& bend);

/// The bend that this one is turned against: on an adjoining straight, made already, its leg with a side. Of two
/// the one on the hook side: it lies still while the lever moves. None where it is turned against the index line.
std::optional<std::size_t> turned_against(const Part& part, const std::vector<bool>& made, const Placing& placing);

/// Lines of more bends than this are not looked at: neither for the best order nor for what is in the tube's way.
inline constexpr std::size_t most_bends_looked_at = 64;

/// The order of work: begins at one bend, goes outward over adjoining bends to one end, then from
/// there to the other, so that the formed part is held in the hook and the end that swings is still
/// straight; where that side is too short, the other end is held. Among such orders the one with the
/// least missing straight, then the start nearest the tube's middle, then the fewest swaps end for end.
/// Bends of 0 degrees are left out.
std::vector<Placing> default_order(const Layout& layout, const Bender& bender);

}  // namespace tubewright
