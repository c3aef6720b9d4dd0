#pragma once
// The way to plans of which nearly every length comes out even: with many short cuts there are too many patterns to list, but
// few of them leave next to nothing.

#include "stock/plan_search.h"

namespace tubewright {

/// Makes the search's plan better or its bound higher, or both. False where there are too many kinds or combinations of cuts.
bool improve_by_close_fits(PlanSearch& search, PlanSteps& steps);

}  // namespace tubewright
