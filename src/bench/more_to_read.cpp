#include "bench/more_to_read.h"

#include <algorithm>
#include <cmath>

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr std::size_t most_tapes = 2;
constexpr double worth_taping = 0.02;  ///< share of what is not known of the ends

/// Where the ends lie against where they are wanted, in mm: A's three, then B's.
VectorXd ends_of(const RescueQuestion& question, const KeyPlaces& wanted, const std::vector<MadeError>& errors) {
    const LaidOver laid = laid_over(wanted, key_places(part_of(plan_with(question.sheet, errors))), question.limits.ends);
    VectorXd ends(6);
    ends << laid.a, laid.b;
    return ends;
}

/// By how much each error moves them.
MatrixXd end_slopes(const RescueQuestion& question) {
    constexpr double step = 1e-5;  // rad and mm
    const KeyPlaces wanted = key_places(question.wanted ? *question.wanted : question.sheet.layout->part);
    MatrixXd slopes(6, static_cast<Index>(3 * question.made.errors.size()));
    for (std::size_t i = 0; i < question.made.errors.size(); ++i)
        for (int k = 0; k < 3; ++k) {
            const auto moved = [&](double by) {
                std::vector<MadeError> errors = question.made.errors;
                (k == 0 ? errors[i].over_bent_rad : k == 1 ? errors[i].turned_rad : errors[i].off_mark_mm) += by;
                return ends_of(question, wanted, errors);
            };
            slopes.col(static_cast<Index>(3 * i) + k) = (moved(step) - moved(-step)) / (2 * step);
        }
    return slopes;
}

struct EndsKnown {
    double all, worse;  ///< mm^2: both ends together, and the worse one
};

EndsKnown known_of(const MatrixXd& ends, const MatrixXd& covariance) {
    const VectorXd variances = (ends * covariance * ends.transpose()).diagonal();
    const double a = variances.head(3).sum(), b = variances.tail(3).sum();
    return {a + b, std::max(a, b)};
}

MatrixXd with_reading(const MatrixXd& covariance, const VectorXd& slope, double sd) {
    const VectorXd shared = covariance * slope;
    return covariance - shared * shared.transpose() / (slope.dot(shared) + sd * sd);
}

std::vector<std::size_t> made_from_a(const AsMade& made) {
    std::vector<std::size_t> bends = made.bends;
    std::sort(bends.begin(), bends.end());
    return bends;
}

/// A bend that hardly turns, or turns right round, shows no plane.
bool shows_its_plane(const TubePlan& plan, std::size_t bend) {
    constexpr Angle least{5}, most{175};
    return plan.bends[bend].angle >= least && plan.bends[bend].angle <= most;
}

/// No bend within what was taped has been made since.
bool is_as_taped(const RescueQuestion& question, const MadeTape& tape) {
    for (std::size_t step = tape.steps; step < question.steps_done; ++step) {
        const std::size_t corner = question.sheet.steps[step].bend + 1;
        if (tape.tape.span.from < corner && corner < tape.tape.span.to) return false;
    }
    return true;
}

/// What one bend off by all that a rescue changes makes of a reading at the most. `slope`: of each number of the errors.
double most_off(const RescueLimits& limits, const VectorXd& slope) {
    double most = 0;
    for (Index i = 0; i < slope.size(); ++i) most = std::max(most, std::abs(slope[i]) * (i % 3 == 0 ? limits.most_angle.rad() : i % 3 == 1 ? limits.most_turn.rad() : limits.most_mark.mm));
    return most;
}

/// All that could be read and is not, as if it were read.
MadeReadings not_taken(const RescueQuestion& question, const MadeReadings& taken) {
    MadeReadings all;
    const std::vector<std::size_t> made = made_from_a(question.made);
    const TubePlan& plan = question.made.plan;
    for (std::size_t i = 1; i < made.size(); ++i) {
        const bool read = std::any_of(taken.turns.begin(), taken.turns.end(), [&](const TurnReading& turn) { return turn.bend == made[i] && turn.against == made[i - 1]; });
        if (!read && shows_its_plane(plan, made[i]) && shows_its_plane(plan, made[i - 1])) all.turns.push_back({made[i], made[i - 1], {}});
    }
    const Route bent = line_as_planned(question.sheet.line, plan).route;
    std::vector<std::size_t> points{0};
    for (const std::size_t bend : made)
        if (can_be_touched(bent, bend + 1)) points.push_back(bend + 1);
    points.push_back(plan.bends.size() + 1);
    for (std::size_t i = 0; i < points.size(); ++i)
        for (std::size_t k = i + 1; k < points.size(); ++k) {
            const Span span{points[i], points[k]};
            const bool read = std::any_of(taken.tapes.begin(), taken.tapes.end(), [&](const MadeTape& tape) { return tape.tape.span == span && is_as_taped(question, tape); });
            if (!read) all.tapes.push_back({{span, {}}, question.steps_done});
        }
    return all;
}

/// Those of the tapes that tell most, as places in the list of all.
std::vector<Index> best_tapes(const MatrixXd& ends, MatrixXd covariance, const MatrixXd& slopes, const VectorXd& foreseen, Index first, const CheckSd& sd) {
    std::vector<Index> best;
    const double before = known_of(ends, covariance).all;
    while (best.size() < most_tapes) {
        double least = known_of(ends, covariance).all - worth_taping * before;
        std::optional<Index> next;
        for (Index i = first; i < foreseen.size(); ++i) {
            if (foreseen[i] < shortest_taped.mm || std::find(best.begin(), best.end(), i) != best.end()) continue;
            const double left = known_of(ends, with_reading(covariance, slopes.row(i).transpose(), sd.tape.mm)).all;
            if (left < least) least = left, next = i;
        }
        if (!next) break;
        best.push_back(*next);
        covariance = with_reading(covariance, slopes.row(*next).transpose(), sd.tape.mm);
    }
    return best;
}

}  // namespace

MoreToRead more_to_read(const RescueQuestion& question, const MadeReadings& taken, const CheckSd& sd) {
    const MadeReadings all = not_taken(question, taken);
    const MatrixXd ends = end_slopes(question), &covariance = question.made.covariance, slopes = reading_slopes(question.sheet, question.made.errors, all);
    const VectorXd foreseen = read_of(question.sheet, question.made.errors, all);
    const auto turns = static_cast<Index>(all.turns.size());
    const auto told_by = [&](Index i) { return known_of(ends, with_reading(covariance, slopes.row(i).transpose(), i < turns ? sd.rotation.deg : sd.tape.mm)); };
    MoreToRead more{{std::sqrt(known_of(ends, covariance).worse)}, {}};
    std::vector<Index> order;
    for (Index i = 0; i < turns; ++i) order.push_back(i);
    std::stable_sort(order.begin(), order.end(), [&](Index one, Index other) { return told_by(one).all < told_by(other).all; });
    for (const Index tape : best_tapes(ends, covariance, slopes, foreseen, turns, sd)) order.push_back(tape);
    for (const Index i : order) {
        ToRead reading;
        reading.what = i < turns ? ToRead::What::turn : ToRead::What::tape;
        if (i < turns) reading.bend = all.turns[static_cast<std::size_t>(i)].bend, reading.against = all.turns[static_cast<std::size_t>(i)].against;
        else reading.span = all.tapes[static_cast<std::size_t>(i - turns)].tape.span;
        reading.foreseen = foreseen[i];
        reading.most_off = i < turns ? question.limits.most_turn.deg : std::max(question.limits.most_mark.mm, most_off(question.limits, slopes.row(i).transpose()));
        reading.known = {std::sqrt(told_by(i).worse)};
        more.readings.push_back(reading);
    }
    return more;
}

}  // namespace tubewright
