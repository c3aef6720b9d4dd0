#include "bench/order.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// The nearest bends already made on either side of one that is to be made.
struct MadeAround {
    std::optional<std::size_t> towards_a, towards_b;
    void learn(std::size_t made, std::size_t bend) {
        if (made < bend) towards_a = towards_a ? std::max(*towards_a, made) : made;
        if (made > bend) towards_b = towards_b ? std::min(*towards_b, made) : made;
    }
};

Room room_at(const Layout& layout, const MadeAround& made, const Placing& placing) {
    const BendSpan& span = layout.spans[placing.bend];
    const bool open_a = !made.towards_a, open_b = !made.towards_b;
    const Length towards_a = span.start - (open_a ? Length{} : layout.spans[*made.towards_a].end);
    const Length towards_b = (open_b ? layout.cut_length : layout.spans[*made.towards_b].start) - span.end;
    if (placing.hook == End::A) return {towards_a, towards_b, open_a, open_b};
    return {towards_b, towards_a, open_b, open_a};
}

Length missing(const Room& room, const Bender& bender) {
    const auto lack = [](Length has, Length needs) {
        return needs - has > tolerance::straight_slack ? needs - has : Length{};
    };
    return lack(room.hook, bender.hook_straight) + lack(room.lever, bender.lever_straight);
}

/// Bends from `start` outward to one end, then from `start` to the other. While going towards B the
/// formed part lies on A's side, so A's side is held; and the other way round.
std::vector<Placing> outward(const std::vector<std::size_t>& bends, std::size_t start, End first) {
    std::vector<Placing> order;
    const auto to_b = [&](std::size_t from) { for (std::size_t i = from; i < bends.size(); ++i) order.push_back({bends[i], End::A}); };
    const auto to_a = [&](std::size_t from) { for (std::size_t i = from; i-- > 0;) order.push_back({bends[i], End::B}); };
    if (first == End::B) { to_b(start); to_a(start); }
    else { to_a(start + 1); to_b(start + 1); }
    return order;
}

/// Held by the end that it was given, unless the other one lacks less.
struct Held {
    Placing placing;
    Length lack;
};
Held held(const Layout& layout, const Bender& bender, const MadeAround& made, const Placing& placing) {
    const Placing turned{placing.bend, other(placing.hook)};
    const Length lack = missing(room_at(layout, made, placing), bender);
    const Length lack_turned = missing(room_at(layout, made, turned), bender);
    return {lack_turned + tolerance::straight_slack < lack ? turned : placing, std::min(lack, lack_turned)};
}

/// A start, and which end comes first.
struct Candidate {
    std::size_t start;
    End first;
    Length lack, off_middle;
};

/// 1: a is better, -1: b is, 0: neither.
int compared(const Candidate& a, const Candidate& b) {
    for (const auto what : {&Candidate::lack, &Candidate::off_middle})
        if (std::abs((a.*what - b.*what).mm) > tolerance::straight_slack.mm) return a.*what < b.*what ? 1 : -1;
    return 0;
}

/// Going outward the only made bend that a bend has next to it is the one before it on its way: what it lacks
/// doesn't depend on the start, and is worked out once for all.
std::vector<Candidate> candidates(const Layout& layout, const Bender& bender, const std::vector<std::size_t>& bends) {
    const std::size_t count = bends.size();
    std::vector<Length> below(count + 1), above(count + 1);  // what all bends before this one lack going to A; from this one on, going to B
    for (std::size_t i = 0; i + 1 < count; ++i) below[i + 1] = below[i] + held(layout, bender, {std::nullopt, bends[i + 1]}, {bends[i], End::B}).lack;
    for (std::size_t i = count; i-- > 1;) above[i] = above[i + 1] + held(layout, bender, {bends[i - 1], std::nullopt}, {bends[i], End::A}).lack;
    std::vector<Candidate> all;
    for (std::size_t start = 0; start < count; ++start) {
        const BendSpan& span = layout.spans[bends[start]];
        const Length off_middle{std::abs((span.start + span.end - layout.cut_length).mm) / 2};
        for (const End first : {End::B, End::A}) {
            const Length alone = held(layout, bender, {}, {bends[start], other(first)}).lack;
            all.push_back({start, first, alone + below[start] + above[start + 1], off_middle});
        }
    }
    return all;
}

std::vector<Placing> order_of(const Layout& layout, const Bender& bender, const std::vector<std::size_t>& bends, const Candidate& candidate) {
    std::vector<Placing> order = outward(bends, candidate.start, candidate.first);
    // The made bends are neighbours: the first and the last of them tell of all.
    std::size_t first = order.front().bend, last = first;
    for (Placing& placing : order) {
        MadeAround made;
        made.learn(first, placing.bend);
        made.learn(last, placing.bend);
        placing = held(layout, bender, made, placing).placing;
        first = std::min(first, placing.bend);
        last = std::max(last, placing.bend);
    }
    return order;
}

int swaps(const std::vector<Placing>& order) {
    int count = 0;
    for (std::size_t i = 1; i < order.size(); ++i) count += order[i].hook != order[i - 1].hook;
    return count;
}

}  // namespace

bool is_made(const Bend& bend) { return bend.angle >= tolerance::no_bend; }

std::optional<std::size_t> next_towards(const Part& part, std::size_t bend, End end) {
    if (end == End::B) {
        for (std::size_t i = bend + 1; i < part.bends.size(); ++i)
            if (is_made(part.bends[i])) return i;
    } else {
        for (std::size_t i = bend; i-- > 0;)
            if (is_made(part.bends[i])) return i;
    }
    return std::nullopt;
}

Length straight_needed(const Bender& bender, bool hook_side, Length pieces_at_end) {
    return (hook_side ? bender.hook_straight : bender.lever_straight) + pieces_at_end;
}

bool leg_has_side(const Bend& bend) { return std::abs(std::sin(bend.angle.rad())) >= std::sin(tolerance::same_direction.rad()); }

std::optional<std::size_t> turned_against(const Part& part, const std::vector<bool>& made, const Placing& placing) {
    for (const End end : {placing.hook, other(placing.hook)}) {
        const auto bend = next_towards(part, placing.bend, end);
        if (bend && made[*bend] && leg_has_side(part.bends[*bend])) return bend;
    }
    return std::nullopt;
}

Room room_for(const Layout& layout, const std::vector<Placing>& order, std::size_t step) {
    MadeAround made;
    for (std::size_t i = 0; i < step; ++i) made.learn(order[i].bend, order[step].bend);
    return room_at(layout, made, order[step]);
}

std::vector<Placing> default_order(const Layout& layout, const Bender& bender) {
    std::vector<std::size_t> bends;
    for (std::size_t i = 0; i < layout.part.bends.size(); ++i)
        if (is_made(layout.part.bends[i])) bends.push_back(i);
    if (bends.empty()) return {};
    const std::vector<Candidate> all = candidates(layout, bender, bends);
    const Candidate& best = *std::max_element(all.begin(), all.end(), [](const Candidate& a, const Candidate& b) { return compared(b, a) > 0; });
    std::vector<Placing> order;
    for (const Candidate& candidate : all) {
        if (compared(candidate, best) != 0) continue;
        std::vector<Placing> one = order_of(layout, bender, bends, candidate);
        if (order.empty() || swaps(one) < swaps(order)) order = std::move(one);
    }
    return order;
}

}  // namespace tubewright
