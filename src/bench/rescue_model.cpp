#include "bench/rescue_model.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "bench/spread.h"

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

std::vector<Placing> order_of(const Sheet& sheet) {
    std::vector<Placing> order;
    for (const Step& step : sheet.steps) order.push_back({step.bend, step.hook});
    return order;
}

/// What the descent makes as small as it can: all that is off at the ends, each way by itself, or only what each share has
/// above so much.
struct Aim {
    std::optional<double> above;
    double change_weight;  ///< of a change beside what is off at the ends, so that what the ends leave open stays as planned
    /// What a lack of straight is measured in, mm: a part of tolerance::straight_slack beside what is wanted to be nothing at the
    /// ends; where all can be nothing, gently, so that no step is stopped at a corner.
    double straight;
    double enough;  ///< share of the cost that a step has to gain for another to follow
    int most_steps, most_tries;  ///< tries: of a step, each shorter than the last
};
constexpr Aim least{std::nullopt, 0.01, 0.03, 1e-3, 25, 5};
/// Towards the least worst share: the higher what is left alone, the more the greatest alone counts, and each begins where the
/// last one ended, with the shares in view that will be the greatest next. The last is a little inside 1, so that what has to keep within does.
constexpr Aim evened_out[]{{0.8, 0.001, 0.5, 1e-3, 25, 8}, {0.95, 0.001, 0.5, 1e-4, 25, 8}, {0.995, 0.001, 0.5, 1e-5, 25, 8}, {0.9997, 1e-5, 0.5, 1e-7, 40, 8}};

/// Everything that is to be nought: ends over tolerance, then what lacks of straights and way.
VectorXd misses(const RescueModel& model, const TubePlan& plan, const Aim& aim) {
    const LaidOver laid = model.laid_at(plan);
    const EndTolerance& tolerance = model.tolerance();
    const Index ends = aim.above ? 4 : 12;
    VectorXd all(ends + static_cast<Index>(model.needed().size() + laid.middles.size()));
    if (aim.above) {
        const EndsOff off = ends_off(laid);
        all.head(ends) << off.a.place / tolerance.place, off.b.place / tolerance.place, off.a.direction.deg / tolerance.direction.deg, off.b.direction.deg / tolerance.direction.deg;
        all.head(ends) = (all.head(ends).array() - *aim.above).cwiseMax(0);
    } else all.head(ends) << laid.a / tolerance.place.mm, laid.b / tolerance.place.mm, laid.along_a / tolerance.direction.rad(), laid.along_b / tolerance.direction.rad();
    Index i = ends;
    for (const NeededStraight& straight : model.needed()) all[i++] = std::max(0.0, model.lack(plan, straight)) / aim.straight;
    const double way_weight = aim.above ? 1 : 10;
    for (const Eigen::Vector3d& middle : laid.middles) all[i++] = way_weight * std::max(0.0, middle.norm() / tolerance.aside.mm - aim.above.value_or(1));
    return all;
}

class Descent {
public:
    Descent(const RescueModel& model, const std::vector<std::size_t>& numbers, VectorXd x) : model_(model), chosen_(numbers), x_(std::move(x)) {}

    void go(const Aim& aim) {
        double damping = 1e-3;
        VectorXd here = misses(model_, model_.plan_at(x_), aim);
        double cost = cost_of(here, x_, aim);
        for (int i = 0; i < aim.most_steps; ++i) {
            const MatrixXd slopes = slopes_at(here, aim);
            bool gained = false;
            double gain = 0;
            for (int tries = 0; tries < aim.most_tries && !gained; ++tries) {
                const VectorXd next = stepped(slopes, here, damping, aim.change_weight);
                const VectorXd there = misses(model_, model_.plan_at(next), aim);
                const double after = cost_of(there, next, aim);
                gained = after < cost;
                damping = gained ? damping / 10 : damping * 10;
                if (!gained) continue;
                gain = cost - after;
                x_ = next, here = there, cost = after;
            }
            if (!gained || gain < aim.enough * cost) break;
        }
    }
    const VectorXd& x() const { return x_; }

private:
    double share(std::size_t number) const { return x_[static_cast<Index>(number)] / model_.numbers()[number].nuisance; }
    double cost_of(const VectorXd& misses, const VectorXd& x, const Aim& aim) const {
        double sum = misses.squaredNorm();
        for (const std::size_t number : chosen_) sum += std::pow(aim.change_weight * x[static_cast<Index>(number)] / model_.numbers()[number].nuisance, 2);
        return sum;
    }

    MatrixXd slopes_at(const VectorXd& here, const Aim& aim) const {
        constexpr double step = 1e-5;  // degrees and mm
        MatrixXd slopes(here.size(), static_cast<Index>(chosen_.size()));
        for (std::size_t i = 0; i < chosen_.size(); ++i) {
            VectorXd x = x_;
            x[static_cast<Index>(chosen_[i])] += step;
            slopes.col(static_cast<Index>(i)) = (misses(model_, model_.plan_at(x), aim) - here) / step * model_.numbers()[chosen_[i]].nuisance;
        }
        return slopes;
    }

    /// Numbers that a step would take over their bounds are put there, and the step of the others is worked out anew.
    VectorXd stepped(const MatrixXd& slopes, const VectorXd& here, double damping, double change) const {
        const auto count = static_cast<Index>(chosen_.size());
        MatrixXd normal = slopes.transpose() * slopes;
        VectorXd pull = -slopes.transpose() * here;
        constexpr double least_pull = 0.01;  // so that a number that moves nothing stays
        for (Index i = 0; i < count; ++i) {
            pull[i] -= change * change * share(chosen_[static_cast<std::size_t>(i)]);
            normal(i, i) += change * change + damping * (least_pull + normal(i, i));
        }
        std::vector<bool> held(chosen_.size());
        VectorXd step = VectorXd::Zero(count);
        for (Index round = 0; round <= count; ++round) {
            MatrixXd free = normal;
            VectorXd to = pull;
            for (Index i = 0; i < count; ++i) {
                if (!held[static_cast<std::size_t>(i)]) continue;
                to -= normal.col(i) * step[i];
            }
            for (Index i = 0; i < count; ++i) {
                if (!held[static_cast<std::size_t>(i)]) continue;
                free.row(i).setZero(), free.col(i).setZero();
                free(i, i) = 1, to[i] = step[i];
            }
            step = free.ldlt().solve(to);
            bool again = false;
            for (std::size_t i = 0; i < chosen_.size(); ++i) {
                const FreeNumber& number = model_.numbers()[chosen_[i]];
                const double at = x_[static_cast<Index>(chosen_[i])], there = at + step[static_cast<Index>(i)] * number.nuisance;
                if (held[i] || (there >= number.low && there <= number.high)) continue;
                step[static_cast<Index>(i)] = (std::clamp(there, number.low, number.high) - at) / number.nuisance;
                held[i] = again = true;
            }
            if (!again) break;
        }
        VectorXd next = x_;
        for (std::size_t i = 0; i < chosen_.size(); ++i) {
            const FreeNumber& number = model_.numbers()[chosen_[i]];
            double& value = next[static_cast<Index>(chosen_[i])];
            value = std::clamp(value + step[static_cast<Index>(i)] * number.nuisance, number.low, number.high);
        }
        return next;
    }

    const RescueModel& model_;
    const std::vector<std::size_t>& chosen_;
    VectorXd x_;
};

/// Where all four shares could keep within 1, the sum of the squares of what they are above would be no more than four such; with
/// some room for what is not straight. More of it for few numbers: they follow a curve further, and cost little.
bool is_hopeless(const RescueModel& model, const VectorXd& x, std::size_t numbers, const Aim& aim) {
    const double room = numbers <= 2 ? 6 : 1.1;
    return misses(model, model.plan_at(x), aim).head(aim.above ? 4 : 12).squaredNorm() > room * 4 * std::pow(1 - aim.above.value_or(0), 2);
}

double end_of(const TubePlan& plan, const NeededStraight& straight, bool a_side) {
    const NeededStraight::From from = a_side ? straight.a_side : straight.b_side;
    if (from == NeededStraight::From::bend) return a_side ? span_of(plan, straight.a_bend).end.mm : span_of(plan, straight.b_bend).start.mm;
    if (from == NeededStraight::From::measured_end) return (a_side ? plan.end_a : plan.end_b).mm;
    return a_side ? 0 : plan.cut_length.mm;
}

}  // namespace

RescueModel::RescueModel(const RescueQuestion& question, TubePlan base, std::optional<RescueBar> freed)
    : base_(std::move(base)), wanted_(key_places(question.wanted ? *question.wanted : question.sheet.layout->part)), tolerance_(question.limits.ends) {
    add_numbers(question, freed);
    if (freed != RescueBar::straight) add_straights(question);
}

void RescueModel::add_numbers(const RescueQuestion& question, std::optional<RescueBar> freed) {
    const Sheet& sheet = question.sheet;
    const RescueLimits& limits = question.limits;
    const auto against = turned_against(sheet.layout->part, order_of(sheet));
    const double most = freed == RescueBar::bender_angle ? 360 : std::min(sheet.line.bender.max_angle.deg, released(sheet.springback, sheet.line.bender.max_angle).deg);
    follow_.resize(base_.bends.size());
    for (std::size_t step = question.steps_done; step < sheet.steps.size(); ++step) {
        const std::size_t bend = sheet.steps[step].bend;
        const double angle = base_.bends[bend].angle.deg;
        const double low = std::max(-limits.most_angle.deg, std::min(0.0, limits.least_bend.deg - angle)), high = std::min(limits.most_angle.deg, most - angle);
        if (high > low) numbers_.push_back({RescueNumber::angle, bend, End::A, low, std::max(low, high), limits.angle_nuisance.deg, limits.angle_step.deg});
        numbers_.push_back({RescueNumber::mark, bend, End::A, -limits.most_mark.mm, limits.most_mark.mm, limits.mark_nuisance.mm, limits.length_step.mm});
        follow_[bend].push_back(bend);
        for (std::size_t later = step + 1; later < sheet.steps.size(); ++later)
            if (against[later] && std::find(follow_[bend].begin(), follow_[bend].end(), *against[later]) != follow_[bend].end()) follow_[bend].push_back(sheet.steps[later].bend);
        numbers_.push_back({RescueNumber::turn, bend, End::A, -limits.most_turn.deg, limits.most_turn.deg, limits.turn_nuisance.deg, limits.turn_step.deg});
    }
    for (const End end : {End::A, End::B}) {
        if (end == End::A ? question.a_finished : question.b_finished) continue;
        const double trim = (end == End::A ? base_.end_a : base_.cut_length - base_.end_b).mm - sheet.line.end(end).allowance.mm;
        numbers_.push_back({RescueNumber::cut_off, 0, end, freed == RescueBar::length ? -limits.most_cut_off.mm : -std::max(0.0, trim), limits.most_cut_off.mm, limits.cut_nuisance.mm, limits.length_step.mm});
    }
}

void RescueModel::add_straights(const RescueQuestion& question) {
    using From = NeededStraight::From;
    const Sheet& sheet = question.sheet;
    const Part& part = sheet.layout->part;
    std::vector<bool> made(part.bends.size());
    for (std::size_t step = 0; step < question.steps_done; ++step) made[sheet.steps[step].bend] = true;
    std::vector<std::size_t> all;
    for (std::size_t bend = 0; bend < part.bends.size(); ++bend)
        if (is_made(part.bends[bend])) all.push_back(bend);
    // What lies between made bends can't be changed, and bars nothing.
    const auto add = [&](NeededStraight straight) {
        const auto is_fixed = [&](From from, std::size_t bend, bool finished) { return from == From::cut_end || (from == From::bend ? made[bend] : finished); };
        if (is_fixed(straight.a_side, straight.a_bend, question.a_finished) && is_fixed(straight.b_side, straight.b_bend, question.b_finished)) return;
        needed_.push_back(straight);
    };
    const auto side_of = [&](std::size_t bend, End towards) {
        std::optional<std::size_t> next = next_towards(part, bend, towards);
        while (next && !made[*next]) next = next_towards(part, *next, towards);
        return next;
    };
    std::vector<bool> before = made;
    for (std::size_t step = question.steps_done; step < sheet.steps.size(); ++step) {
        const Placing placing{sheet.steps[step].bend, sheet.steps[step].hook};
        for (const End towards : {End::A, End::B}) {
            const auto neighbour = side_of(placing.bend, towards);
            const double needed = straight_needed(sheet.line, placing, towards == placing.hook, !neighbour).mm;
            const From from = neighbour ? From::bend : From::cut_end;
            if (towards == End::A) add({from, From::bend, neighbour.value_or(0), placing.bend, needed, placing.bend});
            else add({From::bend, from, placing.bend, neighbour.value_or(0), needed, placing.bend});
        }
        made[placing.bend] = true;
    }
    made = before;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) add({From::bend, From::bend, all[i], all[i + 1], 0, std::nullopt});
    if (all.empty()) return;
    add({From::measured_end, From::bend, 0, all.front(), sheet.line.a.fitting.straight_needed.mm, std::nullopt});
    add({From::bend, From::measured_end, all.back(), 0, sheet.line.b.fitting.straight_needed.mm, std::nullopt});
}

TubePlan RescueModel::changed(TubePlan plan, const Eigen::VectorXd& x) const {
    for (std::size_t i = 0; i < numbers_.size(); ++i) {
        const double by = x[static_cast<Index>(i)];
        if (by == 0) continue;
        const FreeNumber& number = numbers_[i];
        switch (number.number) {
            case RescueNumber::angle: plan.bends[number.bend].angle.deg += by; break;
            case RescueNumber::mark: plan.bends[number.bend].at.mm += by; break;
            case RescueNumber::turn:
                for (const std::size_t bend : follow_[number.bend]) plan.bends[bend].direction.deg += by;
                break;
            case RescueNumber::cut_off: (number.end == End::A ? plan.end_a.mm : plan.end_b.mm) += number.end == End::A ? by : -by; break;
        }
    }
    return plan;
}

LaidOver RescueModel::laid_at(const TubePlan& plan) const { return laid_over(wanted_, key_places(part_of(plan)), tolerance_); }

double RescueModel::lack(const TubePlan& plan, const NeededStraight& straight) const {
    return straight.needed - (end_of(plan, straight, false) - end_of(plan, straight, true));
}

double RescueModel::worst(const TubePlan& plan) const {
    double worst = worst_share(ends_off(laid_at(plan)), tolerance_);
    for (const NeededStraight& straight : needed_) worst = std::max(worst, lack(plan, straight) / tolerance::straight_slack.mm);
    return worst;
}

double RescueModel::nuisance(const Eigen::VectorXd& x) const {
    double sum = 0;
    for (std::size_t i = 0; i < numbers_.size(); ++i) sum += std::abs(x[static_cast<Index>(i)]) / numbers_[i].nuisance;
    return sum;
}

BestOf best_of(const RescueModel& model, const std::vector<std::size_t>& numbers, const Eigen::VectorXd& from) {
    Descent descent(model, numbers, from);
    descent.go(least);
    BestOf best{descent.x(), model.worst(model.plan_at(descent.x())), 0};
    const Aim* reached = &least;
    for (const Aim& aim : evened_out) {
        if (best.worst <= 1 || is_hopeless(model, descent.x(), numbers.size(), *reached)) break;
        descent.go(aim);
        reached = &aim;
        const double worst = model.worst(model.plan_at(descent.x()));
        if (worst < best.worst) best = {descent.x(), worst, 0};
    }
    best.nuisance = model.nuisance(best.x);
    return best;
}

}  // namespace tubewright
