#include "store/database.h"

#include <sqlite3.h>

#include <cstring>
#include <memory>

namespace tubewright {
namespace {

[[noreturn]] void give_up(sqlite3* db, int code) {
    using Kind = DatabaseTrouble::Kind;
    const std::string words = db ? sqlite3_errmsg(db) : sqlite3_errstr(code);
    switch (code & 0xFF) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED: throw DatabaseTrouble{Kind::in_use, words};
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB: throw DatabaseTrouble{Kind::damaged, words};
        case SQLITE_FULL: throw DatabaseTrouble{Kind::full, words};
        default: throw DatabaseTrouble{Kind::other, words};
    }
}

class Statement {
public:
    Statement(sqlite3* db, const std::string& sql) : db_(db) {
        const int code = sqlite3_prepare_v2(db, sql.c_str(), -1, &statement_, nullptr);
        if (code != SQLITE_OK) give_up(db, code);
    }
    ~Statement() { sqlite3_finalize(statement_); }
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;

    bool step() {
        const int code = sqlite3_step(statement_);
        if (code != SQLITE_ROW && code != SQLITE_DONE) give_up(db_, code);
        return code == SQLITE_ROW;
    }
    void again() { sqlite3_reset(statement_); }

    void bind(const Row& cells, int first) {
        for (const Cell& cell : cells) {
            const int code = std::visit([&](const auto& value) { return bind_one(first, value); }, cell);
            if (code != SQLITE_OK) give_up(db_, code);
            ++first;
        }
    }

    void bind_bytes(const std::string& bytes, int at) {
        // An empty blob, and not nothing.
        const int code = sqlite3_bind_blob64(statement_, at, bytes.c_str(), bytes.size(), SQLITE_STATIC);
        if (code != SQLITE_OK) give_up(db_, code);
    }

    Row cells(int first, int count) {
        Row row;
        for (int i = first; i < first + count; ++i) row.push_back(cell(i));
        return row;
    }

    Cell cell(int i) {
        switch (sqlite3_column_type(statement_, i)) {
            case SQLITE_INTEGER: return static_cast<std::int64_t>(sqlite3_column_int64(statement_, i));
            case SQLITE_FLOAT: return sqlite3_column_double(statement_, i);
            case SQLITE_TEXT: {
                const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_, i));
                return std::string(text, static_cast<std::size_t>(sqlite3_column_bytes(statement_, i)));
            }
            case SQLITE_BLOB: {
                const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement_, i));
                return bytes ? std::string(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, i))) : std::string();
            }
            default: return {};
        }
    }

private:
    int bind_one(int at, std::monostate) { return sqlite3_bind_null(statement_, at); }
    int bind_one(int at, std::int64_t value) { return sqlite3_bind_int64(statement_, at, value); }
    int bind_one(int at, double value) { return sqlite3_bind_double(statement_, at, value); }
    int bind_one(int at, const std::string& value) {
        return sqlite3_bind_text64(statement_, at, value.data(), value.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    }

    sqlite3* db_;
    sqlite3_stmt* statement_ = nullptr;
};

std::string listed(const TableShape& table, std::size_t count, const std::string& between, const std::string& after) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) text += (i ? between : "") + table.columns[i] + after;
    return text;
}

}  // namespace

Database::Database(const std::filesystem::path& path) {
    const int code = sqlite3_open_v2(path.c_str(), &db_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
    if (code == SQLITE_OK) return;
    const std::string words = db_ ? sqlite3_errmsg(db_) : sqlite3_errstr(code);
    sqlite3_close(db_);
    throw DatabaseTrouble{DatabaseTrouble::Kind::other, words};
}

Database::Database(InMemory copy_of) {
    int code = sqlite3_open_v2(":memory:", &db_, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr);
    if (code == SQLITE_OK && !copy_of.bytes.empty()) {
        const auto size = static_cast<sqlite3_int64>(copy_of.bytes.size());
        auto* bytes = static_cast<unsigned char*>(sqlite3_malloc64(copy_of.bytes.size()));
        if (bytes) std::memcpy(bytes, copy_of.bytes.data(), copy_of.bytes.size());
        code = bytes ? sqlite3_deserialize(db_, "main", bytes, size, size, SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_READONLY) : SQLITE_NOMEM;
    }
    if (code == SQLITE_OK) return;
    sqlite3_close(db_);
    throw DatabaseTrouble{DatabaseTrouble::Kind::other, sqlite3_errstr(code)};
}

Database::~Database() { sqlite3_close(db_); }

void Database::run(const std::string& statements) {
    const int code = sqlite3_exec(db_, statements.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) give_up(db_, code);
}

std::int64_t Database::number(const std::string& query) {
    Statement statement(db_, query);
    const Cell cell = statement.step() ? statement.cell(0) : Cell();
    return std::holds_alternative<std::int64_t>(cell) ? std::get<std::int64_t>(cell) : 0;
}

std::string Database::text(const std::string& query) {
    Statement statement(db_, query);
    const Cell cell = statement.step() ? statement.cell(0) : Cell();
    return std::holds_alternative<std::string>(cell) ? std::get<std::string>(cell) : "";
}

std::string Database::bytes() {
    sqlite3_int64 size = 0;
    const std::unique_ptr<unsigned char, decltype(&sqlite3_free)> all(sqlite3_serialize(db_, "main", &size, 0), &sqlite3_free);
    if (!all) give_up(db_, SQLITE_NOMEM);
    return {reinterpret_cast<const char*>(all.get()), static_cast<std::size_t>(size)};
}

void Database::put_bytes(const std::string& sql, const Row& cells, const std::string& bytes) {
    Statement statement(db_, sql);
    statement.bind(cells, 1);
    statement.bind_bytes(bytes, static_cast<int>(cells.size()) + 1);
    statement.step();
}

bool Database::read_only() const { return sqlite3_db_readonly(db_, "main") == 1; }

TableRows Database::rows(const TableShape& table) {
    Statement statement(db_, "SELECT " + listed(table, table.columns.size(), ", ", "") + " FROM " + table.name);
    TableRows rows;
    const int keys = static_cast<int>(table.keys), rest = static_cast<int>(table.columns.size()) - keys;
    while (statement.step()) rows.emplace(statement.cells(0, keys), statement.cells(keys, rest));
    return rows;
}

void Database::take_out(const TableShape& table, const TableRows& was, const TableRows& now) {
    Statement statement(db_, "DELETE FROM " + table.name + " WHERE " + listed(table, table.keys, " AND ", " = ?"));
    for (const auto& [key, rest] : was) {
        const auto still = now.find(key);
        if (still != now.end() && still->second == rest) continue;
        statement.bind(key, 1);
        statement.step();
        statement.again();
    }
}

void Database::put_in(const TableShape& table, const TableRows& was, const TableRows& now) {
    std::string marks;
    for (std::size_t i = 0; i < table.columns.size(); ++i) marks += i ? ", ?" : "?";
    Statement statement(db_, "INSERT INTO " + table.name + " VALUES (" + marks + ")");
    for (const auto& [key, rest] : now) {
        const auto before = was.find(key);
        if (before != was.end() && before->second == rest) continue;
        statement.bind(key, 1);
        statement.bind(rest, static_cast<int>(table.keys) + 1);
        statement.step();
        statement.again();
    }
}

}  // namespace tubewright
