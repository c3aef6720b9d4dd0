#include "bench/handling.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <map>
#include <numbers>

#include "base/tolerance.h"
#include "bench/stance.h"
#include "bench/sweep.h"
#include "bench/tube_side.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;
using When = Obstacle::When;

const double slant = std::sqrt(0.5);

/// Where the tube may come from when it is laid in, and go to when it is taken out: straight, over its
/// whole length. From the side of the normal, from outside, from below, and between.
const std::array<Vector3d, 5> ways{Vector3d(0, 0, 1), Vector3d(0, -1, 0), Vector3d(0, -slant, slant), Vector3d(0, 0, -1), Vector3d(0, -slant, -slant)};

Motion at_rest() { return {}; }

/// A contact, with all that is needed to say how far it goes.
struct Hit {
    When when;
    std::optional<std::size_t> solid;
    std::optional<TubePiece> still;
    bool still_on_hook_side = false;
    TubePiece piece;
    bool on_hook_side;
    Motion motion;
    double t;
    double lever;  ///< radians
};

bool earlier(const Hit& a, const Hit& b) { return a.when != b.when ? a.when < b.when : a.t < b.t; }

/// Everything about one bend in hand with one end on the hook.
struct Hold {
    TubeSide hook, lever;
    std::size_t bend;
    End end;
    double set, target, taken;
    Motion sweep;   ///< of the lever side
    Motion slide;   ///< the lever side as seen from the lever
    Motion pass;    ///< the hook side as seen from the lever
    Motion back;    ///< the released lever side as seen from the lever that goes back
    std::vector<TubePiece> arc;    ///< of the bend in hand on the form
    std::unordered_map<std::uint64_t, std::uint8_t> pairs;
};

}  // namespace

struct Handling::Works {
    Layout layout;
    double tube_radius, form_radius, hook_straight, lever_straight, share_stretched, apart_along;
    Angle max_set;
    Springback springback;
    std::vector<PlacedSolid> solids;
    std::array<std::vector<std::size_t>, 3> standing;  ///< by Stands
    double extent = 0;
    std::map<std::pair<std::size_t, End>, Hold> holds;

    Hold& hold(const Placing& placing);

    // --- one element against solids; on_hit(solid, piece, t) says whether to stop
    template <class OnHit>
    bool hits(const Element& element, Stands stands, const Motion& motion, const OnHit& on_hit) const;

    template <class OnHit> bool hook_hits(const Hold& hold, const Element& element, const OnHit& on_hit) const;
    template <class OnHit> bool lever_hits(const Hold& hold, const Element& element, const OnHit& on_hit) const;
    template <class OnHit> bool pair_hits(const Hold& hold, const Element& lever, const Element& hook, const OnHit& on_hit) const;
    template <class OnHit> bool way_hits(const Hold& hold, const Element& element, bool hook_side, bool out, std::size_t way, const OnHit& on_hit) const;

    Element released(const Hold& hold, const Element& element, double beyond_end) const;

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

Hold& Handling::Works::hold(const Placing& placing) {
    const auto found = holds.find({placing.bend, placing.hook});
    if (found != holds.end()) return found->second;
    const Angle wanted = layout.part.bends[placing.bend].angle;
    Hold made{{layout, placing.bend, placing.hook, true}, {layout, placing.bend, placing.hook, false}, placing.bend, placing.hook,
              set_angle(springback, wanted).rad(), wanted.rad(), (layout.spans[placing.bend].end - layout.spans[placing.bend].start).mm, {}, {}, {}, {}, {}, {}};
    const Vector3d rolled(form_radius * (1 - share_stretched), 0, 0);
    made.sweep = {1, rolled, form_radius, 0, made.set};
    made.slide = {0, rolled, form_radius, 0, made.set};
    made.pass = {-1, Vector3d::Zero(), form_radius, 0, made.set};
    made.back = {-1, Vector3d::Zero(), form_radius, 0, std::min(made.set, made.target)};
    Element arc;
    arc.start.aside = Vector3d::UnitY();
    arc.angle = made.set;
    arc.length = form_radius * made.set;
    arc.to = made.taken;
    made.arc = pieces(arc, tube_radius, form_radius);
    return holds.emplace(std::pair{placing.bend, placing.hook}, std::move(made)).first->second;
}

template <class OnHit>
bool Handling::Works::hits(const Element& element, Stands stands, const Motion& motion, const OnHit& on_hit) const {
    const auto& these = standing[static_cast<std::size_t>(stands)];
    if (these.empty() || element.length <= 0) return false;
    Motion of_ball = motion;
    of_ball.only_beyond = -std::numeric_limits<double>::infinity();
    const Capsule ball{element.centre, element.centre, element.reach + tube_radius};
    std::vector<TubePiece> cut;
    for (const std::size_t solid : these) {
        if (surely_clear(ball, solids[solid], motion) || !first_contact(ball, solids[solid], of_ball)) continue;
        if (cut.empty()) cut = pieces(element, tube_radius, form_radius);
        for (const TubePiece& piece : cut)
            if (const auto t = first_contact(piece.capsule, solids[solid], motion))
                if (on_hit(solid, piece, *t)) return true;
    }
    return false;
}

/// The element once the bend is released: on the finished radius, opened to the angle wanted. Of a straight
/// in hand only what lies this far past the bend's end.
Element Handling::Works::released(const Hold& hold, const Element& element, double beyond_end) const {
    Element there = beyond(element, hold.taken + beyond_end);
    const Eigen::Matrix3d turn = Eigen::AngleAxisd(hold.target, Vector3d::UnitZ()).toRotationMatrix();
    const Vector3d centre(0, layout.part.radius.mm, 0), before = centre + Vector3d(hold.taken, 0, 0);
    const auto come = [&](Vector3d& place) { place = centre + turn * (place - before); };
    come(there.start.at);
    come(there.centre);
    there.start.along = turn * there.start.along;
    there.start.aside = turn * there.start.aside;
    return there;
}

template <class OnHit>
bool Handling::Works::hook_hits(const Hold& hold, const Element& element, const OnHit& on_hit) const {
    const Element free = beyond(element, hook_straight);
    const auto resting = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{When::laid_in, solid, {}, false, piece, true, at_rest(), t, 0});
    };
    // Any bender lets a straight tube lie in it, however long: along its axis nothing fixed is in the way.
    if ((!element.in_hand && hits(element, Stands::fixed, at_rest(), resting)) || hits(element, Stands::bench, at_rest(), resting)) return true;
    if (hits(free, Stands::lever, hold.pass, [&](std::size_t solid, const TubePiece& piece, double t) {
            return on_hit(Hit{t > 0 ? When::swept : When::laid_in, solid, {}, false, piece, true, hold.pass, t, t});
        }))
        return true;
    if (element.in_hand) return false;
    // The arc that is being made, piece by piece as it comes to lie on the form.
    std::vector<TubePiece> cut;
    const double radius = 2 * form_radius + tube_radius;  // a ball about the start that holds the arc
    if (element.centre.norm() - element.reach - tube_radius > radius + tolerance::handling_room.mm) return false;
    cut = pieces(element, tube_radius, form_radius);
    for (std::size_t i = 0; i < hold.arc.size(); ++i)
        for (const TubePiece& piece : cut) {
            const double laid = hold.set * static_cast<double>(i) / static_cast<double>(hold.arc.size());
            if (piece.from + hold.arc[i].from < apart_along) continue;
            if (first_contact(piece.capsule, hold.arc[i].capsule, at_rest()))
                if (on_hit(Hit{When::swept, {}, hold.arc[i], false, piece, true, at_rest(), laid, laid})) return true;
        }
    return false;
}

template <class OnHit>
bool Handling::Works::lever_hits(const Hold& hold, const Element& element, const OnHit& on_hit) const {
    Motion sweep = hold.sweep, past_bench = hold.sweep;
    if (element.in_hand) sweep.only_beyond = lever_straight, past_bench.only_beyond = 0;
    const auto with = [&](const Motion& motion) {
        return [&](std::size_t solid, const TubePiece& piece, double t) {
            return on_hit(Hit{t > 0 ? When::swept : When::laid_in, solid, {}, false, piece, false, motion, t, t});
        };
    };
    if (hits(element, Stands::fixed, sweep, with(sweep)) || hits(element, Stands::bench, past_bench, with(past_bench)) ||
        (!element.in_hand && hits(element, Stands::lever, hold.slide, with(hold.slide))))
        return true;
    if (element.in_hand) return false;
    if (!standing[static_cast<std::size_t>(Stands::lever)].empty() &&
        hits(released(hold, element, 0), Stands::lever, hold.back, [&](std::size_t solid, const TubePiece& piece, double t) {
            return on_hit(Hit{When::taken_out, solid, {}, false, piece, false, hold.back, t, t});
        }))
        return true;
    Motion late = hold.sweep;
    const Capsule ball{element.centre, element.centre, element.reach + tube_radius};
    const Capsule arc_ball{{0, form_radius, 0}, {0, form_radius, 0}, form_radius + tube_radius};
    if (surely_clear(ball, arc_ball, hold.sweep) || !first_contact(ball, arc_ball, hold.sweep)) return false;
    for (const TubePiece& piece : pieces(element, tube_radius, form_radius))
        for (std::size_t i = 0; i < hold.arc.size(); ++i) {
            if (piece.from - hold.arc[i].to < apart_along) continue;
            late.from = hold.set * static_cast<double>(i) / static_cast<double>(hold.arc.size());
            if (const auto t = first_contact(piece.capsule, hold.arc[i].capsule, late))
                if (on_hit(Hit{When::swept, {}, hold.arc[i], false, piece, false, late, *t, *t})) return true;
        }
    return false;
}

namespace {

/// The part of the piece that lies at least this far from the bend's start; none where all of it is nearer.
std::optional<TubePiece> from_on(const TubePiece& piece, double from) {
    if (piece.from >= from) return piece;
    if (piece.to <= from) return std::nullopt;
    TubePiece rest = piece;
    rest.capsule.a += (from - piece.from) / (piece.to - piece.from) * (piece.capsule.b - piece.capsule.a);
    rest.from = from;
    return rest;
}

}  // namespace

template <class OnHit>
bool Handling::Works::pair_hits(const Hold& hold, const Element& lever, const Element& hook, const OnHit& on_hit) const {
    // Two straights on either side of the bend part from each other until they are parallel at half a turn.
    if (lever.in_hand && hook.in_hand && hold.set <= std::numbers::pi) return false;
    const Capsule moving{lever.centre, lever.centre, lever.reach + tube_radius}, still{hook.centre, hook.centre, hook.reach + tube_radius};
    if (surely_clear(moving, still, hold.sweep) || !first_contact(moving, still, hold.sweep)) return false;
    Motion motion = hold.sweep;
    if (lever.in_hand) motion.only_beyond = 0;
    const auto look = [&](const std::optional<TubePiece>& swept, const std::optional<TubePiece>& lying) {
        if (!swept || !lying) return false;
        const auto t = first_contact(swept->capsule, lying->capsule, motion);
        return t && on_hit(Hit{*t > 0 ? When::swept : When::laid_in, {}, *lying, true, *swept, false, motion, *t, *t});
    };
    const std::vector<TubePiece> lying = pieces(hook, tube_radius, form_radius);
    for (const TubePiece& p : pieces(lever, tube_radius, form_radius)) {
        if (!first_contact(p.capsule, still, motion)) continue;
        for (const TubePiece& q : lying) {
            // As in tube/clearance: places too near along the tube to have turned back are left out.
            if (p.from >= apart_along || q.from >= apart_along) { if (look(p, q)) return true; }
            else if (look(p, from_on(q, apart_along)) || look(from_on(p, apart_along), q)) return true;
        }
    }
    return false;
}

template <class OnHit>
bool Handling::Works::way_hits(const Hold& hold, const Element& element, bool hook_side, bool out, std::size_t way, const OnHit& on_hit) const {
    Motion leaving;
    leaving.shift = -ways[way];
    const bool opened = out && !hook_side;
    const Element all = opened ? released(hold, element, 0) : element, free = opened ? released(hold, element, lever_straight) : element;
    leaving.to = 2 * (extent + free.centre.norm() + free.reach) + form_radius;
    const auto hit = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{out ? When::taken_out : When::laid_in, solid, {}, false, piece, hook_side, leaving, t, opened ? hold.target : 0});
    };
    return ((opened || !element.in_hand) && hits(free, Stands::fixed, leaving, hit)) || hits(all, Stands::bench, leaving, hit);
}

// ---------------------------------------------------------------- what is found is kept

bool Handling::Works::path_free(Hold& hold, bool hook_side, int node) {
    TubeSide& side = hook_side ? hold.hook : hold.lever;
    if (side.at(node).path_free < 0) {
        const auto stop = [](const Hit&) { return true; };
        const bool free = path_free(hold, hook_side, side.at(node).parent) &&
                          (hook_side ? !hook_hits(hold, side.at(node).run, stop) && !hook_hits(hold, side.at(node).arc, stop)
                                     : !lever_hits(hold, side.at(node).run, stop) && !lever_hits(hold, side.at(node).arc, stop));
        side.at(node).path_free = free;
    }
    return side.at(node).path_free == 1;
}

bool Handling::Works::side_free(Hold& hold, bool hook_side, int node) {
    if (!path_free(hold, hook_side, node)) return false;
    SideNode& here = (hook_side ? hold.hook : hold.lever).at(node);
    if (here.tail_free < 0) {
        const auto stop = [](const Hit&) { return true; };
        here.tail_free = hook_side ? !hook_hits(hold, here.tail, stop) : !lever_hits(hold, here.tail, stop);
    }
    return here.tail_free == 1;
}

bool Handling::Works::way_free(Hold& hold, bool hook_side, bool out, std::size_t way, int node, bool with_tail) {
    SideNode& here = (hook_side ? hold.hook : hold.lever).at(node);
    WaysFound& found = here.ways[out][with_tail];
    const auto bit = static_cast<std::uint8_t>(1u << way);
    if (!(found.known & bit)) {
        found.known |= bit;
        const auto open = [&](const Element& element) { return !way_hits(hold, element, hook_side, out, way, [](const Hit&) { return true; }); };
        const bool free = with_tail ? way_free(hold, hook_side, out, way, node, false) && open(here.tail)
                                    : node == 0 || (way_free(hold, hook_side, out, way, here.parent, false) && open(here.run) && open(here.arc));
        if (free) found.free |= bit;
    }
    return found.free & bit;
}

bool Handling::Works::any_way(Hold& hold, bool out, int hook, int lever) {
    for (std::size_t way = 0; way < ways.size(); ++way)
        if (way_free(hold, true, out, way, hook, true) && way_free(hold, false, out, way, lever, true)) return true;
    return false;
}

bool Handling::Works::part_found(Hold& hold, Part part, int hook, int lever) {
    const auto stop = [](const Hit&) { return true; };
    const SideNode& h = hold.hook.at(hook);
    const SideNode& l = hold.lever.at(lever);
    const auto apart_from = [&](const Element& swept, const Element& lying) { return !pair_hits(hold, swept, lying, stop); };
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
    return !pair_hits(hold, hold.lever.at(lever).tail, hold.hook.at(hook).tail, [](const Hit&) { return true; });
}

// ---------------------------------------------------------------- and told

std::size_t Handling::Works::stretch_at(const Hold& hold, bool hook_side, double along) const {
    const bool towards_b = (hold.end == End::A) != hook_side;
    const BendSpan& span = layout.spans[hold.bend];
    const double start = hold.end == End::A ? span.start.mm : span.end.mm, place = towards_b ? start + along : start - along;
    std::size_t stretch = 0;
    for (const BendSpan& one : layout.spans) {
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
    const auto apart = [&](const Capsule& here) { return hit.solid ? solids[*hit.solid].gap(here) : gap(here, hit.still->capsule); };
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
    for (const Element& element : hook) hook_hits(hold, element, keep);
    for (const Element& element : lever) {
        lever_hits(hold, element, keep);
        for (const Element& other : hook) pair_hits(hold, element, other, keep);
    }
    return first;
}

/// Of the ways out, the one on which the tube comes furthest before it hits something; and what it hits.
Hit Handling::Works::blocked_way(const Hold& hold, bool out, const std::vector<Element>& hook, const std::vector<Element>& lever) const {
    std::optional<Hit> furthest;
    for (std::size_t way = 0; way < ways.size(); ++way) {
        std::optional<Hit> first;
        const auto keep = [&](const Hit& hit) {
            if (!first || hit.t < first->t) first = hit;
            return false;
        };
        for (const Element& element : hook) way_hits(hold, element, true, out, way, keep);
        for (const Element& element : lever) way_hits(hold, element, false, out, way, keep);
        if (first && (!furthest || first->t > furthest->t)) furthest = first;
    }
    assert(furthest);
    return *furthest;
}

// ---------------------------------------------------------------- the door

Length straight_needed(const Line& line, const Placing& placing, bool hook_side, bool runs_to_end) {
    const Length held = hook_side ? line.bender.hook_straight : line.bender.lever_straight;
    const End end = hook_side ? placing.hook : other(placing.hook);
    return runs_to_end ? held + stack_length(line.end(end).fitting) : held;
}

Handling::Handling(const Layout& layout, Length od, const Bender& bender, const SetUp& set_up, const Springback& springback)
    : works_(std::make_unique<Works>()) {
    works_->layout = layout;
    works_->tube_radius = od.mm / 2;
    works_->form_radius = bender.radius.mm;
    works_->hook_straight = bender.hook_straight.mm;
    works_->lever_straight = bender.lever_straight.mm;
    works_->share_stretched = bender.stretch;
    works_->apart_along = std::numbers::pi * od.mm;
    works_->springback = springback;
    const Stance stand = stance(set_up);
    Eigen::Matrix3d to_bender;
    to_bender << stand.axis.transpose(), stand.swing.transpose(), stand.normal.transpose();
    for (std::size_t i = 0; i < bender.body.size(); ++i) {
        const Solid& solid = bender.body[i];
        works_->solids.emplace_back(solid.shape, solid.stands == Stands::bench ? to_bender : Eigen::Matrix3d(Eigen::Matrix3d::Identity()));
        works_->standing[static_cast<std::size_t>(solid.stands)].push_back(i);
        works_->extent = std::max(works_->extent, works_->solids.back().extent());
    }
}

Handling::Handling(Handling&&) noexcept = default;
Handling::~Handling() = default;

bool Handling::is_free(std::uint64_t made, const Placing& placing) {
    Works& works = *works_;
    Hold& hold = works.hold(placing);
    const int hook = hold.hook.node(hold.hook.mine(made)), lever = hold.lever.node(hold.lever.mine(made));
    return works.side_free(hold, true, hook) && works.side_free(hold, false, lever) && works.pair_free(hold, hook, lever) &&
           works.any_way(hold, false, hook, lever) && works.any_way(hold, true, hook, lever);
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
