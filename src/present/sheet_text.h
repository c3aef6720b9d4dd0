#pragma once
// The bend sheet on paper or in a terminal, to be read at arm's length.

#include <string>

#include "bench/checklist.h"
#include "bench/sheet.h"
#include "present/text.h"

namespace tubewright {

/// What to cut, one row for each step in the order of work, findings, cautions. The tape's unit may
/// differ from the job's.
std::string sheet_text(const Job& job, const Sheet& sheet, const Checklists& lists, const Tape& tape);

}  // namespace tubewright
