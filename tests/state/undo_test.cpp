#include <catch2/catch.hpp>

#include <algorithm>

#include "state/sample_state.h"

namespace tubewright {
namespace {

bool asks_to_save(const StateStep& step) {
    return std::any_of(step.requests.begin(), step.requests.end(), [](const Request& request) { return std::holds_alternative<SaveWork>(request); });
}

}  // namespace

TEST_CASE("undo to the start gives the first record, redo to the end the last") {
    const Work first = job_open().work;
    State state = piece_made();
    const Work last = state.work;
    int touches = 0;
    while (!state.past.empty()) {
        state = touched(std::move(state), {Undo{}});
        ++touches;
    }
    CHECK(touches > 10);
    CHECK(state.work == first);
    while (!state.future.empty()) state = touched(std::move(state), {Redo{}});
    CHECK(state.work == last);
}

TEST_CASE("the screen follows what is undone to the line it belongs to") {
    State state = touched(at_first_bend(), {GoTo{Screen::lines}, OpenLine{"left rear"}});
    state = touched(state, {Undo{}});
    CHECK(sheet_in_hand(state)->line.name == "axle crossover");
    CHECK(state.looks.screen == Screen::bench);
}

TEST_CASE("each change of the record is saved, and nothing else is") {
    State state = at_prepare();
    CHECK(asks_to_save(apply(state, Tick{"prepare-deburr"})));
    CHECK(asks_to_save(apply(touched(state, {Tick{"prepare-deburr"}}), Undo{})));
    CHECK_FALSE(asks_to_save(apply(state, GoTo{Screen::settings})));
    CHECK_FALSE(asks_to_save(apply(state, WentWrong{})));
    CHECK_FALSE(asks_to_save(apply(state, Tick{"no-such-tick"})));
    const StateStep theme = apply(state, SetTheme{Theme::dark});
    REQUIRE(theme.requests.size() == 1);
    CHECK(std::holds_alternative<SaveSettings>(theme.requests[0]));
}

TEST_CASE("a new touch after undo forgets what could have been redone") {
    State state = touched(at_prepare(), {Tick{"prepare-deburr"}, Undo{}});
    CHECK(state.future.size() == 1);
    state = touched(state, {Tick{"prepare-square"}});
    CHECK(state.future.empty());
}

TEST_CASE("undo reaches over opening the same job again, and not into another job while that one is open") {
    State state = touched(at_prepare(), {Tick{"prepare-deburr"}});
    const Work ticked = state.work;
    CHECK(can_undo(touched(state, {JobRead{"trailer", "jobs/trailer.json", sample_job()}})));
    state = touched(state, {JobRead{"engine", "jobs/engine.json", sample_job()}});
    CHECK_FALSE(can_undo(state));
    CHECK(touched(state, {Undo{}}).work == ticked);
    // What is done to this job is undone down to there, and no further.
    const State there = touched(state, {OpenLine{"axle crossover"}, NewStick{inches(100)}});
    CHECK(touched(there, {Undo{}, Undo{}}).work == ticked);
    CHECK(can_redo(touched(there, {Undo{}})));
    // Back at the first job it goes on.
    state = touched(there, {Undo{}, JobRead{"trailer", "jobs/trailer.json", sample_job()}});
    CHECK_FALSE(can_redo(state));
    CHECK(touched(state, {Undo{}}).work.lines.empty());
}

TEST_CASE("steps read from the book are undone, and new ones get numbers of their own") {
    const State before = touched(at_prepare(), {Tick{"prepare-deburr"}});
    State state = touched(job_open(), {BookRead{before.work, {}, before.past}, OpenLine{"axle crossover"}, Next{}, Tick{"prepare-square"}});
    REQUIRE(state.past.size() == before.past.size() + 1);
    CHECK(state.past.back().number > before.past.back().number);
    CHECK(touched(state, {Undo{}}).work == before.work);
    CHECK(touched(state, {Undo{}, Undo{}}).work == before.past.back().work);
    // Even the number of a step that was undone.
    const std::int64_t undone = state.past.back().number;
    CHECK(touched(state, {Undo{}, Tick{"prepare-square"}}).past.back().number > undone);
}

TEST_CASE("undoing a choice of mark works the sheets out anew") {
    State state = at_first_bend();
    const Length before = state.sheets[0].steps[0].mark;
    state = touched(state, {GoTo{Screen::stance}, ChooseMark{"L"}});
    // L lies 0.5625 in further towards the lever; end A may be on either side, so the mark moves by that much either way.
    CHECK(std::abs((state.sheets[0].steps[0].mark - before).inch()) == Approx(0.5625));
    state = touched(state, {Undo{}});
    CHECK(state.sheets[0].steps[0].mark == before);
    CHECK(touched(state, {ChooseMark{"no such line"}}).sheets[0].steps[0].mark == before);
    const State turned = touched(state, {ChooseSetUp{{HookHand::right, Swing::up}}});
    CHECK(turned.sheets[0].set_up == SetUp{HookHand::right, Swing::up});
}

TEST_CASE("a refused book waits for an answer, and without a book nothing asks to be saved") {
    State state = touched(job_open(), {BookRefused{"The book is from a newer version."}});
    CHECK(touched(state, {OpenLine{"axle crossover"}}).looks.screen == Screen::lines);
    CHECK(std::holds_alternative<OpenFreshBook>(apply(state, StartFreshBook{}).requests.at(0)));
    state = touched(state, {GoOnWithoutBook{}});
    CHECK(state.book == BookStanding::without);
    state = touched(state, {OpenLine{"axle crossover"}});
    CHECK(apply(state, NewStick{inches(100)}).requests.empty());
    CHECK(touched(state, {NewStick{inches(100)}}).work.in_use.size() == 1);
}

TEST_CASE("what could not be saved is said until it has been read") {
    State state = touched(job_open(), {NotSaved{"The disk is full."}});
    CHECK(state.looks.notice == "The disk is full.");
    CHECK(touched(state, {Dismiss{}}).looks.notice.empty());
}

}  // namespace tubewright
