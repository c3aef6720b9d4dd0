#include "state/rules.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "tube/centreline.h"

namespace tubewright {

const std::string finish_list_passed = "passed-finish";

const Sheet* sheet_in_hand(const State& state) {
    if (!state.job || !state.line || *state.line >= state.sheets.size()) return nullptr;
    return &state.sheets[*state.line];
}

Bar bar_to_start(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet) return Bar::no_line;
    if (*state.line < state.orders.size() && state.orders[*state.line].looking && !work_in_hand(state).cut) return Bar::looking;
    return stopped(*sheet) || !sheet->layout ? Bar::stopped : Bar::none;
}

const Step* step_in_hand(const State& state) {
    if (bar_to_start(state) != Bar::none) return nullptr;
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    if (work.stage != Stage::bending || misfit(sheet, work) != Misfit::none) return nullptr;
    return &sheet.steps[work.step];
}

StickStanding stick_standing(const State& state) {
    StickStanding standing;
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !sheet->layout) return standing;
    standing.needed = sheet->layout->cut_length;
    const auto in_use = length_in_use(state.work, stock_tube(sheet->line.tube));
    if (!in_use) return standing;
    standing.left = measured(in_use->length);
    standing.enough = exact(standing.needed) <= in_use->length;
    return standing;
}

std::optional<Length> too_short_by(const State& state, Length stick) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet || !sheet->layout || work_in_hand(state).cut) return std::nullopt;
    const Length missing = sheet->layout->cut_length - stick;
    if (exact(stick) >= exact(sheet->layout->cut_length)) return std::nullopt;
    return missing;
}

std::vector<RackLength> offcuts_of_tube(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet) return {};
    const StockTube tube = stock_tube(sheet->line.tube);
    const auto in_use = length_in_use(state.work, tube);
    std::vector<RackLength> found;
    for (const RackLength& length : lengths_on_rack(*state.work.rack.ledger, tube))
        if (length.kind != PieceKind::coil && !(in_use && in_use->piece == length.piece)) found.push_back(length);
    return found;
}

std::vector<RackLength> fitting_offcuts(const State& state) {
    const StickStanding standing = stick_standing(state);
    std::vector<RackLength> found;
    for (const RackLength& offcut : offcuts_of_tube(state))
        if (standing.needed.mm > 0 && offcut.length >= exact(standing.needed)) found.push_back(offcut);
    std::reverse(found.begin(), found.end());
    return found;
}

Verdict verdict(Angle target, Angle reading) {
    const double off = (reading - target).deg;
    if (std::abs(off) <= tolerance::good_bend.deg + tolerance::arithmetic) return Verdict::right;
    return off < 0 ? Verdict::under : Verdict::over;
}

Angle set_in_force(const Step& step, const LineWork& work) { return work.pull_again.value_or(step.set); }

Belief belief(const Sheet& sheet, const Step& step, const LineWork& work, Angle reading) {
    const Angle opened = set_in_force(step, work) - reading;
    const Angle most = tolerance::springback_gate_slopes * sheet.springback.growth * reading + tolerance::springback_gate;
    if (opened.deg > most.deg + tolerance::arithmetic) return Belief::opened_too_far;
    if (opened.deg < -tolerance::past_the_set.deg - tolerance::arithmetic) return Belief::past_the_set;
    // Reached, this set angle should have opened to `foretold`, give or take the forecast's share of it and the lever.
    // A further pull was reckoned from a reading, so as to end at the target.
    const Angle foretold = work.pull_again ? step.target : (1 / (1 + sheet.springback.growth)) * (set_in_force(step, work) - sheet.springback.zero);
    const double spread = std::hypot(tolerance::springback_forecast_share * (set_in_force(step, work) - foretold).deg, tolerance::lever_stop.deg);
    return (foretold - reading).deg > 2 * spread + tolerance::arithmetic ? Belief::opened_more : Belief::sound;
}

Angle pull_on_to(const Sheet& sheet, const Step& step, const LineWork& work) {
    const Angle missing = step.target - work.last_reading.value_or(step.target);
    return on_lever(set_in_force(step, work)) + (1 + sheet.springback.growth) * missing;
}

Angle pull_again_to(const Sheet& sheet, const Step& step, const LineWork& work, Belief believed) {
    switch (believed) {
        case Belief::sound: return pull_on_to(sheet, step, work);
        case Belief::opened_more: return set_in_force(step, work);
        case Belief::opened_too_far:
        case Belief::past_the_set: return step.set;
    }
    return step.set;
}

bool is_other_scale(const Step& step, Angle reading) {
    return std::abs((Angle{180} - reading - step.target).deg) <= tolerance::other_scale.deg && std::abs((reading - step.target).deg) > 2 * tolerance::other_scale.deg;
}

AsMeasured measured_angles(const Sheet& sheet, const LineWork& work) {
    AsMeasured measured;
    for (const BendMade& made : work.made)
        if (made.measured && made.bend < sheet.line.route.bends.size()) measured[made.bend] = *made.measured;
    return measured;
}

Length far_end_off(const Sheet& sheet, const LineWork& work, std::size_t bend, Angle reading) {
    AsMeasured measured = measured_angles(sheet, work);
    measured[bend] = reading;
    return {(far_end(part_as_measured(sheet, measured)).at - far_end(sheet.layout->part).at).norm()};
}

}  // namespace tubewright
