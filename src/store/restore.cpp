#include "store/restore.h"

#include <set>

#include "store/folder_lock.h"
#include "store/home_files.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

fs::path marker_in(const fs::path& home) { return home / "restoring.backup"; }

NotRestored not_begun(const std::string& why) { return {"Nothing is restored: " + why, true}; }
NotRestored not_finished(const std::string& why) { return {"The restore is begun but not finished: " + why + ". Start the program again to finish it.", false, why}; }

Result<Backup, BackupTrouble> read_backup(const fs::path& file, std::string& bytes) {
    auto read = bytes_of_backup(file);
    if (!read.ok()) return read.trouble();
    bytes = std::move(read).value();
    return backup_from(bytes);
}

std::set<std::string> names_in(const Backup& backup) {
    std::set<std::string> names;
    for (const KeptFile& file : backup.files) names.insert(file.name);
    return names;
}

bool is_journal(const std::string& name) {
    const std::string journal = "-journal";
    return name.ends_with(journal) && is_book(name.substr(0, name.size() - journal.size()));
}

/// What has to go: other shop books, what the backup says was not there, and journals: one that is left of another book would be
/// played back into the one that takes its place.
std::vector<std::string> to_go(const Backup& backup, const fs::path& home) {
    std::vector<std::string> gone = backup.absent;
    const std::set<std::string> stays = names_in(backup);
    for (const std::string& name : persons_files(home))
        if ((is_book(name) || is_journal(name)) && !stays.contains(name)) gone.push_back(name);
    return gone;
}

/// What is there now, with what the restore is going to add as absent.
Result<Backup, NotRestored> present_state(const fs::path& home, const std::string& day, const Backup& wanted, const ShopBook* book) {
    auto all = gather(home, day, book);
    if (!all.ok()) return NotRestored{all.trouble().sentence, all.trouble().refused};
    auto [now, left_out] = std::move(all).value();
    std::set<std::string> touched = names_in(wanted);
    for (const std::string& name : to_go(wanted, home)) touched.insert(name);
    for (const std::string& name : left_out)
        if (touched.contains(name)) return not_begun((home / name).string() + " would be replaced, but can't be kept: it can't be read or is too large.");
    const std::set<std::string> there = names_in(now);
    for (const KeptFile& file : wanted.files)
        if (!there.contains(file.name)) now.absent.push_back(file.name);
    return now;
}

bool write_back(Disk& disk, const fs::path& home, const KeptFile& file) {
    const fs::path path = home / file.name;
    std::error_code ignored;
    fs::create_directories(path.parent_path(), ignored);
    return save_whole(disk, path, file.bytes).ok();
}

Result<Saved, NotRestored> write_all_back(Disk& disk, const fs::path& home, const Backup& backup) {
    const auto write_those = [&](bool journals) -> Result<Saved, NotRestored> {
        for (const KeptFile& file : backup.files)
            if (is_journal(file.name) == journals && !write_back(disk, home, file)) return not_finished("there is no room or no permission to write " + (home / file.name).string());
        return Saved{};
    };
    {
        // Nobody works in the book that goes. One that can't be opened for another reason is what one goes back for.
        const fs::path path = book_path(home, youngest_book(home));
        const auto held = is_taken(path) ? std::optional(ShopBook::open(path)) : std::nullopt;
        if (held && !held->ok() && held->trouble().in_use) return not_finished("the shop book " + path.string() + " is in use by another window");
        for (const std::string& name : to_go(backup, home))
            if (!disk.remove(home / name)) return not_finished((home / name).string() + " can't be taken away");
        if (const auto written = write_those(false); !written.ok()) return written.trouble();
    }
    return write_those(true);  // a book that is closed takes its journal away, by its name
}

Result<std::optional<RestoreFinished>, NotRestored> give_up(Disk& disk, const fs::path& home, const std::string& why) {
    const fs::path marker = marker_in(home), aside = marker.string() + ".damaged";
    if (!disk.rename_over(marker, aside)) return not_finished(marker.string() + " " + why + " and can't be renamed");
    return std::optional(RestoreFinished{"", 0, "The restore that was cut short can't be finished: " + marker.string() + " " + why + ". What was there before it is in the backups folder, under before-restore."});
}

}  // namespace

bool is_restore_begun(const fs::path& home) { return is_taken(marker_in(home)); }

Result<RestoreBegun, NotRestored> begin_restore(Disk& disk, const fs::path& home, const std::string& day, const fs::path& file, const ShopBook* book) {
    std::string bytes;
    const auto wanted = read_backup(file, bytes);
    if (!wanted.ok()) return not_begun("the backup " + file.string() + " " + wanted.trouble().why + ".");
    std::error_code trouble;
    fs::create_directories(home, trouble);
    if (trouble) return not_begun("the folder " + home.string() + " can't be made (" + trouble.message() + ").");
    const auto lock = FolderLock::taken(home);
    if (!lock) return not_begun("another window is restoring in " + home.string() + ".");
    if (is_taken(marker_in(home))) return not_begun("another restore was begun; start the program once to finish it.");
    // Held until the backup lies there: who opens the book from then on sees that.
    const fs::path path = book_path(home, youngest_book(home));
    const auto held = book || !is_taken(path) ? std::nullopt : std::optional(ShopBook::open(path));
    if (held && !held->ok() && held->trouble().in_use) return not_begun("the shop book " + path.string() + " is in use by another window; close that first.");
    const auto now = present_state(home, day, wanted.value(), held && held->ok() ? &held->value() : book);
    if (!now.ok()) return now.trouble();
    const auto before = write_backup(disk, home / "backups", "before-restore", now.value());
    if (!before.ok()) return NotRestored{"Nothing is restored, because what is there can't be kept. " + before.trouble().sentence, before.trouble().refused};
    if (const auto saved = save_whole(disk, marker_in(home), bytes); !saved.ok()) return NotRestored{"Nothing is restored. " + sentence(saved.trouble())};
    return RestoreBegun{before.value()};
}

Result<std::optional<RestoreFinished>, NotRestored> finish_restore(Disk& disk, const fs::path& home) {
    const fs::path marker = marker_in(home);
    if (!is_taken(marker)) return std::optional<RestoreFinished>();
    const auto lock = FolderLock::taken(home);
    if (!lock) return not_finished("another window is at it");
    if (!is_taken(marker)) return std::optional<RestoreFinished>();
    std::string bytes;
    const auto backup = read_backup(marker, bytes);
    if (!backup.ok()) return give_up(disk, home, backup.trouble().why);
    if (const auto written = write_all_back(disk, home, backup.value()); !written.ok()) return written.trouble();
    if (!disk.remove(marker)) return not_finished(marker.string() + " can't be taken away");
    return std::optional(RestoreFinished{backup.value().day, backup.value().files.size(), ""});
}

}  // namespace tubewright
