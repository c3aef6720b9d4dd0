#include "bench/order_search.h"

#include <algorithm>
#include <cassert>
#include <set>

#include "base/tolerance.h"
#include "bench/order_graph.h"
#include "bench/sheet.h"

namespace tubewright {
namespace {

Room room_with(const Layout& layout, std::uint64_t made, const Placing& placing) {
    const BendSpan& span = layout.spans[placing.bend];
    Length towards_a = span.start, towards_b = layout.cut_length - span.end;
    bool open_a = true, open_b = true;
    for (std::size_t i = placing.bend; open_a && i-- > 0;)
        if (made & bend_bit(i)) { towards_a = span.start - layout.spans[i].end; open_a = false; }
    for (std::size_t i = placing.bend + 1; open_b && i < layout.spans.size(); ++i)
        if (made & bend_bit(i)) { towards_b = layout.spans[i].start - span.end; open_b = false; }
    if (placing.hook == End::A) return {towards_a, towards_b, open_a, open_b};
    return {towards_b, towards_a, open_b, open_a};
}

std::optional<WhyNot> wish_stops(const OrderQuestion& question, std::size_t step, const Placing& placing) {
    const OrderWish& wish = question.wish;
    if (wish.hook && placing.hook != *wish.hook) return AgainstWish{};
    const std::size_t begun = wish.begun ? wish.begun->size() : 0;
    if (step >= begun && step - begun < wish.opening.size() && placing.bend != wish.opening[step - begun]) return AgainstWish{};
    return std::nullopt;
}

NoOrder no_order(const OrderQuestion& question, const CanBend& can_bend, const GraphPath& path) {
    NoOrder none{path.placings, {}, path.proven};
    std::uint64_t made = 0;
    for (const Placing& placing : path.placings) made |= bend_bit(placing.bend);
    for (std::size_t bend = 0; bend < question.layout.part.bends.size(); ++bend) {
        if ((made & bend_bit(bend)) || !is_made(question.layout.part.bends[bend])) continue;
        for (const End hook : {End::A, End::B}) {
            const Placing placing{bend, hook};
            if (wish_stops(question, path.placings.size(), placing)) continue;
            if (auto stop = blocked(question, can_bend, made, placing)) none.blocked.push_back(std::move(*stop));
        }
    }
    return none;
}

}  // namespace

std::optional<WhyNot> bender_stops(const OrderQuestion& question, std::uint64_t made, const Placing& placing) {
    const Bender& bender = question.bender;
    const Angle target = question.layout.part.bends[placing.bend].angle, set = set_angle(question.springback, target);
    if (set > bender.max_angle || target > bender.max_angle) return BeyondAngle{std::max(set, target), bender.max_angle};
    const Room room = room_with(question.layout, made, placing);
    const auto pieces = [&](bool at_end, End end) { return at_end ? (end == End::A ? question.pieces_a : question.pieces_b) : Length{}; };
    const Length hook_needs = straight_needed(bender, true, pieces(room.hook_at_end, placing.hook));
    const Length lever_needs = straight_needed(bender, false, pieces(room.lever_at_end, other(placing.hook)));
    if (hook_needs - room.hook > tolerance::straight_slack) return ShortStraight{true, room.hook, hook_needs};
    if (lever_needs - room.lever > tolerance::straight_slack) return ShortStraight{false, room.lever, lever_needs};
    const BendSpan& span = question.layout.spans[placing.bend];
    for (const ReferenceMark& mark : bender.marks)
        if (can_be_inked(room, span.end - span.start, mark)) return std::nullopt;
    return NoPlaceForInk{};
}

std::optional<Blocked> blocked(const OrderQuestion& question, const CanBend& can_bend, std::uint64_t made, const Placing& placing) {
    if (auto why = bender_stops(question, made, placing)) return Blocked{made, placing, *why};
    if (!can_bend(made, placing)) return Blocked{made, placing, InTheWay{}};
    return std::nullopt;
}

namespace {

/// Whether all that is wished for is to be made, and all that is begun, each once. It may be no longer, where the job file
/// has changed since.
bool can_be_wished(const OrderQuestion& question) {
    const std::vector<Bend>& bends = question.layout.part.bends;
    std::vector<std::size_t> wished = question.wish.opening;
    std::set<std::size_t> begun;
    for (const Placing& placing : question.wish.begun.value_or(std::vector<Placing>{})) wished.push_back(placing.bend), begun.insert(placing.bend);
    if (question.wish.begun && begun.size() != question.wish.begun->size()) return false;
    const bool after_them = std::none_of(question.wish.opening.begin(), question.wish.opening.end(), [&](std::size_t bend) { return begun.contains(bend); });
    return after_them && std::all_of(wished.begin(), wished.end(), [&](std::size_t bend) { return bend < bends.size() && is_made(bends[bend]); });
}

}  // namespace

OrderAnswer best_order(const OrderQuestion& question, const CanBend& can_bend, const Progress& progress) {
    if (!can_be_wished(question)) {
        OrderQuestion without = question;
        without.wish.opening.clear();
        without.wish.begun.reset();
        return best_order(without, can_bend, progress);
    }
    const OrderGraph graph(question, can_bend);
    Watch watch(progress);
    const bool exact = graph.bends() <= most_bends_proven;
    GraphPath path = exact ? least_path(graph, watch) : good_path(graph, watch);
    if (watch.stopped()) return Cancelled{};
    if (!path.whole) return no_order(question, can_bend, path);
    return OrderFound{path.placings, graph.costs().of(path.placings), path.proven};
}

bool Watch::go_on(double share, double until) {
    if (stopped_ || !progress_) return !stopped_;
    told_ = std::max(told_, from_ + std::clamp(share, 0.0, 1.0) * (until - from_));
    stopped_ = !progress_(told_);
    return !stopped_;
}

OrderGraph::OrderGraph(const OrderQuestion& question, const CanBend& can_bend)
    : question_(question), can_bend_(can_bend), costs_(question.layout, question.weights, question.hand), bends_(costs_.bends()) {
    for (Turn before = 0; before < turns(); ++before)
        for (Turn turn = 0; turn < turns(); ++turn) between_.push_back(costs_.between(placing(before), placing(turn)).total());
    const auto rank_of = [&](std::size_t bend) {
        const auto found = std::find(bends_.begin(), bends_.end(), bend);
        assert(found != bends_.end());  // best_order() lets nothing else through
        return static_cast<std::size_t>(found - bends_.begin());
    };
    for (const Placing& placing : question.wish.begun.value_or(std::vector<Placing>{})) begun_.push_back(2 * rank_of(placing.bend) + (placing.hook == End::B));
    for (const std::size_t bend : question.wish.opening) opening_.push_back(rank_of(bend));
    same_count_ = bends_.size() == question.layout.part.bends.size();
}

Made OrderGraph::in_part(Made made) const {
    if (same_count_) return made;
    Made result = 0;
    for (std::size_t rank = 0; rank < bends_.size(); ++rank)
        if (made & bend_bit(rank)) result |= bend_bit(bends_[rank]);
    return result;
}

bool OrderGraph::wished(Made made, Turn turn) const {
    Made opened = 0;
    for (const Turn begun : begun_) {
        if (made == opened) return begun == turn;
        const Made bit = bend_bit(begun / 2);
        if (!(made & bit)) return false;  // not how it was begun
        opened |= bit;
    }
    if (question_.wish.hook && placing(turn).hook != *question_.wish.hook) return false;
    for (const std::size_t rank : opening_) {
        if (made == opened) return rank == turn / 2;
        if (!(made & bend_bit(rank))) return false;  // no beginning that is wished leads here
        opened |= bend_bit(rank);
    }
    return true;
}

}  // namespace tubewright
