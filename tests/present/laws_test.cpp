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
    return fresh;
}

/// A finger that presses what the screen offers, the main button more often than others.
Action touch_of(std::mt19937& dice, const ScreenView& view) {
    std::vector<Action> offers;
    for (const ButtonView& button : touchables(view)) {
        if (!button.enabled || !button.press) continue;
        const bool main = button.id == view.footer.main_id || button.id.rfind("tick-", 0) == 0;
        const bool leads_away = button.id == "back" || button.id == "undo" || button.id == "wrong" || button.id == "cancel";
        for (int i = 0; i < (main ? 12 : leads_away ? 1 : 3); ++i) offers.push_back(*button.press);
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
    for (int walk = 0; walk < 8; ++walk) {
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
    for (int walk = 0; walk < 25; ++walk) {
        State state = touched(job_open(), {GoTo{Screen::shelf}});
        for (int i = 0; i < 250; ++i) {
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
