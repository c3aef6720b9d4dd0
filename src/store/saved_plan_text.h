#pragma once
// What a tube is to become after it was saved, as it stands in the shop book behind the plan it was cut for: so a program that
// knows nothing of saved tubes does not go on with this one by the marks it no longer has.

#include <string>

#include "state/work.h"

namespace tubewright {

/// The cell of the book: the plan, and on the next line what became of it.
std::string plan_cell(const LineWork& line);
/// Takes it apart again. Throws BookTrouble where this program did not write it.
void read_plan_cell(const std::string& cell, LineWork& line);

}  // namespace tubewright
