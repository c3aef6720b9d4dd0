#pragma once
// How the tube in hand can be saved, as it was worked out for the screen that shows it.

#include "bench/more_to_read.h"
#include "bench/still_good.h"

namespace tubewright {

struct RescueLook {
    Rescue found;
    std::optional<Angle> reading;    ///< of the bend in hand, which counts as made; none: all that are made are written down
    std::vector<std::size_t> made;   ///< bends, in the order of work
    Sheet sheet;                     ///< that was to be gone on with
    Part wanted;                     ///< by the job
    TubePlan as_it_is;               ///< the tube gone on with as planned
    StillGood good;                  ///< what it is good for where it can't be saved; lines count as in the job
    EndTolerance tolerance;
    std::optional<TubePlan> pulled;  ///< with the bend in hand pulled on to its target, where it is under and the lever can go so far
    EndsOff pulled_off;              ///< what is off then
    MoreToRead more;
};

}  // namespace tubewright
