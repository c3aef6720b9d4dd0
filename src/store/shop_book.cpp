#include "store/shop_book.h"

#include <array>
#include <fstream>
#include <optional>

#include "store/book_rows.h"
#include "store/database.h"
#include "store/refusal.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

constexpr std::uint32_t our_id = 0x54756265;  // "Tube"
const std::array<const char*, 6> steps{book_version_1, book_version_2, book_pieces, book_version_4, book_version_5, book_version_6};  // step n makes version n + 1 out of version n
constexpr std::uint32_t newest = steps.size();

/// Throws what comes after "The shop book ... ".
[[noreturn]] void refuse(const std::string& why) { throw BookTrouble{why}; }

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

constexpr std::size_t header_length = 100;

/// The file's first bytes. Offsets are from the SQLite file format, section 1.3.
void look_at_header(const std::string& bytes) {
    if (bytes.size() < header_length || bytes.compare(0, 16, std::string("SQLite format 3\0", 16)) != 0) refuse("is no shop book but some other file");
    if (big_endian(bytes, 68) != our_id) refuse("is another program's database");
    const std::uint32_t version = big_endian(bytes, 60);
    if (version > newest)
        refuse("is of format " + std::to_string(version) + ", from a newer version of the program; this one knows up to " + std::to_string(newest));
}

/// Looks at the file's first bytes, so that what is not ours is not even opened: opening a database may
/// already change it.
void look_before_opening(const fs::path& path) {
    std::error_code ignored;
    const fs::file_status status = fs::status(path, ignored);
    if (status.type() == fs::file_type::not_found) return;
    if (status.type() == fs::file_type::none) refuse("can't be opened: no permission to look into its folder");
    if (status.type() != fs::file_type::regular) refuse("is no plain file");
    std::ifstream in(path, std::ios::binary);
    if (!in) refuse("can't be opened: no permission to read it");
    std::string bytes(header_length, '\0');
    in.read(bytes.data(), header_length);
    if (in.gcount() == 0) return;  // made, but nothing written yet
    // The very first save was cut short: all zeros, with a journal beside it that SQLite rolls back.
    if (bytes.find_first_not_of('\0') == bytes.npos && fs::exists(path.string() + "-journal", ignored)) return;
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    look_at_header(bytes);
}

/// Whether there was anything to do.
bool bring_up_to_date(Database& database) {
    const std::int64_t version = database.number("PRAGMA user_version");
    for (std::int64_t step = version; step < newest; ++step) database.run(steps.at(static_cast<std::size_t>(step)));
    if (version == newest) return false;
    database.run("PRAGMA application_id = " + std::to_string(our_id) + "; PRAGMA user_version = " + std::to_string(newest));
    return true;
}

/// All of an older book, to be kept beside under its version: the program that wrote it can't read what it becomes.
/// Nothing for a new book, and for one of today.
struct OlderBook {
    fs::path kept;
    std::string bytes;
};
std::optional<OlderBook> older_book(Database& database, const fs::path& path) {
    const std::int64_t version = database.number("PRAGMA user_version");
    if (version == 0 || version >= newest) return std::nullopt;
    return OlderBook{path.string() + ".version-" + std::to_string(version), database.bytes()};
}

void keep_beside(const OlderBook& older) {
    RealDisk disk;
    if (!save_whole(disk, older.kept, older.bytes).ok()) refuse("is of an older format, and no copy of it can be written beside it");
}

/// Writes what stands there already: a book that can't be written, in a folder that takes no journal for instance, is
/// to be refused when it is opened and not at the first touch.
void try_to_write(Database& database) { database.run("PRAGMA user_version = " + std::to_string(newest)); }

void check_whole(Database& database) {
    const std::string said = database.text("PRAGMA quick_check(1)");
    if (said != "ok") refuse("is damaged (" + in_short(said) + ")");
    if (!database.text("PRAGMA foreign_key_check").empty()) refuse("is damaged (an entry belongs to no line)");
}

std::string in_words(const DatabaseTrouble& trouble) {
    using Kind = DatabaseTrouble::Kind;
    switch (trouble.kind) {
        case Kind::in_use: return "is in use by another program";
        case Kind::damaged: return "is damaged (" + trouble.words + ")";
        case Kind::full: return "has no room left on its disk";
        case Kind::other: break;
    }
    return "can't be used (" + trouble.words + ")";
}

BookTrouble not_opened(const fs::path& path, const std::string& why) {
    return {"The shop book " + path.string() + " " + why + "; it is left as it is."};
}

BookTrouble not_opened(const fs::path& path, const DatabaseTrouble& trouble) {
    BookTrouble said = not_opened(path, in_words(trouble));
    said.in_use = trouble.kind == DatabaseTrouble::Kind::in_use;
    return said;
}

BookTrouble not_saved(const fs::path& path, const std::string& why) {
    return {"The shop book " + path.string() + " " + why + "; the last change is not in it, all before it is."};
}

}  // namespace

std::string trouble_in_book(const std::string& bytes) {
    try {
        look_at_header(bytes);
        Database database(InMemory{bytes});
        check_whole(database);
        return "";
    } catch (const BookTrouble& trouble) {
        return trouble.sentence;
    } catch (const DatabaseTrouble& trouble) {
        return in_words(trouble);
    }
}

struct ShopBook::Inside {
    fs::path path;
    Database database;
    BookRows rows;  // as they are on the disk
    Settings settings;

    explicit Inside(const fs::path& file) : path(file), database(file) {
        // Exclusive: two programs that each write what they remember would undo each other's work.
        database.run("PRAGMA locking_mode = EXCLUSIVE; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; BEGIN EXCLUSIVE");
        if (database.read_only()) refuse("may be read but not written");
        check_whole(database);
        const auto older = older_book(database, path);
        const bool changed = bring_up_to_date(database);
        rows = BookRows(book_tables().size());
        for (std::size_t i = 0; i < book_tables().size(); ++i) rows[i] = database.rows(book_tables()[i]);
        settings = pages_of(rows).settings;
        try_to_write(database);
        if (older) keep_beside(*older);
        database.run(changed ? "COMMIT" : "ROLLBACK");
        database.run("PRAGMA journal_mode = DELETE");
    }

    void write(BookRows now) {
        const BookRows &was = rows, &is = now;  // to look only: nothing that is shared is copied
        if (is == was) return;
        database.run("BEGIN IMMEDIATE");
        try {
            const auto& tables = book_tables();
            for (std::size_t i = tables.size(); i-- > 0;)
                if (!is.shares(i, was)) database.take_out(tables[i], was[i], is[i]);
            for (std::size_t i = 0; i < tables.size(); ++i)
                if (!is.shares(i, was)) database.put_in(tables[i], was[i], is[i]);
            database.run("COMMIT");
        } catch (const DatabaseTrouble&) {
            try { database.run("ROLLBACK"); } catch (const DatabaseTrouble&) {}  // it may have rolled back by itself
            throw;
        }
        rows = std::move(now);
    }

    Result<Saved, BookTrouble> save(BookRows next) {
        try {
            write(std::move(next));
            return Saved{};
        } catch (const DatabaseTrouble& trouble) {
            return not_saved(path, in_words(trouble));
        }
    }
};

ShopBook::ShopBook(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
ShopBook::ShopBook(ShopBook&&) noexcept = default;
ShopBook& ShopBook::operator=(ShopBook&&) noexcept = default;
ShopBook::~ShopBook() = default;

Result<ShopBook, BookTrouble> ShopBook::open(const fs::path& path) {
    try {
        look_before_opening(path);
        return ShopBook(std::make_unique<Inside>(path));
    } catch (const BookTrouble& trouble) {
        return not_opened(path, trouble.sentence);
    } catch (const DatabaseTrouble& trouble) {
        return not_opened(path, trouble);
    }
}

std::string ShopBook::bytes() const { return inside_->database.bytes(); }

fs::path ShopBook::path() const { return inside_->path; }

BookPages ShopBook::read() const { return pages_of(inside_->rows); }

Result<Saved, BookTrouble> ShopBook::save(const Work& work, const std::vector<UndoStep>& past) {
    return inside_->save(rows_of(work, inside_->settings, past, inside_->rows));
}

Result<Saved, BookTrouble> ShopBook::save_settings(const Settings& settings) {
    BookRows next = inside_->rows;
    put_settings(settings, next);
    auto saved = inside_->save(std::move(next));
    if (saved.ok()) inside_->settings = settings;
    return saved;
}

}  // namespace tubewright
