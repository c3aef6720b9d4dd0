#include "shell/backup_commands.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "shell/desk.h"
#include "shell/temporary_home.h"
#include "state/rules.h"
#include "store/restore.h"
#include "store/save.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

struct Told {
    int status;
    std::string out, trouble;
};

template <class Command>
Told told(const Command& command, const Places& places, const std::string& word) {
    std::ostringstream out, trouble;
    const int status = command(places, word, "2026-11-29", out, trouble);
    return {status, out.str(), trouble.str()};
}

Desk desk_at(const TemporaryHome& home) { return Desk::made(home.places(), one_day).value(); }

const std::string job_file = TUBEWRIGHT_SOURCE_DIR "/jobs/engine-fuel-line.json";

/// A stick in use and some ticks.
void work_a_little(const TemporaryHome& home, int ticks) {
    Desk desk = desk_at(home);
    desk.open_job(job_file);
    desk.act(OpenLine{desk.state().job->lines.front().name});
    desk.act(NewStick{Length{3000}});
    desk.act(Next{});
    const auto items = tick_items(desk.state(), *current_list(work_in_hand(desk.state())));
    for (int i = 0; i < ticks; ++i) desk.act(Tick{items.at(static_cast<std::size_t>(i)).id});
}

Work work_in(const TemporaryHome& home) { return desk_at(home).state().work; }

}  // namespace

TEST_CASE("backed up to a stick, the home lost, and restored from there: the desk goes on where it was") {
    const TemporaryHome home, stick;
    CHECK(told(back_up, home.places(), "").status == 2);  // nothing there yet
    work_a_little(home, 1);
    const Work then = work_in(home);
    const Told made = told(back_up, home.places(), stick.path().string());
    CHECK(made.status == 0);
    CHECK(made.trouble == "");
    const fs::path file = stick.path() / "tubewright-2026-11-29.backup";
    CHECK(made.out == "2 files backed up to " + (home.path() / "backups/tubewright-2026-11-29.backup").string() + ", read back and checked.\n2 files backed up to " + file.string() + ", read back and checked.\n");
    fs::remove_all(home.path());
    work_a_little(home, 2);
    const Work now = work_in(home);
    REQUIRE(now != then);
    const Told back = told(restore, home.places(), file.string());
    CHECK(back.status == 0);
    const fs::path before = home.path() / "backups/before-restore-2026-11-29.backup";
    CHECK(back.out == "2 files restored, as of 2026-11-29. What was there before is in " + before.string() + ": restore that to take this back.\n");
    CHECK(work_in(home) == then);
    CHECK(told(restore, home.places(), before.string()).status == 0);
    CHECK(work_in(home) == now);
}

TEST_CASE("a window that has the book open, a folder that is not there and a file that is no backup are refused in one sentence") {
    const TemporaryHome home;
    work_a_little(home, 1);
    const auto refused = [&](const Told& by) {
        CHECK(by.status == 2);
        CHECK(by.out == "");
        CHECK(std::count(by.trouble.begin(), by.trouble.end(), '\n') == 1);
    };
    refused(told(back_up, home.places(), (home.path() / "no stick").string()));
    refused(told(restore, home.places(), job_file));
    const Desk open = desk_at(home);
    refused(told(back_up, home.places(), ""));
    std::ofstream(home.path() / "any.backup") << "x";
    refused(told(restore, home.places(), (home.path() / "any.backup").string()));
}

TEST_CASE("a restore that was cut short is finished at the next start, before the book is opened, and said") {
    const TemporaryHome home;
    work_a_little(home, 1);
    const Work then = work_in(home);
    REQUIRE(told(back_up, home.places(), "").status == 0);
    work_a_little(home, 2);
    REQUIRE(work_in(home) != then);
    RealDisk disk;
    REQUIRE(begin_restore(disk, home.path(), "2026-11-29", home.path() / "backups/tubewright-2026-11-29.backup", nullptr).ok());
    const Desk desk = desk_at(home);
    CHECK(desk.state().work == then);
    CHECK(desk.state().looks.notice == "Your files are back as they were in the backup of 2026-11-29.");
    CHECK_FALSE(fs::exists(home.path() / "restoring.backup"));
}

TEST_CASE("where the restore can't be finished the desk does not open, and says what to do") {
    const TemporaryHome home;
    work_a_little(home, 1);
    REQUIRE(told(back_up, home.places(), "").status == 0);
    RealDisk disk;
    REQUIRE(begin_restore(disk, home.path(), "2026-11-29", home.path() / "backups/tubewright-2026-11-29.backup", nullptr).ok());
    fs::create_directories(home.path() / "at-the-bench.json.new/in the way");
    const auto desk = Desk::made(home.places(), one_day);
    REQUIRE_FALSE(desk.ok());
    CHECK(desk.trouble().sentence() == "The restore in " + home.path().string() + " is not finished: there is no room or no permission to write " + (home.path() / "at-the-bench.json").string() + "; allowed: to start again once that is mended.");
    fs::remove_all(home.path() / "at-the-bench.json.new");
    CHECK(Desk::made(home.places(), one_day).ok());
}

}  // namespace tubewright
