#pragma once
// What was read of a tube of which some bends are made. Bends count from 0.

#include <vector>

#include "bench/taken.h"
#include "bench/tape_check.h"

namespace tubewright {

/// How far the plane of a made bend lies round from that of the made bend before it, `against`: right-handed about A to B. By an
/// angle gauge on the legs, seen along the tube between the two. What is bent between them later turns neither.
struct TurnReading {
    std::size_t bend = 0, against = 0;
    Angle read;
    bool operator==(const TurnReading&) const = default;
};

/// Straight through the air between touch points: the ends as cut, corners on the outside. Of the tube as it was when so many
/// steps were made.
struct MadeTape {
    TapeReading tape;
    std::size_t steps = 0;
    bool operator==(const MadeTape&) const = default;
};

struct MadeReadings {
    AsMeasured angles;               ///< by the protractor
    std::vector<TurnReading> turns;
    std::vector<MadeTape> tapes;
};

}  // namespace tubewright
