// The entry of a route proved with a tape: readings one by one, what they say, and a slip taken back.

#include <algorithm>

#include "bench/slip_remedy.h"
#include "state/apply_entry.h"
#include "tube/route_limits.h"

namespace tubewright {
namespace {

/// The file's name without folder and ending, as the shelf counts jobs.
std::string file_stem(const std::string& path) {
    const std::size_t slash = path.find_last_of('/');
    const std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
    return name.substr(0, name.rfind('.'));
}

bool is_cut(const State& state, const std::string& job_id, const std::string& line) {
    const auto found = state.work.lines.find(line_key(job_id, line));
    return found != state.work.lines.end() && found->second.cut;
}

/// The line being entered as a wire; none while it can't be worked out.
std::optional<Wire> entered_wire(const State& state) {
    if (!line_is_entered(state) || !state.entry_sheet || !state.entry_sheet->layout) return std::nullopt;
    const auto route = route_from(state.entry->line().route);
    if (!route.ok()) return std::nullopt;
    const Line& line = state.entry_sheet->line;
    return Wire{route.value(), line.tube.od, line.bender.radius};
}

bool at_proof(const State& state) { return line_is_entered(state) && state.looks.screen == Screen::prove && state.proving; }

/// The reading that is typed now goes there.
std::optional<Span> span_in_hand(const State& state) {
    if (!at_proof(state)) return std::nullopt;
    const auto& readings = state.proving->kept.taken.readings;
    if (state.looks.retake) return *state.looks.retake < readings.size() ? std::optional(readings[*state.looks.retake].span) : std::nullopt;
    if (state.proving->stage != Proving::Stage::reading || !state.proving->task) return std::nullopt;
    return state.proving->task->span;
}

void turn_to_next(Doing& doing) {
    Looks& looks = doing.state.looks;
    looks.typed.clear();
    looks.retake.reset();
    looks.picked_slip = 0;
    looks.page = 0;
    work_out_proof(doing.state);
}

void put_proof(Doing& doing, LineProof proof) {
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].proof = std::move(proof);
    change_entry(doing, std::move(next));
    turn_to_next(doing);
}

void take_reading(Doing& doing) {
    const auto span = span_in_hand(doing.state);
    const auto length = typed_tape(doing.state);
    if (!span || !length) return;
    LineProof proof = doing.state.proving->kept;
    if (const auto& again = doing.state.looks.retake) {
        proof.taken.readings[*again].read = *length;
        if (std::find(proof.twice.begin(), proof.twice.end(), *span) == proof.twice.end()) proof.twice.push_back(*span);
    } else {
        proof.taken.readings.push_back({*span, *length});
    }
    put_proof(doing, std::move(proof));
}

/// From a line's page at the bench: its draft is opened for this alone.
void prove_from_bench(Doing& doing) {
    const State& state = doing.state;
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !sheet->layout || sheet->line.route.bends.empty() || work_in_hand(state).cut) return;
    doing.requests.push_back(ReadDraft{state.job_path, sheet->line.name});
}

}  // namespace

NoProof no_proof(const State& state) {
    if (!line_is_entered(state) || state.entry->line().unfinished || open_question_of(state.entry->page.job, state.entry->line())) return NoProof::unfinished;
    const auto wire = entered_wire(state);
    if (!wire) return NoProof::unfinished;
    if (wire->route.bends.empty()) return NoProof::no_bends;
    const std::string &path = state.entry->path, &line = state.entry->line().name;
    if (is_cut(state, file_stem(path), line) || is_cut(state, path, line)) return NoProof::cut;
    return NoProof::none;
}

void work_out_proof(State& state) {
    const auto wire = entered_wire(state);
    const bool proved = wire && state.looks.screen == Screen::prove;
    const std::shared_ptr<const Proving> before = std::move(state.proving);
    state.proving.reset();
    state.entry_proof = ProofStanding::none;
    if (!wire) return;
    const std::optional<LineProof>& kept = state.entry->line().proof;
    const Unit unit = state.entry->page.job.unit;
    if (!proved) {
        state.entry_proof = proof_standing(*wire, unit, kept);
        return;
    }
    // The disk's answer comes after each touch; what is asked next is slow to find and is the same then.
    const bool same = before && before->entry.wire == *wire && before->kept == kept.value_or(LineProof{wire_mark(*wire)});
    state.proving = same ? before : std::make_shared<const Proving>(proving(*wire, unit, kept));
    state.entry_proof = standing_of(*state.proving);
}

std::optional<Length> typed_tape(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (!number || !span_in_hand(state)) return std::nullopt;
    const Length length{entry_reader_unit(state) == Unit::inch ? *number * 25.4 : *number};
    if (length.mm <= 0 || length.mm > limits::longest_run) return std::nullopt;
    return length;
}

Unit entry_reader_unit(const State& state) { return state.settings.unit.value_or(state.entry ? state.entry->page.job.unit : Unit::inch); }

void prove_line(Doing& doing) {
    State& state = doing.state;
    if (state.looks.screen == Screen::line) return prove_from_bench(doing);
    if (state.looks.screen != Screen::draft || no_proof(state) != NoProof::none) return;
    state.entry->from_bench = false;
    state.entry->page.ask.reset();
    show(state, Screen::prove);
    work_out_proof(state);
}

void cant_reach(Doing& doing) {
    const auto span = span_in_hand(doing.state);
    if (!span || doing.state.looks.retake) return;
    LineProof proof = doing.state.proving->kept;
    proof.taken.out_of_reach.push_back(*span);
    put_proof(doing, std::move(proof));
}

void enough_readings(Doing& doing) {
    if (!at_proof(doing.state) || doing.state.proving->readings() == 0) return;
    LineProof proof = doing.state.proving->kept;
    proof.wanted = doing.state.proving->readings();
    put_proof(doing, std::move(proof));
}

void one_more_reading(Doing& doing) {
    if (!at_proof(doing.state) || !doing.state.proving->task) return;
    LineProof proof = doing.state.proving->kept;
    proof.wanted = doing.state.proving->readings() + 1;
    put_proof(doing, std::move(proof));
}

void answer_hand(Doing& doing, std::optional<bool> left) {
    if (!at_proof(doing.state) || doing.state.proving->stage != Proving::Stage::hand || doing.state.looks.retake) return;
    LineProof proof = doing.state.proving->kept;
    const HandQuestion& asked = *doing.state.proving->hand;
    if (left) proof.taken.hand = HandAnswer{asked.before, asked.bend, *left};
    else proof.hand_passed = true;
    put_proof(doing, std::move(proof));
}

void tape_again(Doing& doing, std::size_t reading) {
    if (!at_proof(doing.state) || reading >= doing.state.proving->readings()) return;
    doing.state.looks.retake = reading;
    doing.state.looks.typed.clear();
}

void pick_slip(Doing& doing, std::size_t slip) {
    if (at_proof(doing.state) && slip < doing.state.proving->proof.explanations.size()) doing.state.looks.picked_slip = slip;
}

void correct_slip(Doing& doing) {
    const State& state = doing.state;
    if (!at_proof(state) || state.proving->stage != Proving::Stage::verdict || state.proving->proof.verdict != ProofVerdict::slip || no_proof(state) != NoProof::none) return;
    const auto& explanations = state.proving->proof.explanations;
    if (state.looks.picked_slip >= explanations.size()) return;
    const auto remedy = without_slip(state.entry->line().route, explanations[state.looks.picked_slip].slip);
    if (!remedy) return;
    EntryPage next = state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    line.route = *remedy;
    next.cell = cells_of(line.route).back();
    // What was taped stays true of the wire. It has told of the slip, so that one reading more has to bear it out.
    LineProof proof = state.proving->kept;
    proof.wire = wire_mark({route_from(line.route).value(), state.proving->entry.wire.od, state.proving->entry.wire.radius});
    proof.wanted = proof.taken.readings.size() + 1;
    line.proof = std::move(proof);
    change_entry(doing, std::move(next));
    turn_to_next(doing);
}

void prove_afresh(Doing& doing) {
    if (!at_proof(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].proof.reset();
    change_entry(doing, std::move(next));
    turn_to_next(doing);
}

bool is_proof_step(const EntryPage& one, const EntryPage& other) {
    if (one.line != other.line || one.job.lines.size() != other.job.lines.size()) return false;
    return one.job.lines[one.line].proof != other.job.lines[other.line].proof;
}

void next_at_proof(Doing& doing) { take_reading(doing); }

void back_at_proof(Doing& doing) {
    State& state = doing.state;
    if (!state.entry) return show(state, Screen::shelf);
    if (state.looks.retake) return turn_to_next(doing);
    if (!state.entry->from_bench) {
        show(state, Screen::draft);
        return work_out_proof(state);
    }
    // The line's own page, with the entry as it stands on the disk now.
    if (state.entry->past.empty() && state.entry->future.empty() && sheet_in_hand(state)) return show(state, Screen::line);
    doing.requests.push_back(ReadJob{state.entry->path, state.entry->line().name});
}

}  // namespace tubewright
