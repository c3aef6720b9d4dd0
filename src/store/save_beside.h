#pragma once
// A file of its own for what is written out: never over one that is there.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "store/save.h"

namespace tubewright {

/// One sentence. What was on disk is untouched.
struct NotWritten { std::string sentence; };

/// Writes `bytes` as `name` with `extension`, such as ".json", into `folder`, which is made where it is missing; where that is
/// taken, as `name`-2 and so on. `what` begins the sentence where that fails: "The bends are not written".
Result<std::filesystem::path, NotWritten> save_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::string& extension, const std::string& what, const std::string& bytes);

}  // namespace tubewright
