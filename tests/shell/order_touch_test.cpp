// The order of bends changed by finger, with the state behind the screen: dragged, by arrows, pinned, set free. And what is left
// of a cut tube in another order, with the desk and the book behind it.

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>

#include "present/screen_view.h"
#include "shell/at_screen.h"
#include "state/sample_state.h"
#include "ui/headless.h"

using namespace tubewright;

namespace {

struct Bench {
    Bench(const Job& job, const std::string& line) : state(touched(job_open(), {JobRead{"job", "jobs/job.json", job}, OpenLine{line}, GoTo{Screen::order}})) { screen.wait(0.4); }
    State state;
    HeadlessScreen screen{try_screens().front(), [this] { return screen_view(state); }, [this](const Action& action) { state = touched(state, {action}); }};

    std::vector<std::size_t> order() const {
        std::vector<std::size_t> bends;
        for (const Step& step : sheet_in_hand(state)->steps) bends.push_back(step.bend + 1);
        return bends;
    }
    /// Carries a bend's card on to the one in that place, counted from 1.
    void drag(std::size_t bend, std::size_t place) {
        screen.wait(0.4);
        const ImVec2 from = screen.find("bend-" + std::to_string(bend)).box().centre(), to = screen.find("bend-" + std::to_string(order()[place - 1])).box().centre();
        for (const float share : {0.0f, 0.3f, 0.6f, 1.0f}) screen.put_finger({from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share});
        screen.lift_finger();
        screen.wait(0.1);
    }
};

/// 20.5 mm between the bends is enough for the hook side (19.05), not for the lever side (22.86): the middle one can't
/// be the last.
Job snug_job() {
    Job job = sample_job();
    Line line = line_of({}, {{60, 0}, {60, 90}, {60, 0}});
    line.name = "snug";
    line.route.form = RouteForm::straights;
    for (const double straight : {100.0, 20.5, 20.5, 100.0}) line.route.runs.push_back({straight});
    line.bend_notes.resize(3);
    job.lines = {line};
    return job;
}

}  // namespace

TEST_CASE("a card is dragged to its new place, and undo brings it back") {
    Bench bench(tank_job(), "round the tank");
    const std::vector<std::size_t> best = bench.order();
    bench.drag(best[1], 5);
    CHECK(bench.order() == std::vector<std::size_t>{best[0], best[2], best[3], best[4], best[1], best[5]});
    CHECK(bench.screen.says("both ends should land within"));
    CHECK(bench.screen.says("in the best order"));
    bench.screen.tap("undo");
    CHECK(bench.order() == best);
    CHECK(bench.screen.has("bend-1"));  // still on this screen
}

TEST_CASE("the large arrows move the bend that was touched") {
    Bench bench(tank_job(), "round the tank");
    const std::vector<std::size_t> best = bench.order();
    CHECK(bench.screen.find("move-earlier").why_not == "touch a bend first");
    bench.screen.tap("bend-" + std::to_string(best[2]));
    bench.screen.tap("move-earlier");
    bench.screen.tap("move-earlier");
    CHECK(bench.order() == std::vector<std::size_t>{best[2], best[0], best[1], best[3], best[4], best[5]});
    CHECK(bench.screen.find("move-earlier").why_not == "it is the first");
    bench.screen.tap("move-later");
    CHECK(bench.order()[1] == best[2]);
}

TEST_CASE("a bend is made the first, stays so, and is set free") {
    Bench bench(tank_job(), "round the tank");
    const std::vector<std::size_t> best = bench.order();
    bench.screen.tap("bend-" + std::to_string(best[5]));
    bench.screen.tap("first");
    CHECK(bench.order()[0] == best[5]);
    CHECK(bench.screen.find("first").label == "Stays first");
    bench.screen.tap("free-order");
    CHECK(bench.order() == best);
    CHECK_FALSE(bench.screen.find("free-order").enabled);
}

TEST_CASE("an order by hand at once says which bend it breaks, how far that is short, and what it costs") {
    Bench bench(snug_job(), "snug");
    REQUIRE(bar_to_start(bench.state) == Bar::none);
    bench.drag(2, 3);
    CHECK(bench.order()[2] == 2);
    // 20.5 mm is 13/16 in on a tape of sixteenths, 22.86 mm is 7/8.
    CHECK(bench.screen.says("Bend 2 would have 13/16\" of straight on the lever side and needs 7/8\""));
    CHECK(bench.screen.says("Besides, both ends should land within"));
    CHECK(bar_to_start(bench.state) == Bar::stopped);
    bench.drag(2, 2);
    CHECK_FALSE(bench.screen.says("Bend 2 would have"));
    CHECK(bar_to_start(bench.state) == Bar::none);
}

TEST_CASE("once the tube is cut no finger changes the order") {
    Bench bench(tank_job(), "round the tank");
    const std::vector<std::size_t> best = bench.order();
    bench.state = touched(bench.state, {Back{}, NewStick{inches(240)}, GoTo{Screen::line}, Next{}});
    bench.state = touched(all_ticked(bench.state), {Next{}, GoTo{Screen::order}});
    bench.screen.frame();
    bench.drag(best[1], 5);
    CHECK(bench.order() == best);
    CHECK(bench.screen.says("The tube is cut for this order"));
}

namespace {

namespace fs = std::filesystem;

/// A plain bender with a wall far away, and a line of six bends on it, as a person's own files.
fs::path tank_on_a_plain_bender(const TemporaryHome& home) {
    fs::create_directories(home.path() / "benders");
    fs::create_directories(home.path() / "jobs");
    std::ofstream(home.path() / "benders/plain.json") << R"({"format": "tubewright-bender", "version": 1, "id": "plain", "name": "plain bender", "units": "mm",
        "tube_od": 4.7625, "radius": 14.2875, "max_angle": 180, "stretch": 0, "marks": [{"name": "0", "offset": 0}], "preferred_mark": "0",
        "hook_straight": 19.05, "lever_straight": 22.86, "set_up": {"hook": "left", "swing": "away"},
        "body": [{"name": "wall", "stands": "bench", "half_space": {"at": [2000, 0, 0], "into": [1, 0, 0]}}]})";
    const fs::path job = home.path() / "jobs/tank.json";
    std::ofstream(job) << R"({"format": "tubewright-job", "version": 1, "name": "Tank", "service": "other", "units": "in",
        "tube": {"od": 0.1875, "wall": 0.028, "material": "stainless-304"}, "bender": "plain", "lines": [{"name": "round the tank", "quantity": 1,
        "ends": {"A": {"fitting": "plain"}, "B": {"fitting": "plain"}}, "route": {"form": "legs", "measured_to": "centre", "legs": [8, 5, 6, 5, 6, 5, 8],
        "bends": [{"angle": 90}, {"angle": 45, "rotation": 90}, {"angle": 60, "rotation": 180}, {"angle": 30, "rotation": 0}, {"angle": 90, "rotation": 90}, {"angle": 45, "rotation": 180}]}}]})";
    return job;
}

LineWork work_at(const AtScreen& at) { return work_in_hand(at.desk.state()); }

std::vector<std::size_t> order_at(const AtScreen& at) {
    std::vector<std::size_t> bends;
    for (const Step& step : sheet_in_hand(at.desk.state())->steps) bends.push_back(step.bend + 1);
    return bends;
}

/// Whatever the main button says, with the ticks that it asks for, until so many bends are made; none is measured.
void go_on_until_made(AtScreen& at, std::size_t bends) {
    const auto there = [&] { return work_at(at).stage == Stage::finish || (work_at(at).stage == Stage::bending && work_at(at).made.size() == bends); };
    for (int touches = 0; touches < 200 && !there(); ++touches) {
        const ScreenView view = at.desk.view();
        const auto* ticks = std::get_if<TicksBody>(&view.body);
        const auto open = [](const TickView& tick) { return !tick.ticked; };
        if (ticks && std::any_of(ticks->ticks.begin(), ticks->ticks.end(), open)) at.tap(std::find_if(ticks->ticks.begin(), ticks->ticks.end(), open)->touch.id);
        else at.tap(at.screen.has("pass") ? "pass" : view.footer.main_id);
    }
    REQUIRE(there());
}

}  // namespace

TEST_CASE("a wall found beside the bench after four bends: what is left goes in another order at one touch, is inked again, kept over switching off, undone, and made") {
    const TemporaryHome home;
    const fs::path job = tank_on_a_plain_bender(home);
    std::vector<std::size_t> settled;
    Work left;
    {
        AtScreen at(home);
        at.desk.open_job(job);
        at.desk.act(SetUnit{Unit::mm});
        at.screen.frame();
        at.tap({"line-round the tank"});
        at.desk.act(NewStick{inches(240)});
        at.screen.frame();
        for (int pages = 0; work_at(at).stage == Stage::prepare && at.desk.state().looks.screen == Screen::line && pages < 9; ++pages) at.tap(at.desk.view().footer.main_id);
        go_on_until_made(at, 4);
        settled = order_at(at);
        REQUIRE(settled == std::vector<std::size_t>{4, 5, 3, 6, 2, 1});

        // The wall is measured and put on the card.
        at.desk.act(GoTo{Screen::stance});
        at.screen.frame();
        at.tap({"card"});
        for (int pages = 0; !at.screen.has("solid-0") && pages < 9; ++pages) at.tap({"later"});
        at.tap({"solid-0", "figure-solid-0-0", "key-2", "key-8", "key-0", "take", "back", "keep"});
        CHECK(at.screen.says("now hits something"));
        at.tap({"back"});
        CHECK(at.screen.says("Make bend 1 before bend 2: nothing is in the way then."));
        at.tap({"back"});
        CHECK(at.screen.says("Make bend 1 before bend 2: nothing is in the way then."));
        CHECK(at.screen.says("Marks 1 and 2 have to be inked again"));
        at.tap({"see-order", "reorder"});
        CHECK(order_at(at) == std::vector<std::size_t>{4, 5, 3, 6, 1, 2});
        CHECK(at.screen.says("Measure from each old mark"));
        at.tap({"undo"});
        CHECK(order_at(at) == settled);
        at.tap({"see-order", "reorder", "next"});
        CHECK(step_in_hand(at.desk.state())->bend == 0);
        CHECK(step_in_hand(at.desk.state())->hook == End::B);
        CHECK(all_of(at.faults) == "");
        left = at.desk.state().work;
    }
    AtScreen at(home);
    at.desk.open_job(job);
    at.screen.frame();
    CHECK((at.desk.state().work == left));
    CHECK(order_at(at) == std::vector<std::size_t>{4, 5, 3, 6, 1, 2});
    CHECK_FALSE(other_rest(at.desk.state()));
    REQUIRE(step_in_hand(at.desk.state()));
    at.tap({"undo", "undo"});  // of the day before
    CHECK(order_at(at) == settled);
    CHECK(at.screen.says("Make bend 1 before bend 2"));
    at.tap({"see-order", "reorder", "next"});
    go_on_until_made(at, 6);
    CHECK(work_at(at).stage == Stage::finish);
    CHECK(all_of(at.faults) == "");
}
