#pragma once
// The shop book: an SQLite file that holds what was done, so that a program killed at any instant
// opens again at the same move of the same bend.

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "state/work.h"
#include "store/save.h"

namespace tubewright {

/// Why the book can't be used, in one sentence. Where it could not be opened, the file is as it was.
struct BookTrouble {
    std::string sentence;
    bool in_use = false;  ///< by another program: it is good, and will be free again
};

struct BookPages {
    Work work;
    Settings settings;
    std::vector<UndoStep> past = {};  ///< oldest first
    bool operator==(const BookPages&) const = default;
};

/// What speaks against bytes as a shop book that this program could open, such as "is damaged (...)"; empty where nothing does.
std::string trouble_in_book(const std::string& bytes);

/// An open book. It belongs to this program alone until it is closed.
class ShopBook {
public:
    /// Makes a new one where there is none; its folder has to be there.
    static Result<ShopBook, BookTrouble> open(const std::filesystem::path& path);

    /// As last saved.
    BookPages read() const;
    /// The whole file as last saved, fit to stand as a book of its own. Throws DatabaseTrouble where the disk does not give it.
    std::string bytes() const;
    std::filesystem::path path() const;

    /// What changed since the last save, in one transaction that is on the disk when this returns. Where
    /// it can't be written, the book holds what it held before. Of the past the last `undo_kept` steps are
    /// kept; a step that has the number of one already saved is that one.
    Result<Saved, BookTrouble> save(const Work& work, const std::vector<UndoStep>& past);
    Result<Saved, BookTrouble> save_settings(const Settings& settings);

    ShopBook(ShopBook&&) noexcept;
    ShopBook& operator=(ShopBook&&) noexcept;
    ~ShopBook();

private:
    struct Inside;
    explicit ShopBook(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

}  // namespace tubewright
