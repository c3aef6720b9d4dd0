// The log of bends by finger: a reading moves the next pull, its page is looked through, and all of it is there again
// after switching off.
#include <catch2/catch.hpp>

#include "present/screen_view.h"
#include "present/text.h"
#include "shell/at_screen.h"
#include "shell/operator.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

/// On as the screen says, until `enough`.
void go_on(AtScreen& at, Operator& person, const std::function<bool(const State&)>& enough) {
    for (int touches = 0; touches < 400 && !enough(at.desk.state()); ++touches) {
        std::vector<Seen> seen;
        for (const Touchable& thing : at.screen.ui().touchables()) seen.push_back({thing.id, thing.enabled});
        const auto touch = person.next_touch(at.desk.state(), seen);
        REQUIRE(touch);
        at.tap(*touch);
    }
    REQUIRE(enough(at.desk.state()));
}

auto at_move(std::size_t made, Move move) {
    return [=](const State& state) {
        if (state.looks.screen != Screen::bench || !step_in_hand(state)) return false;
        return work_in_hand(state).made.size() == made && work_in_hand(state).move == move;
    };
}

std::string hero(const Desk& desk) {
    const ScreenView view = desk.view();
    return std::get<MoveBody>(view.body).hero;
}

}  // namespace

TEST_CASE("a bend read two degrees over moves the next pull back, and each record can be left out, put back, copied and brought in by finger") {
    const TemporaryHome home;
    std::string pulled_to, before;
    Work work;
    {
        AtScreen at(home);
        Operator person("engine-fuel-line", {{2}});
        go_on(at, person, at_move(1, Move::pull));
        pulled_to = hero(at.desk);
        const State state = at.desk.state();
        work = state.work;
        REQUIRE(work.bends.size() == 1);
        const Angle by_physics = set_angle(physics_of(sheet_in_hand(state)->line), step_in_hand(state)->target);
        CHECK(step_in_hand(state)->set.deg < by_physics.deg - 0.5);
        const Tape tape{reader_unit(state), 16};
        CHECK(pulled_to == lever_text(step_in_hand(state)->set, tape));
        CHECK(pulled_to != lever_text(by_physics, tape));
    }
    {
        // Switched off and on: the same next pull.
        AtScreen at(home);
        at.desk.take_up_again();
        at.screen.frame();
        CHECK((at.desk.state().work == work));
        CHECK(hero(at.desk) == pulled_to);
        const std::string record = "bend-" + std::to_string(work.bends[0].check.record.id);
        at.desk.act(GoTo{Screen::line});
        at.screen.frame();
        at.tap({"bends", record.c_str(), "leave-out"});
        CHECK(at.desk.state().work.bends[0].check.record.left_out);
        CHECK(at.desk.state().springbacks[0]->learned_from == 0);
        at.tap("undo");
        CHECK((at.desk.state().work == work));
        at.tap({"leave-out", "leave-out", "back", "bends-more", "write"});
        CHECK(at.desk.state().looks.notice.find("1 bend written to ") == 0);
        at.tap("dismiss");
        at.screen.hold("forget", 1.0);
        at.screen.frame();
        CHECK(at.desk.state().work.bends.empty());
        CHECK(at.desk.state().looks.screen == Screen::bends);
        at.tap({"bends-more", "bring", "file-bends-2026-11-25.json"});
        CHECK(at.desk.state().looks.notice == "1 bend brought in from bends-2026-11-25.json.");
        at.tap("dismiss");
        REQUIRE(at.desk.state().work.bends.size() == 1);
        CHECK(at.desk.state().work.bends[0].check.measured == work.bends[0].check.measured);
        at.tap({"back", "new-tube"});
        CHECK(at.desk.state().work.lots.size() == 1);
        CHECK(all_of(at.faults) == "");
        at.desk.act(GoTo{Screen::bench});
        work = at.desk.state().work;
    }
    const Desk again = Desk::made(home.places(), one_day).value();
    CHECK((again.state().work == work));
}
