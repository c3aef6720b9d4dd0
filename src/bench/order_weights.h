#pragma once
// What makes one order of bends better than another: every weight in this one place, and what an order costs.

#include <cstdint>
#include <vector>

#include "bench/spread.h"

namespace tubewright {

/// The place of one bend, counted from 0, in a set of bends.
constexpr std::uint64_t bend_bit(std::size_t bend) { return std::uint64_t{1} << bend; }

/// Points: one is the nuisance of swapping the tube end for end. All are our choice; no source.
struct OrderWeights {
    Length end_tolerance{3.2};  ///< what an end may be off: 1/8 in, about what a nut on a short flexible leg pulls in
    double ends = 4;            ///< per end, times (95 % radius / end_tolerance) squared: one bad end is worse than two fair ones
    double floating = 6;        ///< a bend turned against the ink line only: its plane is the first thing to go wrong
    double swap = 1;            ///< taking the tube out and putting the other end on the hook
    double turn_over = 0.5;     ///< a turn over 90 from the bend before: easily taken for its other sense
    double chance_wrong = 0.05; ///< that a bend is spoiled
    double lost_per_metre = 10; ///< of tube that is no use for another line once this bend is spoiled; times chance_wrong
    double reach_per_metre = 1; ///< how far the swinging side reaches past the bend: room, and a tube that sags
    bool operator==(const OrderWeights&) const = default;
};

/// In thousandths of a point: whole numbers, so that equal costs are equal in whatever order they are added.
struct OrderCost {
    std::int32_t ends = 0, floating = 0, swaps = 0, turns = 0, lost = 0, reach = 0;
    std::int32_t total() const { return ends + floating + swaps + turns + lost + reach; }
    bool operator==(const OrderCost&) const = default;
};
OrderCost operator+(const OrderCost& a, const OrderCost& b);

/// What an order asks of the hands, counted as OrderCosts charges it.
struct OnTheWay {
    int swaps = 0, turns_over = 0, floating = 0;
    bool operator==(const OnTheWay&) const = default;
};
OnTheWay on_the_way(const OrderCost& cost, const OrderWeights& weights);

/// The bends from `start` outward to B, then to A: each turned against the one made just before it.
std::vector<Placing> outward_order(const Part& part, std::size_t start);

/// The costs of single steps of one line. They add up to the order's cost:
///   start(first bend) + the sum over steps of step(made before, placing) + between(placing before, placing)
/// Made bends are given as a mask, bit i for bend i of the part; at most 64 bends.
class OrderCosts {
public:
    OrderCosts(const Layout& layout, const OrderWeights& weights, const Hand& hand);

    /// Bends that are made, as they lie along the tube.
    const std::vector<std::size_t>& bends() const { return bends_; }
    /// The ends' error, for the outward order from there.
    OrderCost start(std::size_t bend) const;
    OrderCost step(std::uint64_t made, const Placing& placing) const;
    OrderCost between(const Placing& before, const Placing& placing) const;
    OrderCost of(const std::vector<Placing>& order) const;
    /// From the bend's tangent point to the furthest place of the lever side, formed as it then is.
    Length reach(std::uint64_t made, const Placing& placing) const;

private:
    std::int32_t reach_points(std::uint64_t made, const Placing& placing) const;
    std::vector<std::int32_t> all_reaches(std::size_t rank, End lever) const;

    Layout layout_;
    OrderWeights weights_;
    std::vector<std::size_t> bends_, rank_;      ///< rank_: place in bends_ of a bend of the part
    std::vector<std::int32_t> starts_;           ///< by rank
    std::vector<Angle> directions_;              ///< in the section, by bend of the part
    /// By rank of the bend, then by which bends beyond it, counted from it outward, are made. Empty for long lines.
    std::vector<std::vector<std::int32_t>> reach_a_, reach_b_;
};

}  // namespace tubewright
