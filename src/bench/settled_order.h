#pragma once
// An order that is settled: what speaks against it when the bender is stood another way.

#include <vector>

#include "bench/sheet.h"

namespace tubewright {

/// What is in the way of the steps from `first_step` on, made in the sheet's order as its bender stands: one finding
/// for each bend. A stop where the bender could stand so that all of them are free, else a caution: then there is
/// nothing to wait for. Nothing for a line of more than most_bends_looked_at bends. `new_measures`: the bender's card has been
/// changed since the order was settled; then a note says where nothing is in the way.
std::vector<Finding> settled_findings(const Sheet& sheet, std::size_t first_step, bool new_measures = false);

/// Among the sheet's findings, stops first.
void add_finding(Sheet& sheet, Finding finding);

}  // namespace tubewright
