#pragma once
// The search behind `best_plan`: branch and bound over what the longest piece still to cut is cut from, and with what.

#include <unordered_map>

#include "stock/plan_steps.h"

namespace tubewright {

/// Lengths that are the same to the plan. `room` and the needs of kinds have the saw's width added, so that cuts fit while
/// their needs come to no more than the room.
struct RoomKind {
    std::int64_t room;
    enum class From { offcut, stick, bought } from;
    int count;  ///< not used for sticks to buy
    std::vector<std::size_t> places;  ///< in the question's rack, or the one in `for_sale`
};
struct CutKind {
    std::int64_t need;
    std::vector<std::size_t> places;  ///< in the question's `wanted`, one for each piece
};

/// Of each cut kind so many, from one of that room kind.
struct Opened {
    std::size_t room;
    std::vector<int> pieces;
};

class PlanSearch {
public:
    explicit PlanSearch(const CuttingQuestion& question);
    void run(PlanSteps& steps);
    /// The better plan of this and another search of the same question, and the better bound.
    void join(const PlanSearch& other);

    std::vector<RoomKind> rooms;
    std::vector<CutKind> kinds;  ///< the longest first
    std::vector<Opened> best;
    PlanCost cost, bound;
    bool found = false, cancelled = false, out_of_patience = false;

    /// Of a length with this much room left.
    PlanCost cost_of(std::size_t room, std::int64_t rest) const;
    std::int64_t saw() const { return saw_; }
    std::int64_t keep() const { return keep_; }

private:
    PlanCost bound_from(const PlanCost& so_far) const;
    std::int64_t sticks_needed() const;
    void greedy(bool best_fit, std::size_t to_buy);
    void look(const PlanCost& so_far);
    void fill(std::size_t room, std::size_t kind, std::int64_t sum, bool even, const PlanCost& so_far);
    void open(std::size_t room, std::int64_t rest, const PlanCost& so_far);
    void keep_best(const PlanCost& so_far, const std::vector<Opened>& plan);
    bool stopped();
    bool may_open(std::size_t room) const;

    std::int64_t saw_, keep_;
    PlanSteps* steps_ = nullptr;  ///< while it runs
    std::vector<int> left_;   ///< of each kind
    std::vector<int> there_;  ///< of each room
    std::vector<Opened> plan_;
    std::vector<std::vector<int>> pattern_;             ///< by depth
    std::vector<std::vector<std::int64_t>> most_more_;  ///< by depth: what kinds from here on come to
    std::size_t depth_ = 0;
    /// What pieces and rooms weigh in the rule, for each rule by which sticks are counted.
    struct Weights { std::vector<double> kinds, rooms; double largest; };
    std::vector<Weights> weights_;
    std::unordered_map<std::string, PlanCost> seen_;
};

}  // namespace tubewright
