#pragma once
// The user's own jobs: a folder of job files, each saved whole after every touch. Nothing in it is ever lost to a
// save: no file is written over that we did not read or write last ourselves.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/draft.h"
#include "store/library.h"
#include "store/refusal.h"
#include "store/save.h"

namespace tubewright {

struct JobFolders {
    std::filesystem::path shipped;  ///< never written to
    std::filesystem::path own;      ///< made when the first job is kept
};

/// The file that a job being entered lies in.
struct JobInHand {
    std::filesystem::path path = {};  ///< empty: a new job, not kept yet
    std::string bytes = {};           ///< of the file, as we last read or wrote them
};

struct OpenedJob {
    JobInHand hand;
    Draft draft;
};

/// The job as it stands in the file, to be gone on with.
Result<OpenedJob, Refusal> open_to_enter(const std::filesystem::path& path, const Library& library);

struct KeptJob {
    JobInHand hand;    ///< for the next time
    std::string said;  ///< one sentence where it did not go where the person thinks; else empty
};

/// One sentence: why it is not kept. What was on disk is untouched.
struct NotKept { std::string sentence; };

/// Keeps the job:
/// - a new one gets a file of its own, named after the job;
/// - one that was shipped is kept as a copy among the user's own;
/// - one whose file was meanwhile changed by someone else, as by another window, is kept beside it under a new
///   name, with a sentence that says so, and stays with that name.
/// What the file says already is not written again. What could not be read back is not kept.
Result<KeptJob, NotKept> keep_job(Disk& disk, const JobFolders& folders, const JobInHand& hand, const Draft& draft, const Library& library);

/// What a job of this name is called as a file, without folder and ending: lower case letters, digits and
/// hyphens; "job" where nothing is left.
std::string file_name_for(const std::string& job_name);

}  // namespace tubewright
