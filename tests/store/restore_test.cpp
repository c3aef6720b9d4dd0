#include "store/restore.h"

#include <map>

#include "desk.h"
#include "person.h"
#include "store/home_files.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

constexpr const char* day = "2026-11-29";

/// The plug is pulled at some step, before it or in the midst of it: a cut write leaves half the bytes. Nothing follows.
struct Dark {};
class PluggedDisk : public RealDisk {
public:
    explicit PluggedDisk(int steps) : steps_left_(steps) {}
    bool write_and_flush(const fs::path& path, const std::string& bytes) override {
        if (steps_left_-- > 0) return RealDisk::write_and_flush(path, bytes);
        RealDisk::write_and_flush(path, bytes.substr(0, bytes.size() / 2));
        throw Dark{};
    }
    bool rename_over(const fs::path& from, const fs::path& to) override {
        if (steps_left_-- > 0) return RealDisk::rename_over(from, to);
        throw Dark{};
    }
    bool remove(const fs::path& path) override {
        if (steps_left_-- > 0) return RealDisk::remove(path);
        throw Dark{};
    }

private:
    int steps_left_;
};

/// Says no at one step, as a full disk does.
class FullDisk : public RealDisk {
public:
    explicit FullDisk(int steps) : steps_left_(steps) {}
    bool write_and_flush(const fs::path& path, const std::string& bytes) override { return steps_left_-- != 0 && RealDisk::write_and_flush(path, bytes); }
    bool rename_over(const fs::path& from, const fs::path& to) override { return steps_left_-- != 0 && RealDisk::rename_over(from, to); }
    bool remove(const fs::path& path) override { return steps_left_-- != 0 && RealDisk::remove(path); }

private:
    int steps_left_;
};

using Files = std::map<std::string, std::string>;
Files files_in(const fs::path& home) {
    Files files;
    for (const std::string& name : persons_files(home)) files[name] = bytes_in(home / name);
    // An open book's journal, with its head struck out, says nothing.
    std::erase_if(files, [](const auto& file) { return file.first.ends_with("-journal") && file.second.substr(0, 8) == std::string(8, '\0'); });
    return files;
}

/// A home with a backup of it, and then another day's work: one job changed, one new, one gone, another book's pages.
struct Home {
    OwnFolder own;
    fs::path backup;
    Files then, now;

    Home() {
        own.write("jobs/rail.json", "the rail of then");
        own.write("jobs/gone.json", "gone since");
        own.write("benders/own.json", "the same always");
        { Person(own.path(), 7); }
        then = files_in(own.path());
        RealDisk disk;
        const auto made = make_backup(disk, {own.path(), day}, nullptr);
        if (!made.ok()) FAIL(made.trouble().sentence);
        backup = made.value().written[0];
        then = files_in(own.path());
        own.write("jobs/rail.json", "the rail of now, which is longer");
        own.write("points/new.csv", "new since");
        fs::remove(own.path() / "jobs/gone.json");
        { Person(own.path(), 8); }
        own.write("shop-book-2.db", "a second book, not even one");
        now = files_in(own.path());
    }
    const fs::path& path() const { return own.path(); }
    /// What a restore makes: all of then, and what is new since, but the one book.
    Files wanted() const {
        Files files = then;
        files["points/new.csv"] = "new since";
        return files;
    }
};

/// Both steps, as the command does them.
std::string restored(Disk& disk, const fs::path& home, const fs::path& file, fs::path* before = nullptr) {
    const auto begun = begin_restore(disk, home, day, file, nullptr);
    if (!begun.ok()) return std::string(begun.trouble().refused ? "refused: " : "failed: ") + begun.trouble().sentence;
    if (before) *before = begun.value().before;
    const auto finished = finish_restore(disk, home);
    return finished.ok() ? "done" : "begun: " + finished.trouble().sentence;
}

}  // namespace

TEST_CASE("a restore brings back what the backup has, and can be taken back to the byte") {
    const Home home;
    RealDisk disk;
    fs::path before, before_that;
    REQUIRE(restored(disk, home.path(), home.backup, &before) == "done");
    CHECK(files_in(home.path()) == home.wanted());
    CHECK_FALSE(fs::exists(home.path() / "restoring.backup"));
    CHECK(ShopBook::open(home.path() / "shop-book.db").value().read().work == random_work(7));
    CHECK(before.filename() == "before-restore-2026-11-29.backup");
    REQUIRE(restored(disk, home.path(), before, &before_that) == "done");
    CHECK(files_in(home.path()) == home.now);
    REQUIRE(restored(disk, home.path(), before_that) == "done");  // and that back again
    CHECK(files_in(home.path()) == home.wanted());
}

TEST_CASE("the plug pulled at any step of a restore leaves the old state, or the next start finishes the new one") {
    bool finished = false;
    int plug = 0, old = 0, gone_on = 0;
    for (; !finished; ++plug) {
        INFO("plug pulled at step " << plug);
        const Home home;
        PluggedDisk plugged(plug);
        try {
            finished = restored(plugged, home.path(), home.backup) == "done";
        } catch (const Dark&) {
        }
        const bool begun = fs::exists(home.path() / "restoring.backup");
        RealDisk disk;
        const auto next_start = finish_restore(disk, home.path());
        REQUIRE(next_start.ok());
        CHECK(next_start.value().has_value() == begun);
        if (begun) CHECK(next_start.value()->given_up == "");
        CHECK(files_in(home.path()) == (begun || finished ? home.wanted() : home.now));
        old += !begun && !finished;
        gone_on += begun;
        // And the backup that was gone back to is still there.
        CHECK(restored(disk, home.path(), home.backup) == "done");
        CHECK(files_in(home.path()) == home.wanted());
    }
    CHECK(old == 4);  // the copy of what is there is written and named, and so is the one to go back to
    CHECK(gone_on > 8);
}

TEST_CASE("the plug pulled again and again at any step of finishing only delays it") {
    const Home home;
    RealDisk disk;
    REQUIRE(begin_restore(disk, home.path(), day, home.backup, nullptr).ok());
    bool finished = false;
    int plug = 0;
    for (; !finished; ++plug) {
        PluggedDisk plugged(plug);
        try {
            finished = finish_restore(plugged, home.path()).ok();
        } catch (const Dark&) {
        }
    }
    CHECK(plug > 8);
    CHECK(files_in(home.path()) == home.wanted());
}

TEST_CASE("a disk that says no at any step is told of in one sentence, and nothing is lost") {
    bool finished = false;
    for (int step = 0; !finished; ++step) {
        INFO("no at step " << step);
        const Home home;
        FullDisk full(step);
        const std::string said = restored(full, home.path(), home.backup);
        finished = said == "done";
        if (finished) break;
        const bool begun = said.rfind("begun: The restore is begun but not finished: ", 0) == 0;
        INFO(said);
        CHECK((begun || said.rfind("failed: Nothing is restored", 0) == 0));
        CHECK(fs::exists(home.path() / "restoring.backup") == begun);
        if (!begun) CHECK(files_in(home.path()) == home.now);
        RealDisk disk;
        REQUIRE(finish_restore(disk, home.path()).ok());
        CHECK(files_in(home.path()) == (begun ? home.wanted() : home.now));
    }
}

TEST_CASE("a damaged, foreign or missing backup is refused with a sentence and nothing is touched") {
    const Home home;
    RealDisk disk;
    std::string bytes = bytes_in(home.backup);
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    const fs::path damaged = home.own.write("elsewhere/damaged.backup", bytes);
    const std::string said = restored(disk, home.path(), damaged);
    CHECK(said.rfind("refused: Nothing is restored: the backup " + damaged.string() + " ", 0) == 0);
    CHECK(restored(disk, home.path(), home.path() / "none.backup") == "refused: Nothing is restored: the backup " + (home.path() / "none.backup").string() + " is no file that is there.");
    CHECK(restored(disk, home.path(), home.path() / "jobs/rail.json") == "refused: Nothing is restored: the backup " + (home.path() / "jobs/rail.json").string() + " is some other file and no backup.");
    CHECK(files_in(home.path()) == home.now);
    CHECK(std::distance(fs::directory_iterator(home.path() / "backups"), fs::directory_iterator()) == 1);
}

TEST_CASE("while a window has the book open nothing is restored") {
    const Home home;
    fs::remove(home.path() / "shop-book-2.db");
    RealDisk disk;
    {
        Person person(home.path(), 8);
        CHECK(restored(disk, home.path(), home.backup).rfind("refused: Nothing is restored: the shop book", 0) == 0);
        CHECK_FALSE(fs::exists(home.path() / "restoring.backup"));
        CHECK_FALSE(is_restore_begun(home.path()));
        // Given the open book, it begins; finishing waits until that is closed.
        REQUIRE(begin_restore(disk, home.path(), day, home.backup, &person.book()).ok());
        CHECK(is_restore_begun(home.path()));
        const auto early = finish_restore(disk, home.path());
        REQUIRE_FALSE(early.ok());
        CHECK(early.trouble().why == "the shop book " + (home.path() / "shop-book.db").string() + " is in use by another window");
        CHECK(begin_restore(disk, home.path(), day, home.backup, &person.book()).trouble().refused);
    }
    REQUIRE(finish_restore(disk, home.path()).ok());
    CHECK(files_in(home.path()) == home.wanted());
}

TEST_CASE("a book that was damaged when it was kept comes back with its journal, and the journal of the one that goes does not stay") {
    const OwnFolder own;
    own.write("shop-book.db", "damaged");
    own.write("shop-book.db-journal", "and its journal");
    RealDisk disk;
    const auto made = make_backup(disk, {own.path(), day}, nullptr);
    REQUIRE(made.ok());
    fs::remove(own.path() / "shop-book.db");
    fs::remove(own.path() / "shop-book.db-journal");
    { Person person(own.path(), 8); }
    const Files sound = files_in(own.path());
    fs::path before;
    REQUIRE(restored(disk, own.path(), made.value().written[0], &before) == "done");
    CHECK(files_in(own.path()) == Files{{"shop-book.db", "damaged"}, {"shop-book.db-journal", "and its journal"}});
    REQUIRE(restored(disk, own.path(), before) == "done");
    CHECK(files_in(own.path()) == sound);
    CHECK_FALSE(fs::exists(own.path() / "shop-book.db-journal"));
    CHECK(ShopBook::open(own.path() / "shop-book.db").value().read().work == random_work(8));
}

TEST_CASE("the journal of a book that broke is not played back into the one that takes its place") {
    const Home home;
    home.own.write("shop-book.db", "broken");
    home.own.write("shop-book.db-journal", "left of it");
    RealDisk disk;
    REQUIRE(restored(disk, home.path(), home.backup) == "done");
    CHECK_FALSE(fs::exists(home.path() / "shop-book.db-journal"));
    CHECK(files_in(home.path()) == home.wanted());
}

TEST_CASE("on a new machine there is nothing to keep, and everything comes") {
    const Home home;
    const OwnFolder elsewhere;
    RealDisk disk;
    fs::path before;
    REQUIRE(restored(disk, elsewhere.path() / "new/home", home.backup, &before) == "done");
    CHECK(files_in(elsewhere.path() / "new/home") == home.then);
    REQUIRE(restored(disk, elsewhere.path() / "new/home", before) == "done");
    CHECK(files_in(elsewhere.path() / "new/home").empty());
}

TEST_CASE("where the copy that is gone back to was damaged meanwhile, it is laid aside and said") {
    const Home home;
    RealDisk disk;
    REQUIRE(begin_restore(disk, home.path(), day, home.backup, nullptr).ok());
    home.own.write("restoring.backup", "x");
    const auto finished = finish_restore(disk, home.path());
    REQUIRE(finished.ok());
    REQUIRE(finished.value());
    CHECK(finished.value()->given_up == "The restore that was cut short can't be finished: " + (home.path() / "restoring.backup").string() + " is some other file and no backup. What was there before it is in the backups folder, under before-restore.");
    CHECK(fs::exists(home.path() / "restoring.backup.damaged"));
    CHECK_FALSE(finish_restore(disk, home.path()).value());
}

}  // namespace tubewright
