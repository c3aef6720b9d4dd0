#pragma once
// The few things we ask of SQLite; each throws DatabaseTrouble where it can't. Only for use inside store.

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "store/book_rows.h"

struct sqlite3;

namespace tubewright {

/// Why SQLite could not: which of the cases a person can do something about, and its own words.
struct DatabaseTrouble {
    enum class Kind { in_use, damaged, full, other } kind;
    std::string words;  ///< SQLite's own
};

/// A database that is in no file: these bytes as they would be one, or an empty one. They are copied.
struct InMemory { std::string_view bytes = {}; };

/// One open database file; closed when it goes.
class Database {
public:
    explicit Database(InMemory copy_of);
    explicit Database(const std::filesystem::path& path);  ///< made where it is not there
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    void run(const std::string& statements);  ///< one or more, their rows thrown away
    /// The first column of the first row; 0, or no text, where there is none of that kind.
    std::int64_t number(const std::string& query);
    std::string text(const std::string& query);
    std::string bytes();     ///< the whole file as it would be with what was run
    /// One statement with the cells in its places, and the bytes in the last one as they are.
    void put_bytes(const std::string& statement, const Row& cells, const std::string& bytes);
    bool read_only() const;  ///< the file can be read but not written

    /// The whole table: each row's keys, and the rest of the row. Bytes come as text does.
    TableRows rows(const TableShape& table);
    /// Makes the table hold `now` where it held `was`: first all that goes, then all that comes.
    void take_out(const TableShape& table, const TableRows& was, const TableRows& now);
    void put_in(const TableShape& table, const TableRows& was, const TableRows& now);

private:
    sqlite3* db_ = nullptr;
};

}  // namespace tubewright
