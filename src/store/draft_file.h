#pragma once
// Job files as they stand while they are being entered: from text to a draft, with every value checked, or
// one sentence why not. A line that says "unfinished": true may still lack things; what it has has to be right.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/draft.h"
#include "store/library.h"
#include "store/refusal.h"

namespace tubewright {

/// Materials, fittings and benders have to be in `library`; `file` is what a refusal calls the text.
Result<Draft, Refusal> read_draft_text(const std::string& text, const std::string& file, const Library& library);
Result<Draft, Refusal> read_draft(const std::filesystem::path& path, const Library& library);

}  // namespace tubewright
