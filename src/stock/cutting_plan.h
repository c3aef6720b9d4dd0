#pragma once
// Which line is cut from which length: the best plan there is, for one tube, from the rack and from sticks to buy.
//
// What "best" means, and it means nothing else (`PlanCost`, compared from the first figure to the last, less is better):
//   1. sticks     whole sticks that are cut into, from the rack or bought. So offcuts come first: no stick is opened
//                 that offcuts can save.
//   2. waste      what is left of the opened lengths and too short to keep.
//   3. bought     of the sticks, those that have to be bought.
//   4. leftovers  how many lengths worth keeping are left of what was opened. What is left altogether is the same or less,
//                 so fewer are longer: one of 14 in, which makes the next crossover, beats two of 7.
// The saw takes its width at each cut whatever the plan, save where less than that is left behind a last cut; so kerf is no
// choice and no part of the cost. The leftover of a length is L - sum of cuts - cuts * saw, or nothing if that is less than
// nothing; cuts fit while L - sum of cuts - (cuts - 1) * saw is not less than nothing.

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "stock/ledger.h"

namespace tubewright {

/// So many cut lengths, trims included.
struct LengthWanted {
    ExactLength length;  ///< more than nothing
    int count;           ///< not less than nothing
    std::string line;
    bool operator==(const LengthWanted&) const = default;
};

struct LengthOnRack {
    PieceNumber piece;
    ExactLength length;
    bool stick;  ///< whole; else an offcut
    bool operator==(const LengthOnRack&) const = default;
};

struct CuttingQuestion {
    std::vector<LengthWanted> wanted;
    std::vector<LengthOnRack> rack;
    std::vector<ExactLength> for_sale;  ///< lengths that sticks can be bought in, as many as are needed
    ExactLength saw;                    ///< its width
    ExactLength keep;                   ///< the shortest leftover worth keeping
    ExactLength squared;                ///< off one end of each length that is opened, before the first cut
    bool operator==(const CuttingQuestion&) const = default;
};

struct PlanCost {
    std::int64_t sticks = 0;
    ExactLength waste;
    std::int64_t bought = 0, leftovers = 0;
    auto operator<=>(const PlanCost&) const = default;
    PlanCost& operator+=(const PlanCost& more) {
        sticks += more.sticks;
        waste += more.waste;
        bought += more.bought;
        leftovers += more.leftovers;
        return *this;
    }
};

/// One length and what is cut from it, the longest first.
struct LengthCut {
    std::variant<PieceNumber, ExactLength> from;  ///< of the rack, or a stick to buy
    ExactLength length;
    std::vector<std::size_t> cuts;  ///< places in `wanted`
    ExactLength leftover;
    bool kept;  ///< worth keeping
};

struct PlanFound {
    std::vector<LengthCut> lengths;
    PlanCost cost;
    PlanCost bound;  ///< no plan costs less; equal to `cost` when proven
    bool proven;
};
/// What can't be cut: the first in `wanted` that is longer than any length, else nothing is too long but there is not enough.
struct NoPlan {
    std::optional<std::size_t> too_long;
    bool proven;
};
struct PlanCancelled {};
using PlanAnswer = std::variant<PlanFound, NoPlan, PlanCancelled>;

/// Told now and then how much of the patience is used up, from 0 to 1, never falling; false stops the search.
using PlanProgress = std::function<bool(double share)>;

/// How many steps may be taken before the best plan so far is given with its bound. It is what bounds the search, whatever
/// the machine; this many take about a second.
inline constexpr std::int64_t plan_patience = 20'000'000;

PlanAnswer best_plan(const CuttingQuestion& question, const PlanProgress& progress = {}, std::int64_t patience = plan_patience);

/// The rack as the plan sees it: what lies there of this tube. Coils are left out; they are straightened first.
std::vector<LengthOnRack> rack_for_plan(const Ledger& ledger, const StockTube& tube);

/// A piece to practise on, and a spare of the hardest line.
struct SpareRule {
    std::vector<double> odds;  ///< of spoiling one, 0 to 1, for each in `wanted`
    double spare_from;         ///< a spare is cut where at least one of the hardest is spoiled with these odds or more
    ExactLength practice;      ///< nothing: none
    int practice_count;
};
/// The hardest is the one that is likeliest to be spoiled at least once: 1 - (1 - odds)^count; of equal ones the longest.
std::vector<LengthWanted> with_spares(std::vector<LengthWanted> wanted, const SpareRule& rule);

}  // namespace tubewright
