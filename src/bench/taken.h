#pragma once
// What was taped and seen on a wire to prove its entry, and what of that is kept with the line.

#include <optional>
#include <string>
#include <vector>

#include "base/kept_keys.h"
#include "tube/touch_points.h"

namespace tubewright {

struct TapeReading {
    Span span;
    Length read;
    bool operator==(const TapeReading&) const = default;
};

/// Distances never tell a shape from its mirror image; this does. Look along the leg between the two bends, from A's side
/// to B's, the wire rolled so that the leg before it hangs straight down: does the leg past it go to the left?
struct HandQuestion {
    std::size_t before, bend;  ///< the bends at the two ends of the leg looked along, from 0; none that bends between them
    Angle clock;               ///< where the leg past it goes, clockwise from straight down as looked at; -180 < x <= 180
    bool left;                 ///< as entered
    double clearness;          ///< 0: flat, nothing to see; 1: square corners, a quarter turn
};

/// What was seen at these two bends.
struct HandAnswer {
    std::size_t before, bend;
    bool left;
    bool operator==(const HandAnswer&) const = default;
};

/// Readings taken so far and the answer, if it was asked for.
struct Taken {
    std::vector<TapeReading> readings = {};
    std::optional<HandAnswer> hand = {};
    std::vector<Span> out_of_reach = {};  ///< where the person could not hold a tape: not asked for again
    bool operator==(const Taken&) const = default;
};

/// What is kept with a line. Of another wire than the one that is entered now it proves nothing.
struct LineProof {
    std::string wire;                 ///< wire_mark() of the wire as it was entered
    Taken taken = {};
    std::vector<Span> twice = {};     ///< readings that were taped a second time
    std::size_t wanted = 0;           ///< so many readings are asked for; 0: two, and a third unless they name a slip
    bool hand_passed = false;         ///< the person could not say
    KeptKeys kept = {};
    bool operator==(const LineProof&) const = default;
};

/// The wire's numbers, to 0.01 mm and 0.01 degree, in a few letters: equal for equal wires, and for others as good as
/// never.
std::string wire_mark(const Wire& wire);

}  // namespace tubewright
