#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

#include "store/save.h"

namespace tubewright {
namespace {

/// A file descriptor that is closed again whatever happens.
struct Open {
    int fd;
    Open(const std::filesystem::path& path, int flags) : fd(::open(path.c_str(), flags | O_CLOEXEC, 0644)) {}
    ~Open() { if (fd >= 0) ::close(fd); }
    Open(const Open&) = delete;
    Open& operator=(const Open&) = delete;
};

bool write_all(int fd, const std::string& bytes) {
    for (std::size_t done = 0; done < bytes.size();) {
        const ssize_t wrote = ::write(fd, bytes.data() + done, bytes.size() - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) return false;
        done += static_cast<std::size_t>(wrote);
    }
    return true;
}

void flush_folder_of(const std::filesystem::path& path) {
    const Open directory(path.has_parent_path() ? path.parent_path() : ".", O_RDONLY | O_DIRECTORY);
    if (directory.fd >= 0) (void)::fsync(directory.fd);
}

}  // namespace

bool RealDisk::write_and_flush(const std::filesystem::path& path, const std::string& bytes) {
    const Open file(path, O_WRONLY | O_CREAT | O_TRUNC);
    if (file.fd < 0) return false;
    if (write_all(file.fd, bytes) && ::fsync(file.fd) == 0) return true;
    ::unlink(path.c_str());
    return false;
}

bool RealDisk::rename_over(const std::filesystem::path& from, const std::filesystem::path& to) {
    if (::rename(from.c_str(), to.c_str()) != 0) {
        ::unlink(from.c_str());
        return false;
    }
    // The new file stands in its place by now. That its folder could not be flushed, as on some network
    // disks, only means that a power cut could still bring the old one back, whole.
    flush_folder_of(to);
    return true;
}

bool RealDisk::remove(const std::filesystem::path& path) {
    if (::unlink(path.c_str()) != 0) return errno == ENOENT || errno == ENOTDIR;
    flush_folder_of(path);
    return true;
}

Result<Saved, DiskTrouble> save_whole(Disk& disk, const std::filesystem::path& path, const std::string& bytes) {
    const std::filesystem::path beside = path.string() + ".new";
    if (!disk.write_and_flush(beside, bytes)) return DiskTrouble{CouldNotWrite{path.filename().string()}};
    if (!disk.rename_over(beside, path)) return DiskTrouble{CouldNotReplace{path.filename().string()}};
    return Saved{};
}

bool is_taken(const std::filesystem::path& path) {
    std::error_code ignored;
    return std::filesystem::exists(std::filesystem::symlink_status(path, ignored));
}

std::string sentence(const DiskTrouble& trouble) {
    struct Say {
        std::string operator()(const CouldNotWrite& t) const { return "No room or no permission to write " + t.file + "; what was there is untouched."; }
        std::string operator()(const CouldNotReplace& t) const { return t.file + " was written beside, but could not be put in its place."; }
    };
    return std::visit(Say{}, trouble);
}

}  // namespace tubewright
