#include "bench/springback_log.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace tubewright {
namespace {

// Where each of these comes from stands in springback_log.h.
constexpr double growth_share = 0.35, growth_floor = 0.006, zero_sd = 1.0;
constexpr double lot_growth_share = 0.15, lot_zero_sd = 0.3;
constexpr double size_share = 0.15;
constexpr double small_angle_share = 0.25;
constexpr double ask_beyond = 3, ask_beyond_early = 2.5;
constexpr std::size_t early = 3;
constexpr double wrong_way_scatters = 3;

double squared(double x) { return x * x; }

BeliefLine as_line(const SpringbackBelief& belief) {
    return {{belief.line.growth, belief.line.zero.deg}, {belief.growth_variance, belief.covariance, belief.zero_variance}};
}

SpringbackBelief as_belief(const BeliefLine& line) { return {{line.at.slope, {line.at.level}}, line.spread.slope, line.spread.both, line.spread.level}; }

LineReading row_of(const Sprung& reading) { return {reading.measured.deg, (reading.set - reading.measured).deg, reading.share}; }

Sprung sprung(const BendCheck& check) {
    return {check.set, check.measured, check.measured < tolerance::springback_linear_from ? small_angle_share : 1};
}

std::vector<Sprung> sprung(const std::vector<const BendCheck*>& checks, std::size_t count) {
    std::vector<Sprung> readings;
    for (std::size_t i = 0; i < count; ++i)
        if (is_learned_from(checks[i]->record)) readings.push_back(sprung(*checks[i]));
    return readings;
}
std::vector<Sprung> sprung(const std::vector<const BendCheck*>& checks) { return sprung(checks, checks.size()); }

double off(const BendCheck& check, const SpringbackBelief& belief, Angle scatter) {
    const double opened = (check.set - check.measured).deg, foreseen = belief.line.growth * check.measured.deg + belief.line.zero.deg;
    return (opened - foreseen) / std::sqrt(variance_at(as_line(belief), check.measured.deg) + squared(scatter.deg));
}

bool same_tube(const Tube& a, const Tube& b) {
    return a.material == b.material && std::abs((a.od - b.od).mm) <= tolerance::printed_wall.mm && std::abs((a.wall - b.wall).mm) <= tolerance::printed_wall.mm;
}

/// Readings of other sizes of the same material on the same bender.
std::vector<SizeReadings> other_sizes(const BenderAndTube& with, const std::vector<BendCheck>& log, const PhysicsOf& physics) {
    std::vector<SizeReadings> sizes;
    std::vector<Tube> tubes;
    for (const BendCheck& check : log) {
        const Tube& tube = check.with.tube;
        if (check.with.bender != with.bender || tube.material != with.tube.material || same_tube(tube, with.tube) || !is_learned_from(check.record)) continue;
        auto found = std::find_if(tubes.begin(), tubes.end(), [&](const Tube& other) { return same_tube(other, tube); });
        if (found == tubes.end()) {
            const auto line = physics(check.with);
            if (!line) continue;
            sizes.push_back({*line, {}});
            found = tubes.insert(tubes.end(), tube);
        }
        sizes[static_cast<std::size_t>(found - tubes.begin())].readings.push_back(sprung(check));
    }
    return sizes;
}

/// The records of one bender and tube, by lot, lots in the order of their first record; the asked lot last, even if empty.
std::vector<std::vector<const BendCheck*>> by_lot(const BenderAndTube& with, const std::string& lot, const std::vector<BendCheck>& log) {
    std::vector<std::string> names;
    std::vector<std::vector<const BendCheck*>> lots;
    std::vector<const BendCheck*> own;
    for (const BendCheck& check : log) {
        if (check.with.bender != with.bender || !same_tube(check.with.tube, with.tube)) continue;
        if (check.lot == lot) {
            own.push_back(&check);
            continue;
        }
        auto found = std::find(names.begin(), names.end(), check.lot);
        if (found == names.end()) {
            found = names.insert(names.end(), check.lot);
            lots.emplace_back();
        }
        lots[static_cast<std::size_t>(found - names.begin())].push_back(&check);
    }
    lots.push_back(std::move(own));
    return lots;
}

/// What all logs but the asked one say of how the shop's readings scatter. A learned scatter holds scatter_readings of the
/// one believed before; taken out again, each log counts by its readings.
Angle scatter_elsewhere(const BenderAndTube& with, const std::string& lot, const std::vector<BendCheck>& log, const PhysicsOf& physics, const SpringbackHow& how) {
    struct Log { const BendCheck* first; std::vector<Sprung> readings; };
    std::vector<Log> logs;
    for (const BendCheck& check : log) {
        const auto belongs = [&](const BenderAndTube& other, const std::string& its_lot) { return check.with.bender == other.bender && same_tube(check.with.tube, other.tube) && check.lot == its_lot; };
        if (!is_learned_from(check.record) || belongs(with, lot)) continue;
        auto found = std::find_if(logs.begin(), logs.end(), [&](const Log& other) { return belongs(other.first->with, other.first->lot); });
        if (found == logs.end()) found = logs.insert(found, {&check, {}});
        found->readings.push_back(sprung(check));
    }
    const double believed = scatter_readings * squared(how.scatter.deg);
    double sum = believed, count = scatter_readings;
    for (const Log& other : logs) {
        const auto line = physics(other.first->with);
        if (!line || other.readings.size() < scatter_from) continue;
        const double n = static_cast<double>(other.readings.size());
        sum += (scatter_readings + n) * squared(learn_springback(first_belief(*line), other.readings, how).scatter.deg) - believed;
        count += n;
    }
    return {std::sqrt(sum / count)};
}

std::optional<Drift> drift_of(const std::vector<const BendCheck*>& learned, const SpringbackBelief& before, const SpringbackHow& how) {
    if (learned.size() < early + drift_readings) return std::nullopt;
    const std::size_t from = learned.size() - drift_readings;
    const SpringbackLearned known = learn_springback(before, sprung(learned, from), how);
    double sum = 0, by = 0;
    int above = 0;
    for (std::size_t i = from; i < learned.size(); ++i) {
        const double z = off(*learned[i], known.belief, known.scatter), opened = (learned[i]->set - learned[i]->measured).deg;
        sum += z, above += z > 0;
        by += (opened - (set_angle(known.belief.line, learned[i]->measured) - learned[i]->measured).deg) / drift_readings;
    }
    if (above != 0 && above != static_cast<int>(drift_readings)) return std::nullopt;
    if (std::abs(sum) <= drift_off * drift_readings) return std::nullopt;
    return Drift{{by}, learned[from]->record.id};
}

std::vector<Followed> followed(const std::vector<const BendCheck*>& own, const SpringbackBelief& before, const std::vector<double>& weights, const SpringbackHow& how) {
    std::vector<Followed> result;
    std::vector<Sprung> so_far;
    SpringbackLearned known = learn_springback(before, {}, how);
    for (const BendCheck* check : own) {
        const double from_line = off(*check, known.belief, known.scatter);
        const bool learned = is_learned_from(check->record);
        result.push_back({check->record.id, from_line, learned ? weights[so_far.size()] : 0});
        if (!learned) continue;
        so_far.push_back(sprung(*check));
        known = learn_springback(before, so_far, how);
    }
    return result;
}

}  // namespace

SpringbackBelief first_belief(const Springback& physics) {
    return {physics, squared(std::max(growth_share * physics.growth, growth_floor)), 0, squared(zero_sd)};
}

SpringbackBelief for_another_lot(const SpringbackBelief& belief, const Springback& physics) {
    SpringbackBelief wider = belief;
    wider.growth_variance += squared(lot_growth_share * physics.growth);
    wider.zero_variance += squared(lot_zero_sd);
    return wider;
}

SpringbackLearned learn_springback(const SpringbackBelief& before, const std::vector<Sprung>& readings, const SpringbackHow& how) {
    std::vector<LineReading> rows;
    for (const Sprung& reading : readings) rows.push_back(row_of(reading));
    const LearnedLine learned = learn_line(as_line(before), rows, {how.scatter.deg, how.robust, how.never_surer, readings.size() < scatter_from ? ScatterFrom::belief : how.from});
    return {as_belief(learned.line), learned.weight, {learned.scatter}};
}

SetTo set_to(const SpringbackBelief& belief, Angle target, Angle scatter) {
    const double line = variance_at(as_line(belief), target.deg);
    SetTo result;
    result.set = set_angle(belief.line, target);
    result.line_sd = {std::sqrt(line)};
    result.next_sd = {std::sqrt(line + squared(scatter.deg))};
    result.careful = set_angle(belief.line, target - result.next_sd);
    result.chance_good = std::erf(tolerance::good_bend.deg / result.next_sd.deg / std::numbers::sqrt2);
    return result;
}

Length finished_radius_sd(const SpringbackBelief& belief, Length form_radius) { return std::sqrt(belief.growth_variance) * form_radius; }

Result<BendJudged, BendRefused> judge_bend(const BendCheck& check, const SpringbackBelief& belief, const Springback& physics, std::size_t learned_from, Angle scatter) {
    const Angle set = check.set, measured = check.measured, opened = set - measured;
    if (!(set.deg > 0 && set <= most_set && measured.deg > 0 && measured <= most_set)) return BendRefused{NotABend{set, measured}};
    if (!check.set_was_read) return BendRefused{SetNotRead{}};
    const Angle least = -wrong_way_scatters * scatter, most = tolerance::springback_gate_slopes * physics.growth * measured + tolerance::springback_gate;
    if (opened < least) return BendRefused{OpenedTheWrongWay{opened, least}};
    if (opened > most) return BendRefused{OpenedTooFar{opened, most}};
    const double away = off(check, belief, scatter);
    return BendJudged{away, std::abs(away) > (learned_from < early ? ask_beyond_early : ask_beyond), measured < tolerance::springback_linear_from};
}

Result<BendCheck, BendRefused> for_the_log(BendCheck check, const SpringbackState& state, const Springback& physics) {
    const auto judged = judge_bend(check, state.belief, physics, state.learned_from, state.scatter);
    if (!judged.ok()) return judged.trouble();
    check.record.standing = judged.value().ask ? RecordStanding::asked : RecordStanding::counted;
    return check;
}

// One size after the other. Its own factor is the common one and its own part, so that with V the common spread and Q that
// of the own part its belief starts at V + Q; what it has learned goes back by the share V (V + Q)^-1. The other way
// about it would be one system with an unknown for each size; it gives the same.
SpringbackBelief belief_from_sizes(const Springback& physics, const std::vector<SizeReadings>& sizes, const SpringbackHow& how) {
    BeliefLine common{{1, 0}, {squared(growth_share), 0, squared(zero_sd)}};
    for (const SizeReadings& size : sizes) {
        std::vector<LineReading> rows;
        for (const Sprung& reading : size.readings)
            rows.push_back({size.physics.growth * reading.measured.deg, (reading.set - reading.measured - size.physics.zero).deg, reading.share});
        BeliefLine own = common;
        own.spread.slope += squared(size_share);
        common = brought_back(common, own, learn_line(own, rows, {how.scatter.deg, how.robust, how.never_surer, ScatterFrom::belief}).line);
    }
    const double grown = physics.growth;
    return {{common.at.slope * grown, physics.zero + Angle{common.at.level}},
            squared(grown) * (common.spread.slope + squared(size_share)), grown * common.spread.both, common.spread.level};
}

std::optional<SpringbackState> springback_of(const BenderAndTube& with, const std::string& lot, const std::vector<BendCheck>& log, const PhysicsOf& physics, const SpringbackHow& first_how) {
    const auto line = physics(with);
    if (!line) return std::nullopt;
    SpringbackHow how = first_how;
    if (how.from != ScatterFrom::belief) how.scatter = scatter_elsewhere(with, lot, log, physics, first_how);
    SpringbackState state;
    SpringbackBelief before = first_belief(*line);
    if (const auto sizes = other_sizes(with, log, physics); !sizes.empty()) {
        before = for_another_lot(belief_from_sizes(*line, sizes, how), *line);
        for (const SizeReadings& size : sizes) state.others += size.readings.size();
    }
    const auto lots = by_lot(with, lot, log);
    for (std::size_t i = 0; i + 1 < lots.size(); ++i) {
        const std::vector<Sprung> readings = sprung(lots[i]);
        if (readings.empty()) continue;
        before = for_another_lot(learn_springback(before, readings, how).belief, *line);
        state.others += readings.size();
    }
    const std::vector<const BendCheck*>& own = lots.back();
    const SpringbackLearned learned = learn_springback(before, sprung(own), how);
    state.belief = learned.belief;
    state.scatter = learned.scatter;
    state.learned_from = learned.weight.size();
    state.opens_backwards = learned.belief.line.growth <= 0;
    state.readings = followed(own, before, learned.weight, how);
    std::vector<const BendCheck*> counted;
    for (const BendCheck* check : own)
        if (is_learned_from(check->record)) counted.push_back(check);
    const auto by_angle = [](const BendCheck* a, const BendCheck* b) { return a->measured < b->measured; };
    const auto [low, high] = std::minmax_element(counted.begin(), counted.end(), by_angle);
    state.slope_seen = !counted.empty() && (*high)->measured - (*low)->measured > slope_needs;
    state.drift = drift_of(counted, before, how);
    return state;
}

}  // namespace tubewright
