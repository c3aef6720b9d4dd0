#pragma once
// What a rescue may change, and what each change does. For bench/rescue and its tests alone.

#include <Eigen/Core>
#include <vector>

#include "bench/rescue.h"

namespace tubewright {

/// `low` and `high` in degrees or mm, as is what it changes by; `nuisance` is what counts as 1.
struct FreeNumber {
    RescueNumber number;
    std::size_t bend;
    End end;
    double low, high, nuisance, step;
};

/// A stretch of straight tube that has to be there: from the far end of one bend, or an end, to the next.
struct NeededStraight {
    enum class From { cut_end, measured_end, bend } a_side, b_side;
    std::size_t a_bend = 0, b_bend = 0;
    double needed;                     ///< mm
    std::optional<std::size_t> bend;   ///< of the step that needs it
};

class RescueModel {
public:
    /// `base`: the tube as it comes when gone on with as planned.
    /// `freed`: as if that were no bar, to see whether it is the one.
    RescueModel(const RescueQuestion& question, TubePlan base, std::optional<RescueBar> freed = {});

    const std::vector<FreeNumber>& numbers() const { return numbers_; }
    TubePlan plan_at(const Eigen::VectorXd& x) const { return changed(base_, x); }
    TubePlan changed(TubePlan plan, const Eigen::VectorXd& x) const;

    LaidOver laid_at(const TubePlan& plan) const;
    const std::vector<NeededStraight>& needed() const { return needed_; }
    double lack(const TubePlan& plan, const NeededStraight& straight) const;  ///< mm, less than 0 where there is more than enough
    /// 1 where it is just good enough: ends, the line's way, and straights.
    double worst(const TubePlan& plan) const;

    const EndTolerance& tolerance() const { return tolerance_; }
    double nuisance(const Eigen::VectorXd& x) const;

private:
    void add_numbers(const RescueQuestion& question, std::optional<RescueBar> freed);
    void add_straights(const RescueQuestion& question);

    TubePlan base_;
    KeyPlaces wanted_;
    EndTolerance tolerance_;
    std::vector<FreeNumber> numbers_;
    std::vector<std::vector<std::size_t>> follow_;  ///< the bends that turn with each bend still to come, itself first
    std::vector<NeededStraight> needed_;
};

/// x of those numbers for which the ends fit best, the others 0.
struct BestOf {
    Eigen::VectorXd x;
    double worst;     ///< as RescueModel::worst
    double nuisance;
};

/// Damped Gauss-Newton within the bounds: the least sum of squares, and where that leaves one over its tolerance, from there towards
/// the least worst share.
BestOf best_of(const RescueModel& model, const std::vector<std::size_t>& numbers, const Eigen::VectorXd& from);

}  // namespace tubewright
