#pragma once
// All that is the person's in one file, read back and checked before it is called done.

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/backup_file.h"
#include "store/save.h"

namespace tubewright {

class ShopBook;

/// One sentence.
struct NotBackedUp {
    std::string sentence;
    bool refused = false;  ///< by what was given or stands in the way, before anything was written; else the disk failed
};

struct BackupWish {
    std::filesystem::path home;     ///< the user's folder
    std::string day;                ///< such as 2026-11-29
    std::filesystem::path to = {};  ///< a folder that is there, such as a stick's, for a second copy; empty: none
};

struct BackupMade {
    std::vector<std::filesystem::path> written;  ///< in the home's backups, then in `to`
    std::size_t files = 0;
    std::vector<std::string> left_out = {};      ///< files that can't be read, or are larger than any of ours
};

/// Writes everything of the person's as tubewright-DAY.backup, or -2 and so on where that is taken, into `backups` in the
/// home and into `to`. It has its name only once what was written has been read back from the disk, as far as the system lets
/// go of it, and every checksum and the book in it were looked at. `book` is the open one; none: it is opened for the
/// moment, and where that can't be done because it is damaged it is kept as it is, and where it is in use that is refused.
Result<BackupMade, NotBackedUp> make_backup(Disk& disk, const BackupWish& wish, const ShopBook* book);

struct FoundBackup {
    std::filesystem::path path;
    std::string day = {};
    int number = 1;          ///< of its day: tubewright-2026-11-29-2.backup is the second
    std::size_t files = 0;
    std::uintmax_t bytes = 0;
    std::string trouble = {};  ///< one sentence: why it can't be gone back to
};
/// Every .backup file of the folder, the youngest first. Each is read through to its end.
std::vector<FoundBackup> backups_in(const std::filesystem::path& folder);

// --- for going back, in store/restore
struct Gathered {
    Backup backup;
    std::vector<std::string> left_out;
};
Result<Gathered, NotBackedUp> gather(const std::filesystem::path& home, const std::string& day, const ShopBook* book);
/// As `beginning`-DAY.backup in the folder, which is made where it is missing.
Result<std::filesystem::path, NotBackedUp> write_backup(Disk& disk, const std::filesystem::path& folder, const std::string& beginning, const Backup& backup);
/// Of a file that is no larger than any backup of ours.
Result<std::string, BackupTrouble> bytes_of_backup(const std::filesystem::path& file);

}  // namespace tubewright
