#pragma once
// The second way to the best plan, for where the search from piece to piece does not get to its end: how often each
// pattern is cut, as a linear program in whole numbers (branch and bound on the dual simplex method).

#include "stock/plan_search.h"

namespace tubewright {

/// More patterns than this are left to the first way.
inline constexpr std::size_t most_patterns = 10'000;

/// False where there are too many patterns; nothing is changed then.
/// Makes the search's plan better or its bound higher, or both, with what patience is left. The bounds are reckoned in floating point, as
/// a general solver does it, with a slack of half a micrometre of waste or a millionth of a stick.
bool improve_by_patterns(PlanSearch& search, PlanSteps& steps);

}  // namespace tubewright
