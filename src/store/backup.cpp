#include "store/backup.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <tuple>

#include "store/database.h"
#include "store/folder_lock.h"
#include "store/home_files.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

// SQLite takes no more than 1,000,000,000 bytes at once. Jobs and lists have some thousands, a book of years some millions.
constexpr std::uintmax_t largest_kept_file = 200'000'000, largest_backup = 900'000'000;
constexpr const char* backup_ending = ".backup";

NotBackedUp failed_backup(const std::string& why) { return {"The backup is not made: " + why}; }
NotBackedUp refused_backup(const std::string& why) { return {"The backup is not made: " + why, true}; }

/// From the disk and not from what the system remembers of writing it, where it lets go of that.
std::optional<std::string> read_back(const fs::path& path, std::uintmax_t most) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) return std::nullopt;
    if (struct stat about{}; ::fstat(file, &about) != 0 || static_cast<std::uintmax_t>(about.st_size) > most) {
        ::close(file);
        return std::nullopt;
    }
    (void)::posix_fadvise(file, 0, 0, POSIX_FADV_DONTNEED);
    std::string bytes;
    ssize_t got = 0;
    constexpr std::size_t piece = 1 << 20;
    do {
        const std::size_t before = bytes.size();
        bytes.resize(before + piece);
        got = ::read(file, bytes.data() + before, piece);
        bytes.resize(before + static_cast<std::size_t>(std::max<ssize_t>(got, 0)));
    } while (got > 0 && bytes.size() <= most);
    ::close(file);
    if (got != 0) return std::nullopt;
    return bytes;
}

/// Written by a backup that was cut short; nobody else has such names.
void clear_half_written(Disk& disk, const fs::path& folder) {
    std::vector<fs::path> left;
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == ".new" && at->path().stem().extension() == backup_ending) left.push_back(at->path());
    for (const fs::path& path : left) disk.remove(path);
}

fs::path free_backup_name(const fs::path& folder, const std::string& stem) {
    fs::path path = folder / (stem + backup_ending);
    for (int number = 2; is_taken(path); ++number) path = folder / (stem + "-" + std::to_string(number) + backup_ending);
    return path;
}

/// The number behind the day in its name.
int number_of(const FoundBackup& found) {
    const std::string stem = found.path.stem().string();
    const std::size_t at = found.day.empty() ? stem.npos : stem.rfind(found.day + "-");
    int number = 1;
    if (at != stem.npos) std::from_chars(stem.data() + at + found.day.size() + 1, stem.data() + stem.size(), number);
    return number;
}

FoundBackup looked_at(const fs::path& path) {
    FoundBackup found{path};
    std::error_code ignored;
    found.bytes = fs::file_size(path, ignored);
    const auto bytes = bytes_of_backup(path);
    const auto backup = bytes.ok() ? backup_from(bytes.value()) : Result<Backup, BackupTrouble>(bytes.trouble());
    if (!backup.ok()) {
        found.trouble = "The backup " + path.filename().string() + " " + backup.trouble().why + ".";
        return found;
    }
    found.day = backup.value().day;
    found.number = number_of(found);
    found.files = backup.value().files.size();
    return found;
}

Gathered gathered(const fs::path& home, const std::string& day, const ShopBook* book) {
    Gathered all{{day, {}, {}}, {}};
    const std::string in_use = book ? book->path().filename().string() : "";
    std::uintmax_t together = 0;
    for (const std::string& name : persons_files(home)) {
        if (book && name == in_use + "-journal") continue;
        const bool is_it = book && name == in_use;
        auto bytes = is_it ? std::optional(book->bytes()) : read_back(home / name, largest_kept_file);
        if (bytes) together += bytes->size();
        if (!bytes || bytes->size() > largest_kept_file || together > largest_backup) all.left_out.push_back(name);
        else all.backup.files.push_back({name, std::move(*bytes), is_it});
    }
    return all;
}

Result<fs::path, NotBackedUp> write_checked(Disk& disk, const fs::path& path, const Backup& backup, const std::string& bytes) {
    const fs::path beside = path.string() + ".new";
    if (!disk.write_and_flush(beside, bytes)) return failed_backup("there is no room or no permission to write in " + path.parent_path().string() + ".");
    const auto again = read_back(beside, bytes.size());
    const auto read = again && *again == bytes ? backup_from(*again) : Result<Backup, BackupTrouble>(BackupTrouble{"reads back otherwise than it was written: do not trust this disk or stick"});
    if (!read.ok() || read.value() != backup) {
        disk.remove(beside);
        return failed_backup(path.string() + " " + (read.ok() ? "reads back otherwise" : read.trouble().why) + ".");
    }
    if (!disk.rename_over(beside, path)) return failed_backup(path.string() + " can't be given its name.");
    return path;
}

}  // namespace

Result<std::string, BackupTrouble> bytes_of_backup(const fs::path& file) {
    std::error_code ignored;
    if (!fs::is_regular_file(file, ignored)) return BackupTrouble{"is no file that is there"};
    auto bytes = read_back(file, largest_backup * 11 / 10);
    if (!bytes) return BackupTrouble{"can't be read, or is larger than any backup"};
    return std::move(*bytes);
}

Result<Gathered, NotBackedUp> gather(const fs::path& home, const std::string& day, const ShopBook* book) {
    try {
        const fs::path path = book_path(home, youngest_book(home));
        if (book || !is_taken(path)) return gathered(home, day, book);
        const auto opened = ShopBook::open(path);
        if (!opened.ok() && opened.trouble().in_use) return refused_backup("the shop book " + path.string() + " is in use by another window; close that first.");
        return gathered(home, day, opened.ok() ? &opened.value() : nullptr);
    } catch (const DatabaseTrouble& trouble) {
        return failed_backup("the shop book can't be read (" + trouble.words + ").");
    }
}

Result<fs::path, NotBackedUp> write_backup(Disk& disk, const fs::path& folder, const std::string& beginning, const Backup& backup) {
    std::error_code trouble;
    fs::create_directories(folder, trouble);
    if (trouble) return failed_backup("the folder " + folder.string() + " can't be made (" + trouble.message() + ").");
    const auto lock = FolderLock::taken(folder);
    if (!lock) return refused_backup("another window is writing in " + folder.string() + " and does not get done.");
    clear_half_written(disk, folder);
    try {
        return write_checked(disk, free_backup_name(folder, beginning + "-" + backup.day), backup, backup_bytes(backup));
    } catch (const DatabaseTrouble& wrong) {
        return failed_backup("it does not fit into memory (" + wrong.words + ").");
    }
}

Result<BackupMade, NotBackedUp> make_backup(Disk& disk, const BackupWish& wish, const ShopBook* book) {
    std::error_code ignored;
    if (!wish.to.empty() && !fs::is_directory(wish.to, ignored)) return refused_backup("there is no folder " + wish.to.string() + ".");
    auto all = gather(wish.home, wish.day, book);
    if (!all.ok()) return all.trouble();
    auto [backup, left_out] = std::move(all).value();
    if (backup.files.empty()) return refused_backup("there is nothing of yours in " + wish.home.string() + " yet.");
    BackupMade made{{}, backup.files.size(), std::move(left_out)};
    for (const fs::path& folder : {wish.home / "backups", wish.to}) {
        if (folder.empty()) continue;
        auto written = write_backup(disk, folder, "tubewright", backup);
        if (!written.ok() && made.written.empty()) return written.trouble();
        if (!written.ok()) return NotBackedUp{"There is a backup in " + made.written[0].string() + ", but not in " + folder.string() + ": " + written.trouble().sentence};
        made.written.push_back(std::move(written).value());
    }
    return made;
}

std::vector<FoundBackup> backups_in(const fs::path& folder) {
    std::vector<FoundBackup> found;
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == backup_ending) found.push_back(looked_at(at->path()));
    std::sort(found.begin(), found.end(), [](const FoundBackup& one, const FoundBackup& other) {
        return std::tie(one.day, one.number, one.path) > std::tie(other.day, other.number, other.path);
    });
    return found;
}

}  // namespace tubewright
