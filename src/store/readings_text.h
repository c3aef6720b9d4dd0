#pragma once
// What was read of a tube's bends besides their angles, as it stands in the shop book among the line's ticks: no tick has a
// space in it, and every book has a place for them.

#include <string>
#include <vector>

#include "state/work.h"

namespace tubewright {

/// "turns 2 1 88.5; 3 2 -90" and "tapes 0 3 2 412.75"; none where nothing was read.
std::vector<std::string> reading_ticks(const LineWork& line);
/// Whether it was one of them. Throws BookTrouble where this program did not write it.
bool read_reading_tick(const std::string& tick, LineWork& line);

}  // namespace tubewright
