#include "bench/handling.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numbers>

#include "bench/hold.h"
#include "bench/stance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;
using When = Obstacle::When;

bool earlier(const Hit& a, const Hit& b) { return a.when != b.when ? a.when < b.when : a.t < b.t; }

}  // namespace

struct Handling::Works {
    Surroundings around;
    std::map<std::pair<std::size_t, End>, Hold> holds;

    Hold& hold(const Placing& placing) { return holds.try_emplace({placing.bend, placing.hook}, around, placing).first->second; }

    bool side_free(Hold& hold, bool hook_side, int node);
    bool path_free(Hold& hold, bool hook_side, int node);
    bool way_free(Hold& hold, bool hook_side, bool out, std::size_t way, int node, bool with_tail);
    bool any_way(Hold& hold, bool out, int hook, int lever);
    bool pair_free(Hold& hold, int hook, int lever);
    enum Part : std::uint8_t { paths = 0, hook_tail = 2, lever_tail = 4 };
    bool part_free(Hold& hold, Part part, int hook, int lever);
    bool part_found(Hold& hold, Part part, int hook, int lever);

    Obstacle told(const Hold& hold, const Hit& hit) const;
    std::size_t stretch_at(const Hold& hold, bool hook_side, double along) const;
    std::optional<Hit> first_hit(Hold& hold, const std::vector<Element>& hook, const std::vector<Element>& lever) const;
    Hit blocked_way(const Hold& hold, bool out, const std::vector<Element>& hook, const std::vector<Element>& lever) const;
};

// ---------------------------------------------------------------- what is found is kept

bool Handling::Works::path_free(Hold& hold, bool hook_side, int node) {
    TubeSide& side = hook_side ? hold.hook : hold.lever;
    if (side.at(node).path_free < 0) {
        const auto stop = [](const Hit&) { return true; };
        const SideNode& here = side.at(node);
        // What lies furthest out is the likeliest in the way.
        const bool free = side.at(here.parent).path_free != 0 &&
                          (hook_side ? !hold.hook_hits(here.arc, stop) && !hold.hook_hits(here.run, stop)
                                     : !hold.lever_hits(here.arc, stop) && !hold.lever_hits(here.run, stop)) &&
                          path_free(hold, hook_side, here.parent);
        side.at(node).path_free = free;
    }
    return side.at(node).path_free == 1;
}

bool Handling::Works::side_free(Hold& hold, bool hook_side, int node) {
    SideNode& here = (hook_side ? hold.hook : hold.lever).at(node);
    if (here.path_free == 0) return false;
    if (here.tail_free < 0) {
        const auto stop = [](const Hit&) { return true; };
        here.tail_free = hook_side ? !hold.hook_hits(here.tail, stop) : !hold.lever_hits(here.tail, stop);
    }
    return here.tail_free == 1 && path_free(hold, hook_side, node);
}

bool Handling::Works::way_free(Hold& hold, bool hook_side, bool out, std::size_t way, int node, bool with_tail) {
    SideNode& here = (hook_side ? hold.hook : hold.lever).at(node);
    WaysFound& found = here.ways[out][with_tail];
    const auto bit = static_cast<std::uint8_t>(1u << way);
    if (!(found.known & bit)) {
        found.known |= bit;
        const auto open = [&](const Element& element) { return !hold.way_hits(element, hook_side, out, way, [](const Hit&) { return true; }); };
        const bool free = with_tail ? way_free(hold, hook_side, out, way, node, false) && open(here.tail)
                                    : node == 0 || (way_free(hold, hook_side, out, way, here.parent, false) && open(here.run) && open(here.arc));
        if (free) found.free |= bit;
    }
    return found.free & bit;
}

bool Handling::Works::any_way(Hold& hold, bool out, int hook, int lever) {
    for (std::size_t way = 0; way < way_count; ++way)
        if (way_free(hold, true, out, way, hook, true) && way_free(hold, false, out, way, lever, true)) return true;
    return false;
}

bool Handling::Works::part_found(Hold& hold, Part part, int hook, int lever) {
    const auto stop = [](const Hit&) { return true; };
    const SideNode& h = hold.hook.at(hook);
    const SideNode& l = hold.lever.at(lever);
    const auto apart_from = [&](const Element& swept, const Element& lying) { return !hold.pair_hits(swept, lying, stop); };
    switch (part) {
        case paths:
            return part_free(hold, paths, h.parent, lever) && part_free(hold, paths, hook, l.parent) && apart_from(l.run, h.run) &&
                   apart_from(l.run, h.arc) && apart_from(l.arc, h.run) && apart_from(l.arc, h.arc);
        case hook_tail: return part_free(hold, hook_tail, hook, l.parent) && apart_from(l.run, h.tail) && apart_from(l.arc, h.tail);
        case lever_tail: return part_free(hold, lever_tail, h.parent, lever) && apart_from(l.tail, h.run) && apart_from(l.tail, h.arc);
    }
    return false;
}

/// Made bends of both sides against each other; or the last straight of one side against those of the other.
bool Handling::Works::part_free(Hold& hold, Part part, int hook, int lever) {
    if ((part != hook_tail && hook == 0) || (part != lever_tail && lever == 0)) return true;
    const std::uint64_t key = static_cast<std::uint64_t>(hook) << 32 | static_cast<std::uint64_t>(lever);
    const auto known = static_cast<std::uint8_t>(1u << part), free = static_cast<std::uint8_t>(2u << part);
    if (const auto found = hold.pairs.find(key); found != hold.pairs.end() && (found->second & known)) return found->second & free;
    const bool is = part_found(hold, part, hook, lever);
    hold.pairs[key] |= static_cast<std::uint8_t>(known | (is ? free : 0));
    return is;
}

bool Handling::Works::pair_free(Hold& hold, int hook, int lever) {
    if (!part_free(hold, paths, hook, lever) || !part_free(hold, hook_tail, hook, lever) || !part_free(hold, lever_tail, hook, lever)) return false;
    return !hold.pair_hits(hold.lever.at(lever).tail, hold.hook.at(hook).tail, [](const Hit&) { return true; });
}

// ---------------------------------------------------------------- and told

std::size_t Handling::Works::stretch_at(const Hold& hold, bool hook_side, double along) const {
    const bool hook_a = hold.placing().hook == End::A, towards_b = hook_a != hook_side;
    const BendSpan& span = around.layout.spans[hold.placing().bend];
    const double start = hook_a ? span.start.mm : span.end.mm, place = towards_b ? start + along : start - along;
    std::size_t stretch = 0;
    for (const BendSpan& one : around.layout.spans) {
        if (place <= one.start.mm) break;
        stretch += place < one.end.mm ? 1 : 2;
        if (place < one.end.mm) break;
    }
    return stretch;
}

namespace {

/// Where on the capsule's line, as a share, it comes nearest.
template <class Gap>
double nearest_share(const Capsule& capsule, const Gap& gap) {
    constexpr int steps = 64;
    double best = 0, least = INFINITY;
    for (int i = 0; i <= steps; ++i) {
        const double share = static_cast<double>(i) / steps;
        const Vector3d place = capsule.a + share * (capsule.b - capsule.a);
        const double here = gap(Capsule{place, place, capsule.radius});
        if (here < least) least = here, best = share;
    }
    return best;
}

}  // namespace

Obstacle Handling::Works::told(const Hold& hold, const Hit& hit) const {
    Obstacle obstacle{hit.when, hit.solid, {}, 0, {hit.lever * 180 / std::numbers::pi}, {}};
    const auto apart = [&](const Capsule& here) { return hit.solid ? around.solids[*hit.solid].gap(here) : gap(here, hit.still->capsule); };
    // The rest of the motion in steps of half a degree or finer; of one that turns nothing, in as many.
    constexpr int steps = 360;
    const double rest = hit.when == When::laid_in && hit.motion.turn != 0 ? 0 : hit.motion.to - hit.t;
    double deepest = INFINITY;
    for (int i = 0; i <= (rest > 0 ? steps : 0); ++i)
        if (const auto here = moved(hit.motion, hit.piece.capsule, hit.t + rest * i / steps)) {
            const double there = apart(*here);
            if (there < deepest) deepest = there;
        }
    obstacle.depth = {std::max(0.0, -deepest)};
    if (const auto here = moved(hit.motion, hit.piece.capsule, hit.t)) {
        // Trimming moves the near end only.
        const double length = (hit.piece.capsule.b - hit.piece.capsule.a).norm(), kept = (here->b - here->a).norm();
        const double share = length > 0 ? 1 - kept / length * (1 - nearest_share(*here, apart)) : 0;
        obstacle.stretch = stretch_at(hold, hit.on_hook_side, std::lerp(hit.piece.from, hit.piece.to, share));
        if (hit.still) {
            const auto from_still = [&](const Capsule& ball) { return gap(ball, *here); };
            const double along = std::lerp(hit.still->from, hit.still->to, nearest_share(hit.still->capsule, from_still));
            obstacle.other = stretch_at(hold, hit.still_on_hook_side, along);
        }
    }
    return obstacle;
}

std::optional<Hit> Handling::Works::first_hit(Hold& hold, const std::vector<Element>& hook, const std::vector<Element>& lever) const {
    std::optional<Hit> first;
    const auto keep = [&](const Hit& hit) {
        if (!first || earlier(hit, *first)) first = hit;
        return false;
    };
    for (const Element& element : hook) hold.hook_hits(element, keep);
    for (const Element& element : lever) {
        hold.lever_hits(element, keep);
        for (const Element& other : hook) hold.pair_hits(element, other, keep);
    }
    return first;
}

/// Of the ways out, the one on which the tube comes furthest before it hits something; and what it hits.
Hit Handling::Works::blocked_way(const Hold& hold, bool out, const std::vector<Element>& hook, const std::vector<Element>& lever) const {
    std::optional<Hit> furthest;
    for (std::size_t way = 0; way < way_count; ++way) {
        std::optional<Hit> first;
        const auto keep = [&](const Hit& hit) {
            if (!first || hit.t < first->t) first = hit;
            return false;
        };
        for (const Element& element : hook) hold.way_hits(element, true, out, way, keep);
        for (const Element& element : lever) hold.way_hits(element, false, out, way, keep);
        if (first && (!furthest || first->t > furthest->t)) furthest = first;
    }
    assert(furthest);
    return *furthest;
}

// ---------------------------------------------------------------- the door

Length straight_needed(const Line& line, const Placing& placing, bool hook_side, bool runs_to_end) {
    const End end = hook_side ? placing.hook : other(placing.hook);
    return straight_needed(line.bender, hook_side, runs_to_end ? stack_length(line.end(end).fitting) : Length{});
}

Handling::Handling(const Layout& layout, Length od, const Bender& bender, const SetUp& set_up, const Springback& springback)
    : works_(std::make_unique<Works>()) {
    Surroundings& around = works_->around;
    around.layout = layout;
    around.springback = springback;
    around.tube_radius = od.mm / 2;
    around.form_radius = bender.radius.mm;
    around.hook_straight = bender.hook_straight.mm;
    around.lever_straight = bender.lever_straight.mm;
    around.share_stretched = bender.stretch;
    around.apart_along = std::numbers::pi * od.mm;
    const Stance stand = stance(set_up);
    Eigen::Matrix3d to_bender;
    to_bender << stand.axis.transpose(), stand.swing.transpose(), stand.normal.transpose();
    for (std::size_t i = 0; i < bender.body.size(); ++i) {
        const Solid& solid = bender.body[i];
        around.solids.emplace_back(solid.shape, solid.stands == Stands::bench ? to_bender : Eigen::Matrix3d(Eigen::Matrix3d::Identity()));
        around.standing[static_cast<std::size_t>(solid.stands)].push_back(i);
        around.extent = std::max(around.extent, around.solids.back().extent());
    }
}

Handling::Handling(Handling&&) noexcept = default;
Handling::~Handling() = default;

bool Handling::is_free(std::uint64_t made, const Placing& placing) {
    Works& works = *works_;
    Hold& hold = works.hold(placing);
    const int hook = hold.hook.node(hold.hook.mine(made)), lever = hold.lever.node(hold.lever.mine(made));
    // A bent tube seldom goes in where it does not come out: out is asked first.
    return works.side_free(hold, true, hook) && works.side_free(hold, false, lever) && works.pair_free(hold, hook, lever) &&
           works.any_way(hold, true, hook, lever) && works.any_way(hold, false, hook, lever);
}

std::optional<Obstacle> Handling::obstacle(std::uint64_t made, const Placing& placing) {
    if (is_free(made, placing)) return std::nullopt;
    Works& works = *works_;
    Hold& hold = works.hold(placing);
    const int hook_node = hold.hook.node(hold.hook.mine(made)), lever_node = hold.lever.node(hold.lever.mine(made));
    const std::vector<Element> hook = hold.hook.whole(hook_node), lever = hold.lever.whole(lever_node);
    if (const auto hit = works.first_hit(hold, hook, lever)) return works.told(hold, *hit);
    const bool out = works.any_way(hold, false, hook_node, lever_node);
    return works.told(hold, works.blocked_way(hold, out, hook, lever));
}

}  // namespace tubewright
