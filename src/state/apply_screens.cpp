// From screen to screen, and what the world reports.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

void clear_half_done(Looks& looks) {
    looks.page = 0;
    looks.typed.clear();
    looks.keypad = false;
    looks.large_picture = false;
    looks.reason.reset();
    looks.kept_choice.clear();
    looks.wrong_bend.reset();
    looks.picked_bend.reset();
    looks.retake.reset();
    looks.picked_slip = 0;
    looks.picked_way = 0;
    looks.to_read = 0;
    looks.record = 0;
    looks.leg = 0;
}

/// A main screen has a way back of its own; Back out of any other leads to where it was opened from.
bool is_beside(Screen screen) {
    switch (screen) {
        case Screen::shelf:
        case Screen::lines:
        case Screen::line:
        case Screen::draft:
        case Screen::ask:
        case Screen::route:
        case Screen::prove:
        case Screen::word:
        case Screen::bench: return false;
        default: return true;
    }
}

bool can_show(const State& state, Screen screen) {
    switch (screen) {
        case Screen::shelf:
        case Screen::scrap:
        case Screen::settings:
        case Screen::rack:
        case Screen::plan:
        case Screen::plan_jobs:
        case Screen::buy:
        case Screen::shop_rules:
        case Screen::figures:
        case Screen::keep_safe:
        case Screen::stock: return true;
        case Screen::rack_tube: return state.looks.tube.has_value();
        case Screen::rack_piece: return state.looks.piece.has_value();
        case Screen::rack_ask: return false;  // only a question of the rack's opens it
        case Screen::lines:
        case Screen::joints: return state.job.has_value();
        case Screen::joint: return false;  // only an end opens it
        case Screen::line:
        case Screen::stance:
        case Screen::card:
        case Screen::bends:
        case Screen::bends_more:
        case Screen::bend_files:
        case Screen::hand:
        case Screen::stick_length: return sheet_in_hand(state) != nullptr;
        case Screen::legs: return !legs_here(state).empty();
        case Screen::leg: return false;  // only a leg opens it
        case Screen::order: return sheet_in_hand(state) && !sheet_in_hand(state)->steps.empty();
        case Screen::bench: return bar_to_start(state) == Bar::none;
        case Screen::later: return sheet_in_hand(state) && !work_in_hand(state).later.empty();
        case Screen::draft: return state.entry.has_value();
        case Screen::learn:
        case Screen::ask:
        case Screen::prove:
        case Screen::word:
        case Screen::bend:
        case Screen::route: return false;  // by their own touches
        case Screen::wrong: return false;  // only WentWrong opens the question
        case Screen::rescue:
        case Screen::rescue_more: return state.rescue != nullptr && sheet_in_hand(state);
        case Screen::rescue_read: return false;  // only one of what could be read opens it
    }
    return false;
}

}  // namespace

void show(State& state, Screen screen) {
    clear_half_done(state.looks);
    state.entry_try.reset();
    state.looks.came_from.clear();
    state.looks.screen = screen;
}

void show_beside(State& state, Screen screen) {
    if (state.looks.screen == screen) return;
    const ScreenLeft left{state.looks.screen, state.looks.page};
    clear_half_done(state.looks);
    // A screen that is already on the way back is gone back to, so that the way stays short.
    auto& way = state.looks.came_from;
    for (std::size_t i = 0; i < way.size(); ++i)
        if (way[i].screen == screen) {
            state.looks.page = way[i].page;
            way.resize(i);
            state.looks.screen = screen;
            return;
        }
    way.push_back(left);
    state.looks.screen = screen;
}

void leave_beside(State& state) {
    clear_half_done(state.looks);
    auto& way = state.looks.came_from;
    ScreenLeft to{Screen::shelf};
    // A question that was left for another screen is not come back to: what it was asked from is.
    for (bool found = false; !found && !way.empty(); way.pop_back()) {
        to = way.back();
        // Where something came in the way of work at the bench meanwhile, the line's own screen says what.
        if (to.screen == Screen::bench && !can_show(state, to.screen)) to = {Screen::line};
        found = can_show(state, to.screen);
        if (!found) to = {Screen::shelf};
    }
    state.looks.screen = to.screen;
    state.looks.page = to.page;
}

void leave_rescue(State& state) {
    std::erase_if(state.looks.came_from, [](const ScreenLeft& left) { return is_of_rescue(left.screen); });
    leave_beside(state);
}

void go_to(Doing& doing, Screen screen) {
    State& state = doing.state;
    if (!can_show(state, screen)) return;
    if (screen == Screen::shelf) doing.requests.push_back(ReadShelf{});
    if (screen == Screen::card) open_card(doing);
    if (screen == Screen::plan)  // they may have been changed since
        for (const PlannedJob& other : state.plan.others) doing.requests.push_back(ReadPlanJob{other.of.path});
    if (screen == Screen::keep_safe) doing.requests.push_back(ReadBackups{});
    if (screen == Screen::bend_files) doing.requests.push_back(ReadBendFiles{});
    if (is_beside(screen)) show_beside(state, screen);
    else show(state, screen);
}

void open_line(Doing& doing, const std::string& name) {
    State& state = doing.state;
    if (!state.job) return;
    for (std::size_t i = 0; i < state.sheets.size(); ++i) {
        if (state.sheets[i].line.name != name) continue;
        state.line = i;
        state.rescue.reset();
        return show(state, Screen::line);
    }
}

void press_next(Doing& doing) {
    State& state = doing.state;
    switch (state.looks.screen) {
        case Screen::line:
            if (bar_to_start(state) != Bar::none) return;
            if (work_in_hand(state).stage == Stage::done) return another_piece(doing);
            return show(state, Screen::bench);
        case Screen::bench: return next_at_bench(doing);
        case Screen::stick_length:
            // One that is too short is taken only by a button of its own, never by the foot switch.
            if (const auto length = typed_stick(state); length && !too_short_by(state, *length)) new_stick(doing, *length);
            return;
        case Screen::ask:
        case Screen::word:
        case Screen::route:
        case Screen::draft: return next_at_entry(doing);
        case Screen::prove: return next_at_proof(doing);
        case Screen::learn: return next_at_learning(doing);
        case Screen::leg: return next_at_leg(doing);
        case Screen::rescue_read: return next_at_reading(doing);
        case Screen::rack_ask: return next_at_rack(doing);
        default: return;
    }
}

void press_back(Doing& doing) {
    State& state = doing.state;
    switch (state.looks.screen) {
        case Screen::shelf: return;
        case Screen::lines: return go_to(doing, Screen::shelf);
        case Screen::line: return show(state, Screen::lines);
        case Screen::bench: return back_at_bench(doing);
        case Screen::wrong: return leave_question(doing, false);
        case Screen::ask:
        case Screen::word:
        case Screen::route:
        case Screen::draft: return back_at_entry(doing);
        case Screen::prove: return back_at_proof(doing);
        case Screen::card: return back_at_card(doing);
        case Screen::learn: return back_at_learning(doing);
        default: return leave_beside(state);
    }
}

void press_key(Doing& doing, const std::string& key) {
    State& state = doing.state;
    const Step* step = state.looks.screen == Screen::bench ? step_in_hand(state) : nullptr;
    const bool reading = step && work_in_hand(state).move == Move::check && !work_in_hand(state).last_reading;
    const bool figure = state.looks.screen == Screen::card && state.card && !state.card->figure.empty();
    if (figure) return press_card_key(doing, key);
    if (state.looks.screen == Screen::learn) return press_learning_key(doing, key);
    if (state.looks.screen == Screen::word) return press_letter(doing, key);
    if (state.looks.screen == Screen::route) return press_number_key(doing, key);
    if (state.looks.screen == Screen::rack_ask) return press_rack_key(doing, key);
    if (!reading && state.looks.screen != Screen::stick_length && state.looks.screen != Screen::prove && state.looks.screen != Screen::leg && state.looks.screen != Screen::rescue_read) return;
    if (key != "keypad") state.looks.typed = with_key(state.looks.typed, key);
}

namespace {

Job without_proofs(Job job) {
    for (Line& line : job.lines) line.proof.reset();
    return job;
}

}  // namespace

void work_out_proofs(State& state) {
    state.proofs.clear();
    if (!state.job) return;
    for (const Line& line : state.job->lines) state.proofs.push_back(proof_standing(wire_of(line), state.job->unit, line.proof));
}

void job_read(Doing& doing, const JobRead& read) {
    State& state = doing.state;
    if (read.job.lines.empty()) return;
    // What was taped changes no sheet: orders that were found stay found.
    const bool same_but_proofs = state.job && state.job_id == read.id && without_proofs(*state.job) == without_proofs(read.job);
    state.job = read.job;
    state.job_id = read.id;
    state.job_path = read.path;
    state.line.reset();
    work_out_proofs(state);
    if (!read.line.empty() && same_but_proofs) {
        work_out_sheets(doing);
        show(state, Screen::lines);
        return open_line(doing, read.line);
    }
    for (const LineOrder& order : state.orders) stop_finding(doing, order);
    state.orders.clear();
    work_out_springbacks(state);
    work_out_sheets(doing);
    show(state, Screen::lines);
    if (!read.line.empty()) open_line(doing, read.line);
}

void book_read(Doing& doing, const BookRead& read) {
    State& state = doing.state;
    state.work = read.work;
    state.settings = read.settings;
    state.past = read.past;
    state.future.clear();
    if (!read.past.empty()) state.last_undo_number = std::max(state.last_undo_number, read.past.back().number);
    state.book = BookStanding::open;
    state.book_sentence.clear();
    work_out_springbacks(state);
    work_out_sheets(doing);
}

}  // namespace tubewright
