#pragma once
// What has to be bought for some lines: sticks, nuts, sleeves, tees, unions and clips, and what it costs.

#include <optional>

#include "stock/cutting_plan.h"
#include "stock/joint.h"
#include "stock/support_spacing.h"

namespace tubewright {

/// Sorted as a person would ask for it.
enum class BuyKind { stick, nut, sleeve, tee, union_piece, clip };
/// What a tee or union has to take at one of its ends.
struct JointEnd {
    ExactLength outside;
    std::string fitting;
    auto operator<=>(const JointEnd&) const = default;
};
struct BuyItem {
    BuyKind kind;
    std::string name;      ///< of nut or sleeve
    StockTube tube;        ///< of sticks; of nuts, sleeves and clips the outside alone
    ExactLength length{};  ///< of sticks
    std::vector<JointEnd> ends = {};  ///< of one tee or union, in order; those that are told
    auto operator<=>(const BuyItem&) const = default;
};
using BuyList = std::map<BuyItem, int>;

struct EndNeeds {
    std::string nut, sleeve;  ///< nothing where the end has none
    std::string fitting;
    std::optional<Joint> joint;  ///< none: a port that is there
};
struct LineNeeds {
    std::string job;       ///< whose joints these are
    StockTube tube;
    SupportRow supports;
    ExactLength finished;  ///< along the tube, trims off
    EndNeeds a, b;
    int pieces = 1;        ///< each goes into a joint
    int missing = 1;       ///< of them, still to be made
};

/// All but the sticks, for what is still to be made. Tees and unions are bought for all ends that go into them, as long as one of
/// them is missing: as many as hold them, since several pieces of a line may go into one or into one each.
BuyList parts_for(const std::vector<LineNeeds>& lines);
/// The sticks that a plan buys.
BuyList sticks_for(const StockTube& tube, const PlanFound& plan);
/// Both lists in one.
BuyList together(BuyList a, const BuyList& b);
/// What is not in the drawer yet.
BuyList without(BuyList list, const BuyList& in_drawer);

struct BuyCost {
    Money known;
    std::vector<BuyItem> unpriced;  ///< not in `known`
};
BuyCost cost(const BuyList& list, const std::map<BuyItem, Money>& each);

}  // namespace tubewright
