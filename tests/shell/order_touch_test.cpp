// The order of bends changed by finger, with the state behind the screen: dragged, by arrows, pinned, set free.

#include <catch2/catch.hpp>

#include "present/screen_view.h"
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
