#pragma once
// Compares a whole screen, printed, with the file next to the tests.

#include "present/expect_text.h"
#include "present/screen_view.h"
#include "present/view_text.h"

namespace tubewright {

inline void expect_screen(const std::string& name, const State& state) { expect_text(name, as_text(screen_view(state))); }

}  // namespace tubewright
