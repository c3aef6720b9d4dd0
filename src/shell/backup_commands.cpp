#include "shell/backup_commands.h"

#include <ostream>

#include "present/text.h"
#include "shell/print.h"
#include "store/backup.h"
#include "store/restore.h"

namespace tubewright {
namespace {

template <class Trouble>
int say_why(const Trouble& why, std::ostream& trouble) {
    trouble << why.sentence << "\n";
    return why.refused ? exit_status::refused : exit_status::broken;
}

}  // namespace

int back_up(const Places& places, const std::string& to, const std::string& day, std::ostream& out, std::ostream& trouble) {
    RealDisk disk;
    if (const auto before = finish_restore(disk, places.home); !before.ok()) return say_why(before.trouble(), trouble);
    const auto made = make_backup(disk, {places.home, day, to}, nullptr);
    if (!made.ok()) return say_why(made.trouble(), trouble);
    for (const auto& file : made.value().written) out << counted(made.value().files, "file", "files") << " backed up to " << file.string() << ", read back and checked.\n";
    for (const std::string& name : made.value().left_out) trouble << (places.home / name).string() << " is not in the backup: it can't be read, or is too large to be yours.\n";
    return made.value().left_out.empty() ? exit_status::made : exit_status::stopped;
}

int restore(const Places& places, const std::string& file, const std::string& day, std::ostream& out, std::ostream& trouble) {
    RealDisk disk;
    if (const auto before = finish_restore(disk, places.home); !before.ok()) return say_why(before.trouble(), trouble);
    const auto begun = begin_restore(disk, places.home, day, file, nullptr);
    if (!begun.ok()) return say_why(begun.trouble(), trouble);
    const auto finished = finish_restore(disk, places.home);
    if (!finished.ok()) return say_why(finished.trouble(), trouble);
    if (finished.value() && !finished.value()->given_up.empty()) {
        trouble << finished.value()->given_up << "\n";
        return exit_status::broken;
    }
    // Where there is nothing more to finish, a window that was just opening has done it.
    out << (finished.value() ? counted(finished.value()->files, "file", "files") + " restored, as of " + finished.value()->day : std::string("Restored")) << ". What was there before is in " << begun.value().before.string() << ": restore that to take this back.\n";
    return exit_status::made;
}

}  // namespace tubewright
