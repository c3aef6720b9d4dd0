#include "bench/order_graph.h"

#include <algorithm>
#include <limits>
#include <queue>
#include <set>
#include <tuple>

namespace tubewright {
namespace {

constexpr std::int32_t never = std::numeric_limits<std::int32_t>::max();
constexpr std::uint8_t nowhere = 255;

Made made_bit(Turn turn) { return Made{1} << (turn / 2); }

enum class Known : std::uint8_t { not_yet, fine, blocked };

/// Least cost by best-first search. What is left to pay from a node counts as if the geometry allowed
/// everything the bender allows: never too much, and rising along no step, so that a node's first visit is
/// its cheapest. The geometry is asked when a node is about to be left.
class LeastPath {
public:
    LeastPath(const OrderGraph& graph, Watch& watch)
        : graph_(graph), watch_(watch), turns_(graph.turns()), left_(nodes(), never), paid_(nodes(), never), from_(nodes(), nowhere), known_(nodes(), Known::not_yet) {}

    GraphPath run();

private:
    struct Open {
        std::int32_t least, paid;
        Made made;
        Turn turn;
    };
    /// Cheapest on top; of equal ones the longest way, then the one nearer to A: a total order.
    struct Later {
        bool operator()(const Open& a, const Open& b) const {
            const auto key = [](const Open& o) { return std::tuple(o.least, -__builtin_popcountll(o.made), o.turn, o.made, o.paid); };
            return key(a) > key(b);
        }
    };

    std::size_t nodes() const { return (static_cast<std::size_t>(graph_.all()) + 1) * turns_; }
    std::size_t node(Made made, Turn turn) const { return static_cast<std::size_t>(made) * turns_ + turn; }
    bool can_reach(Made before, Turn turn);
    bool count_left();
    void leave(Made made, std::int32_t paid, Turn last);
    std::optional<GraphPath> search(std::size_t most_left);
    bool is_connected();
    std::optional<bool> step_forward();
    std::optional<bool> step_back();
    std::vector<Placing> way_to(Made made, Turn last) const;
    GraphPath furthest() const;

    const OrderGraph& graph_;
    Watch& watch_;
    std::size_t turns_;
    std::vector<std::int32_t> left_, paid_;
    std::vector<std::uint8_t> from_;  ///< the turn before, on the cheapest way so far
    std::vector<Known> known_;
    std::priority_queue<Open, std::vector<Open>, Later> open_;
    std::vector<bool> closed_;
    std::size_t count_ = 0;

    // For reachability: which sets of made bends are reached from none, and which lead to all.
    std::vector<std::uint8_t> came_by_;
    std::vector<bool> forward_seen_, back_seen_;
    std::vector<Made> forward_, back_;
    Made furthest_ = 0;
};

bool LeastPath::can_reach(Made before, Turn turn) {
    Known& known = known_[node(before | made_bit(turn), turn)];
    if (known == Known::not_yet) known = graph_.can_bend(before, turn) ? Known::fine : Known::blocked;
    return known == Known::fine;
}

/// From all made backwards: left(made, last) = min over what may follow of between + step + left.
bool LeastPath::count_left() {
    std::vector<std::pair<Turn, std::int32_t>> next;
    for (Made made = graph_.all() + 1; made-- > 0;) {
        if (made % 512 == 0 && !watch_.go_on(1 - static_cast<double>(made) / static_cast<double>(graph_.all() + 1), 0.3)) return false;
        if (made == graph_.all()) {
            std::fill_n(left_.begin() + static_cast<std::ptrdiff_t>(node(made, 0)), turns_, 0);
            continue;
        }
        next.clear();
        for (Turn turn = 0; turn < turns_; ++turn) {
            if ((made & made_bit(turn)) || !graph_.allowed(made, turn)) continue;
            const std::int32_t left = left_[node(made | made_bit(turn), turn)];
            if (left != never) next.emplace_back(turn, left + graph_.step(made, turn));
        }
        for (Turn last = 0; last < turns_; ++last) {
            if (!(made & made_bit(last))) continue;
            std::int32_t& left = left_[node(made, last)];
            for (const auto& [turn, cost] : next) left = std::min(left, cost + graph_.between(last, turn));
        }
    }
    watch_.stretch_done(0.3);
    return true;
}

/// `last` means nothing where none is made yet.
void LeastPath::leave(Made made, std::int32_t paid, Turn last) {
    for (Turn turn = 0; turn < turns_; ++turn) {
        if (made & made_bit(turn)) continue;
        const std::size_t there = node(made | made_bit(turn), turn);
        if (left_[there] == never || known_[there] == Known::blocked || !graph_.allowed(made, turn)) continue;
        const std::int32_t step = graph_.step(made, turn) + (made ? graph_.between(last, turn) : graph_.start(turn));
        if (paid + step >= paid_[there]) continue;
        paid_[there] = paid + step;
        from_[there] = made ? static_cast<std::uint8_t>(last) : nowhere;
        open_.push({paid + step + left_[there], paid + step, made | made_bit(turn), turn});
    }
}

/// Nothing where more than `most_left` nodes were left without an answer, or the search was stopped.
std::optional<GraphPath> LeastPath::search(std::size_t most_left) {
    while (!open_.empty()) {
        const Open now = open_.top();
        const std::size_t here = node(now.made, now.turn);
        if (closed_[here] || now.paid > paid_[here]) { open_.pop(); continue; }
        if (count_ >= most_left) return std::nullopt;
        open_.pop();
        closed_[here] = true;
        if (!can_reach(now.made & ~made_bit(now.turn), now.turn)) continue;
        if (now.made == graph_.all()) return GraphPath{way_to(now.made, now.turn), true, true};
        if (++count_ % 256 == 0 && !watch_.go_on(static_cast<double>(count_) / static_cast<double>(nodes()), 1)) return std::nullopt;
        leave(now.made, now.paid, now.turn);
    }
    return GraphPath{{}, false, true};
}

std::vector<Placing> LeastPath::way_to(Made made, Turn last) const {
    std::vector<Placing> way;
    for (Turn turn = last; turn != nowhere;) {
        way.push_back(graph_.placing(turn));
        const Turn before = from_[node(made, turn)];
        made &= ~made_bit(turn);
        turn = before;
    }
    std::reverse(way.begin(), way.end());
    return way;
}

/// One set further from none made: whether it meets the sets that lead to all; nothing while that is open.
std::optional<bool> LeastPath::step_forward() {
    if (forward_.empty()) return false;
    const Made made = forward_.back();
    forward_.pop_back();
    for (Turn turn = 0; turn < turns_; ++turn) {
        const Made then = made | made_bit(turn);
        if (then == made || forward_seen_[then] || !graph_.allowed(made, turn) || !can_reach(made, turn)) continue;
        forward_seen_[then] = true;
        came_by_[then] = static_cast<std::uint8_t>(turn);
        forward_.push_back(then);
        if (__builtin_popcountll(then) > __builtin_popcountll(furthest_)) furthest_ = then;
        if (back_seen_[then]) return true;
    }
    return std::nullopt;
}

std::optional<bool> LeastPath::step_back() {
    if (back_.empty()) return false;
    const Made made = back_.back();
    back_.pop_back();
    for (Turn turn = 0; turn < turns_; ++turn) {
        const Made before = made & ~made_bit(turn);
        if (before == made || back_seen_[before] || !graph_.allowed(before, turn) || !can_reach(before, turn)) continue;
        back_seen_[before] = true;
        back_.push_back(before);
        if (forward_seen_[before]) return true;
    }
    return std::nullopt;
}

/// Whether all bends can be made at all, from both sides at once: whichever runs dry has proven that not.
bool LeastPath::is_connected() {
    const std::size_t sets = static_cast<std::size_t>(graph_.all()) + 1;
    forward_seen_.assign(sets, false);
    back_seen_.assign(sets, false);
    came_by_.assign(sets, nowhere);
    forward_seen_[0] = back_seen_[graph_.all()] = true;
    forward_ = {0};
    back_ = {graph_.all()};
    for (std::size_t i = 0; i % 64 != 0 || watch_.go_on(0, 1); ++i) {
        if (const auto met = step_forward()) return *met;
        if (const auto met = step_back()) return *met;
    }
    return false;
}

GraphPath LeastPath::furthest() const {
    GraphPath path{{}, false, true};
    for (Made made = furthest_; made != 0;) {
        const Turn turn = came_by_[made];
        path.placings.push_back(graph_.placing(turn));
        made &= ~made_bit(turn);
    }
    std::reverse(path.placings.begin(), path.placings.end());
    return path;
}

GraphPath LeastPath::run() {
    constexpr std::size_t soon = 2000, search_on = std::numeric_limits<std::size_t>::max();
    constexpr int forward_steps = 4000;  // to see how far one gets when it is known that one does not get through
    if (graph_.bends() == 0) return {{}, true, true};
    if (!count_left()) return {};
    closed_.assign(nodes(), false);
    leave(0, 0, 0);
    if (const auto found = search(soon); found && found->whole) return *found;
    if (watch_.stopped()) return {};
    if (is_connected())
        if (const auto found = search(search_on); found) return *found;
    for (int i = 0; i < forward_steps && !watch_.stopped() && !forward_.empty(); ++i)
        if (step_forward()) break;
    return furthest();
}

}  // namespace

GraphPath least_path(const OrderGraph& graph, Watch& watch) { return LeastPath(graph, watch).run(); }

GraphPath good_path(const OrderGraph& graph, Watch& watch) {
    constexpr std::size_t width = 500;
    struct Beginning {
        std::int32_t paid;
        Made made;
        std::vector<Turn> turns;
    };
    std::vector<Beginning> kept{{0, 0, {}}};
    GraphPath path;
    for (std::size_t length = 0; length < graph.bends(); ++length) {
        std::vector<Beginning> longer;
        for (const Beginning& beginning : kept)
            for (Turn turn = 0; turn < graph.turns(); ++turn) {
                if ((beginning.made & made_bit(turn)) || !graph.allowed(beginning.made, turn)) continue;
                Beginning next = beginning;
                next.paid += graph.step(next.made, turn) + (next.turns.empty() ? graph.start(turn) : graph.between(next.turns.back(), turn));
                next.made |= made_bit(turn);
                next.turns.push_back(turn);
                longer.push_back(std::move(next));
            }
        const auto end = [](const Beginning& b) { return std::tuple(b.made, b.turns.back()); };
        std::sort(longer.begin(), longer.end(), [&](const Beginning& a, const Beginning& b) { return std::tuple(a.paid, end(a), a.turns) < std::tuple(b.paid, end(b), b.turns); });
        kept.clear();
        std::set<std::tuple<Made, Turn>> seen;
        for (Beginning& next : longer) {
            if (kept.size() == width) break;
            if (!watch.go_on((static_cast<double>(length) + static_cast<double>(kept.size()) / width) / static_cast<double>(graph.bends()), 1)) return {};
            if (!seen.insert(end(next)).second) continue;
            if (graph.can_bend(next.made & ~made_bit(next.turns.back()), next.turns.back())) kept.push_back(std::move(next));
        }
        if (kept.empty()) return path;
        path.placings.clear();
        for (const Turn turn : kept.front().turns) path.placings.push_back(graph.placing(turn));
    }
    path.whole = true;
    return path;
}

}  // namespace tubewright
