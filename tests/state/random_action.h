#pragma once
// Any action there is, with likely and unlikely contents; dice with a fixed seed.

#include <random>

#include "state/sample_state.h"

namespace tubewright {

Action random_action(std::mt19937& dice, const State& state);

}  // namespace tubewright
