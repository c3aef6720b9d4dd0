#include "stock/close_fits.h"

#include "stock/fit_search.h"

namespace tubewright {

namespace {

using Verdict = FitSearch::Verdict;

/// Of the patience, for one number of leftovers at first: those with one more are easier to find.
constexpr double share_of_one_number = 0.25;
/// The bound of the waste is raised by doubling, from here on.
constexpr std::int64_t first_waste_um = 1000;

class CloseFits {
public:
    CloseFits(PlanSearch& search, PlanSteps& steps) : search_(search), steps_(steps), list_(search) {
        for (const Openable& openable : list_.openables) {
            if (openable.stick) {
                longest_stick_ = std::max(longest_stick_, openable.room);
                sticks_on_rack_ += openable.on_rack;
            } else {
                offcut_room_ += openable.on_rack * openable.room;
                offcuts_ += openable.on_rack;
            }
        }
    }

    bool run() {
        if (!list_.fields_suffice) return false;
        bool at_best = climb(share_of_one_number);
        if (at_best && search_.cost != search_.bound) climb(1);
        while (!at_best && search_.cost != search_.bound && raise_waste()) at_best = lower_waste() || climb(1);
        return all_listed_;
    }

private:
    std::int64_t most_over() const { return search_.bound.sticks * longest_stick_ + offcut_room_ - list_.need; }
    std::int64_t most_kept() const { return std::min(most_over() / list_.least_kept, search_.bound.sticks + offcuts_); }
    std::int64_t least_bought() const { return std::max<std::int64_t>(0, search_.bound.sticks - sticks_on_rack_); }

    Verdict within(const PlanCost& limit, double share) {
        if (limit.waste != listed_) {
            listed_ = limit.waste;
            all_listed_ = list_.list(listed_.um);
            steps_.take(list_.steps_to_list());
        }
        if (!all_listed_) return Verdict::unknown;
        steps_.allow(share);
        FitSearch fits(list_, limit, steps_);
        const Verdict verdict = fits.run();
        if (verdict == Verdict::found && fits.cost < search_.cost) {
            search_.cost = fits.cost;
            search_.best = fits.plan;
        }
        return verdict;
    }

    /// From the bound on upwards by bought ones and leftovers; whether it came to the best there is, or all patience is used up.
    bool climb(double share) {
        bool sure = true;
        PlanCost next = search_.bound;
        for (next.bought = std::max(next.bought, least_bought()); next < search_.cost && next.bought <= next.sticks; ++next.bought, next.leftovers = 0)
            for (; next < search_.cost && next.leftovers <= most_kept(); ++next.leftovers) {
                const Verdict verdict = within(next, share);
                if (steps_.used_up()) return true;
                if (verdict == Verdict::unknown) sure = false;
                if (verdict == Verdict::found) break;
                if (sure) raise_bound({next.sticks, next.waste, next.bought, next.leftovers + 1});
            }
        if (sure && next >= search_.cost) search_.bound = search_.cost;
        return next >= search_.cost;
    }

    /// With any number of leftovers.
    Verdict within_waste(ExactLength waste) {
        PlanCost limit{search_.bound.sticks, waste, search_.bound.sticks, 0};
        for (; limit.leftovers <= most_kept(); ++limit.leftovers) {
            const Verdict verdict = within(limit, 1);
            if (verdict != Verdict::impossible) return verdict;
        }
        return Verdict::impossible;
    }

    /// By doubling, until there is a plan or it is known that there is none better. False when nothing more can be found out.
    bool raise_waste() {
        const std::int64_t sticks = search_.bound.sticks;
        const bool open_as_many = search_.cost.sticks == sticks;
        const std::int64_t most = open_as_many ? search_.cost.waste.um - 1 : most_over();
        for (std::int64_t waste = std::max(first_waste_um, search_.bound.waste.um); search_.bound.waste.um <= most; waste *= 2) {
            const ExactLength limit{std::min(waste, most)};
            const Verdict verdict = within_waste(limit);
            if (verdict != Verdict::impossible) return verdict == Verdict::found;
            raise_bound({sticks, {limit.um + 1}, 0, 0});
        }
        if (!open_as_many) raise_bound({sticks + 1, {}, 0, 0});
        return true;
    }

    /// From the plan's own downwards; true when nothing more can be found out.
    bool lower_waste() {
        while (search_.bound.sticks == search_.cost.sticks && search_.bound.waste < search_.cost.waste && search_.bound.waste.um > 0) {
            const Verdict verdict = within_waste({search_.cost.waste.um - 1});
            if (verdict == Verdict::unknown) return true;
            if (verdict == Verdict::impossible) raise_bound({search_.cost.sticks, search_.cost.waste, 0, 0});
        }
        return false;
    }

    void raise_bound(const PlanCost& to) { search_.bound = std::min(search_.cost, std::max(search_.bound, to)); }

    PlanSearch& search_;
    PlanSteps& steps_;
    FitList list_;
    std::int64_t longest_stick_ = 0, offcut_room_ = 0, offcuts_ = 0, sticks_on_rack_ = 0;
    ExactLength listed_{-1};
    bool all_listed_ = false;
};

}  // namespace

bool improve_by_close_fits(PlanSearch& search, PlanSteps& steps) {
    CloseFits fits(search, steps);
    const bool run = fits.run();
    search.cancelled = steps.cancelled();
    return run;
}

}  // namespace tubewright
