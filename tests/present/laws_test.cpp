// What holds of every screen, however it was come to.

#include <catch2/catch.hpp>

#include <map>
#include <random>
#include <set>

#include "present/screen_view.h"
#include "present/touchables.h"
#include "present/view_text.h"
#include "state/random_action.h"

namespace tubewright {
namespace {

void check_screen(const ScreenView& view) {
    INFO(as_text(view));
    std::map<std::string, int> ids;
    for (const ButtonView& button : touchables(view)) {
        INFO("button " << button.id);
        ++ids[button.id];
        CHECK_FALSE(button.id.empty());
        CHECK(button.enabled == button.why_not.empty());
        if (button.enabled) CHECK(button.press.has_value());
    }
    for (const auto& [id, count] : ids) CHECK(count == 1);
    for (const std::string& id : {view.footer.main_id, view.footer.back_id})
        if (!id.empty()) CHECK(ids.contains(id));
    CHECK_FALSE(view.key.empty());
    if (view.ribbon) {
        std::size_t done = 0;
        for (const RibbonBend& bend : view.ribbon->bends) done += bend.standing == RibbonBend::Standing::done ? 1u : 0u;
        CHECK(view.ribbon->ticks.size() <= 220);
        CHECK(done <= view.ribbon->bends.size());
    }
}

/// The state as it is after switching off and on: from the book, the job file, and the same screen.
State reloaded(const State& state) {
    State fresh;
    fresh.checklists = state.checklists;
    fresh = touched(fresh, {DayIs{state.day}, ScreenIs{state.screen_px_per_mm}, ShelfRead{state.shelf}, BookRead{state.work, state.settings, state.past}});
    if (state.job) fresh = touched(fresh, {JobRead{state.job_id, state.job_path, *state.job}});
    fresh.line = state.line;
    fresh.looks = state.looks;
    fresh.card = state.card;  // half-done, as looks are
    fresh.learn = state.learn;
    fresh.rescue = state.rescue;
    return fresh;
}

/// A finger that presses what the screen offers, the main button more often than others.
Action touch_of(std::mt19937& dice, const ScreenView& view) {
    std::vector<Action> offers;
    for (const ButtonView& button : touchables(view)) {
        if (!button.enabled || !button.press) continue;
        const bool main = button.id == view.footer.main_id || button.id.rfind("tick-", 0) == 0;
        const bool leads_away = button.id == "back" || button.id == "undo" || button.id == "wrong" || button.id == "cancel";
        for (int i = 0; i < (main ? 24 : leads_away ? 1 : 3); ++i) offers.push_back(*button.press);
    }
    REQUIRE_FALSE(offers.empty());
    return offers[std::uniform_int_distribution<std::size_t>(0, offers.size() - 1)(dice)];
}

State carried_out(State state, const Action& action) {
    StateStep step = orders_found(apply(std::move(state), action));
    for (const Request& request : step.requests)
        if (std::holds_alternative<ReadJob>(request)) return orders_found(apply(std::move(step.state), JobRead{"trailer", "jobs/trailer.json", sample_job()})).state;
    return std::move(step.state);
}

std::string place_of(const State& state) {
    if (state.looks.screen != Screen::bench) return "screen " + std::to_string(static_cast<int>(state.looks.screen));
    const LineWork work = work_in_hand(state);
    std::string place = "stage " + std::to_string(static_cast<int>(work.stage));
    if (work.stage == Stage::bending) place += " move " + std::to_string(static_cast<int>(work.move)) + (work.last_reading ? " read" : "");
    return place;
}

}  // namespace

TEST_CASE("whatever is touched, every screen is whole, and the same after switching off and on") {
    std::mt19937 dice(42);
    for (int walk = 0; walk < 5; ++walk) {
        State state = job_open();
        for (int i = 0; i < 200; ++i) {
            state = touched(std::move(state), {random_action(dice, state)});
            const ScreenView view = screen_view(state);
            check_screen(view);
            State without_future = state;  // only what was undone can't be redone any more
            without_future.future.clear();
            CHECK(screen_view(reloaded(state)) == screen_view(without_future));
        }
    }
}

TEST_CASE("every screen can be come to by touching what screens offer, and Back leads out of each") {
    std::mt19937 dice(7);
    std::set<std::string> seen;
    for (int walk = 0; walk < 30; ++walk) {
        State state = touched(job_open(), {GoTo{Screen::shelf}});
        for (int i = 0; i < 800; ++i) {
            state = carried_out(std::move(state), touch_of(dice, screen_view(state)));
            seen.insert(place_of(state));
        }
        State leaving = state;
        for (int i = 0; i < 60 && leaving.looks.screen != Screen::shelf; ++i) {
            const ScreenView view = screen_view(leaving);
            INFO(as_text(view));
            REQUIRE(view.footer.back_id == "back");
            leaving = touched(std::move(leaving), {Back{}});
        }
        CHECK(leaving.looks.screen == Screen::shelf);
    }
    for (const char* place : {"screen 0", "screen 1", "screen 2", "screen 4", "screen 5", "screen 6", "screen 7", "screen 8", "screen 9", "stage 0", "stage 1", "stage 2 move 0",
                              "stage 2 move 1", "stage 2 move 2", "stage 2 move 3", "stage 2 move 3 read", "stage 3", "stage 4"}) {
        INFO(place);
        CHECK(seen.contains(place));
    }
}

namespace {

/// What stands on a screen in words that have to be read, or ticked.
std::set<std::string> sentences_on(const ScreenView& view) {
    std::set<std::string> all;
    if (const auto* ticks = std::get_if<TicksBody>(&view.body)) {
        for (const TickView& tick : ticks->ticks) all.insert(tick.touch.label);
        for (const TextView& caution : ticks->cautions) all.insert(caution.text);
    }
    if (const auto* marks = std::get_if<MarkOutBody>(&view.body))
        for (const MarkRow& row : marks->rows) all.insert(row.bend);
    if (const auto* line = std::get_if<OverviewBody>(&view.body))
        for (const TextView& finding : line->findings) all.insert(finding.text);
    return all;
}

/// Everything that the pages of this screen hold.
std::set<std::string> all_pages_of(const State& state) {
    std::set<std::string> all;
    for (int page = 0; page < 12; ++page) all.merge(sentences_on(screen_view(touched(state, {TurnPage{-1000}, TurnPage{page}}))));
    return all;
}

/// Presses nothing but the main button until the work goes on; what was shown on the way.
std::set<std::string> shown_by_the_main_button(State& state) {
    std::set<std::string> shown;
    const LineWork before = work_in_hand(state);
    const Screen screen = state.looks.screen;
    for (int presses = 0; presses < 20 && work_in_hand(state) == before && state.looks.screen == screen; ++presses) {
        const ScreenView view = screen_view(state);
        shown.merge(sentences_on(view));
        for (const ButtonView& button : view.footer.buttons)
            if (button.id == view.footer.main_id && button.enabled) state = touched(state, {*button.press});
    }
    return shown;
}

}  // namespace

TEST_CASE("the main button passes no page unseen: not of the line, of a list, or of the marks") {
    Job job = sample_job();
    for (int i = 0; i < 6; ++i) job.lines[0].route.bends.push_back({Angle{20}, Angle{180}}), job.lines[0].route.runs.push_back(inches(5));
    job.lines[0].bend_notes.resize(8);
    job.lines[0].note = "Goes over the axle, inside the frame.";
    job.lines[0].material.advice = {"Sharp wheel, light feed.", "No copper wire brush.", "Deburr with a clean tool."};
    State state = touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}, NewStick{inches(400)}, GoTo{Screen::line}});
    REQUIRE(bar_to_start(state) == Bar::none);
    std::size_t pages = 0;
    for (const char* at : {"line", "prepare", "mark out"}) {
        INFO(at);
        state = all_ticked(touched(state, {TurnPage{-1000}}));
        const std::set<std::string> all = all_pages_of(state);
        pages += all.size();
        CHECK(shown_by_the_main_button(state) == all);
    }
    CHECK(pages > 16);
    while (work_in_hand(state).stage == Stage::bending) state = touched(at_check(std::move(state)), {PassCheck{}});
    for (const char* at : {"finish", "hand over"}) {
        INFO(at);
        state = all_ticked(state);
        if (at == std::string("hand over")) state = touched(state, {LeaveForLater{"hand-over-leak"}});
        const std::set<std::string> all = all_pages_of(state);
        CHECK(shown_by_the_main_button(state) == all);
    }
    CHECK(work_in_hand(state).stage == Stage::done);
}

TEST_CASE("every ink mark has its number and its reading over it, six to a page") {
    for (const Unit unit : {Unit::inch, Unit::mm}) {
        State state = touched(touched(all_ticked(touched(job_open(), {JobRead{"tank", "jobs/tank.json", tank_job()}, OpenLine{"round the tank"}, NewStick{inches(240)}, Next{}})), {Next{}}), {SetUnit{unit}});
        REQUIRE(work_in_hand(state).stage == Stage::mark_out);
        const ScreenView view = screen_view(state);
        const auto& rows = std::get<MarkOutBody>(view.body).rows;
        REQUIRE(rows.size() == 6);
        std::set<std::string> over, beside;
        for (const RibbonMark& mark : view.ribbon->marks) over.insert(mark.label);
        for (std::size_t i = 0; i < rows.size(); ++i) beside.insert(std::to_string(i + 1) + ": " + rows[i].from_a);
        CHECK(over == beside);
        CHECK(view.ribbon->tally.empty());
    }
}

TEST_CASE("as many bends show as done as are written down as made") {
    State state = at_first_bend();
    for (std::size_t made = 0; made <= 2; ++made) {
        const ScreenView view = screen_view(state);
        std::size_t done = 0;
        for (const RibbonBend& bend : view.ribbon->bends) done += bend.standing == RibbonBend::Standing::done ? 1u : 0u;
        CHECK(done == made);
        CHECK(work_in_hand(state).made.size() == made);
        if (made < 2) state = touched(at_check(std::move(state)), {PassCheck{}});
    }
}

TEST_CASE("the key changes with each step, and not with a tick or a typed digit") {
    State state = at_first_bend();
    std::set<std::string> keys;
    for (int i = 0; i < 4; ++i) {
        keys.insert(screen_view(state).key);
        if (i < 3) state = touched(std::move(state), {Next{}});
    }
    CHECK(keys.size() == 4);
    CHECK(screen_view(touched(state, {Key{"9"}})).key == screen_view(state).key);
    const State ticking = at_prepare();
    CHECK(screen_view(touched(ticking, {Tick{"prepare-deburr"}})).key == screen_view(ticking).key);
}

}  // namespace tubewright
