#include "bench/rescue.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "base/tolerance.h"
#include "bench/handling.h"
#include "bench/rescue_doubt.h"
#include "bench/rescue_model.h"
#include "bench/rescue_subsets.h"

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::VectorXd;

/// Sets of so many numbers are solved in full, the most promising first; and when so many ways fit, they are compared.
constexpr std::size_t most_tried[most_together + 1]{0, 64, 96, 48, 32};
constexpr std::size_t enough_ways = 6;
/// On the bender; from there on no others are looked for in place of those that are in the way.
constexpr std::size_t most_looked_at = 18;

/// Looks at a whole tube as if it were to be made: what the model leaves to the end because it takes longer.
class Checks {
public:
    explicit Checks(const RescueQuestion& question) : question_(question) {
        const Sheet& sheet = question.sheet;
        for (const Step& step : sheet.steps) order_.push_back({step.bend, step.hook});
        if (looks()) free_ = free_steps(*sheet.layout);
    }

    bool passes(const TubePlan& plan) const {
        const Sheet then = sheet_as_planned(question_.sheet, plan);
        for (const Finding& finding : then.findings)
            if (finding.severity == Severity::stop && !is_made(finding) && !was_there(finding)) return false;
        if (!looks()) return true;
        const std::vector<bool> free = free_steps(*then.layout);
        for (std::size_t i = 0; i < free.size(); ++i)
            if (free_[i] && !free[i]) return false;
        return true;
    }

private:
    bool looks() const { return question_.sheet.layout->part.bends.size() <= most_bends_looked_at; }
    bool is_made(const Finding& finding) const {
        if (!finding.bend || finding.code == "hits-itself") return false;
        return std::any_of(order_.begin(), order_.begin() + static_cast<std::ptrdiff_t>(question_.steps_done), [&](const Placing& placing) { return placing.bend == *finding.bend; });
    }
    bool was_there(const Finding& finding) const {
        return std::any_of(question_.sheet.findings.begin(), question_.sheet.findings.end(), [&](const Finding& before) { return before.code == finding.code && before.bend == finding.bend; });
    }
    std::vector<bool> free_steps(const Layout& layout) const {
        const Sheet& sheet = question_.sheet;
        Handling handling(layout, sheet.line.tube.od, sheet.line.bender, sheet.set_up, sheet.springback);
        std::vector<bool> free;
        std::uint64_t made = 0;
        for (std::size_t step = 0; step < order_.size(); ++step) {
            if (step >= question_.steps_done) free.push_back(handling.is_free(made, order_[step]));
            made |= std::uint64_t{1} << order_[step].bend;
        }
        return free;
    }

    const RescueQuestion& question_;
    std::vector<Placing> order_;
    std::vector<bool> free_;  ///< the steps to come, as the sheet has them
};

bool contains(const std::vector<std::size_t>& set, const std::vector<std::size_t>& part) {
    return std::includes(set.begin(), set.end(), part.begin(), part.end());
}

std::vector<std::size_t> changed_numbers(const VectorXd& x) {
    std::vector<std::size_t> changed;
    for (Index i = 0; i < x.size(); ++i)
        if (x[i] != 0) changed.push_back(static_cast<std::size_t>(i));
    return changed;
}

/// How long the best of all numbers is looked for.
enum class Look { once, thoroughly };

/// With every number; from other beginnings too where the first leads nowhere, as it may where bounds are in the way.
BestOf best_of_all(const RescueModel& model, Look look) {
    std::vector<std::size_t> all(model.numbers().size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
    VectorXd from = VectorXd::Zero(static_cast<Index>(all.size()));
    BestOf best = best_of(model, all, from);
    constexpr double near = 1.05, far = 3;  // to 1; from further nothing was ever found
    const std::size_t beginnings = look == Look::once || best.worst > far ? 0 : best.worst < near ? 6 : 3;
    for (std::size_t k = 1; k <= beginnings && best.worst > 1; ++k) {
        // By turns a little of everything, and lengths alone by more.
        const bool lengths = k % 2 == 0;
        const double away = lengths ? 12 : 4;  // nuisances
        std::size_t moved = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            constexpr std::size_t bits = 4;
            const FreeNumber& number = model.numbers()[i];
            const bool up = (k / 2) >> (moved % bits) & 1;  // a pattern of its own for each beginning
            const bool is_length = number.number == RescueNumber::mark || number.number == RescueNumber::cut_off;
            moved += !lengths || is_length;
            from[static_cast<Index>(i)] = lengths && !is_length ? 0 : std::clamp((up ? away : -away) * number.nuisance, number.low, number.high);
        }
        const BestOf next = best_of(model, all, from);
        if (next.worst < best.worst) best = next;
    }
    return best;
}

/// The ways out of one shape: as it is, or after the last bend is pulled on.
class Search {
public:
    Search(const RescueQuestion& question, const RescueModel& model, const Checks& checks, Look look) : question_(question), model_(model), checks_(checks), look_(look), count_(model.numbers().size()) {}

    std::vector<VectorXd> found() {
        std::vector<VectorXd> ways;
        const VectorXd none = VectorXd::Zero(static_cast<Index>(count_));
        if (model_.worst(model_.plan_at(none)) <= 1) {
            if (checks_.passes(model_.plan_at(none))) ways.push_back(none);
            else barred_ = true;
        }
        if (!ways.empty() || count_ == 0) return ways;
        measure();
        std::size_t first = 0;  // the fewest numbers that do
        for (std::size_t together = 1; together <= std::min(most_together, count_); ++together) {
            if (first && (together > first + 1 || ways.size() >= question_.limits.ways)) break;
            add_sets(together, ways);
            if (!ways.empty() && !first) first = together;
            if (!first && together == 2 && !any_at_all()) return ways;
        }
        if (ways.empty() && any_at_all())
            if (const auto way = with_fewer(*all_)) ways.push_back(*way);
        return ways;
    }

    /// Something fitted at the ends and was then in the way.
    bool barred() const { return barred_; }
    const BestOf& of_all() {
        any_at_all();
        return *all_;
    }

private:
    std::vector<std::size_t> every() const {
        std::vector<std::size_t> all(count_);
        for (std::size_t i = 0; i < count_; ++i) all[i] = i;
        return all;
    }

    bool any_at_all() {
        if (!all_) all_ = best_of_all(model_, look_);
        return all_->worst <= 1;
    }

    VectorXd ends_at(const VectorXd& x) const {
        const LaidOver laid = model_.laid_at(model_.plan_at(x));
        VectorXd ends(12);
        ends << laid.a / model_.tolerance().place.mm, laid.b / model_.tolerance().place.mm, laid.along_a / model_.tolerance().direction.rad(), laid.along_b / model_.tolerance().direction.rad();
        return ends;
    }

    void measure() {
        constexpr double step = 0.01;  // of a nuisance
        VectorXd x = VectorXd::Zero(static_cast<Index>(count_));
        slopes_.off = ends_at(x);
        slopes_.at.resize(slopes_.off.size(), x.size());
        slopes_.low = slopes_.high = x;
        for (std::size_t i = 0; i < count_; ++i) {
            const FreeNumber& number = model_.numbers()[i];
            const auto at = static_cast<Index>(i);
            VectorXd plus = x, minus = x;
            plus[at] = step * number.nuisance, minus[at] = -plus[at];
            slopes_.at.col(at) = (ends_at(plus) - ends_at(minus)) / (2 * step);
            slopes_.low[at] = number.low / number.nuisance, slopes_.high[at] = number.high / number.nuisance;
        }
    }

    void add_sets(std::size_t together, std::vector<VectorXd>& ways) {
        constexpr double allowed = 4;  // four shares of 1
        const std::size_t before = ways.size();
        std::vector<VectorXd> fit;
        for (const auto& set : likely_sets(slopes_, together, allowed, most_tried[together])) {
            if (fit.size() == enough_ways) {
                add_free(fit, ways);
                if (ways.size() > before || looked_at_ >= most_looked_at) return;
                fit.clear();  // all of them in the way: others may not be
            }
            if (std::any_of(ways.begin(), ways.end(), [&](const VectorXd& way) { return contains(set, changed_numbers(way)); })) continue;
            const BestOf best = best_of(model_, set, VectorXd::Zero(static_cast<Index>(count_)));
            if (best.worst > 1) continue;
            const VectorXd x = as_said(best.x);
            if (changed_numbers(x).size() == together) fit.push_back(x);
        }
        add_free(fit, ways);
    }

    /// Those that nothing is in the way of, the smallest changes first.
    void add_free(std::vector<VectorXd>& fit, std::vector<VectorXd>& ways) {
        std::stable_sort(fit.begin(), fit.end(), [&](const VectorXd& a, const VectorXd& b) { return model_.nuisance(a) < model_.nuisance(b); });
        for (const VectorXd& x : fit) {
            if (ways.size() == question_.limits.ways) break;
            ++looked_at_;
            if (checks_.passes(model_.plan_at(x))) ways.push_back(x);
            else barred_ = true;
        }
    }

    /// Leaves out one number after the other, the least change first, while the others still do.
    std::optional<VectorXd> with_fewer(BestOf best) {
        std::vector<std::size_t> set = every(), open = set;
        const auto share = [&](std::size_t i) { return std::abs(best.x[static_cast<Index>(i)]) / model_.numbers()[i].nuisance; };
        while (!open.empty()) {
            const auto least = std::min_element(open.begin(), open.end(), [&](std::size_t a, std::size_t b) { return share(a) < share(b); });
            const std::size_t number = *least;
            open.erase(least);
            std::vector<std::size_t> rest = set;
            rest.erase(std::find(rest.begin(), rest.end(), number));
            VectorXd from = best.x;
            from[static_cast<Index>(number)] = 0;
            BestOf without = best_of(model_, rest, from);
            if (without.worst > 1) continue;  // it is needed, and then also with fewer others
            best = std::move(without), set = std::move(rest);
        }
        const VectorXd x = as_said(best.x);
        if (checks_.passes(model_.plan_at(x))) return x;
        barred_ = true;
        return std::nullopt;
    }

    /// In the steps in which changes are said, the best of all roundings; as it is where none keeps within the tolerance.
    VectorXd as_said(const VectorXd& x) const {
        const std::vector<std::size_t> set = changed_numbers(x);
        constexpr std::size_t most_rounded = 8;
        if (set.size() > most_rounded) return x;
        VectorXd best = x;
        double worst = 1;
        for (std::size_t up = 0; up < (std::size_t{1} << set.size()); ++up) {
            VectorXd said = x;
            bool inside = true;
            for (std::size_t i = 0; i < set.size(); ++i) {
                const FreeNumber& number = model_.numbers()[set[i]];
                double& value = said[static_cast<Index>(set[i])];
                value = number.step * (std::floor(value / number.step) + ((up >> i) & 1 ? 1 : 0));
                inside = inside && value >= number.low && value <= number.high;
            }
            if (!inside) continue;
            const double then = model_.worst(model_.plan_at(said));
            if (then <= worst) best = said, worst = then;
        }
        return best;
    }

    const RescueQuestion& question_;
    const RescueModel& model_;
    const Checks& checks_;
    Look look_;
    std::size_t count_;
    Slopes slopes_;
    std::optional<BestOf> all_;
    bool barred_ = false;
    std::size_t looked_at_ = 0;
};

RescueChange change_of(const FreeNumber& number, double by) {
    RescueChange change{number.number, number.bend, number.end, {}, {}};
    if (number.number == RescueNumber::angle || number.number == RescueNumber::turn) change.angle.deg = by;
    else change.length.mm = by;
    return change;
}

RescueWay way_of(const RescueQuestion& question, const RescueModel& model, const VectorXd& x, std::optional<std::size_t> pull_again) {
    RescueWay way;
    way.pull_again = pull_again;
    for (const std::size_t i : changed_numbers(x)) way.changes.push_back(change_of(model.numbers()[i], x[static_cast<Index>(i)]));
    way.plan = model.plan_at(x);
    way.off = ends_off(model.laid_at(way.plan));
    way.doubt = doubt_of(question, model, x, pull_again.has_value());
    way.nuisance = model.nuisance(x);
    return way;
}

/// The last bend, where it opened further than it should have and the lever can still be pulled.
std::optional<std::size_t> under_bent(const RescueQuestion& question) {
    if (!question.on_bender || question.steps_done == 0) return std::nullopt;
    const Step& last = question.sheet.steps[question.steps_done - 1];
    if (question.made.plan.bends[last.bend].angle + tolerance::good_bend >= last.target) return std::nullopt;
    return last.bend;
}

void say_why_not(const RescueQuestion& question, const TubePlan& base, Search& search, Rescue& result) {
    result.nearest = result.as_it_is;
    if (question.steps_done == question.sheet.steps.size()) {
        result.bar = RescueBar::nothing_left;
        return;
    }
    const RescueModel model(question, base);
    result.nearest = ends_off(model.laid_at(model.plan_at(search.of_all().x)));
    result.bar = search.barred() ? RescueBar::in_the_way : RescueBar::out_of_reach;
    if (search.barred()) return;
    for (const RescueBar bar : {RescueBar::length, RescueBar::straight, RescueBar::bender_angle}) {
        const RescueModel freed(question, base, bar);
        const BestOf best = best_of_all(freed, Look::once);
        if (best.worst > 1) continue;
        result.bar = bar;
        const TubePlan plan = freed.plan_at(best.x);
        if (bar == RescueBar::length) {
            for (const End end : {End::A, End::B}) {
                const Length left = (end == End::A ? plan.end_a : plan.cut_length - plan.end_b) - question.sheet.line.end(end).allowance;
                if (-left > result.lacking) result.lacking = -left, result.bar_end = end;
            }
        } else if (bar == RescueBar::straight) {
            for (const NeededStraight& straight : model.needed())
                if (const Length lack{model.lack(plan, straight)}; lack > result.lacking) result.lacking = lack, result.bar_bend = straight.bend ? straight.bend : std::optional(straight.a_bend);
        } else {
            for (std::size_t i = 0; i < freed.numbers().size(); ++i)
                if (freed.numbers()[i].number == RescueNumber::angle && best.x[static_cast<Index>(i)] > 0 && set_angle(question.sheet.springback, plan.bends[freed.numbers()[i].bend].angle) > question.sheet.line.bender.max_angle)
                    result.bar_bend = freed.numbers()[i].bend;
        }
        return;
    }
}

std::vector<RescueWay> ways_within(const RescueQuestion& question, const TubePlan& base, const Checks& checks, std::optional<std::size_t> again) {
    const RescueModel model(question, base);
    Search search(question, model, checks, Look::once);
    std::vector<RescueWay> ways;
    for (const VectorXd& x : search.found()) ways.push_back(way_of(question, model, x, again));
    return ways;
}

}  // namespace

RescueQuestion aimed_at(RescueQuestion question) {
    EndTolerance& ends = question.limits.ends;
    ends.place = question.limits.aim * ends.place, ends.direction = question.limits.aim * ends.direction;
    return question;
}

bool can_be_made(const RescueQuestion& question, const TubePlan& plan) { return Checks(question).passes(plan); }

Rescue rescue(const RescueQuestion& question) {
    assert(question.sheet.layout && question.made.errors.size() == question.steps_done);
    Rescue result;
    const Checks checks(question);
    const auto again = under_bent(question);
    TubePlan base = question.made.plan;
    if (again) {
        // It takes its tube from the lever side; everything else stays.
        base.bends[*again].angle = question.sheet.layout->part.bends[*again].angle;
    }
    const RescueModel model(question, base);
    result.as_it_is = ends_off(model.laid_at(question.made.plan));
    if (model.worst(base) > 1) result.ways = ways_within(aimed_at(question), base, checks, again);
    if (!result.ways.empty()) return result;
    Search search(question, model, checks, Look::thoroughly);
    for (const VectorXd& x : search.found()) result.ways.push_back(way_of(question, model, x, again));
    result.fits = !again && !result.ways.empty() && result.ways.front().changes.empty();
    if (result.ways.empty()) say_why_not(question, base, search, result);
    return result;
}

}  // namespace tubewright
