#pragma once
// One bend carried out at a bender with some bends already made, apart from the program: the tube is walked outwards from
// the bend in hand to either end with rotation matrices, as points, and each point is measured against each solid of
// the bender's card.

#include <cstdint>
#include <string>
#include <vector>

#include "bench/sheet.h"

namespace bench_world {

/// What came of it. Gaps from surface to surface, in mm: the least over everything that was looked at.
struct Replay {
    double hook_straight, lever_straight;  ///< straight tube beside the bend, up to a made bend or the tube's end
    double gap = 1e9;                      ///< to a solid, with the tube lying in the bender, swung, and while the lever goes back
    std::string nearest;                   ///< that solid
    double own_gap = 1e9;                  ///< of the tube to itself; places near along it left out
    bool comes_in = false, goes_out = false;  ///< along some straight way, with more than `room` everywhere
};

/// `room`: what a way in or out has to keep free.
Replay replay(const tubewright::Sheet& sheet, std::uint64_t made, const tubewright::Placing& placing, double room);

/// All steps of an order, one after the other.
std::vector<Replay> replay(const tubewright::Sheet& sheet, const std::vector<tubewright::Placing>& order, double room);

}  // namespace bench_world
