#include "store/backup.h"

#include <sys/stat.h>
#include <unistd.h>

#include "desk.h"
#include "person.h"
#include "store/database.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

Backup sample_backup() {
    return {"2026-11-29", {{"jobs/rail.json", "{}"}, {"points/wire.csv", std::string("\0\xff x;y\r\n", 8)}, {"tubes.json", ""}}, {"jobs/later.json"}};
}

std::string why_not(const std::string& bytes) {
    const auto read = backup_from(bytes);
    return read.ok() ? "was taken" : read.trouble().why;
}

/// The sample with one statement more.
std::string changed(const std::string& statement) {
    const OwnFolder own;
    const fs::path path = own.write("x.backup", backup_bytes(sample_backup()));
    Database(path).run(statement);
    return bytes_in(path);
}

std::string said(const Result<BackupMade, NotBackedUp>& made) {
    if (made.ok()) return "was made";
    return std::string(made.trouble().refused ? "refused: " : "failed: ") + made.trouble().sentence;
}

/// A stick that loses a bit of what is written to it.
class BadStick : public RealDisk {
public:
    bool write_and_flush(const fs::path& path, const std::string& bytes) override {
        std::string worse = bytes;
        worse[worse.size() / 2] = static_cast<char>(worse[worse.size() / 2] ^ 4);
        return RealDisk::write_and_flush(path, worse);
    }
};

}  // namespace

TEST_CASE("a backup as bytes comes back equal, whatever the files hold") {
    const auto again = backup_from(backup_bytes(sample_backup()));
    REQUIRE(again.ok());
    CHECK(again.value() == sample_backup());
}

TEST_CASE("a backup with one byte changed, or cut short anywhere, is refused or is all there") {
    const std::string whole = backup_bytes(sample_backup());
    int refused = 0;
    for (std::size_t at = 0; at < whole.size(); at += at < 100 ? 1 : 11) {  // the header and every eleventh: each is read through to its end
        std::string worse = whole;
        worse[at] = static_cast<char>(worse[at] ^ (1 << at % 8));
        const auto read = backup_from(worse);
        refused += !read.ok();
        if (!read.ok() || read.value() == sample_backup()) continue;
        FAIL("byte " << at << " changes it unseen");
    }
    CHECK(refused > 100);  // names, checksums, contents, and what holds them together; the rest is empty room
    for (std::size_t length = 0; length < whole.size(); length += 997) {
        INFO(length);
        CHECK_FALSE(backup_from(whole.substr(0, length)).ok());
    }
}

TEST_CASE("what is no backup, damaged, newer or made by somebody else is refused with its reason") {
    CHECK(why_not("") == "is some other file and no backup");
    CHECK(why_not(example_job) == "is some other file and no backup");
    CHECK(why_not(changed("PRAGMA application_id = 7")) == "is another program's file and no backup");
    CHECK(why_not(changed("PRAGMA user_version = 2; DROP TABLE absent")) == "is of format 2, from a newer version of the program; this one knows up to 1");
    CHECK(why_not(changed("UPDATE file SET bytes = x'00' WHERE name = 'jobs/rail.json'")) == "is damaged (what it has of jobs/rail.json has changed)");
    CHECK(why_not(changed("UPDATE file SET name = '../rail.json' WHERE name = 'jobs/rail.json'")) == "is damaged (it has a file called ../rail.json)");
    CHECK(why_not(changed("UPDATE file SET name = 'jobs/rain.json' WHERE name = 'jobs/rail.json'")) == "is damaged (its list of files has changed)");
    CHECK(why_not(changed("DELETE FROM file WHERE name = 'tubes.json'")) == "is damaged (its list of files has changed)");
    CHECK(why_not(changed("UPDATE about SET day = '2027-01-01'")) == "is damaged (its list of files has changed)");
    CHECK(why_not(changed("DELETE FROM about")) == "is damaged (its list of files has changed)");
    CHECK(why_not(changed("DROP TABLE absent; CREATE VIEW absent AS SELECT 'jobs/x.json' AS name")) == "is damaged (it has other tables than a backup)");
}

TEST_CASE("the book inside is looked through, and a newer one is refused") {
    const OwnFolder own;
    Person person(own.path());
    const std::string book = person.book().bytes();
    const auto with_book = [&](std::string bytes) { return why_not(backup_bytes({"2026-11-29", {{"shop-book.db", std::move(bytes), true}}, {}})); };
    CHECK(with_book(book) == "was taken");
    std::string newer = book;
    newer[63] = 99;  // the last byte of user_version: SQLite file format, section 1.3
    CHECK(with_book(newer).find("can't be used: the shop book in it is of format 99, from a newer version") == 0);
    CHECK(with_book("x") == "can't be used: the shop book in it is no shop book but some other file");
    CHECK(with_book(book.substr(0, book.size() - 4096)).find("can't be used: the shop book in it is damaged") == 0);
    CHECK(why_not(backup_bytes({"2026-11-29", {{"shop-book.db", "x", false}}, {}})) == "was taken");  // damaged when it was kept, and said to be
}

TEST_CASE("a backup has everything of the person's, the open book as last saved, and nothing else") {
    const OwnFolder own, stick;
    Person person(own.path());
    own.write("jobs/rail.json", example_job);
    own.write("jobs/rail.json.new", "half");
    own.write("points/wire.csv", "x,y,z\n");
    own.write("touch-map.json", "[]");
    RealDisk disk;
    const auto made = make_backup(disk, {own.path(), "2026-11-29", stick.path()}, &person.book());
    REQUIRE(said(made) == "was made");
    CHECK(made.value().files == 3);
    CHECK(made.value().left_out.empty());
    REQUIRE(made.value().written == std::vector<fs::path>{own.path() / "backups/tubewright-2026-11-29.backup", stick.path() / "tubewright-2026-11-29.backup"});
    CHECK(bytes_in(made.value().written[0]) == bytes_in(made.value().written[1]));
    const auto backup = backup_from(bytes_in(made.value().written[1]));
    REQUIRE(backup.ok());
    REQUIRE(backup.value().files.size() == 3);
    CHECK(backup.value().files[0] == KeptFile{"jobs/rail.json", example_job});
    CHECK(backup.value().files[2].is_sound_book);
    own.write("copy/shop-book.db", backup.value().files[2].bytes);
    CHECK(ShopBook::open(own.path() / "copy/shop-book.db").value().read() == person.book().read());

    // The next of the same day takes a name of its own, and the list has the youngest first.
    REQUIRE(make_backup(disk, {own.path(), "2026-11-29"}, &person.book()).ok());
    REQUIRE(make_backup(disk, {own.path(), "2026-11-30"}, &person.book()).ok());
    own.write("backups/broken.backup", "x");
    std::vector<std::string> names;
    for (const FoundBackup& found : backups_in(own.path() / "backups")) names.push_back(found.path.filename().string() + " " + found.day + " " + std::to_string(found.files) + found.trouble);
    CHECK(names == std::vector<std::string>{"tubewright-2026-11-30.backup 2026-11-30 3", "tubewright-2026-11-29-2.backup 2026-11-29 3", "tubewright-2026-11-29.backup 2026-11-29 3",
                                            "broken.backup  0The backup broken.backup is some other file and no backup."});
}

TEST_CASE("with no book given it is opened for the moment; in use, it is refused; damaged, it is kept as it is") {
    const OwnFolder own;
    RealDisk disk;
    const BackupWish wish{own.path(), "2026-11-29"};
    CHECK(said(make_backup(disk, wish, nullptr)) == "refused: The backup is not made: there is nothing of yours in " + own.path().string() + " yet.");
    {
        Person person(own.path());
        CHECK(said(make_backup(disk, wish, nullptr)) == "refused: The backup is not made: the shop book " + (own.path() / "shop-book.db").string() + " is in use by another window; close that first.");
    }
    REQUIRE(said(make_backup(disk, wish, nullptr)) == "was made");
    CHECK(backup_from(bytes_in(own.path() / "backups/tubewright-2026-11-29.backup")).value().files[0].is_sound_book);
    own.write("shop-book.db", "no book at all");
    const auto made = make_backup(disk, wish, nullptr);
    REQUIRE(said(made) == "was made");
    CHECK(backup_from(bytes_in(made.value().written[0])).value().files == std::vector<KeptFile>{{"shop-book.db", "no book at all", false}});
}

TEST_CASE("a backup that can't be written, or reads back otherwise, is none and leaves nothing") {
    const OwnFolder own;
    own.write("jobs/rail.json", example_job);
    BadStick bad;
    const std::string why = said(make_backup(bad, {own.path(), "2026-11-29"}, nullptr));
    CHECK(why.find("failed: The backup is not made: ") == 0);
    CHECK(why.find("do not trust this disk or stick") != why.npos);
    CHECK(fs::is_empty(own.path() / "backups"));
    RealDisk disk;
    CHECK(said(make_backup(disk, {own.path(), "2026-11-29", own.path() / "no stick"}, nullptr)) == "refused: The backup is not made: there is no folder " + (own.path() / "no stick").string() + ".");
    own.write("full/tubewright-2026-11-29.backup.new/inside", "x");  // a folder where the file would go
    const std::string half = said(make_backup(disk, {own.path(), "2026-11-29", own.path() / "full"}, nullptr));
    CHECK(half.find("failed: There is a backup in " + (own.path() / "backups/tubewright-2026-11-29.backup").string() + ", but not in " + (own.path() / "full").string() + ": ") == 0);
}

TEST_CASE("a file that can't be read is left out and named; what was cut short before is cleared away") {
    const OwnFolder own;
    own.write("jobs/rail.json", example_job);
    fs::create_directories(own.path() / "points");
    const fs::path large = own.write("points/large.csv", "");
    fs::resize_file(large, 300'000'000);  // a hole; takes no room
    own.write("backups/tubewright-2026-11-01.backup.new", "half");
    RealDisk disk;
    const auto made = make_backup(disk, {own.path(), "2026-11-29"}, nullptr);
    REQUIRE(said(made) == "was made");
    CHECK(made.value().files == 1);
    CHECK(made.value().left_out == std::vector<std::string>{"points/large.csv"});
    CHECK_FALSE(fs::exists(own.path() / "backups/tubewright-2026-11-01.backup.new"));
}

}  // namespace tubewright
