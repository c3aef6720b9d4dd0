#include "store/folder_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

namespace tubewright {
namespace {

// A save takes some milliseconds; on a slow card some tenths of a second.
constexpr int tries = 100;
constexpr useconds_t between_tries = 20000;  // microseconds

}  // namespace

std::optional<FolderLock> FolderLock::taken(const std::filesystem::path& folder) {
    FolderLock lock(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    for (int i = 0; i < tries; ++i) {
        if (::flock(lock.directory_, LOCK_EX | LOCK_NB) == 0 || (errno != EWOULDBLOCK && errno != EINTR)) return lock;
        ::usleep(between_tries);
    }
    return std::nullopt;
}

FolderLock::FolderLock(FolderLock&& other) noexcept : directory_(std::exchange(other.directory_, -1)) {}

FolderLock::~FolderLock() {
    if (directory_ >= 0) ::close(directory_);  // which unlocks it
}

}  // namespace tubewright
