#pragma once
// Job files: from a person's text to lines with everything looked up, or one sentence why not.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/line.h"
#include "store/library.h"
#include "store/refusal.h"

namespace tubewright {

Result<Job, Refusal> read_job(const std::filesystem::path& path, const Library& library);

/// `file` is what a refusal calls it.
Result<Job, Refusal> read_job_text(const std::string& text, const std::string& file, const Library& library);

}  // namespace tubewright
