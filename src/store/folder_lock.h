#pragma once
// One window at a time: while this stands, no other window of the program changes files in the folder.

#include <filesystem>
#include <optional>

namespace tubewright {

class FolderLock {
public:
    /// Waits a moment for another window that is just saving; none where that one does not get done. Where the
    /// disk knows no locks there is nothing to wait for. The system takes the lock back from a program that is
    /// killed, and leaves no file behind.
    static std::optional<FolderLock> taken(const std::filesystem::path& folder);

    FolderLock(FolderLock&& other) noexcept;
    FolderLock& operator=(FolderLock&&) = delete;
    ~FolderLock();

private:
    explicit FolderLock(int directory) : directory_(directory) {}
    int directory_;
};

}  // namespace tubewright
