#pragma once
// The jobs there are: those shipped with the program and the user's own.

#include <filesystem>
#include <string>
#include <vector>

#include "store/library.h"

namespace tubewright {

/// One job file. Either it has lines, or `trouble` is the one sentence that says why it can't be opened.
struct FoundJob {
    std::string id;    ///< the file's name without folder and ending
    std::string path;
    std::string name;  ///< the job's own; the id where it can't be read
    std::vector<std::string> lines;
    std::string trouble;
    std::vector<int> quantities = {};  ///< pieces asked of each line
    bool unfinished = false;           ///< it can't be bent yet, but it can be gone on with entering
    bool operator==(const FoundJob&) const = default;
};

/// By id. A folder that is not there holds nothing. Of two files of one name, that of `user_jobs_dir` counts.
std::vector<FoundJob> read_shelf(const std::filesystem::path& shipped_jobs_dir, const std::filesystem::path& user_jobs_dir, const Library& library);

/// One file as it would stand on the shelf.
FoundJob found_job(const std::filesystem::path& path, const Library& library);

}  // namespace tubewright
