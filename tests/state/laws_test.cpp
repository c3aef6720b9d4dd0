// What holds whatever is touched, in whatever order.

#include <catch2/catch.hpp>

#include <algorithm>

#include <random>

#include "state/joints.h"
#include "state/random_action.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

/// Every length that came in is somewhere, and what the bench holds is what the rack's ledger says it does.
bool is_accounted_for(const Work& work) {
    for (const auto& [tube, balance] : balances(*work.rack.ledger))
        if (!balance.holds()) return false;
    std::map<std::string, ExactLength> in_hand;
    for (const auto& [number, piece] : work.rack->pieces)
        if (piece.where == Whereabouts::in_hand && !in_hand.emplace(piece.line, piece.length).second) return false;
    std::map<std::string, ExactLength> on_the_bench;
    for (const auto& [key, line] : work.lines)
        if (line.cut && line.stage != Stage::done) on_the_bench[key] = exact(line.cut_length);
    return in_hand == on_the_bench;
}

/// No more ends than a joint has places, and no line into itself.
bool joints_hold(const State& state) {
    for (const Joint& joint : joints_in_use(state)) {
        const JointPlaces places = places_of(state, joint);
        const std::vector<EndOfSheet> ends = ends_in(state, joint);
        const auto into_itself = [](const EndOfSheet& one, const EndOfSheet& next) { return one.line == next.line; };
        if (places.taken > places.there || std::adjacent_find(ends.begin(), ends.end(), into_itself) != ends.end()) return false;
    }
    return true;
}

std::string key_in_hand(const State& state) {
    return line_key(state.job_id, sheet_in_hand(state)->line.name);
}

bool lever_went(const State& before, const State& after) {
    return before.line == after.line && work_in_hand(before).move == Move::pull && work_in_hand(after).move == Move::check && !work_in_hand(after).last_reading;
}

/// Two of three bends made, the second four degrees over, and the ways out on the screen: chance seldom comes there.
State tube_to_save() {
    State state = at_line(line_of({10, 8, 8, 10}, {{90, 0}, {90, 90}, {60, 90}}));
    for (const int off : {0, 4}) state = reading(at_check(state), std::to_string(static_cast<int>(step_in_hand(state)->target.deg) + off));
    return touched(state, {LookAtRescue{}});
}

bool from_the_world(const Action& action) { return std::holds_alternative<BookRead>(action); }

}  // namespace

TEST_CASE("no touch in any order loses tube, breaks the record, or leads nowhere") {
    std::mt19937 dice(20261125);
    std::size_t made = 0, scrapped = 0, asked_to_save = 0, saved = 0, read = 0;
    for (int walk = 0; walk < 50; ++walk) {
        State state = walk % 5 == 0 ? tube_to_save() : job_open();
        for (int i = 0; i < 250; ++i) {
            const Action action = random_action(dice, state);
            INFO("walk " << walk << ", touch " << i << ", action " << action.index());
            const State old = state;
            const Work& before = old.work;
            StateStep step = orders_found(apply(state, action));
            const bool asked = std::any_of(step.requests.begin(), step.requests.end(), [](const Request& r) { return std::holds_alternative<SaveWork>(r); });
            if (step.state.book == BookStanding::open && !from_the_world(action)) CHECK(asked == (step.state.work != before));
            const bool kept_the_past = !std::holds_alternative<Undo>(action) && !std::holds_alternative<Redo>(action) && !from_the_world(action);
            if (kept_the_past) {
                CHECK(is_accounted_for(step.state.work));
                CHECK(joints_hold(step.state));
                // On the card's screen undo is for the card, and beside it for the pieces.
                const bool of_screen = step.state.looks.screen == Screen::card || (step.state.looks.screen == Screen::learn && step.state.work.pieces == before.pieces);
                if (step.state.work != before && !of_screen) CHECK(apply(step.state, Undo{}).state.work == before);
            }
            state = std::move(step.state);
            CHECK(state.past.size() <= 200);
            for (const KeptOffer& offer : kept_offers(state)) {
                CHECK(offer.kept().mm <= work_in_hand(state).cut_length.mm);
                for (const Length& piece : offer.pieces) CHECK((offer.id == "whole" || piece >= worth_keeping));
            }
            if (sheet_in_hand(state)) {
                const LineWork work = work_in_hand(state);
                const Misfit against = misfit(*sheet_in_hand(state), work);
                CHECK((against == Misfit::none || against == Misfit::ink));
                if (work.stage == Stage::bending) CHECK(work.made.size() == work.step);
            }
            if (!state.work.used.empty()) ++made;
            asked_to_save += state.rescue != nullptr;
            for (const auto& [key, line] : state.work.lines) saved += line.saved.has_value(), read += line.turns.size() + line.tapes.size();
        }
        scrapped += state.work.scrap.size();
    }
    CHECK(made > 0);  // the dice got far enough to mean something
    CHECK(scrapped > 0);
    CHECK(asked_to_save > 0);
    CHECK(saved > 0);
    CHECK(read > 0);
}

TEST_CASE("what has been pulled stays pulled whatever is gone back to, and is never offered whole") {
    std::mt19937 dice(20261126);
    std::size_t bent_seen = 0;
    for (int walk = 0; walk < 160; ++walk) {
        State state = at_first_bend();
        bool bent = false;
        for (int i = 0; i < 60; ++i) {
            const bool back = std::uniform_int_distribution<int>(0, 3)(dice) == 0;
            const Action action = back ? Action{Back{}} : random_action(dice, state);
            INFO("walk " << walk << ", touch " << i << ", action " << action.index());
            const State old = state;
            state = touched(std::move(state), {action});
            if (!sheet_in_hand(state) || key_in_hand(state) != "trailer/axle crossover") break;
            if (std::holds_alternative<Undo>(action) || std::holds_alternative<Redo>(action)) break;  // they may take the pull back
            bent = (bent || lever_went(old, state)) && work_in_hand(state).cut;
            if (!bent) continue;
            ++bent_seen;
            for (const KeptOffer& offer : kept_offers(state)) CHECK(offer.id != "whole");
        }
    }
    CHECK(bent_seen > 50);
}

}  // namespace tubewright
