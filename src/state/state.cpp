#include "state/state.h"

#include <cassert>
#include <cmath>

#include "state/rules.h"

namespace tubewright {

State::State() = default;
State::State(const State&) = default;
State::State(State&&) noexcept = default;
State& State::operator=(const State&) = default;
State& State::operator=(State&&) noexcept = default;
State::~State() = default;

std::string tube_key(const Tube& tube) {
    // Thousandths of a millimetre: sizes that a catalogue tells apart stay apart.
    const auto micrometres = [](Length length) { return std::to_string(std::llround(length.mm * 1000)); };
    return tube.material + " " + micrometres(tube.od) + "x" + micrometres(tube.wall);
}

std::string line_key(const std::string& job_id, const std::string& line_name) { return job_id + "/" + line_name; }

LineWork work_in_hand(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    assert(sheet);
    const auto found = state.work.lines.find(line_key(state.job_id, sheet->line.name));
    return found == state.work.lines.end() ? LineWork{} : found->second;
}

namespace {

bool in_reach(const State& state, const UndoStep& step) { return !state.job || step.job == state.job_id; }

}  // namespace

bool can_undo(const State& state) { return !state.past.empty() && in_reach(state, state.past.back()); }

bool can_redo(const State& state) { return !state.future.empty() && in_reach(state, state.future.front()); }

const Sheet* entry_in_sight(const State& state) { return state.entry_try ? state.entry_try.get() : state.entry_sheet.get(); }

Unit reader_unit(const State& state) {
    if (state.settings.unit) return *state.settings.unit;
    return state.job ? state.job->unit : Unit::inch;
}

}  // namespace tubewright
