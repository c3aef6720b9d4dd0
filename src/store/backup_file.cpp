#include "store/backup_file.h"

#include "store/checksum.h"
#include "store/database.h"
#include "store/home_files.h"
#include "store/refusal.h"
#include "store/shop_book.h"

namespace tubewright {
namespace {

constexpr std::int64_t backup_id = 0x5475426b;  // "TuBk"
constexpr std::int64_t newest_backup = 1;
constexpr const char* format_1 =
    "CREATE TABLE about (key INTEGER PRIMARY KEY CHECK (key = 1), day TEXT NOT NULL, sha256_of_lists TEXT NOT NULL) STRICT;"
    "CREATE TABLE file (name TEXT PRIMARY KEY, sound_book INTEGER NOT NULL CHECK (sound_book IN (0, 1)), sha256 TEXT NOT NULL, bytes BLOB NOT NULL) STRICT;"
    "CREATE TABLE absent (name TEXT PRIMARY KEY) STRICT;";
const TableShape about_table{"about", {"key", "day", "sha256_of_lists"}, 1};
const TableShape file_table{"file", {"name", "sound_book", "sha256", "bytes"}, 1};
const TableShape absent_table{"absent", {"name"}, 1};

[[noreturn]] void refuse_backup(const std::string& why) { throw BackupTrouble{why}; }
[[noreturn]] void refuse_damaged(const std::string& what) { refuse_backup("is damaged (" + what + ")"); }

std::string schema_of(Database& database) { return database.text("SELECT group_concat(sql, ';') FROM (SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name)"); }

/// So that a name, a day or a whole row can't change or go unseen. No name has a line end.
std::string sum_of_lists(const Backup& backup) {
    std::string lists = backup.day + "\n";
    for (const KeptFile& file : backup.files) lists += sha256(file.bytes) + (file.is_sound_book ? " book " : " file ") + file.name + "\n";
    for (const std::string& name : backup.absent) lists += "absent " + name + "\n";
    return sha256(lists);
}

void check_backup_format(Database& database) {
    if (database.number("PRAGMA application_id") != backup_id) refuse_backup("is another program's file and no backup");
    const std::int64_t version = database.number("PRAGMA user_version");
    if (version > newest_backup) refuse_backup("is of format " + std::to_string(version) + ", from a newer version of the program; this one knows up to " + std::to_string(newest_backup));
    if (const std::string said = database.text("PRAGMA quick_check(1)"); said != "ok") refuse_damaged(in_short(said));
    Database ours(InMemory{});
    ours.run(format_1);
    if (version != newest_backup || schema_of(database) != schema_of(ours)) refuse_damaged("it has other tables than a backup");
}

KeptFile kept_file_from(const std::string& name, const Row& cells) {
    if (!is_persons_file(name)) refuse_damaged("it has a file called " + in_short(name));
    KeptFile file{name, std::get<std::string>(cells[2]), std::get<std::int64_t>(cells[0]) == 1};
    if (sha256(file.bytes) != std::get<std::string>(cells[1])) refuse_damaged("what it has of " + in_short(name) + " has changed");
    return file;
}

Backup backup_in(Database& database) {
    Backup backup;
    std::string sum;
    for (const auto& [key, rest] : database.rows(about_table)) backup.day = std::get<std::string>(rest[0]), sum = std::get<std::string>(rest[1]);
    for (const auto& [key, rest] : database.rows(file_table)) backup.files.push_back(kept_file_from(std::get<std::string>(key[0]), rest));
    for (const auto& [key, rest] : database.rows(absent_table)) backup.absent.push_back(std::get<std::string>(key[0]));
    if (sum_of_lists(backup) != sum) refuse_damaged("its list of files has changed");
    for (const std::string& name : backup.absent)
        if (!is_persons_file(name)) refuse_damaged("it has a file called " + in_short(name));
    return backup;
}

}  // namespace

std::string backup_bytes(const Backup& backup) {
    Database database(InMemory{});
    database.run("PRAGMA application_id = " + std::to_string(backup_id) + "; PRAGMA user_version = " + std::to_string(newest_backup) + "; BEGIN");
    database.run(format_1);
    for (const KeptFile& file : backup.files)
        database.put_bytes("INSERT INTO file VALUES (?, ?, ?, ?)", {file.name, std::int64_t{file.is_sound_book}, sha256(file.bytes)}, file.bytes);
    TableRows absent;
    for (const std::string& name : backup.absent) absent.emplace(Row{name}, Row{});
    database.put_in(absent_table, {}, absent);
    database.put_in(about_table, {}, {{Row{std::int64_t{1}}, Row{backup.day, sum_of_lists(backup)}}});
    database.run("COMMIT");
    return database.bytes();
}

Result<Backup, BackupTrouble> backup_from(const std::string& bytes) {
    if (bytes.compare(0, 16, std::string("SQLite format 3\0", 16)) != 0) return BackupTrouble{"is some other file and no backup"};
    try {
        Database database(InMemory{bytes});
        check_backup_format(database);
        Backup backup = backup_in(database);
        for (const KeptFile& file : backup.files)
            if (const std::string said = file.is_sound_book ? trouble_in_book(file.bytes) : ""; !said.empty()) refuse_backup("can't be used: the shop book in it " + said);
        return backup;
    } catch (const BackupTrouble& trouble) {
        return trouble;
    } catch (const DatabaseTrouble& trouble) {
        return BackupTrouble{"is damaged (" + trouble.words + ")"};
    } catch (const std::bad_variant_access&) {
        return BackupTrouble{"is damaged (it has something else where a name or a checksum should be)"};
    }
}

}  // namespace tubewright
