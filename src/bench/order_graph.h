#pragma once
// The graph that an order of bends is a path through, for the search alone. Its nodes: which bends are made,
// and how the last of them was placed.

#include "bench/order_search.h"

namespace tubewright {

/// Bends by their rank among those made, as a mask or as half of a turn: 2 * rank, + 1 with B on the hook.
using Made = std::uint64_t;
using Turn = std::size_t;

/// Counts along with the search, tells it on, and remembers being told to stop.
class Watch {
public:
    explicit Watch(const Progress& progress) : progress_(progress) {}
    /// `share` of the stretch that ends at `until`. False once stopped.
    bool go_on(double share, double until);
    void stretch_done(double until) { from_ = until; }
    bool stopped() const { return stopped_; }

private:
    const Progress& progress_;
    double from_ = 0, told_ = 0;
    bool stopped_ = false;
};

/// What is allowed and what it costs, before the geometry is asked.
class OrderGraph {
public:
    OrderGraph(const OrderQuestion& question, const CanBend& can_bend);

    std::size_t bends() const { return bends_.size(); }
    std::size_t turns() const { return 2 * bends_.size(); }
    Made all() const { return bends() == 64 ? ~Made{0} : (Made{1} << bends()) - 1; }
    Placing placing(Turn turn) const { return {bends_[turn / 2], turn % 2 ? End::B : End::A}; }
    Made in_part(Made made) const;

    bool wished(Made made, Turn turn) const;
    bool allowed(Made made, Turn turn) const { return wished(made, turn) && (is_begun(made) || !bender_stops(question_, in_part(made), placing(turn))); }
    bool can_bend(Made made, Turn turn) const { return is_begun(made) || can_bend_(in_part(made), placing(turn)); }

    std::int32_t start(Turn turn) const { return costs_.start(bends_[turn / 2]).total(); }
    std::int32_t step(Made made, Turn turn) const { return costs_.step(in_part(made), placing(turn)).total(); }
    std::int32_t between(Turn before, Turn turn) const { return between_[before * turns() + turn]; }
    const OrderCosts& costs() const { return costs_; }

private:
    /// Whether the next bend is one that is made already; of sets that wished() leads to.
    bool is_begun(Made made) const { return static_cast<std::size_t>(__builtin_popcountll(made)) < begun_.size(); }

    const OrderQuestion& question_;
    const CanBend& can_bend_;
    OrderCosts costs_;
    const std::vector<std::size_t>& bends_;
    std::vector<std::int32_t> between_;
    std::vector<Turn> begun_;           ///< in the order they were made
    std::vector<std::size_t> opening_;  ///< ranks; these come after those begun
    bool same_count_;                   ///< every bend of the part is made
};

/// A path, as far as it was found.
struct GraphPath {
    std::vector<Placing> placings;
    bool whole = false, proven = false;
};

/// The path of least cost: at most most_bends_proven bends.
GraphPath least_path(const OrderGraph& graph, Watch& watch);
/// A good path among the best few hundred beginnings of each length.
GraphPath good_path(const OrderGraph& graph, Watch& watch);

}  // namespace tubewright
