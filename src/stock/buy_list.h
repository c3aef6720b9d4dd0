#pragma once
// What has to be bought for some lines: sticks, nuts, sleeves, tees, unions and clips, and what it costs.

#include <optional>

#include "stock/cutting_plan.h"
#include "stock/support_spacing.h"

namespace tubewright {

/// Sorted as a person would ask for it.
enum class BuyKind { stick, nut, sleeve, tee, union_piece, clip };
struct BuyItem {
    BuyKind kind;
    std::string name;      ///< of nut, sleeve, tee or union; nothing for sticks and clips
    StockTube tube;        ///< of sticks; of nuts, sleeves and clips the outside alone
    ExactLength length{};  ///< of sticks
    auto operator<=>(const BuyItem&) const = default;
};
using BuyList = std::map<BuyItem, int>;

/// Where an end goes. A tee or union is bought once for all ends that name the same joint; a port is there already.
struct Joint {
    enum class Kind { port, union_piece, tee } kind = Kind::port;
    std::string name;   ///< which one: "rear tee"
    std::string part;   ///< what it is called in the shop
    bool there = false;  ///< on the vehicle, not bought
};
struct EndNeeds {
    std::string nut, sleeve;  ///< nothing where the end has none
    Joint joint;
};
struct LineNeeds {
    std::string line;
    StockTube tube;
    SupportRow supports;
    ExactLength finished;  ///< along the tube, trims off
    EndNeeds a, b;
};

struct TooManyEnds { std::string joint; int ends, holds; };          ///< a union holds 2, a tee 3
struct TwoPartsForOne { std::string joint, one, other; };            ///< the same joint is named as two parts
using BuyTrouble = std::variant<TooManyEnds, TwoPartsForOne>;

/// All but the sticks.
Result<BuyList, BuyTrouble> parts_for(const std::vector<LineNeeds>& lines);
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
