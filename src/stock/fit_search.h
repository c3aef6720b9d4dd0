#pragma once
// Whether there is a plan that costs no more than that, of fits and of so many lengths of which something is kept.

#include <set>
#include <unordered_map>

#include "stock/fit_list.h"

namespace tubewright {

/// What is still to be cut from sticks when the offcuts are decided.
struct FitSituation {
    Counts left, pool;
    std::vector<std::int16_t> opened;  ///< of sticks those used, of offcuts those kept
    bool operator==(const FitSituation&) const = default;
};
struct HashOfFitSituation {
    std::size_t operator()(const FitSituation& situation) const;
};

/// First each offcut is left, filled by a fit, or becomes one to keep something of. Then for each kind, from the one in the fewest
/// fits on, what its cuts share a stick with. What no fit takes goes into a pool, which is cut from the lengths of which something is kept.
class FitSearch {
public:
    /// Exactly so many sticks and leftovers as in `limit`: that fewer don't do has to be known. `order`: of all kinds, for a test; else
    /// the one in the fewest fits first.
    FitSearch(const FitList& list, const PlanCost& limit, PlanSteps& steps, std::vector<std::size_t> order = {});

    enum class Verdict { found, impossible, unknown };
    Verdict run();

    std::vector<Opened> plan;
    PlanCost cost;

private:
    struct Filled { std::size_t of; Counts pieces; };
    struct Kept { std::size_t of; std::int64_t rest; Counts pieces; };
    /// That it failed with so much in the pool and so much that could be wasted.
    struct Failed { std::int64_t pool_need, waste_left; };

    void sort_out_fits();
    void gather_offcuts();
    void add_up_offcuts();
    void order_kinds();
    bool can_open(std::size_t of) const;
    void open(std::size_t of);
    void close(std::size_t of);

    bool look_at_offcuts(std::size_t offcut, std::size_t first_choice);
    template <class GoOn> bool fill(const Fit& fit, const GoOn& go_on);
    bool sums_come_out(std::size_t offcut) const;
    bool look_at_sticks(std::size_t at, std::size_t first_fit);
    bool look_at_kind(std::size_t at, std::size_t first_fit);
    std::int64_t slack() const;
    bool hopeless() const;
    FitSituation situation(bool with_pool) const;
    bool known_to_fail();
    void note_failure(bool with_pool);
    std::int64_t room_to_place(const Counts& pool) const;
    /// What decides whether the pool can be placed; which kept length is which does not.
    std::vector<std::int64_t> placing(const Counts& pool) const;
    bool place(Counts pool, std::int64_t pool_need, std::size_t kind);
    bool place_longest(const Counts& pool, std::int64_t pool_need, std::size_t kind);
    void keep_plan();

    const FitList& list_;
    PlanCost limit_;
    PlanSteps& steps_;
    std::vector<std::size_t> offcuts_;                  ///< one by one, equal ones side by side
    std::vector<std::vector<const Fit*>> offcut_fits_;  ///< by openable
    std::vector<std::vector<std::int64_t>> sums_;       ///< that the offcuts from there on can come to; empty where too many
    std::vector<std::size_t> kinds_;                    ///< the one in the fewest fits first
    std::vector<std::vector<const Fit*>> stick_fits_;   ///< by place in `kinds_` of the first that they take
    std::int64_t longest_stick_ = 0, shortest_stick_ = INT64_MAX;

    Counts left_, pool_;
    std::int64_t need_, pool_need_ = 0, kept_room_ = 0;
    std::int64_t sticks_left_, bought_left_, waste_left_, kept_left_;
    std::vector<std::int16_t> used_;
    std::vector<Filled> filled_;
    std::vector<Kept> kept_;
    std::int64_t not_placed_ = 0;
    std::size_t fits_looked_at_ = 0;
    std::unordered_map<FitSituation, Failed, HashOfFitSituation> failed_;
    std::set<std::vector<std::int64_t>> not_to_be_placed_;
};

}  // namespace tubewright
