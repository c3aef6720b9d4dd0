// What the hand's own spread is learned from besides the bends: turns and legs of bent tubes, as they were measured.

#include <algorithm>
#include <cmath>

#include "bench/hand_log.h"
#include "bench/spread.h"
#include "bench/tube_plan.h"
#include "state/doing.h"

namespace tubewright {
namespace {

BendOfTube of_bend(const State& state, const LineWork& work, std::size_t bend) { return {state.job_id, sheet_in_hand(state)->line.name, piece_in_hand(work), work.attempt, bend}; }

/// In the place of what was read there before, or as a new one; what the person left out stays so while it reads the same.
template <class Logged>
void put_down(const State& state, Work& next, std::vector<Logged>& log, typename std::vector<Logged>::iterator before, Logged logged) {
    const bool known = before != log.end();
    logged.check.record.day = state.day;
    logged.check.record.id = known ? before->check.record.id : next.next_id++;
    if (known && before->check.record.left_out) {
        Logged alike = logged;
        alike.check.record = before->check.record;
        logged.check.record.left_out = logged.check.record.left_out || alike == *before;
    }
    if (known) *before = std::move(logged);
    else log.push_back(std::move(logged));
}

/// The spread of a hand is learned of what a hand does; a slip says something of one tube only. By the hand that is believed before
/// anything is logged: what is let in must not widen what is let in next.
template <class Check>
bool is_a_slip(const Check& check) { return asks_again(check, Hand{}); }

/// By what the plane of one was set against that of the other; none where it was by something in between.
std::optional<TurnedBy> turned_by(const Sheet& sheet, std::size_t bend, std::size_t against) {
    std::vector<Placing> order;
    for (const Step& step : sheet.steps) order.push_back({step.bend, step.hook});
    const auto turned = turned_against(sheet.layout->part, order);
    bool by_ink = true;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const std::size_t other = order[i].bend == bend ? against : bend;
        if (order[i].bend != bend && order[i].bend != against) continue;
        if (turned[i] == other) return TurnedBy::neighbour;
        by_ink = by_ink && !turned[i];
    }
    return by_ink ? std::optional(TurnedBy::index_line) : std::nullopt;
}

/// Of a saved tube the bends that it was saved with are wanted as they came out: what they were to be the sheet says no more.
bool is_as_told(const Sheet& sheet, const LineWork& work, std::size_t bend) {
    if (!work.saved) return true;
    for (std::size_t i = 0; i < std::min(work.saved->made, sheet.steps.size()); ++i)
        if (sheet.steps[i].bend == bend) return false;
    return true;
}

/// Only where its bends were measured, and were to be what the sheet says, is what a leg is off the doing of its marks.
bool tells_of_marks(const Sheet& sheet, const LineWork& work, const TapeLeg& leg) {
    const AsMeasured measured = measured_angles(sheet, work);
    for (const auto& bend : {leg.after, leg.before})
        if (bend && (!measured.contains(*bend) || !is_as_told(sheet, work, *bend))) return false;
    return true;
}

bool is_of(const LoggedLeg& logged, const BendOfTube& of, const std::optional<std::size_t>& after) { return logged.of == of && logged.after == after; }

BendOfTube of_leg(const State& state, const LineWork& work, const TapeLeg& leg) { return of_bend(state, work, leg.before ? *leg.before : leg.after.value_or(0)); }

}  // namespace

void log_turn(const State& state, Work& next, const LineWork& work, std::size_t bend, std::size_t against, std::optional<Angle> read) {
    const Sheet& sheet = *sheet_in_hand(state);
    const BendOfTube of = of_bend(state, work, bend);
    const auto before = std::find_if(next.turn_log.begin(), next.turn_log.end(), [&](const LoggedTurn& logged) { return logged.of == of && logged.against == against; });
    if (!read) {
        if (before != next.turn_log.end()) next.turn_log.erase(before);
        return;
    }
    const auto by = turned_by(sheet, bend, against);
    if (!by || !is_as_told(sheet, work, bend) || !is_as_told(sheet, work, against)) return;
    const TubePlan plan = plan_on_tube(sheet);
    put_down(state, next, next.turn_log, before, {{{}, *by, wrapped(plan.bends[bend].direction - plan.bends[against].direction), *read}, of, against});
}

std::vector<TurnCheck> standing_turns(const Work& work) {
    std::vector<TurnCheck> turns;
    for (const LoggedTurn& logged : work.turn_log) {
        BendOfTube against = logged.of;
        against.bend = logged.against;
        if (!is_a_slip(logged.check) && !is_in_hand_again(work, logged.of) && !is_in_hand_again(work, against)) turns.push_back(logged.check);
    }
    return turns;
}

std::vector<LegCheck> standing_legs(const Work& work) {
    std::vector<LegCheck> legs;
    for (const LoggedLeg& logged : work.leg_log) {
        BendOfTube after = logged.of;
        after.bend = logged.after.value_or(logged.of.bend);
        if (!is_a_slip(logged.check) && !is_in_hand_again(work, logged.of) && !is_in_hand_again(work, after)) legs.push_back(logged.check);
    }
    return legs;
}

std::vector<LegHere> legs_here(const State& state) {
    std::vector<LegHere> legs;
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !sheet->layout || sheet->steps.empty()) return legs;
    const LineWork work = work_in_hand(state);
    if (work.stage != Stage::finish) return legs;
    for (TapeLeg leg : tape_legs(*sheet, measured_angles(*sheet, work))) {
        if (!leg.after && work.ticks.contains("trim-A")) leg.outside = leg.outside - sheet->line.a.trim;
        if (!leg.before && work.ticks.contains("trim-B")) leg.outside = leg.outside - sheet->line.b.trim;
        const BendOfTube of = of_leg(state, work, leg);
        const auto read = std::find_if(state.work.leg_log.begin(), state.work.leg_log.end(), [&](const LoggedLeg& logged) { return is_of(logged, of, leg.after); });
        legs.push_back({leg, read == state.work.leg_log.end() ? std::nullopt : std::optional(read->check)});
    }
    return legs;
}

std::optional<Length> typed_leg(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (state.looks.screen != Screen::leg || !number || *number <= 0) return std::nullopt;
    const Length read{reader_unit(state) == Unit::inch ? *number * 25.4 : *number};
    return read <= longest_stick ? std::optional(read) : std::nullopt;
}

void ask_leg(Doing& doing, std::size_t leg) {
    State& state = doing.state;
    if (state.looks.screen != Screen::legs || leg >= legs_here(state).size()) return;
    show_beside(state, Screen::leg);
    state.looks.leg = leg;
}

void next_at_leg(Doing& doing) {
    State& state = doing.state;
    const auto read = typed_leg(state);
    const std::vector<LegHere> legs = legs_here(state);
    if (!read || state.looks.leg >= legs.size()) return;
    const TapeLeg& leg = legs[state.looks.leg].leg;
    const LineWork work = work_in_hand(state);
    const BendOfTube of = of_leg(state, work, leg);
    Work next = state.work;
    const auto before = std::find_if(next.leg_log.begin(), next.leg_log.end(), [&](const LoggedLeg& logged) { return is_of(logged, of, leg.after); });
    const int marked = (leg.after ? 1 : 0) + (leg.before ? 1 : 0);
    LoggedLeg logged{{{}, marked, leg.outside, *read}, of, leg.after};
    logged.check.record.left_out = !tells_of_marks(*sheet_in_hand(state), work, leg);
    put_down(state, next, next.leg_log, before, logged);
    change_work(doing, std::move(next));
    leave_beside(state);
}

void leave_out_of_hand(Doing& doing, std::int64_t id) {
    if (doing.state.looks.screen != Screen::hand) return;
    Work next = doing.state.work;
    bool found = false;
    const auto turn_over = [&](Record& record) {
        if (record.id != id) return;
        record.left_out = !record.left_out;
        found = true;
    };
    for (LoggedTurn& logged : next.turn_log) turn_over(logged.check.record);
    for (LoggedLeg& logged : next.leg_log) turn_over(logged.check.record);
    if (found) change_work(doing, std::move(next));
}

}  // namespace tubewright
