#pragma once
// Back to a backup, in two steps that a power cut can't spoil. begin_restore() checks everything, keeps what is there in a
// backup of its own, and puts the backup that is gone back to into the home as `restoring.backup`, whole, by one rename:
// that is the point of no return. finish_restore() writes the files of it one by one, each beside and renamed over, and takes
// it away at the end. Cut short, it is done again from its beginning at the next start, before anything is opened.

#include <filesystem>
#include <optional>
#include <string>

#include "base/result.h"
#include "store/backup.h"

namespace tubewright {

/// One sentence.
struct NotRestored {
    std::string sentence;
    bool refused = false;  ///< nothing was touched; else the disk failed
    std::string why = {};  ///< of one that is begun and could not be finished: what stands in the way
};

struct RestoreBegun {
    std::filesystem::path before;  ///< the backup of what was there: to restore it is to take the restore back
};

/// Afterwards the book has to be closed and finish_restore() called, or the program started again. What the backup has comes
/// back. What it does not have stays, but for other shop books: the youngest one would be opened. `book` as for make_backup().
Result<RestoreBegun, NotRestored> begin_restore(Disk& disk, const std::filesystem::path& home, const std::string& day, const std::filesystem::path& file, const ShopBook* book);

/// Whether one waits to be finished. To be asked once more when the book is open: one may have begun since.
bool is_restore_begun(const std::filesystem::path& home);

struct RestoreFinished {
    std::string day;        ///< of the backup
    std::size_t files = 0;  ///< that came back
    std::string given_up;   ///< one sentence where it could not be gone on with: restoring.backup itself was damaged, and is laid aside
};

/// Nothing where none was begun. Where it can't be finished, the book must not be opened: the next start finishes it, and
/// what was done meanwhile would be gone.
Result<std::optional<RestoreFinished>, NotRestored> finish_restore(Disk& disk, const std::filesystem::path& home);

}  // namespace tubewright
