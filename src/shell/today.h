#pragma once
// The one place where the calendar is asked.

#include <string>

namespace tubewright {

/// Here and now, such as 2026-11-25.
std::string today();

}  // namespace tubewright
