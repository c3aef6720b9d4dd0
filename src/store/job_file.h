#pragma once
// Job files: from a person's text to lines with everything looked up, or one sentence why not.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/line.h"
#include "store/library.h"
#include "store/refusal.h"

namespace tubewright {

/// The job in this file. Its units, names and numbers are checked and everything is looked up in `library`,
/// so that what comes back needs no further look; the first thing that does not fit is the refusal.
Result<Job, Refusal> read_job(const std::filesystem::path& path, const Library& library);

/// The same from the file's text; `file` is what a refusal calls it.
Result<Job, Refusal> read_job_text(const std::string& text, const std::string& file, const Library& library);

}  // namespace tubewright
