// Whole jobs by finger: every demo job, on every size of screen, in both units and both themes, from the
// shelf to the last line handed over; each frame's screen looked over for faults.
#include <catch2/catch.hpp>

#include "present/screen_view.h"
#include "shell/walk.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

/// All that can come of a reading, over and over: right, under, right to the rim, over, and such as nobody believes.
std::vector<Angle> readings_of_all_kinds() {
    std::vector<Angle> all;
    for (int i = 0; i < 12; ++i)
        for (const double off : {0.0, -2.0, 0.5, 2.0, -30.0, 0.25, -3.0, -1.0, -0.5, 20.0}) all.push_back({off});
    return all;
}

/// Once for each stage of each line, and after the second bend, what lies beside the bench is looked at too.
void walk_to_the_end(Walk& walk, Operator& person) {
    std::set<std::string> looked_beside;
    const auto here = [](const State& state) {
        if (state.looks.screen != Screen::bench || !state.line) return std::string();
        const LineWork work = work_in_hand(state);
        return std::to_string(*state.line) + "/" + std::to_string(static_cast<int>(work.stage)) + (work.made.size() == 2 ? "/2" : "");
    };
    for (bool done = false; !done;) {
        walk.go_on(person, [&](const State& state) { return !here(state).empty() && !looked_beside.contains(here(state)); });
        done = !looked_beside.insert(here(walk.state())).second;
        if (!done) walk.look_beside();
    }
}

}  // namespace

TEST_CASE("every demo job is walked to its end by finger, and no screen has a fault in either unit or theme") {
    std::size_t turn = 0;
    for (const char* job : {"trailer-brakes-stainless", "trailer-axle-steel", "engine-fuel-line", "cooler-pair"})
        // Each on a small and on a large display, a tablet's and a desk's in turn; the person's own unit and theme come in
        // turn too, and every screen is looked at in both of both.
        for (const std::size_t kind : {turn % 4 / 2, 3 - turn % 4 / 2}) {
            const TryScreen& on = try_screens().at(kind);
            const Unit unit = turn % 2 ? Unit::mm : Unit::inch;
            const Theme theme = turn / 2 % 2 != turn % 2 ? Theme::dark : Theme::light;
            ++turn;
            INFO(job << " on " << on.name() << (unit == Unit::mm ? ", mm" : ", inch"));
            Walk walk(on);
            walk.desk.act(SetUnit{unit});
            walk.desk.act(SetTheme{theme});
            Operator person(job, readings_of_all_kinds());
            walk_to_the_end(walk, person);
            CHECK(walk.faults == std::set<std::string>{});
            CHECK(walk.views > 700);
            CHECK(walk.labels > 100);
            const State& state = walk.state();
            REQUIRE(state.job);
            for (const Line& line : state.job->lines) {
                const LineWork& work = state.work.lines.at(line_key(state.job_id, line.name));
                CHECK(work.stage == Stage::done);
                CHECK(work.finished == line.quantity);
                CHECK(work.made.size() == line.route.bends.size());
                for (const BendMade& made : work.made) CHECK(made.measured);
            }
        }
}

TEST_CASE("switched off after any touch, the bench comes back as it was") {
    TemporaryHome home;
    Operator person("engine-fuel-line");
    std::optional<ScreenView> last;
    for (int changes = 0; changes < 200; ++changes) {
        // A new desk for every change: nothing is kept but what is on the disk.
        Desk desk = Desk::made(home.places(), one_day).value();
        if (changes > 0) desk.take_up_again();
        desk.act(ScreenIs{5.87});
        if (last) {
            INFO("change " << changes << ": " << last->key);
            CHECK((desk.view() == *last));
        }
        HeadlessScreen screen(try_screens().front(), [&] { return desk.view(); }, [&](const Action& action) { desk.act(action); });
        // On to the bench, then on until something is done there.
        for (Work before = desk.state().work; before == desk.state().work || desk.state().looks.screen != Screen::bench;) {
            if (desk.state().looks.screen != Screen::bench) before = desk.state().work;
            std::vector<Seen> seen;
            for (const Touchable& thing : screen.ui().touchables()) seen.push_back({thing.id, thing.enabled});
            const auto touch = person.next_touch(desk.state(), seen);
            if (!touch) return;
            screen.tap(*touch);
        }
        // Of what is on the screen only the page turned and what is half typed are nobody's record; undo is.
        State recorded = desk.state();
        recorded.looks = Looks{};
        recorded.looks.screen = Screen::bench;
        last = screen_view(recorded);
    }
    FAIL("200 changes at the bench and not done");
}
