#pragma once
// What a hand might touch next on its way through a job over and over: mostly onwards, now and then wrong, back, or undone.

#include <random>

#include "state/state.h"

namespace tubewright {

/// By what is on the screen; of a line in hand, else of the job's first.
Action random_touch(std::mt19937& dice, const State& state);

}  // namespace tubewright
