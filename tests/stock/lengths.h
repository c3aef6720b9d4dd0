#pragma once
// Whole millimetres, for shops whose sums are easily followed.

#include "stock/exact_length.h"

namespace tubewright {

inline ExactLength mm(int millimetres) { return {1000 * millimetres}; }

}  // namespace tubewright
