// Which distance to tape next.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "bench/proof_model.h"
#include "tube/clearance.h"

namespace tubewright {
namespace {

/// What a tape is held at by two hands: shorter, its end hides the mark; longer, nobody holds it alone. Common practice, no source.
constexpr Length shortest_taped{2 * 25.4}, longest_taped{72 * 25.4};

/// Nothing less likely than this takes part in choosing.
constexpr double too_unlikely = 1e-6;

/// Bends that bend, strictly between the two points.
std::size_t bends_between(const Route& route, Span span) {
    std::size_t count = 0;
    for (std::size_t bend = span.from; bend + 1 < span.to; ++bend) count += route.bends[bend].angle >= tolerance::no_bend;
    return count;
}

/// Whether another part of the wire pushes the tape aside so far that it reads too much. It lies across the wire, half a
/// diameter out of line: from there to its ends, a and b away, that adds od^2 / 8 (1/a + 1/b). Legs that end at one of its points
/// don't count: the tape lies beside them.
bool in_free_air(const WireShape& shape, Span span, Length od) {
    constexpr Length noticed{25.4 / 64};
    const double length = apart(shape, span).mm, bend = od.mm * od.mm / 8;
    for (std::size_t leg = 0; leg + 1 < shape.points.size(); ++leg) {
        if (leg == span.from || leg + 1 == span.from || leg == span.to || leg + 1 == span.to) continue;
        const Eigen::Vector3d &from = shape.points[leg], &to = shape.points[leg + 1];
        if (segment_distance(from, to, shape.points[span.from], shape.points[span.to]) >= od.mm) continue;
        const double near = std::min(segment_distance(from, to, shape.points[span.from], shape.points[span.from]), segment_distance(from, to, shape.points[span.to], shape.points[span.to]));
        if (near < 2 * od.mm || bend * (1 / near + 1 / std::max(near, length - near)) > noticed.mm) return false;
    }
    return true;
}

/// As far as this person tapes: two hands reach 72 in, and a longer leg has been taped, or so it was entered.
Length reach_of(const Route& route) {
    const Length longest_leg = *std::max_element(route.runs.begin(), route.runs.end());
    return std::max(longest_taped, 1.2 * longest_leg);
}

std::vector<Span> candidates(const ProofEntry& entry, const WireShape& shape, const Taken& taken, bool legs_too) {
    const Route& route = entry.wire.route;
    const Length reach = reach_of(route);
    std::vector<Span> done = spans_of(taken.readings), spans;
    done.insert(done.end(), taken.out_of_reach.begin(), taken.out_of_reach.end());
    for (std::size_t to = 1; to < shape.points.size(); ++to)
        for (std::size_t from = 0; from < to; ++from) {
            const Span span{from, to};
            const Length length = apart(shape, span);
            if (!can_be_touched(route, from) || !can_be_touched(route, to) || std::find(done.begin(), done.end(), span) != done.end()) continue;
            if (length < shortest_taped || length > reach || (!legs_too && bends_between(route, span) == 0)) continue;
            if (in_free_air(shape, span, entry.wire.od)) spans.push_back(span);
        }
    return spans;
}

/// exp(-x^2 / 2) for x up to 5, looked up.
double bell(double x) {
    constexpr int steps = 64, reach = 5;
    static const std::array<double, steps * reach + 1> table = [] {
        std::array<double, steps * reach + 1> made{};
        for (std::size_t i = 0; i < made.size(); ++i) made[i] = std::exp(-0.5 * std::pow(static_cast<double>(i) / steps, 2));
        return made;
    }();
    const auto place = static_cast<std::size_t>(std::abs(x) * steps + 0.5);
    return place < table.size() ? table[place] : 0;
}

/// Mutual information, in nats, of the reading and what is true: the entropy of its whole distribution less its mean
/// entropy when the truth is known.
double information(const std::vector<NextReading>& next, const std::vector<double>& chances) {
    double low = 1e300, high = -1e300, least = 1e300, known = 0, all = 0;
    for (std::size_t i = 0; i < next.size(); ++i) {
        const double sd = std::sqrt(next[i].variance);
        low = std::min(low, next[i].mean - 5 * sd);
        high = std::max(high, next[i].mean + 5 * sd);
        least = std::min(least, sd);
        all += chances[i];
        known += chances[i] * std::log(sd);
    }
    constexpr double most_cells = 4000;
    const double step = std::max(least / 2, (high - low) / most_cells), constant = std::sqrt(2 * std::numbers::pi);
    std::vector<double> density(static_cast<std::size_t>((high - low) / step) + 2);
    for (std::size_t i = 0; i < next.size(); ++i) {
        const double sd = std::sqrt(next[i].variance), height = chances[i] / all / (sd * constant);
        const auto first = static_cast<std::size_t>((next[i].mean - 5 * sd - low) / step), last = static_cast<std::size_t>((next[i].mean + 5 * sd - low) / step) + 1;
        for (std::size_t cell = first; cell <= last && cell < density.size(); ++cell)
            density[cell] += height * bell((low + static_cast<double>(cell) * step - next[i].mean) / sd);
    }
    double entropy = 0;
    for (const double height : density)
        if (height > 1e-15) entropy -= height * std::log(height) * step;
    return entropy - (known / all + std::log(constant) + 0.5);
}

std::optional<TapeTask> best_of(const ProofEntry& entry, const std::vector<Possibility>& possible, const Taken& taken) {
    const std::vector<double> chances = probabilities(possible, taken, entry.measuring);
    const bool wrong = doubted(possible, taken, entry.measuring);
    const std::vector<Span> spans = candidates(entry, possible.front().shape, taken, wrong);
    if (spans.empty()) return std::nullopt;
    std::vector<std::vector<NextReading>> for_span(spans.size());
    std::vector<double> weights;
    for (std::size_t i = 0; i < possible.size(); ++i) {
        if (chances[i] < too_unlikely) continue;
        weights.push_back(chances[i]);
        const std::vector<NextReading> next = foreseen_after(possible[i], taken.readings, spans, entry.measuring);
        for (std::size_t k = 0; k < spans.size(); ++k) for_span[k].push_back(next[k]);
    }
    if (weights.empty()) return std::nullopt;
    std::size_t best = 0;
    double most = -1;
    for (std::size_t k = 0; k < spans.size(); ++k) {
        const double here = information(for_span[k], weights);
        if (here > most) most = here, best = k;
    }
    const Foreseen alone = foreseen(possible.front(), {spans[best]}, entry.measuring);
    return TapeTask{spans[best], {alone.mean[0]}, {std::sqrt(alone.covariance(0, 0))}};
}

}  // namespace

std::optional<TapeTask> next_task(const ProofEntry& entry, const Taken& taken) { return best_of(entry, possibilities(entry), taken); }

std::vector<TapeTask> tasks_to_take(const ProofEntry& entry, std::size_t count) {
    const std::vector<Possibility> possible = possibilities(entry);
    std::vector<TapeTask> tasks;
    Taken taken;
    while (tasks.size() < count) {
        const std::optional<TapeTask> next = best_of(entry, possible, taken);
        if (!next) break;
        tasks.push_back(*next);
        taken.readings.push_back({next->span, next->expected});
    }
    return tasks;
}

std::optional<HandQuestion> hand_question(const Wire& wire) {
    constexpr double clear_enough = 0.1;  // 90 degree corners, 6 degrees out of the plane
    const WireShape shape = shape_of(wire, wire.route.measured_to);
    std::optional<HandQuestion> clearest;
    std::optional<std::size_t> before;
    for (std::size_t bend = 0; bend < wire.route.bends.size(); ++bend) {
        if (wire.route.bends[bend].angle < tolerance::no_bend) continue;
        if (before) {
            const double hand = handedness(shape, *before, bend);
            if (std::abs(hand) >= clear_enough && (!clearest || std::abs(hand) > clearest->clearness))
                clearest = HandQuestion{*before, bend, wrapped(wire.route.bends[bend].rotation), hand > 0, std::abs(hand)};
        }
        before = bend;
    }
    return clearest;
}

}  // namespace tubewright
