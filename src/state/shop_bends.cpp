// What the shop's own bends say of springback and hand, and how a reading at the bench becomes one of them.

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "bench/hand_log.h"
#include "state/doing.h"

namespace tubewright {
namespace {

/// Each of the job's benders and materials is known by the line that has it; others by what the program was started with.
PhysicsOf physics_known(const State& state) {
    return [&state](const BenderAndTube& with) -> std::optional<Springback> {
        const Material* material = nullptr;
        const Bender* bender = nullptr;
        for (const Material& known : state.materials)
            if (known.id == with.tube.material) material = &known;
        for (const Bender& known : state.offers.cards)
            if (known.id == with.bender) bender = &known;
        for (const Line& line : state.job->lines) {
            if (line.tube.material == with.tube.material) material = &line.material;
            if (line.bender.id == with.bender) bender = &line.bender;
        }
        if (!material || !bender) return std::nullopt;
        return springback_prior(*material, with.tube.od, with.tube.wall, bender->radius).line;
    };
}

BenderAndTube with_of(const Line& line) { return {line.bender.id, line.tube}; }

/// Of the piece on the bench.
BendOfTube bend_in_hand(const State& state, const LineWork& work) {
    const Sheet& sheet = *sheet_in_hand(state);
    return {state.job_id, sheet.line.name, piece_in_hand(work), work.attempt, sheet.steps[work.step].bend};
}

auto found_of(std::vector<LoggedBend>& bends, const BendOfTube& of) {
    return std::find_if(bends.begin(), bends.end(), [&](const LoggedBend& logged) { return logged.of == of; });
}

BendOfTube bend_of_piece(std::int64_t piece) { return {"", "", static_cast<int>(piece), 0, 0}; }

/// As it would go into the log; none where nobody read how far it opened, or no springback opens so.
std::optional<BendCheck> piece_check(const State& state, const Work& work, const KeptPiece& piece) {
    const Line& line = sheet_in_hand(state)->line;
    if (!piece.set || !piece.angle) return std::nullopt;
    BendCheck check;
    check.record.day = state.day;
    check.with = with_of(line);
    check.lot = lot_in_use(work, line.tube);
    check.set = *piece.set;
    check.measured = *piece.angle;
    const auto known = springback_of(check.with, check.lot, standing_bends(work), physics_known(state));
    if (!known) return std::nullopt;
    auto logged = for_the_log(check, *known, physics_of(line));
    return logged.ok() ? std::optional(std::move(logged).value()) : std::nullopt;
}

bool lever_is_in_doubt(const Sheet& sheet, const LineWork& work, Angle reading) {
    return belief(sheet, sheet.steps[work.step], work, reading) == Belief::opened_more;
}

bool was_read_twice(const LineWork& work, Angle reading) {
    return work.doubted && std::abs((*work.doubted - reading).deg) <= tolerance::good_bend.deg + tolerance::arithmetic;
}

}  // namespace

bool is_in_hand_again(const Work& work, const BendOfTube& of) {
    const auto found = work.lines.find(line_key(of.job, of.line));
    if (found == work.lines.end() || found->second.stage == Stage::done) return false;
    const LineWork& line = found->second;
    if (piece_in_hand(line) != of.piece || line.attempt != of.attempt) return false;
    return std::none_of(line.made.begin(), line.made.end(), [&](const BendMade& made) { return made.bend == of.bend; });
}

Springback physics_of(const Line& line) { return springback_prior(line.material, line.tube.od, line.tube.wall, line.bender.radius).line; }

std::vector<BendCheck> standing_bends(const Work& work) {
    std::vector<BendCheck> bends;
    for (const LoggedBend& logged : work.bends)
        if (!is_in_hand_again(work, logged.of)) bends.push_back(logged.check);
    return bends;
}

std::string lot_in_use(const Work& work, const Tube& tube) {
    const auto found = work.lots.find(tube_key(tube));
    return found == work.lots.end() ? "" : found->second;
}

void work_out_springbacks(State& state) {
    state.springbacks.clear();
    if (!state.job) return;
    const std::vector<BendCheck> bends = standing_bends(state.work);
    const PhysicsOf physics = physics_known(state);
    const std::vector<Line>& lines = state.job->lines;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        std::shared_ptr<const SpringbackState> known;
        for (std::size_t k = 0; k < i && !known; ++k)
            if (with_of(lines[k]) == with_of(lines[i]) && lines[k].bender == lines[i].bender && lines[k].material == lines[i].material) known = state.springbacks[k];
        if (!known)
            if (auto said = springback_of(with_of(lines[i]), lot_in_use(state.work, lines[i].tube), bends, physics)) known = std::make_shared<const SpringbackState>(std::move(*said));
        state.springbacks.push_back(std::move(known));
    }
    const HandLearned hand = hand_of(bends, standing_turns(state.work), standing_legs(state.work));
    const int counted = hand.angle.counted + hand.turn.counted + hand.floating.counted + hand.mark.counted;
    state.hand = counted > 0 ? hand.hand : Hand{};
}

const SpringbackState* springback_in_hand(const State& state) {
    return sheet_in_hand(state) && *state.line < state.springbacks.size() ? state.springbacks[*state.line].get() : nullptr;
}

bool is_learned(const SpringbackState& known) { return known.learned_from + known.others > 0; }

std::optional<Springback> learned_springback(const SpringbackState* known) {
    if (!known || !is_learned(*known) || known->opens_backwards) return std::nullopt;
    return known->belief.line;
}

std::optional<Springback> learned_for(const State& state, const Line& line) {
    const auto known = springback_of(with_of(line), lot_in_use(state.work, line.tube), standing_bends(state.work), physics_known(state));
    return learned_springback(known ? &*known : nullptr);
}

Springback springback_for(const State& state, const LineWork& work) {
    const Line& line = sheet_in_hand(state)->line;
    Work then = state.work;
    then.lines[line_key(state.job_id, line.name)] = work;
    const auto known = springback_of(with_of(line), lot_in_use(then, line.tube), standing_bends(then), physics_known(state));
    return learned_springback(known ? &*known : nullptr).value_or(physics_of(line));
}

std::optional<LoggedBend> as_logged(const State& state, const LineWork& work, Angle reading, bool lever_was_there) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Step& step = sheet.steps[work.step];
    const SpringbackState* known = springback_in_hand(state);
    if (!known) return std::nullopt;
    BendCheck check;
    check.record.day = state.day;
    check.with = with_of(sheet.line);
    check.lot = lot_in_use(state.work, sheet.line.tube);
    check.target = step.target;
    check.set = on_lever(set_in_force(step, work));
    check.measured = reading;
    auto logged = for_the_log(check, *known, physics_of(sheet.line));
    if (!logged.ok()) return std::nullopt;
    check = std::move(logged).value();
    // Of a first pull that ends under its target the lever is asked after, of which a second reading says nothing.
    const bool asks_lever = !work.pull_again && verdict(step.target, reading) == Verdict::under;
    if (check.record.standing == RecordStanding::asked && was_read_twice(work, reading) && (lever_was_there || !asks_lever)) check.record.standing = RecordStanding::confirmed;
    if (!lever_was_there && lever_is_in_doubt(sheet, work, reading)) check.record.standing = RecordStanding::asked;
    return LoggedBend{check, bend_in_hand(state, work)};
}

bool is_doubted(const State& state, const LineWork& work, Angle reading) {
    const auto logged = as_logged(state, work, reading);
    return logged && logged->check.record.standing == RecordStanding::asked;
}

Belief belief_in_hand(const State& state, const LineWork& work, Angle reading) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Step& step = sheet.steps[work.step];
    const Belief believed = belief(sheet, step, work, reading);
    if (believed != Belief::sound || work.pull_again || verdict(step.target, reading) != Verdict::under) return believed;
    return is_doubted(state, work, reading) ? Belief::opened_more : believed;
}

Angle expected_reading(const State& state, const LineWork& work) {
    const Sheet& sheet = *sheet_in_hand(state);
    if (work.pull_again) return sheet.steps[work.step].target;  // it was reckoned from a reading
    return released(sheet.springback, on_lever(set_in_force(sheet.steps[work.step], work)));
}

void log_bend(const State& state, Work& next, const LineWork& work, std::optional<Angle> reading, bool lever_was_there) {
    const auto before = found_of(next.bends, bend_in_hand(state, work));
    auto logged = reading ? as_logged(state, work, *reading, lever_was_there) : std::nullopt;
    if (!logged) {
        if (before != next.bends.end()) next.bends.erase(before);
        return;
    }
    if (before == next.bends.end()) {
        logged->check.record.id = next.next_id++;
        next.bends.push_back(std::move(*logged));
        return;
    }
    // Looked at again and let stand: it is the record that it was, with whatever was decided of it.
    if (before->check.set == logged->check.set && before->check.measured == logged->check.measured && !lever_was_there) return;
    logged->check.record.id = before->check.record.id;
    *before = std::move(*logged);
}

void forget_piece(Work& next, std::int64_t piece) {
    if (const auto found = found_of(next.bends, bend_of_piece(piece)); found != next.bends.end()) next.bends.erase(found);
}

void log_piece(const State& state, Work& next, const KeptPiece& piece) {
    const auto found = found_of(next.bends, bend_of_piece(piece.id));
    const auto before = found == next.bends.end() ? std::nullopt : std::optional(*found);
    const auto place = found - next.bends.begin();
    if (before) next.bends.erase(found);
    auto check = piece_check(state, next, piece);
    if (!check) return;
    if (before) check->lot = before->check.lot;
    const bool again = before && std::abs((before->check.measured - check->measured).deg) <= tolerance::good_bend.deg + tolerance::arithmetic;
    if (check->record.standing == RecordStanding::asked && again) check->record.standing = RecordStanding::confirmed;
    check->record.id = before ? before->check.record.id : next.next_id++;
    if (before) check->record.left_out = before->check.record.left_out && before->check.measured == check->measured;
    next.bends.insert(before ? next.bends.begin() + place : next.bends.end(), LoggedBend{*check, bend_of_piece(piece.id)});
}

bool is_angle_odd(const State& state, const KeptPiece& piece) {
    if (!piece.set || !piece.angle) return false;
    if (const LoggedBend* record = record_of_piece(state.work, piece.id)) return record->check.record.standing == RecordStanding::asked && !record->check.record.left_out;
    return !piece_check(state, state.work, piece);
}

bool is_of_a_piece(const LoggedBend& logged) { return logged.of.line.empty() && logged.of.piece > 0; }

const LoggedBend* record_of_piece(const Work& work, std::int64_t piece) {
    for (const LoggedBend& logged : work.bends)
        if (logged.of == bend_of_piece(piece)) return &logged;
    return nullptr;
}

std::vector<LoggedBend> bends_in_hand(const State& state) {
    std::vector<LoggedBend> bends;
    if (!sheet_in_hand(state)) return bends;
    const BenderAndTube with = with_of(sheet_in_hand(state)->line);
    for (auto logged = state.work.bends.rbegin(); logged != state.work.bends.rend(); ++logged)
        if (logged->check.with == with) bends.push_back(*logged);
    return bends;
}

const LoggedBend* record_in_sight(const State& state) {
    for (const LoggedBend& logged : state.work.bends)
        if (logged.check.record.id == state.looks.record) return &logged;
    return nullptr;
}

}  // namespace tubewright
