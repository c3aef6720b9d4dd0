#include "bench/belief_line.h"

#include <algorithm>
#include <cmath>

namespace tubewright {
namespace {

constexpr double freedom = 4;            ///< of Student's distribution: a slip in ten readings hardly moves the line
constexpr double clipped_at = 3;         ///< scatters: a slip counts as this much and no more
constexpr int most_rounds = 2000;        ///< it needs some dozens
constexpr double same_slope = 1e-13, same_level = 1e-11;

/// A symmetric 2 by 2 matrix.
struct Square {
    double a, b, d;
};
Square inverse(const Square& m) {
    const double determinant = m.a * m.d - m.b * m.b;
    return {m.d / determinant, -m.b / determinant, m.a / determinant};
}
Square square(const BeliefLine& line) { return {line.spread.slope, line.spread.both, line.spread.level}; }

/// The line with the readings at these weights: exact for normal errors.
BeliefLine weighed(const BeliefLine& before, const std::vector<LineReading>& readings, const std::vector<double>& weight, double scatter) {
    Square precision = inverse(square(before));
    double slope = precision.a * before.at.slope + precision.b * before.at.level, level = precision.b * before.at.slope + precision.d * before.at.level;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto& [x, y, share] = readings[i];
        const double w = weight[i] / (scatter * scatter);
        precision.a += w * x * x, precision.b += w * x, precision.d += w;
        slope += w * x * y, level += w * y;
    }
    const Square spread = inverse(precision);
    return {{spread.a * slope + spread.b * level, spread.b * slope + spread.d * level}, {spread.a, spread.b, spread.d}};
}

/// What a reading is expected to miss the line by, squared: its miss, and the line's own doubt there.
double missed(const BeliefLine& line, const LineReading& reading) {
    const double miss = reading.y - line.at.slope * reading.x - line.at.level;
    return miss * miss + variance_at(line, reading.x);
}

}  // namespace

double variance_at(const BeliefLine& line, double x) { return line.spread.slope * x * x + 2 * line.spread.both * x + line.spread.level; }

LearnedLine learn_line(const BeliefLine& before, const std::vector<LineReading>& readings, const LineHow& how) {
    LearnedLine learned{before, {}, how.scatter};
    for (const LineReading& reading : readings) learned.weight.push_back(reading.share);
    if (readings.empty()) return learned;
    learned.line = weighed(before, readings, learned.weight, learned.scatter);
    for (int round = 0; (how.robust || how.from != ScatterFrom::belief) && round < most_rounds; ++round) {
        double sum = scatter_readings * how.scatter * how.scatter;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            const double miss = missed(learned.line, readings[i]);
            const double one = learned.scatter * learned.scatter, student = how.robust ? (freedom + 1) / (freedom + miss / one) : 1;
            learned.weight[i] = (how.never_surer ? std::min(student, 1.0) : student) * readings[i].share;
            sum += how.from == ScatterFrom::weighed ? learned.weight[i] * miss : std::min(miss, clipped_at * clipped_at * one);
        }
        if (how.from != ScatterFrom::belief) learned.scatter = std::sqrt(sum / (scatter_readings + static_cast<double>(readings.size())));
        const BeliefLine next = weighed(before, readings, learned.weight, learned.scatter);
        const bool still = std::abs(next.at.slope - learned.line.at.slope) < same_slope && std::abs(next.at.level - learned.line.at.level) < same_level;
        learned.line = next;
        if (still) break;
    }
    return learned;
}

BeliefLine brought_back(const BeliefLine& common, const BeliefLine& own, const BeliefLine& learned) {
    const Square v = square(common), back = inverse(square(own)), change{learned.spread.slope - own.spread.slope, learned.spread.both - own.spread.both, learned.spread.level - own.spread.level};
    // G = v back; it is not symmetric
    const double g11 = v.a * back.a + v.b * back.b, g12 = v.a * back.b + v.b * back.d, g21 = v.b * back.a + v.d * back.b, g22 = v.b * back.b + v.d * back.d;
    const double by_slope = learned.at.slope - own.at.slope, by_level = learned.at.level - own.at.level;
    const double c11 = change.a, c12 = change.b, c22 = change.d;
    BeliefLine result;
    result.at = {common.at.slope + g11 * by_slope + g12 * by_level, common.at.level + g21 * by_slope + g22 * by_level};
    result.spread = {v.a + g11 * (g11 * c11 + g12 * c12) + g12 * (g11 * c12 + g12 * c22), v.b + g11 * (g21 * c11 + g22 * c12) + g12 * (g21 * c12 + g22 * c22),
                     v.d + g21 * (g21 * c11 + g22 * c12) + g22 * (g21 * c12 + g22 * c22)};
    return result;
}

}  // namespace tubewright
