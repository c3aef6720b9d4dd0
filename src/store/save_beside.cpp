#include "store/save_beside.h"

#include "store/folder_lock.h"

namespace tubewright {

Result<std::filesystem::path, NotWritten> save_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::string& extension, const std::string& what, const std::string& bytes) {
    std::error_code trouble;
    std::filesystem::create_directories(folder, trouble);
    if (trouble) return NotWritten{what + ": the folder " + folder.string() + " can't be made (" + trouble.message() + ")."};
    const auto lock = FolderLock::taken(folder);
    if (!lock) return NotWritten{what + ": another window is saving in " + folder.string() + " and does not get done."};
    std::filesystem::path path = folder / (name + extension);
    for (int number = 2; is_taken(path); ++number) path = folder / (name + "-" + std::to_string(number) + extension);
    if (const auto saved = save_whole(disk, path, bytes); !saved.ok()) return NotWritten{sentence(saved.trouble())};
    return path;
}

}  // namespace tubewright
