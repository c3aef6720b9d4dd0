#pragma once
// The screen that belongs to a state.

#include "present/views.h"

namespace tubewright {

struct State;

/// Pure; whole in itself. Every disabled button says why, every enabled one can be pressed, no id twice.
ScreenView screen_view(const State& state);

}  // namespace tubewright
