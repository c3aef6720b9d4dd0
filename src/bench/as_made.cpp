#include "bench/as_made.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numbers>

#include "bench/spread.h"

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double degree = std::numbers::pi / 180;
constexpr int most_steps = 30;            ///< each halves the digits that are missing
constexpr double small_step = 1e-9;       ///< of an error's standard deviation

std::vector<Placing> order_of(const Sheet& sheet) {
    std::vector<Placing> order;
    for (const Step& step : sheet.steps) order.push_back({step.bend, step.hook});
    return order;
}

VectorXd flat(const std::vector<MadeError>& errors) {
    VectorXd all(static_cast<Index>(3 * errors.size()));
    for (std::size_t i = 0; i < errors.size(); ++i)
        all.segment<3>(static_cast<Index>(3 * i)) << errors[i].over_bent_rad, errors[i].turned_rad, errors[i].off_mark_mm;
    return all;
}

std::vector<MadeError> errors_of(const VectorXd& all) {
    std::vector<MadeError> errors;
    for (Index i = 0; i < all.size(); i += 3) errors.push_back({all[i], all[i + 1], all[i + 2]});
    return errors;
}

/// What the hand would do: the spread of each number of each step.
VectorXd hand_sds(const Sheet& sheet, std::size_t steps_done) {
    const auto against = turned_against(sheet.layout->part, order_of(sheet));
    VectorXd sds(static_cast<Index>(3 * steps_done));
    for (std::size_t i = 0; i < steps_done; ++i)
        sds.segment<3>(static_cast<Index>(3 * i)) << sheet.hand.angle_sd.rad(), (against[i] ? sheet.hand.turn_sd : sheet.hand.float_sd).rad(), sheet.hand.mark_sd.mm;
    return sds;
}

VectorXd read_values(const MadeReadings& readings) {
    std::vector<double> values;
    for (const auto& [bend, angle] : readings.angles) values.push_back(angle.deg);
    for (const TurnReading& turn : readings.turns) values.push_back(turn.read.deg);
    for (const MadeTape& tape : readings.tapes) values.push_back(tape.tape.read.mm);
    return VectorXd::Map(values.data(), static_cast<Index>(values.size()));
}

VectorXd read_sds(const MadeReadings& readings, const CheckSd& sd) {
    VectorXd sds(static_cast<Index>(readings.angles.size() + readings.turns.size() + readings.tapes.size()));
    sds << VectorXd::Constant(static_cast<Index>(readings.angles.size()), sd.protractor.deg), VectorXd::Constant(static_cast<Index>(readings.turns.size()), sd.rotation.deg),
        VectorXd::Constant(static_cast<Index>(readings.tapes.size()), sd.tape.mm);
    return sds;
}

/// read - foreseen, turns the short way round.
VectorXd misses(const VectorXd& foreseen, const MadeReadings& readings) {
    VectorXd off = read_values(readings) - foreseen;
    const auto first = static_cast<Index>(readings.angles.size());
    for (Index i = first; i < first + static_cast<Index>(readings.turns.size()); ++i) off[i] = wrapped({off[i]}).deg;
    return off;
}

MatrixXd slopes_at(const Sheet& sheet, const VectorXd& at, const MadeReadings& readings) {
    constexpr double step = 1e-5;  // rad and mm: rounding stays near 1e-9 of a slope
    MatrixXd slopes(read_sds(readings, {}).size(), at.size());
    for (Index i = 0; i < at.size(); ++i) {
        VectorXd plus = at, minus = at;
        plus[i] += step, minus[i] -= step;
        // Both as misses, so that a turn that goes over 180 between the two does not count as a jump.
        slopes.col(i) = (misses(read_of(sheet, errors_of(minus), readings), readings) - misses(read_of(sheet, errors_of(plus), readings), readings)) / (2 * step);
    }
    return slopes;
}

/// The hand's spread, loosened where a reading surprises.
VectorXd loosened(VectorXd sds, const MatrixXd& slopes, const VectorXd& off, const VectorXd& fine) {
    VectorXd factors = VectorXd::Ones(sds.size());
    for (Index i = 0; i < off.size(); ++i) {
        const VectorXd shares = slopes.row(i).transpose().cwiseProduct(sds).cwiseAbs2();
        const double surprise = std::abs(off[i]) / std::sqrt(shares.sum() + fine[i] * fine[i]);
        constexpr double bears_on = 0.2;  // share of what it was foreseen to vary by
        for (Index k = 0; k < sds.size(); ++k)
            if (shares[k] > bears_on * shares.sum()) factors[k] = std::max(factors[k], surprise);
    }
    return sds.cwiseProduct(factors);
}

/// The tube as a tape found it when only those steps were made.
WireShape shape_after(const Sheet& sheet, TubePlan plan, std::size_t steps) {
    std::vector<bool> made(plan.bends.size());
    for (std::size_t step = 0; step < steps; ++step) made[sheet.steps[step].bend] = true;
    for (std::size_t bend = 0; bend < plan.bends.size(); ++bend)
        if (!made[bend]) plan.bends[bend].angle = {};
    plan.end_a = {}, plan.end_b = plan.cut_length;  // the ends as cut
    const Part part = part_of(plan);
    return shape_of({{RouteForm::straights, TapeEdge::centre, part.straights, part.bends}, sheet.line.tube.od, part.radius}, TapeEdge::outside);
}

}  // namespace

TubePlan plan_with(const Sheet& sheet, const std::vector<MadeError>& errors) {
    TubePlan plan = plan_on_tube(sheet);
    const auto against = turned_against(sheet.layout->part, order_of(sheet));
    std::vector<double> turned(plan.bends.size());
    for (std::size_t step = 0; step < sheet.steps.size(); ++step) {
        const std::size_t bend = sheet.steps[step].bend;
        if (against[step]) turned[bend] = turned[*against[step]];
        if (step < errors.size()) {
            turned[bend] += errors[step].turned_rad;
            plan.bends[bend].angle += Angle{errors[step].over_bent_rad / degree};
            plan.bends[bend].at += Length{errors[step].off_mark_mm};
        }
        plan.bends[bend].direction = wrapped(plan.bends[bend].direction + Angle{turned[bend] / degree});
    }
    return plan;
}

Eigen::VectorXd read_of(const Sheet& sheet, const std::vector<MadeError>& errors, const MadeReadings& which) {
    const TubePlan plan = plan_with(sheet, errors);
    std::vector<double> values;
    for (const auto& [bend, angle] : which.angles) values.push_back(plan.bends[bend].angle.deg);
    for (const TurnReading& turn : which.turns) values.push_back(wrapped(plan.bends[turn.bend].direction - plan.bends[turn.against].direction).deg);
    std::map<std::size_t, WireShape> shapes;
    for (const MadeTape& tape : which.tapes) {
        assert(tape.steps <= errors.size());
        if (!shapes.contains(tape.steps)) shapes[tape.steps] = shape_after(sheet, plan, tape.steps);
        values.push_back(apart(shapes[tape.steps], tape.tape.span).mm);
    }
    return VectorXd::Map(values.data(), static_cast<Index>(values.size()));
}

MatrixXd reading_slopes(const Sheet& sheet, const std::vector<MadeError>& errors, const MadeReadings& which) { return slopes_at(sheet, flat(errors), which); }

AsMade as_made(const Sheet& sheet, std::size_t steps_done, const MadeReadings& readings, const CheckSd& sd) {
    assert(sheet.layout && steps_done <= sheet.steps.size());
    const VectorXd fine = read_sds(readings, sd), firm = fine.cwiseAbs2().cwiseInverse();
    VectorXd at = flat(std::vector<MadeError>(steps_done));
    MatrixXd slopes = slopes_at(sheet, at, readings);
    VectorXd off = misses(read_of(sheet, errors_of(at), readings), readings);
    const VectorXd sds = loosened(hand_sds(sheet, steps_done), slopes, off, fine), believed = sds.cwiseAbs2().cwiseInverse();
    AsMade result;
    for (std::size_t step = 0; step < steps_done; ++step) result.bends.push_back(sheet.steps[step].bend);
    for (int i = 0;; ++i) {
        MatrixXd normal = slopes.transpose() * firm.asDiagonal() * slopes;
        normal.diagonal() += believed;
        const Eigen::LLT<MatrixXd> factor(normal);
        const VectorXd step = factor.solve(slopes.transpose() * firm.cwiseProduct(off) - believed.cwiseProduct(at));
        at += step;
        slopes = slopes_at(sheet, at, readings);
        off = misses(read_of(sheet, errors_of(at), readings), readings);
        if (i < most_steps && step.cwiseQuotient(sds).norm() > small_step) continue;
        result.covariance = factor.solve(MatrixXd::Identity(at.size(), at.size()));
        break;
    }
    result.errors = errors_of(at);
    result.misfit = firm.dot(off.cwiseAbs2()) + believed.dot(at.cwiseAbs2());
    result.plan = plan_with(sheet, result.errors);
    return result;
}

}  // namespace tubewright
