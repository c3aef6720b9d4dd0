// What holds whatever is touched, in whatever order.

#include <catch2/catch.hpp>

#include <algorithm>

#include <random>

#include "state/random_action.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

/// Everything there is of the sample's one kind of tube, in mm: what was brought in has to be somewhere.
double all_tube(const Work& work) {
    double sum = 0;
    for (const auto& [key, length] : work.stick) sum += length.mm;
    for (const auto& [key, length] : work.used) sum += length.mm;
    for (const Offcut& offcut : work.offcuts) sum += offcut.length.mm;
    for (const Scrap& scrap : work.scrap) sum += scrap.scrapped.mm;
    for (const auto& [key, line] : work.lines)
        if (line.cut && line.stage != Stage::done) sum += line.cut_length.mm;
    return sum;
}

double brought_in(const State& before, const State& after, const Action& action) {
    if (before.work == after.work) return 0;
    if (const auto* stick = std::get_if<NewStick>(&action)) return stick->length.mm;
    if (std::holds_alternative<Next>(action) && before.looks.screen == Screen::stick_length) return typed_stick(before)->mm;
    return 0;
}

bool from_the_world(const Action& action) { return std::holds_alternative<BookRead>(action); }

}  // namespace

TEST_CASE("no touch in any order loses tube, breaks the record, or leads nowhere") {
    std::mt19937 dice(20261125);
    std::size_t made = 0, scrapped = 0;
    for (int walk = 0; walk < 30; ++walk) {
        State state = job_open();
        for (int i = 0; i < 250; ++i) {
            const Action action = random_action(dice, state);
            INFO("walk " << walk << ", touch " << i << ", action " << action.index());
            const State old = state;
            const Work& before = old.work;
            StateStep step = apply(state, action);
            const bool asked = std::any_of(step.requests.begin(), step.requests.end(), [](const Request& r) { return std::holds_alternative<SaveWork>(r); });
            if (step.state.book == BookStanding::open && !from_the_world(action)) CHECK(asked == (step.state.work != before));
            const bool kept_the_past = !std::holds_alternative<Undo>(action) && !std::holds_alternative<Redo>(action) && !from_the_world(action);
            if (kept_the_past) {
                CHECK(all_tube(step.state.work) == Approx(all_tube(before) + brought_in(old, step.state, action)).margin(1e-6));
                if (step.state.work != before) CHECK(apply(step.state, Undo{}).state.work == before);
            }
            state = std::move(step.state);
            CHECK(state.past.size() <= 200);
            if (sheet_in_hand(state)) {
                const LineWork work = work_in_hand(state);
                CHECK(misfit(*sheet_in_hand(state), work) == Misfit::none);
                if (work.stage == Stage::bending) CHECK(work.made.size() == work.step);
            }
            if (!state.work.used.empty()) ++made;
        }
        scrapped += state.work.scrap.size();
    }
    CHECK(made > 0);  // the dice got far enough to mean something
    CHECK(scrapped > 0);
}

}  // namespace tubewright
