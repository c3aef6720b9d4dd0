#include "shell/desk.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <memory>
#include <sstream>

#include "shell/temporary_home.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

std::string bytes_of(const std::filesystem::path& path) {
    std::ostringstream all;
    all << std::ifstream(path, std::ios::binary).rdbuf();
    return all.str();
}

Desk desk_in(const TemporaryHome& home) { return Desk::made(home.places(), one_day).value(); }

/// Opens the fuel line and begins it.
void begin(Desk& desk) {
    desk.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/engine-fuel-line.json");
    desk.act(OpenLine{desk.state().job->lines.front().name});
    desk.act(NewStick{Length{3000}});
    desk.act(Next{});
}

void tick_all(Desk& desk) {
    const auto list = current_list(work_in_hand(desk.state()));
    REQUIRE(list);
    for (const TickItem& item : tick_items(desk.state(), *list))
        if (!work_in_hand(desk.state()).ticks.contains(item.id)) desk.act(Tick{item.id});
}

}  // namespace

TEST_CASE("the shelf shows the shipped jobs, and the user's own beside them") {
    TemporaryHome home;
    std::filesystem::create_directories(home.path() / "jobs");
    std::filesystem::copy_file(TUBEWRIGHT_SOURCE_DIR "/jobs/cooler-pair.json", home.path() / "jobs" / "mine.json");
    std::ofstream(home.path() / "jobs" / "broken.json") << "{";
    const Desk desk = desk_in(home);
    const auto find = [&](const std::string& id) {
        for (const ShelfEntry& entry : desk.state().shelf)
            if (entry.id == id) return entry;
        FAIL("not on the shelf: " << id);
        return ShelfEntry{};
    };
    CHECK(find("trailer-brakes-stainless").lines.size() == 5);
    CHECK(find("mine").trouble.empty());
    CHECK_FALSE(find("broken").trouble.empty());
}

TEST_CASE("a card of one's own that is not good is said on the first screen, and the jobs are there") {
    TemporaryHome home;
    std::filesystem::create_directories(home.path() / "benders");
    std::ofstream(home.path() / "benders" / "mine.json") << "{";
    Desk desk = desk_in(home);
    CHECK(desk.view().notice.rfind("Left out: " + (home.path() / "benders" / "mine.json").string(), 0) == 0);
    desk.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/engine-fuel-line.json");
    CHECK(desk.state().job);
}

TEST_CASE("a plan, its paper, tables and a backup by touch, and back to the backup") {
    TemporaryHome home;
    Desk desk = desk_in(home);
    begin(desk);
    desk.act(GoTo{Screen::plan});
    REQUIRE(desk.state().plan.found);
    const auto& tubes = *desk.state().plan.found;
    REQUIRE(tubes.size() == 1);
    CHECK(std::get<PlanFound>(tubes[0].answer).proven);
    // Another job of the shelf is cut with it.
    desk.act(GoTo{Screen::plan_jobs});
    desk.act(TakeIntoPlan{TUBEWRIGHT_SOURCE_DIR "/jobs/cooler-pair.json"});
    desk.act(GoTo{Screen::plan});
    std::size_t wanted = 0;
    for (const TubeCut& tube : *desk.state().plan.found) wanted += tube.asked.question.wanted.size();
    CHECK(wanted == desk.state().sheets.size() + 2);
    desk.act(PrintPlan{});
    CHECK(bytes_of(home.path() / "paper" / ("cut-and-buy-list-" + desk.state().day + ".pdf")).rfind("%PDF-", 0) == 0);
    desk.act(Dismiss{});
    desk.act(PrintLine{});
    CHECK(std::distance(std::filesystem::directory_iterator(home.path() / "paper"), {}) == 2);
    desk.act(WriteTables{});
    CHECK(bytes_of(home.path() / "tables" / ("rack-" + desk.state().day + ".csv")).find("steel-low-carbon,9.525,0.889,1,stick,3000.000,") != std::string::npos);
    // The stick that came in after the backup is gone again after going back to it.
    desk.act(GoTo{Screen::settings});
    desk.act(GoTo{Screen::keep_safe});
    CHECK(desk.state().backups.empty());
    desk.act(MakeBackup{});
    REQUIRE(desk.state().backups.size() == 1);
    const Work before = desk.state().work;
    desk.act(NewStick{Length{1234}});
    CHECK(desk.state().work != before);
    desk.act(RestoreBackup{desk.state().backups[0].name});
    CHECK(desk.state().book == BookStanding::open);
    CHECK(desk.state().work == before);
    CHECK_FALSE(desk.state().looks.notice.empty());
    // And the book goes on: what is done now is there in a new process.
    desk.act(Dismiss{});
    begin(desk);
    const Work after = desk.state().work;
    {
        Desk gone = std::move(desk);
    }
    CHECK(desk_in(home).state().work == after);
}

TEST_CASE("what was ticked is there again in a new process") {
    TemporaryHome home;
    {
        Desk desk = desk_in(home);
        begin(desk);
        tick_all(desk);
        desk.act(Next{});
        CHECK(work_in_hand(desk.state()).stage == Stage::mark_out);
    }
    Desk again = desk_in(home);
    again.take_up_again();
    REQUIRE(again.state().line);
    CHECK(again.state().looks.screen == Screen::bench);
    CHECK(work_in_hand(again.state()).stage == Stage::mark_out);
    CHECK(work_in_hand(again.state()).cut);
}

TEST_CASE("what was touched before switching off can be undone after switching on, and undo is written down too") {
    TemporaryHome home;
    std::vector<Work> before;
    {
        Desk desk = desk_in(home);
        begin(desk);
        for (const TickItem& item : tick_items(desk.state(), TickList::prepare)) {
            before.push_back(desk.state().work);
            desk.act(Tick{item.id});
        }
    }
    REQUIRE(before.size() > 3);
    while (!before.empty()) {
        Desk again = desk_in(home);
        again.take_up_again();
        CHECK(again.state().looks.screen == Screen::bench);
        again.act(Undo{});
        CHECK(again.state().work == before.back());
        before.pop_back();
    }
}

TEST_CASE("a program that was left from another screen opens on the shelf") {
    TemporaryHome home;
    {
        Desk desk = desk_in(home);
        begin(desk);
        desk.act(GoTo{Screen::lines});
    }
    Desk again = desk_in(home);
    again.take_up_again();
    CHECK(again.state().looks.screen == Screen::shelf);
}

TEST_CASE("a book that is none is left as it is and said, and there are two ways on") {
    TemporaryHome home;
    std::ofstream(home.path() / "shop-book.db") << "these are the last will and testament of a text file, long enough to be read as one";
    const std::string before = bytes_of(home.path() / "shop-book.db");
    Desk desk = desk_in(home);
    CHECK(desk.state().book == BookStanding::refused);
    CHECK_FALSE(desk.state().book_sentence.empty());

    desk.act(GoOnWithoutBook{});
    begin(desk);
    CHECK(desk.state().looks.screen == Screen::bench);
    CHECK(bytes_of(home.path() / "shop-book.db") == before);

    Desk other = desk_in(home);
    other.act(StartFreshBook{});
    CHECK(other.state().book == BookStanding::open);
    begin(other);
    CHECK(bytes_of(home.path() / "shop-book.db") == before);
    CHECK(std::filesystem::exists(home.path() / "shop-book-2.db"));
}

TEST_CASE("the fresh book is the one that is opened next time") {
    TemporaryHome home;
    std::ofstream(home.path() / "shop-book.db") << "not a book, and not empty either, so nobody may write over it at all, ever";
    {
        Desk desk = desk_in(home);
        desk.act(StartFreshBook{});
        begin(desk);
    }
    const Desk again = desk_in(home);
    CHECK(again.state().book == BookStanding::open);
    CHECK_FALSE(again.state().work.in_use.empty());
}

TEST_CASE("a book that another program has open is waited for, and no other is begun") {
    TemporaryHome home;
    auto first = std::make_unique<Desk>(desk_in(home));
    begin(*first);
    Desk second = desk_in(home);
    CHECK(second.state().book == BookStanding::refused);
    CHECK(second.state().book_in_use);
    second.act(StartFreshBook{});  // "Try again", while the other still has it
    CHECK(second.state().book == BookStanding::refused);
    CHECK_FALSE(std::filesystem::exists(home.path() / "shop-book-2.db"));
    first.reset();
    second.act(StartFreshBook{});
    CHECK(second.state().book == BookStanding::open);
    CHECK_FALSE(second.state().work.in_use.empty());
}

TEST_CASE("a home that may not be written is said, and the work goes on without a book") {
    Places places = TemporaryHome().places();
    places.home = "/proc/nobody-may-write-here";
    Desk desk = Desk::made(places, one_day).value();
    CHECK(desk.state().book == BookStanding::refused);
    desk.act(StartFreshBook{});
    CHECK(desk.state().book == BookStanding::refused);
    desk.act(GoOnWithoutBook{});
    begin(desk);
    CHECK(desk.state().looks.screen == Screen::bench);
}

TEST_CASE("a job that is refused leaves the desk as it was, with the sentence on it") {
    TemporaryHome home;
    Desk desk = desk_in(home);
    desk.open_job(home.path() / "no such job.json");
    CHECK_FALSE(desk.state().job);
    CHECK(desk.state().looks.notice.find("no such job.json") != std::string::npos);
}

TEST_CASE("a bender's card that was changed and kept is on disk, is used at once and at the next start; the shipped one stays") {
    TemporaryHome home;
    const std::filesystem::path shipped = TUBEWRIGHT_SOURCE_DIR "/assets/benders/hand-3-16.json";
    const std::string before = bytes_of(shipped);
    Bender kept;
    {
        Desk desk = desk_in(home);
        desk.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json");
        const std::string line = desk.state().job->lines.front().name;
        REQUIRE(desk.state().job->lines.front().bender.id == "hand-3/16");
        CHECK(desk.state().own_cards.empty());
        for (const Action& action : std::vector<Action>{OpenLine{line}, SetUnit{Unit::mm}, GoTo{Screen::stance}, GoTo{Screen::card}, PickFigure{"hook"}, Key{"2"}, Key{"1"}, TakeFigure{}, KeepCard{}})
            desk.act(action);
        kept = desk.state().card->bender;
        CHECK(kept.hook_straight == Length{21});
        CHECK(desk.state().looks.notice.empty());
        CHECK(sheet_in_hand(desk.state())->line.bender == kept);
        CHECK(desk.state().own_cards.contains("hand-3/16"));
        // A second change goes into the same file.
        for (const Action& action : std::vector<Action>{PickFigure{"hook"}, Key{"2"}, Key{"2"}, TakeFigure{}, KeepCard{}}) desk.act(action);
        kept.hook_straight = Length{22};
        CHECK(sheet_in_hand(desk.state())->line.bender == kept);
    }
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(home.path() / "benders")) {
        CHECK(bytes_of(entry.path()).find("x-body-note") != std::string::npos);
        ++files;
    }
    CHECK(files == 1);
    CHECK(bytes_of(shipped) == before);
    Desk later = desk_in(home);
    later.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json");
    CHECK(later.state().job->lines.front().bender == kept);
    CHECK(later.state().own_cards.contains("hand-3/16"));
}

TEST_CASE("a card that can't be written is said, and what was changed is still there to be kept") {
    TemporaryHome home;
    Desk desk = desk_in(home);
    desk.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json");
    std::ofstream(home.path() / "benders") << "a file where the folder should be";
    for (const Action& action : std::vector<Action>{OpenLine{desk.state().job->lines.front().name}, SetUnit{Unit::mm}, GoTo{Screen::card}, PickFigure{"hook"}, Key{"2"}, Key{"1"}, TakeFigure{}, KeepCard{}})
        desk.act(action);
    CHECK(desk.state().looks.notice.find("benders") != std::string::npos);
    CHECK(desk.state().card->past.size() == 1);
    CHECK_FALSE(desk.state().card->kept);
}

TEST_CASE("the way back to the shipped card lays the user's own file aside, and everything goes by the shipped one at once") {
    TemporaryHome home;
    const std::filesystem::path shipped_file = TUBEWRIGHT_SOURCE_DIR "/assets/benders/hand-3-16.json";
    const std::string before = bytes_of(shipped_file);
    std::string own_file;
    {
        Desk desk = desk_in(home);
        desk.open_job(TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json");
        const Bender shipped = desk.state().job->lines.front().bender;
        const auto act = [&](const std::vector<Action>& actions) { for (const Action& action : actions) desk.act(action); };
        act({OpenLine{desk.state().job->lines.front().name}, SetUnit{Unit::mm}, GoTo{Screen::stance}, GoTo{Screen::card}, PickFigure{"hook"}, Key{"2"}, Key{"1"}, TakeFigure{}, KeepCard{}});
        REQUIRE(std::filesystem::exists(home.path() / "benders" / "hand-3-16.json"));
        own_file = bytes_of(home.path() / "benders" / "hand-3-16.json");
        act({TakeShipped{}});
        CHECK(sheet_in_hand(desk.state())->line.bender.hook_straight == Length{21});  // not kept yet
        act({KeepCard{}});
        CHECK(desk.state().looks.notice.empty());
        CHECK(sheet_in_hand(desk.state())->line.bender == shipped);
        CHECK_FALSE(desk.state().own_cards.contains("hand-3/16"));
    }
    CHECK_FALSE(std::filesystem::exists(home.path() / "benders" / "hand-3-16.json"));
    CHECK(bytes_of(home.path() / "benders" / "hand-3-16.json.old") == own_file);
    CHECK(bytes_of(shipped_file) == before);
    CHECK(desk_in(home).state().own_cards.empty());
}
