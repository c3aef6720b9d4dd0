#pragma once
// Job files: from a person's text to lines with everything looked up, or one sentence why not.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/draft.h"
#include "bench/line.h"
#include "store/library.h"
#include "store/refusal.h"

namespace tubewright {

/// The job in this file. Its units, names and numbers are checked and everything is looked up in `library`,
/// so that what comes back needs no further look; the first thing that does not fit is the refusal. A job
/// with an unfinished line is refused as a whole.
Result<Job, Refusal> read_job(const std::filesystem::path& path, const Library& library);

/// The same from the file's text; `file` is what a refusal calls it.
Result<Job, Refusal> read_job_text(const std::string& text, const std::string& file, const Library& library);

/// The same from a draft, for which a refusal stands as for the file of that name.
Result<Job, Refusal> job_from(const Draft& draft, const std::string& file, const Library& library);

/// One line of a draft as it would come out of its job, whatever the others still lack. `index` counts from 0.
/// That the person is not yet through with it does not matter here, only that all of it can be worked out.
Result<Line, Refusal> line_from(const Draft& draft, std::size_t index, const std::string& file, const Library& library);

}  // namespace tubewright
