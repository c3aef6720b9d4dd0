// The real program in a real window, walked by a real pointer; things are found by its touch map. Runs under
// a virtual display.

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "shell/desk.h"
#include "shell/real_program.h"
#include "shell/temporary_home.h"
#include "store/shop_book.h"

using namespace tubewright;
using nlohmann::json;

namespace {

namespace fs = std::filesystem;

const fs::path job_file = fs::path(TUBEWRIGHT_SOURCE_DIR) / "jobs/engine-fuel-line.json";
const std::string job_line = "tank to filter";

std::vector<std::string> with(const Program& program, const std::string& beginning) {
    std::vector<std::string> ids;
    for (const json& thing : program.map())
        if (thing["enabled"] == true && thing["id"].get<std::string>().rfind(beginning, 0) == 0) ids.push_back(thing["id"]);
    return ids;
}

std::vector<std::string> labels(const Program& program) {
    std::vector<std::string> all;
    for (const json& thing : program.map()) all.push_back(thing["id"].get<std::string>() + ": " + thing["label"].get<std::string>());
    return all;
}

/// Through as many pages as there are, and on.
void past_the_pages(Program& program) {
    for (int pages = 0; pages < 10 && program.has("next-page"); ++pages) program.click("next-page");
    program.click("next");
}

/// From the job's lines to the bench of one of them.
void to_the_bench(Program& program) {
    program.click("line-" + job_line);
    past_the_pages(program);
}

/// Ticks the list page by page, and goes on.
void through_the_list(Program& program) {
    for (int pages = 0; pages < 10; ++pages) {
        for (const std::string& id : with(program, "tick-")) program.click(id);
        if (program.has("next")) break;
        program.click("next-page");
    }
    program.click("next");
}

/// Types what the protractor says, and says that it reads that.
void reads(Program& program, Angle reading) {
    std::array<char, 16> typed{};
    std::snprintf(typed.data(), typed.size(), "%g", reading.deg);
    program.type(typed.data());
    program.click("next");
}

/// Mark, turn, pull.
void make(Program& program) {
    for (int move = 0; move < 3; ++move) program.click("next");
}

/// The same line worked out apart from the program, for what is wanted of each bend.
Sheet sheet_of_the_line() {
    const TemporaryHome home;
    Desk desk = Desk::made(home.places(), one_day).value();
    desk.open_job(job_file);
    for (const Sheet& sheet : desk.state().sheets)
        if (sheet.line.name == job_line) return sheet;
    throw std::runtime_error("the job has no line " + job_line);
}

/// All that can be touched is on the screen and large enough.
void look_over(const Program& program) {
    int width = 0, height = 0;
    FILE* said = popen("xdotool getdisplaygeometry", "r");
    REQUIRE(said);
    REQUIRE(std::fscanf(said, "%d %d", &width, &height) == 2);
    pclose(said);
    for (const json& thing : program.map()) {
        INFO(thing.dump());
        CHECK(thing["mm"]["height"].get<double>() >= 19.9);
        CHECK(thing["px"]["x"].get<double>() >= 0);
        CHECK(thing["px"]["x"].get<double>() + thing["px"]["width"].get<double>() <= width + 0.5);
        CHECK(thing["px"]["y"].get<double>() + thing["px"]["height"].get<double>() <= height + 0.5);
    }
}

}  // namespace

TEST_CASE("a real window: from the job to the hand-over by pointer, killed in between, and all of it in the book") {
    const Sheet sheet = sheet_of_the_line();
    REQUIRE(sheet.steps.size() == 3);
    const Angle first = sheet.steps[0].target, second = sheet.steps[1].target, third = sheet.steps[2].target;
    const TemporaryHome home;
    std::vector<std::string> before;
    {
        Program program(home.path(), job_file);
        to_the_bench(program);
        program.click("stick");
        program.click("new-stick");
        through_the_list(program);
        program.click("next");     // marked out: at the mark of the first bend
        program.press("space");    // the foot switch goes on
        program.press("Page_Up");  // and back
        program.press("Next");     // Page Down goes on again
        before = labels(program);
        program.kill_now();
    }
    {
        Program again(home.path(), job_file);
        CHECK(labels(again) == before);
        look_over(again);
        again.click("next");       // turned
        again.click("next");       // pulled
        look_over(again);          // the keypad
        reads(again, first);
        make(again);
        reads(again, second - Angle{1});
        look_over(again);
        again.click("pull-again");
        again.click("next");
        reads(again, second + Angle{0.5});
        make(again);
        reads(again, third + Angle{2});
        again.click("keep");
        through_the_list(again);   // finish
        through_the_list(again);   // hand over
        look_over(again);
        again.kill_now();
    }
    const BookPages pages = ShopBook::open(home.path() / "shop-book.db").value().read();
    REQUIRE(pages.work.lines.size() == 1);
    const auto& [key, work] = *pages.work.lines.begin();
    CHECK(key == line_key("engine-fuel-line", job_line));
    CHECK(work.stage == Stage::done);
    CHECK(work.finished == 1);
    CHECK(work.cut_length == sheet.layout->cut_length);
    REQUIRE(work.made.size() == 3);
    CHECK((work.made[0] == BendMade{sheet.steps[0].bend, sheet.steps[0].set, 1, first, false}));
    CHECK(work.made[1].bend == sheet.steps[1].bend);
    CHECK(work.made[1].set.deg > on_lever(sheet.steps[1].set).deg + 1);  // one degree was missing, and some springs back
    CHECK(work.made[1].pulls == 2);
    CHECK(work.made[1].measured == second + Angle{0.5});
    CHECK_FALSE(work.made[1].kept_over);
    CHECK(work.made[2].bend == sheet.steps[2].bend);
    CHECK(work.made[2].set.deg > on_lever(sheet.steps[2].set).deg);  // this tube was seen to spring back more
    CHECK(work.made[2].pulls == 1);
    CHECK(work.made[2].measured == third + Angle{2});
    CHECK(work.made[2].kept_over);
    CHECK(pages.work.scrap.empty());
}
