#pragma once
// The bend sheet's machine form.

#include <string>
#include <vector>

#include "bench/sheet.h"

namespace tubewright {

/// One object, in the job's unit, with full precision; bends count from 1. `messages` are the findings'
/// sentences, in their order. Where the line can't be laid out, cut_length is null and there are no steps.
/// `indent` below 0 puts all on one line.
std::string sheet_json(const Job& job, const Sheet& sheet, const std::vector<std::string>& messages, int indent = 2);

/// Several lines of a job as one list.
std::string sheets_json(const Job& job, const std::vector<Sheet>& sheets, const std::vector<std::vector<std::string>>& messages, int indent = 2);

}  // namespace tubewright
