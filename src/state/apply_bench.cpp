// The bench: from the first tick to the finished piece.

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "state/doing.h"

namespace tubewright {
namespace {

bool at_bench(const State& state) {
    return state.looks.screen == Screen::bench && bar_to_start(state) == Bar::none &&
           misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::none;
}

void turn_to_first_page(State& state) {
    state.looks.page = 0;
    state.looks.typed.clear();
}

void begin_bend(LineWork& work, std::size_t step) {
    work.stage = Stage::bending;
    work.step = step;
    work.move = Move::mark;
    work.pull_again.reset();
    work.last_reading.reset();
    work.pulled_with.reset();
    work.doubted.reset();
    work.pulls = 0;
}

void begin_finish(LineWork& work, std::size_t steps) {
    begin_bend(work, steps);
    work.stage = Stage::finish;
}

/// Cuts the piece off the stick in use.
void leave_prepare(Doing& doing) {
    const State& state = doing.state;
    const Sheet& sheet = *sheet_in_hand(state);
    if (ticks_missing(state, TickList::prepare) > 0) return;
    LineWork line = work_in_hand(state);
    Work work = state.work;
    if (!line.cut) {
        const StickStanding stick = stick_standing(state);
        if (!stick.enough) return;
        cut_for_line(work, state.day, stock_tube(sheet.line.tube), line_key(state.job_id, sheet.line.name), exact(stick.needed));
        line.cut = true;
        line.cut_length = stick.needed;
        line.plan = plan_of(sheet);
        for (const Step& step : sheet.steps) line.order.push_back({step.bend, step.hook});
        if (learned_springback(springback_in_hand(state))) line.laid_growth = sheet.springback.growth;
    }
    line.stage = Stage::mark_out;
    work.lines[line_key(state.job_id, sheet.line.name)] = line;
    change_work(doing, std::move(work));
}

void leave_mark_out(Doing& doing) {
    LineWork work = work_in_hand(doing.state);
    const Sheet& sheet = *sheet_in_hand(doing.state);
    const std::size_t steps = sheet.steps.size(), made = work.made.size();
    if (made == steps) begin_finish(work, steps);
    else begin_bend(work, made);
    work.inked = inking_of(sheet);
    change_line(doing, work);
}

/// Another line of the bender has been chosen, or another order of what is left: what is made stays made, the marks have to
/// be made again. Once something is bent no tape lies along the whole tube: the screen says how far from its old mark
/// each new one lies, and they are made when it is left.
void mark_out_again(Doing& doing) {
    LineWork work = work_in_hand(doing.state);
    const Sheet& sheet = *sheet_in_hand(doing.state);
    if (steps_begun(sheet, work) == 0) {
        work.stage = Stage::mark_out;
    } else {
        work.inked = inking_of(sheet);
        if (steps_begun(sheet, work) <= work.step) begin_bend(work, work.step);  // laid in once more, on its new mark
    }
    change_line(doing, work);
    turn_to_first_page(doing.state);
}

bool marks_have_moved(const State& state) {
    return state.looks.screen == Screen::bench && bar_to_start(state) == Bar::none && misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::ink;
}

/// Writes the bend in hand down as made, and its reading into the log, and goes on to the next.
void bend_is_made(Doing& doing, std::optional<Angle> measured, bool kept_over, bool lever_was_there = false) {
    LineWork work = work_in_hand(doing.state);
    Work next = doing.state.work;
    write_bend_down(doing.state, next, work, measured, kept_over, lever_was_there);
    next.lines[line_key(doing.state.job_id, sheet_in_hand(doing.state)->line.name)] = work;
    change_work(doing, std::move(next));
    turn_to_first_page(doing.state);
}

/// A reading within half a degree is written down at once, but for one that can hardly be; any other one asks how to go on.
void reading_is_in(Doing& doing) {
    const State& state = doing.state;
    const Step& step = *step_in_hand(state);
    LineWork work = work_in_hand(state);
    const std::optional<Angle> reading = work.last_reading ? work.last_reading : typed_reading(state);
    if (!reading) return;
    const bool asks = !work.last_reading && is_doubted(state, work, *reading);
    if (verdict(step.target, *reading) == Verdict::right && !asks) return bend_is_made(doing, reading, false);
    if (work.last_reading) return;
    work.last_reading = reading;
    change_line(doing, work);
    turn_to_first_page(doing.state);
}

void next_move(Doing& doing) {
    LineWork work = work_in_hand(doing.state);
    switch (work.move) {
        case Move::mark: work.move = Move::turn; break;
        case Move::turn: work.move = Move::pull; break;
        case Move::pull:
            work.move = Move::check;
            work.last_reading.reset();
            if (!work.pulled_with) work.pulled_with = sheet_in_hand(doing.state)->springback;
            ++work.pulls;
            work.pulled.insert(step_in_hand(doing.state)->bend);
            forget_readings(*sheet_in_hand(doing.state), work, work.step);
            break;
        case Move::check: return reading_is_in(doing);
    }
    change_line(doing, work);
    turn_to_first_page(doing.state);
}

void leave_finish(Doing& doing) {
    const State& state = doing.state;
    const Sheet& sheet = *sheet_in_hand(state);
    LineWork line = work_in_hand(state);
    const TickList list = *current_list(line);
    if (ticks_missing(state, list) > 0) return;
    if (list == TickList::finish) {
        line.ticks.insert(finish_list_passed);
        return change_line(doing, line);
    }
    line.stage = Stage::done;
    ++line.finished;
    Work work = state.work;
    work.used[state.day][tube_key(sheet.line.tube)] += line.cut_length;
    built_in(work, state.day, line_key(state.job_id, sheet.line.name), exact(sheet.line.a.trim + sheet.line.b.trim));
    work.lines[line_key(state.job_id, sheet.line.name)] = line;
    change_work(doing, std::move(work));
}

/// The part will be another one when it comes back: it is measured and proved again.
void forget_finish(LineWork& work) {
    std::erase_if(work.ticks, [](const std::string& id) {
        const auto begins = [&](const char* prefix) { return id.rfind(prefix, 0) == 0; };
        return begins("tape-") || begins("finish-") || begins("hand-over-") || id == finish_list_passed;
    });
    std::erase_if(work.later, [piece = piece_in_hand(work)](const auto& left) { return left.first.piece == piece; });
}

/// Takes the last bend back into hand at its check, with everything that was measured of it.
void take_last_bend_back(const State& state, LineWork& work) {
    const BendMade last = work.made.back();
    work.made.pop_back();
    forget_finish(work);
    begin_bend(work, work.made.size());
    work.move = Move::check;
    work.pulls = last.pulls;
    work.last_reading = last.measured;
    work.pulled_with = springback_for(state, work);
    if (last.set != set_angle(*work.pulled_with, sheet_in_hand(state)->steps[work.step].target)) work.pull_again = last.set;
}

void back_in_bend(const State& state, LineWork& work) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Step& step = sheet.steps[work.step];
    switch (work.move) {
        case Move::mark:
            if (work.made.empty()) work.stage = Stage::mark_out;
            else take_last_bend_back(state, work);
            return;
        case Move::turn: work.move = Move::mark; return;
        case Move::pull:
            if (!work.last_reading) {
                work.move = Move::turn;
                return;
            }
            // Back to the reading that asked for this pull: take off again what PullAgain put on.
            work.move = Move::check;
            if (!work.pull_again) return;
            work.pull_again = *work.pull_again - (1 + sheet.springback.growth) * (step.target - *work.last_reading);
            if (std::abs((*work.pull_again - on_lever(step.set)).deg) < tolerance::arithmetic) work.pull_again.reset();
            return;
        case Move::check:
            if (work.last_reading) {
                if (is_doubted(state, work, *work.last_reading)) work.doubted = work.last_reading;
                work.last_reading.reset();
                return;
            }
            work.move = Move::pull;
            forget_readings(sheet, work, work.step);
            work.pulls = std::max(0, work.pulls - 1);
            if (work.pulls == 0) work.pulled_with.reset();
            return;
    }
}

}  // namespace

void write_bend_down(const State& state, Work& next, LineWork& work, std::optional<Angle> measured, bool kept_over, bool lever_was_there) {
    const Sheet& sheet = *sheet_in_hand(state);
    log_bend(state, next, work, measured, lever_was_there);
    const Step& step = sheet.steps[work.step];
    work.made.push_back({step.bend, set_in_force(step, work), std::max(1, work.pulls), measured, kept_over});
    if (work.step + 1 == sheet.steps.size()) begin_finish(work, work.step + 1);
    else begin_bend(work, work.step + 1);
}

void next_at_bench(Doing& doing) {
    if (marks_have_moved(doing.state)) return mark_out_again(doing);
    if (!at_bench(doing.state)) return;
    switch (work_in_hand(doing.state).stage) {
        case Stage::prepare: leave_prepare(doing); break;
        case Stage::mark_out: leave_mark_out(doing); break;
        case Stage::bending: return next_move(doing);
        case Stage::finish: leave_finish(doing); break;
        case Stage::done: return another_piece(doing);
    }
    turn_to_first_page(doing.state);
}

namespace {

/// The marks and turns of what is left, and of bends made since, count on the bends that the tube was saved with.
bool goes_behind_a_saving(const LineWork& work) {
    if (!work.saved || work.made.size() > work.saved->made) return false;
    return work.stage == Stage::bending ? work.move == Move::mark : work.stage == Stage::finish && !work.ticks.contains(finish_list_passed);
}

}  // namespace

void back_at_bench(Doing& doing) {
    if (!at_bench(doing.state)) return show(doing.state, Screen::line);
    LineWork work = work_in_hand(doing.state);
    if (goes_behind_a_saving(work)) {
        show(doing.state, Screen::line);
        doing.state.looks.notice = "What is left was planned anew from the bends made so far: they stay. Undo goes back to before that.";
        return;
    }
    switch (work.stage) {
        case Stage::prepare:
        case Stage::done: return show(doing.state, Screen::line);
        case Stage::mark_out: work.stage = Stage::prepare; break;
        case Stage::bending: back_in_bend(doing.state, work); break;
        case Stage::finish:
            if (work.ticks.erase(finish_list_passed) > 0) break;
            if (work.made.empty()) work.stage = Stage::mark_out;
            else take_last_bend_back(doing.state, work);
            break;
    }
    change_line(doing, work);
    turn_to_first_page(doing.state);
}

void tick(Doing& doing, const std::string& id) {
    if (!at_bench(doing.state)) return;
    LineWork work = work_in_hand(doing.state);
    const std::optional<TickList> list = current_list(work);
    if (!list) return;
    const std::vector<TickItem> items = tick_items(doing.state, *list);
    if (std::none_of(items.begin(), items.end(), [&](const TickItem& item) { return item.id == id; })) return;
    if (work.ticks.erase(id) == 0) work.ticks.insert(id);
    work.later.erase({piece_in_hand(work), id});
    change_line(doing, work);
}

void leave_for_later(Doing& doing, const std::string& id) {
    if (!at_bench(doing.state)) return;
    LineWork work = work_in_hand(doing.state);
    const std::optional<TickList> list = current_list(work);
    if (!list) return;
    const std::vector<TickItem> items = tick_items(doing.state, *list);
    if (std::none_of(items.begin(), items.end(), [&](const TickItem& item) { return item.id == id && !item.later.empty(); })) return;
    const LeftForLater left{piece_in_hand(work), id};
    if (work.later.erase(left) == 0) work.later[left] = false;
    work.ticks.erase(id);
    change_line(doing, work);
}

void tick_later(Doing& doing, const LeftForLater& left) {
    if (doing.state.looks.screen != Screen::later || !sheet_in_hand(doing.state)) return;
    LineWork work = work_in_hand(doing.state);
    const auto found = work.later.find(left);
    if (found == work.later.end() || left.piece > work.finished) return;
    found->second = !found->second;
    change_line(doing, work);
}

namespace {

bool at_check(const State& state) {
    return at_bench(state) && step_in_hand(state) && work_in_hand(state).move == Move::check;
}

}  // namespace

void pass_check(Doing& doing) {
    if (!at_check(doing.state) || work_in_hand(doing.state).last_reading) return;
    bend_is_made(doing, std::nullopt, false);
}

void pull_again(Doing& doing, bool lever_was_there) {
    if (doing.state.looks.screen == Screen::rescue) show(doing.state, Screen::bench);  // offered there too
    if (!at_check(doing.state)) return;
    const Sheet& sheet = *sheet_in_hand(doing.state);
    const Step& step = *step_in_hand(doing.state);
    LineWork work = work_in_hand(doing.state);
    if (!work.last_reading || verdict(step.target, *work.last_reading) != Verdict::under) return;
    const Belief believed = belief_in_hand(doing.state, work, *work.last_reading);
    const bool counts = believed == Belief::sound || (believed == Belief::opened_more && lever_was_there);
    const Angle to = counts ? pull_on_to(sheet, step, work) : pull_again_to(sheet, step, work, believed);
    if (to > sheet.line.bender.max_angle) return;
    if (counts) work.pull_again = to;
    else if (believed != Belief::opened_more) work.pull_again.reset();
    work.move = Move::pull;
    work.doubted.reset();
    change_line(doing, work);
    turn_to_first_page(doing.state);
}

void keep_bend(Doing& doing, bool lever_was_there) {
    if (!at_check(doing.state)) return;
    const LineWork work = work_in_hand(doing.state);
    if (!work.last_reading) return;
    if (belief(*sheet_in_hand(doing.state), *step_in_hand(doing.state), work, *work.last_reading) == Belief::opened_too_far) return;
    bend_is_made(doing, work.last_reading, verdict(step_in_hand(doing.state)->target, *work.last_reading) == Verdict::over, lever_was_there);
}

void another_piece(Doing& doing) {
    if (bar_to_start(doing.state) != Bar::none) return;
    if (doing.state.looks.screen != Screen::bench && doing.state.looks.screen != Screen::line) return;
    const LineWork before = work_in_hand(doing.state);
    if (before.stage != Stage::done) return;  // more than the job asks is allowed: a finished piece can still be spoiled
    change_line(doing, for_next_piece(before));
    show(doing.state, Screen::bench);
}

}  // namespace tubewright
