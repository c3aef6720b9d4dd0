#pragma once
// What is written out of the rack and its plan: tables for paper and for spreadsheets.

#include "present/word_table.h"
#include "state/state.h"

namespace tubewright {

/// Which length is cut into what, and what to buy, as the reader's tape has it. Empty where there is no plan.
std::vector<WordTable> plan_tables(const State& state);

/// Scrap, what lies on the rack, and the balance of each tube, for a spreadsheet: the title is what the file is called, the
/// heads name the unit, and lengths are in mm to the micrometre.
std::vector<WordTable> shop_tables(const State& state);

}  // namespace tubewright
