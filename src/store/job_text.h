#pragma once
// From a draft to the text of its job file.

#include <string>

#include "bench/draft.h"

namespace tubewright {

/// The file that read_draft_text reads back as the same draft: keys in one order, one thing a line, numbers in
/// the fewest digits, x- keys and cards as they stood. A line that is not finished says "unfinished": true,
/// whether or not the person has said so.
std::string text_of(const Draft& job);

/// The text of the name of a service in a file.
const char* name_of(Service service);

}  // namespace tubewright
