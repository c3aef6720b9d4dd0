#pragma once
// The slips that people make when they measure a wire and enter it, and what would have been meant.

#include <optional>
#include <vector>

#include "bench/digit_slips.h"
#include "tube/touch_points.h"

namespace tubewright {

enum class SlipKind {
    bend_other_way,    ///< this bend alone goes the opposite way; those past it go on turning to the sides they did
    rest_other_way,    ///< from this bend on everything is turned by half a turn
    turn_mirrored,     ///< the bend's rotation has the wrong sign; the rest turns with it
    turn_alone,        ///< the same, but the planes past it lie as they did
    quarter_turn,      ///< a rotation read a quarter off
    complement,        ///< 90 - angle: 30 for 60
    supplement,        ///< 180 - angle: the angle between the legs, 135 for 45
    bends_swapped,     ///< angles of this bend and the next
    legs_swapped,      ///< this leg and the next
    wrong_edge,        ///< legs taped to another edge of the tube than was said
    move_reversed,     ///< of a route of moves: one the opposite way, up for down
    moves_swapped,     ///< this move and the next in the wrong order
    length,            ///< a length slipped: see Slip::digits
    mirrored,          ///< every rotation has the wrong sign: read from the wrong end
    ends_swapped       ///< entered from B to A
};

struct Slip {
    SlipKind kind;
    std::optional<std::size_t> bend, leg;  ///< from 0; of two swapped, the first
    std::optional<DigitSlip> digits;
    Route meant;    ///< the route without the slip
    double weight;  ///< how often, in a thousand lines
};

/// Every single slip that could have led to this route, most by kind and place; weights are given for each place,
/// so that a long line has more of them. Where moves or points were entered nobody entered an angle or a rotation. What `meant` makes may be the same shape for several.
std::vector<Slip> plausible_slips(const Wire& wire, Unit unit);

}  // namespace tubewright
