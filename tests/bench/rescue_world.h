#pragma once
// Random lines with bends that came out off, a walk along the made tube apart from the program's, and a general optimiser
// to compare with. For rescue_test and rescue_bench.

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <nlopt.h>
#include <random>
#include <vector>

#include "base/tolerance.h"
#include "bench/rescue_model.h"
#include "bench/samples.h"

namespace rescue_world {

using namespace tubewright;

class Dice {
public:
    explicit Dice(unsigned seed) : dice_(seed) {}
    double normal() {
        // Box and Muller: the same numbers with every library.
        const double u = (static_cast<double>(dice_()) + 1) / 4294967297.0, v = share();
        return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * v);
    }
    double share() { return static_cast<double>(dice_()) / 4294967296.0; }
    double between(double low, double high) { return low + (high - low) * share(); }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(share() * static_cast<double>(count)); }

private:
    std::mt19937 dice_;
};

/// 2 to 7 bends; half of them lie in planes at right angles, half of the lines have half an inch of trim at B. Nothing speaks
/// against it.
inline Sheet random_sheet(Dice& dice) {
    for (;;) {
        static constexpr double angles[]{90, 90, 90, 45, 45, 60, 30, 120};
        static constexpr double turns[]{0, 180, 90, -90};
        const std::size_t bends = 2 + dice.below(6);
        std::vector<double> legs;
        std::vector<std::pair<double, double>> list;
        for (std::size_t i = 0; i <= bends; ++i) legs.push_back(std::round(16 * dice.between(2.5, 12)) / 16);
        for (std::size_t i = 0; i < bends; ++i)
            list.emplace_back(angles[dice.below(8)], i == 0 ? 0 : dice.share() < 0.5 ? turns[dice.below(4)] : std::round(dice.between(-179, 180)));
        Line line = line_of(legs, list);
        if (dice.share() < 0.5) line.b.trim = Length{12.7};
        Sheet sheet = bend_sheet(line);
        if (!stopped(sheet)) return sheet;
    }
}

/// What the hand does, `times` as much, and with `slip` one bend that is really off.
inline std::vector<MadeError> random_errors(const Sheet& sheet, std::size_t steps_done, double times, bool slip, Dice& dice) {
    std::vector<MadeError> errors;
    for (std::size_t i = 0; i < steps_done; ++i)
        errors.push_back({times * sheet.hand.angle_sd.rad() * dice.normal(), times * (sheet.steps[i].neighbour ? sheet.hand.turn_sd : sheet.hand.float_sd).rad() * dice.normal(), times * sheet.hand.mark_sd.mm * dice.normal()});
    if (!slip) return errors;
    MadeError& off = errors[dice.below(steps_done)];
    const double sign = dice.share() < 0.5 ? -1 : 1;
    switch (dice.below(3)) {
        case 0: off.over_bent_rad = Angle{dice.between(1.5, 4)}.rad(); break;  // under-bent is pulled again
        case 1: off.turned_rad = sign * Angle{dice.between(3, 8)}.rad(); break;
        default: off.off_mark_mm = sign * dice.between(25.4 / 8, 25.4 / 4);
    }
    return errors;
}

/// As if every bend had been measured without any error.
inline RescueQuestion known_question(const Sheet& sheet, const std::vector<MadeError>& errors) {
    RescueQuestion question;
    question.sheet = sheet;
    question.steps_done = errors.size();
    question.on_bender = false;
    question.made.errors = errors;
    for (std::size_t i = 0; i < errors.size(); ++i) question.made.bends.push_back(sheet.steps[i].bend);
    question.made.covariance = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(3 * errors.size()), static_cast<Eigen::Index>(3 * errors.size()));
    question.made.plan = plan_with(sheet, errors);
    return question;
}

// ------------------------------------------------------------------------------------------- a walk of its own

struct WalkedEnds {
    Eigen::Vector3d a, b, along_a, along_b;
};

/// From the straights and bends of a sheet's line, with rotation matrices.
inline WalkedEnds walked(const Line& line, double radius_mm) {
    Eigen::Vector3d at = Eigen::Vector3d::Zero();
    Eigen::Matrix3d pose = Eigen::Matrix3d::Identity();  // columns: along the tube, towards the bend's centre, across
    WalkedEnds ends{at, at, pose.col(0), pose.col(0)};
    for (std::size_t i = 0; i < line.route.runs.size(); ++i) {
        at += line.route.runs[i].mm * pose.col(0);
        if (i == line.route.bends.size()) break;
        const double a = line.route.bends[i].angle.rad(), turn = i == 0 ? 0 : line.route.bends[i].rotation.rad();
        pose = pose * Eigen::AngleAxisd(turn, Eigen::Vector3d::UnitX());
        at += pose * Eigen::Vector3d(radius_mm * std::sin(a), radius_mm * (1 - std::cos(a)), 0);
        pose = pose * Eigen::AngleAxisd(a, Eigen::Vector3d::UnitZ());
    }
    ends.b = at, ends.along_b = pose.col(0);
    return ends;
}

/// What no laying over can hide: how far the ends are apart, how the tube leaves each against the line from end to end, and
/// against each other. Lengths over 2 places, angles over 2 directions and what 2 places do over that distance: at most 1.
inline double surely_off(const WalkedEnds& wanted, const WalkedEnds& made, const EndTolerance& tolerance) {
    const auto angle = [](const Eigen::Vector3d& x, const Eigen::Vector3d& y) { return std::atan2(x.cross(y).norm(), x.dot(y)); };
    const Eigen::Vector3d want = wanted.b - wanted.a, have = made.b - made.a;
    const double seen = 2 * tolerance.place.mm / std::min(want.norm(), have.norm());
    double worst = std::abs(want.norm() - have.norm()) / (2 * tolerance.place.mm);
    worst = std::max(worst, std::abs(angle(want, wanted.along_a) - angle(have, made.along_a)) / (tolerance.direction.rad() + seen));
    worst = std::max(worst, std::abs(angle(want, wanted.along_b) - angle(have, made.along_b)) / (tolerance.direction.rad() + seen));
    return std::max(worst, std::abs(angle(wanted.along_a, wanted.along_b) - angle(made.along_a, made.along_b)) / (2 * tolerance.direction.rad()));
}

// ------------------------------------------------------------------------------------------- NLopt

struct Asked {
    const RescueModel* model;
    const std::vector<std::size_t>* set;
    Eigen::VectorXd x(const double* values) const {
        Eigen::VectorXd all = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(model->numbers().size()));
        for (std::size_t i = 0; i < set->size(); ++i) all[static_cast<Eigen::Index>((*set)[i])] = values[i] * model->numbers()[(*set)[i]].nuisance;
        return all;
    }
};

/// Least t with every share at most t and every straight long enough: COBYLA. Starts from no change.
inline Eigen::VectorXd nlopt_best(const RescueModel& model, const std::vector<std::size_t>& set, int most) {
    Asked asked{&model, &set};
    const auto count = static_cast<unsigned>(set.size());
    nlopt_opt opt = nlopt_create(NLOPT_LN_COBYLA, count + 1);
    std::vector<double> low, high, x(count + 1), step(count + 1, 1.0);
    for (const std::size_t i : set) {
        const FreeNumber& number = model.numbers()[i];
        low.push_back(number.low / number.nuisance), high.push_back(number.high / number.nuisance);
    }
    low.push_back(0), high.push_back(1e6);
    x[count] = std::max(1.0, worst_share(ends_off(model.laid_at(model.plan_at(asked.x(x.data())))), model.tolerance()));
    nlopt_set_lower_bounds(opt, low.data());
    nlopt_set_upper_bounds(opt, high.data());
    nlopt_set_initial_step(opt, step.data());
    nlopt_set_min_objective(opt, [](unsigned n, const double* at, double* slope, void*) { (void)slope; return at[n - 1]; }, nullptr);
    nlopt_add_inequality_mconstraint(opt, static_cast<unsigned>(5 + model.needed().size()), [](unsigned m, double* result, unsigned n, const double* at, double*, void* data) {
        const auto* a = static_cast<const Asked*>(data);
        const TubePlan plan = a->model->plan_at(a->x(at));
        const EndsOff off = ends_off(a->model->laid_at(plan));
        const EndTolerance& tolerance = a->model->tolerance();
        const double shares[]{off.a.place / tolerance.place, off.b.place / tolerance.place, off.a.direction.deg / tolerance.direction.deg, off.b.direction.deg / tolerance.direction.deg, off.aside / tolerance.aside};
        for (unsigned i = 0; i < 5; ++i) result[i] = shares[i] - at[n - 1];
        for (unsigned i = 5; i < m; ++i) result[i] = a->model->lack(plan, a->model->needed()[i - 5]) - tolerance::straight_slack.mm;
    }, &asked, nullptr);
    nlopt_set_stopval(opt, 0.9);
    nlopt_set_xtol_abs1(opt, 1e-5);
    nlopt_set_maxeval(opt, most);
    double value = 0;
    nlopt_optimize(opt, x.data(), &value);
    nlopt_destroy(opt);
    return asked.x(x.data());
}

inline std::vector<std::size_t> every_number(const RescueModel& model) {
    std::vector<std::size_t> all(model.numbers().size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    return all;
}

/// Whether that fits, and the bends can be made so.
inline bool is_good(const RescueQuestion& question, const RescueModel& model, const Eigen::VectorXd& x) {
    const TubePlan plan = model.plan_at(x);
    return model.worst(plan) <= 1 && can_be_made(question, plan);
}

/// Whether it finds a change of all numbers that is good; and `count` numbers, whichever, that do.
inline bool nlopt_saves(const RescueQuestion& question, const RescueModel& model) { return is_good(question, model, nlopt_best(model, every_number(model), 3000)); }
inline std::optional<std::vector<std::size_t>> nlopt_set(const RescueQuestion& question, const RescueModel& model, std::size_t count) {
    std::vector<std::size_t> set = every_number(model);
    const std::size_t all = set.size();
    set.resize(count);
    for (bool more = true; more;) {
        if (is_good(question, model, nlopt_best(model, set, 400))) return set;
        more = false;
        for (std::size_t i = count; i-- > 0 && !more;)
            if (set[i] + (count - i) < all) {
                ++set[i];
                for (std::size_t k = i + 1; k < count; ++k) set[k] = set[k - 1] + 1;
                more = true;
            }
    }
    return std::nullopt;
}

}  // namespace rescue_world
