#pragma once
// What speaks against the lines of a job, as a list.

#include <string>
#include <vector>

#include "bench/sheet.h"
#include "present/text.h"

namespace tubewright {

/// One line of text for each finding, under the name of its line and what its tube allows; ends with how many
/// lines can be made. Says as well where no limit is known.
std::string check_text(const Job& job, const std::vector<Sheet>& sheets, const Tape& tape);

}  // namespace tubewright
