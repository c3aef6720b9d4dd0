#pragma once
// What the shop book holds, as one short text.

#include <string>
#include <vector>

#include "state/work.h"

namespace tubewright {

/// Equal where all of it is, undo steps too.
std::string digest_of(const Work& work, const Settings& settings, const std::vector<UndoStep>& past);

}  // namespace tubewright
