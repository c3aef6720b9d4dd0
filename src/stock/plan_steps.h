#pragma once
// How much of a plan's patience one way to it has, and has used up.

#include <algorithm>

#include "stock/cutting_plan.h"

namespace tubewright {

class PlanSteps {
public:
    /// What lies from one share of the whole patience to another.
    PlanSteps(std::int64_t patience, const PlanProgress& progress, double share_from, double share_to)
        : progress_(progress), share_from_(share_from), share_to_(share_to), most_(std::max<std::int64_t>(1, static_cast<std::int64_t>((share_to - share_from) * static_cast<double>(patience)))), until_(most_) {}

    void take(std::int64_t steps) { taken_ += steps; }
    /// From here on no more than this share of all; until it is said again.
    void allow(double share) { until_ = std::min(most_, taken_ + std::max<std::int64_t>(1, static_cast<std::int64_t>(share * static_cast<double>(most_)))); }
    bool cancelled() const { return cancelled_; }
    bool used_up() const { return cancelled_ || taken_ >= most_; }
    /// Whether what was allowed is used up, or whoever is told of the progress says so.
    bool stopped() {
        if (!cancelled_ && taken_ >= told_ && progress_) {
            told_ = taken_ + between_telling;
            cancelled_ = !progress_(share_from_ + (share_to_ - share_from_) * std::min(1.0, static_cast<double>(taken_) / static_cast<double>(most_)));
        }
        return cancelled_ || taken_ >= until_;
    }

private:
    static constexpr std::int64_t between_telling = 1 << 14;
    const PlanProgress& progress_;
    double share_from_, share_to_;
    std::int64_t most_, until_, taken_ = 0, told_ = 0;
    bool cancelled_ = false;
};

}  // namespace tubewright
