#include "bench/proof.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "bench/proof_model.h"

namespace tubewright {
namespace {

/// Sum of squares that a right explanation exceeds once in a thousand, for 1, 2, 3 ... readings. Chi-square tables.
double unusual(std::size_t readings) {
    constexpr double limits[]{10.83, 13.82, 16.27, 18.47, 20.52, 22.46};
    return limits[std::min(readings, std::size(limits)) - 1];
}

Explanation explained(const Possibility& possibility, double probability, const Taken& taken, const Measuring& measuring) {
    Explanation explanation{possibility.slips.front(), {possibility.slips.begin() + 1, possibility.slips.end()}, probability, {}, true};
    if (taken.readings.empty()) return explanation;
    const Foreseen under = foreseen(possibility, spans_of(taken.readings), measuring);
    for (const double mean : under.mean) explanation.would_read.push_back({mean});
    explanation.fits = misfit(under, values_of(taken.readings)) <= unusual(taken.readings.size());
    return explanation;
}

double misfit_of(const ProofEntry& entry, const Route& route, const Taken& taken) {
    const Possibility trial{{}, route, shape_of({route, entry.wire.od, entry.wire.radius}, entry.wire.route.measured_to), 0};
    return misfit(foreseen(trial, spans_of(taken.readings), entry.measuring), values_of(taken.readings));
}

/// The least misfit of routes made by `with(value)`: a coarse walk over all values, then halving steps round the best.
template <class With>
Suspect nearest(const ProofEntry& entry, const Taken& taken, Suspect suspect, double low, double high, double step, With with) {
    suspect.misfit = 1e300;
    const auto look = [&](double value) {
        const double here = misfit_of(entry, with(value), taken);
        if (here < suspect.misfit) suspect.misfit = here, suspect.value = value;
    };
    for (double value = low; value <= high; value += step) look(value);
    for (double half = step / 2; half > step / 64; half /= 2)
        for (const double middle = suspect.value; const double value : {middle - half, middle + half})
            if (value >= low && value <= high) look(value);
    return suspect;
}

std::vector<Suspect> suspects_for(const ProofEntry& entry, const Taken& taken) {
    const Route& route = entry.wire.route;
    std::vector<Suspect> suspects;
    Route trial;
    for (std::size_t i = 0; i < route.runs.size(); ++i) {
        const double leg = route.runs[i].mm, reach = std::max(leg, 300.0);
        suspects.push_back(nearest(entry, taken, {Suspect::What::leg, i, leg, 0}, 6, leg + reach, 12, [&](double value) { trial = route; trial.runs[i] = {value}; return trial; }));
    }
    for (std::size_t i = 0; i < route.bends.size(); ++i) {
        const double sharpest = route.form == RouteForm::straights ? 180 : tolerance::sharpest_corner.deg;
        suspects.push_back(nearest(entry, taken, {Suspect::What::angle, i, route.bends[i].angle.deg, 0}, 0, sharpest, 5, [&](double value) { trial = route; trial.bends[i].angle = {value}; return trial; }));
        if (i > 0) suspects.push_back(nearest(entry, taken, {Suspect::What::rotation, i, route.bends[i].rotation.deg, 0}, -175, 180, 5, [&](double value) { trial = route; trial.bends[i].rotation = {value}; return trial; }));
    }
    std::stable_sort(suspects.begin(), suspects.end(), [](const Suspect& a, const Suspect& b) { return a.misfit < b.misfit; });
    return suspects;
}

/// Of several readings, those without which nothing speaks against the entry.
std::vector<std::size_t> speaking_alone(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring) {
    std::vector<std::size_t> alone;
    for (std::size_t i = 0; i < taken.readings.size() && taken.readings.size() > 1; ++i) {
        Taken without = taken;
        without.readings.erase(without.readings.begin() + static_cast<std::ptrdiff_t>(i));
        if (!doubted(possible, without, measuring)) alone.push_back(i);
    }
    return alone;
}

/// Readings that speak less than this against a slip, beside a right entry, have not ruled it out.
constexpr double ruled_out = 0.1;

}  // namespace

Proof prove(const ProofEntry& entry, const Taken& taken) {
    const std::vector<Possibility> possible = possibilities(entry);
    const std::vector<double> chances = probabilities(possible, taken, entry.measuring);
    Proof proof{};
    proof.sure = chances.front();
    for (const TapeReading& reading : taken.readings) {
        const Foreseen right = foreseen(possible.front(), {reading.span}, entry.measuring);
        const double sd = std::sqrt(right.covariance(0, 0));
        proof.expected.push_back({reading.span, {right.mean[0]}, {sd}});
        proof.off.push_back((reading.read.mm - right.mean[0]) / sd);
    }
    std::vector<std::size_t> by_chance;
    for (std::size_t i = 1; i < possible.size(); ++i) by_chance.push_back(i);
    std::stable_sort(by_chance.begin(), by_chance.end(), [&](std::size_t a, std::size_t b) { return chances[a] > chances[b]; });
    constexpr std::size_t most_told = 10;
    for (const std::size_t i : by_chance) {
        if (proof.explanations.size() < most_told) proof.explanations.push_back(explained(possible[i], chances[i], taken, entry.measuring));
        if (chances[i] / possible[i].prior > ruled_out * chances.front() / possible.front().prior)
            proof.not_exposed.push_back(explained(possible[i], chances[i], taken, entry.measuring));
    }
    if (!doubted(possible, taken, entry.measuring)) {
        proof.verdict = ProofVerdict::consistent;
        return proof;
    }
    const bool named = !proof.explanations.empty() && proof.explanations.front().fits && proof.explanations.front().probability > chances.back();
    proof.verdict = named ? ProofVerdict::slip : ProofVerdict::unexplained;
    proof.alone = speaking_alone(possible, taken, entry.measuring);
    if (!taken.readings.empty()) proof.suspects = suspects_for(entry, taken);
    return proof;
}

}  // namespace tubewright
