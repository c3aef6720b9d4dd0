#pragma once
// Shops made by dice, and a plan's cost counted anew from its cuts.

#include <algorithm>
#include <random>
#include <stdexcept>

#include "stock/cutting_plan.h"

namespace tubewright {

struct ShopSize {
    int most_cuts, most_kinds;
    int shortest_mm, longest_mm;
    bool full = false;  ///< always the most cuts and kinds, the cuts spread evenly over the kinds; else any number up to that
};

/// Whole millimetres, so that a solver that reckons in floating point can be trusted with them. Sticks of about 6.1 m or 3 m.
inline CuttingQuestion random_shop(std::mt19937& dice, const ShopSize& size) {
    const auto from_to = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(dice); };
    CuttingQuestion shop{{}, {}, {{6'096'000}}, {1000 * from_to(0, 3)}, {1000 * from_to(100, 400)}, {}};
    const int kinds = size.full ? size.most_kinds : from_to(1, size.most_kinds);
    int cuts = size.full ? size.most_cuts : from_to(kinds, size.most_cuts);
    for (int i = 0; i < kinds; ++i) {
        const int count = size.full ? cuts / (kinds - i) : i + 1 == kinds ? cuts : from_to(1, cuts - (kinds - 1 - i));
        cuts -= count;
        shop.wanted.push_back({{1000 * from_to(size.shortest_mm, size.longest_mm)}, count, "line " + std::to_string(i)});
    }
    if (from_to(0, 2) == 0) shop.for_sale.push_back({3'048'000});
    const int rack = from_to(0, 8);
    for (int i = 0; i < rack; ++i) {
        const bool stick = from_to(0, 3) == 0;
        shop.rack.push_back({{i + 1}, stick ? ExactLength{6'096'000} : ExactLength{1000 * from_to(200, 2800)}, stick});
    }
    return shop;
}

/// From nothing but the cuts; ends the test where a plan can't be cut.
inline PlanCost counted_anew(const CuttingQuestion& shop, const PlanFound& plan) {
    PlanCost cost;
    std::vector<int> left;
    for (const LengthWanted& wanted : shop.wanted) left.push_back(wanted.count);
    std::vector<PieceNumber> opened;
    for (const LengthCut& length : plan.lengths) {
        ExactLength rest = length.length - shop.squared;
        bool stick = true;
        if (const auto* piece = std::get_if<PieceNumber>(&length.from)) {
            const auto at = std::find_if(shop.rack.begin(), shop.rack.end(), [&](const LengthOnRack& there) { return there.piece == *piece; });
            if (at == shop.rack.end() || at->length != length.length || std::count(opened.begin(), opened.end(), *piece)) throw std::logic_error("not on the rack");
            opened.push_back(*piece);
            stick = at->stick;
        } else {
            if (!std::count(shop.for_sale.begin(), shop.for_sale.end(), length.length)) throw std::logic_error("not for sale");
            ++cost.bought;
        }
        cost.sticks += stick;
        for (std::size_t i = 0; i < length.cuts.size(); ++i) {
            rest -= shop.wanted[length.cuts[i]].length + (i ? shop.saw : ExactLength{});
            --left[length.cuts[i]];
        }
        if (rest.um < 0 || length.cuts.empty()) throw std::logic_error("does not fit");
        rest = std::max(ExactLength{}, rest - shop.saw);
        if (rest != length.leftover) throw std::logic_error("another leftover");
        if (rest.um > 0 && rest >= shop.keep) ++cost.leftovers;
        else cost.waste += rest;
    }
    if (std::any_of(left.begin(), left.end(), [](int more) { return more != 0; })) throw std::logic_error("not what was wanted");
    return cost;
}

}  // namespace tubewright
