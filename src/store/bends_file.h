#pragma once
// The log of bends as a file: written to take it along or look at it, brought in again on another machine.

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "state/work.h"
#include "store/refusal.h"
#include "store/save_beside.h"

namespace tubewright {

/// Lengths in mm, angles in degrees. Ids are the book's own and stay there.
std::string bends_text(const std::vector<LoggedBend>& bends);

/// All of them or a refusal; `file` is its name in the sentence.
Result<std::vector<LoggedBend>, Refusal> bends_from(const std::string& text, const std::string& file);
Result<std::vector<LoggedBend>, Refusal> read_bends(const std::filesystem::path& path);

/// Names of the .json files of the folder, the last name first: they begin with the day. The folder is made where it is not there yet.
std::vector<std::string> bend_files_in(const std::filesystem::path& folder);

/// Writes them under the first of name.json, name-2.json and so on that no file has, and says where.
Result<std::filesystem::path, NotWritten> write_bends_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::vector<LoggedBend>& bends);

}  // namespace tubewright
