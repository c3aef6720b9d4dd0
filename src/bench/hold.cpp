#include "bench/hold.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;
using When = Obstacle::When;

const double slant = std::sqrt(0.5);

/// Where the tube comes from on each way, and goes to.
const std::array<Vector3d, way_count> ways{Vector3d(0, 0, 1), Vector3d(0, -1, 0), Vector3d(0, -slant, slant), Vector3d(0, 0, -1), Vector3d(0, -slant, -slant)};

const Motion at_rest{};

/// A ball around the element.
Capsule ball(const Element& element, double tube_radius) { return {element.centre, element.centre, element.reach + tube_radius}; }

/// The part of the piece that lies at least this far from the bend's start; none where all of it is nearer.
std::optional<TubePiece> from_on(const TubePiece& piece, double from) {
    if (piece.from >= from) return piece;
    if (piece.to <= from) return std::nullopt;
    TubePiece rest = piece;
    rest.capsule.a += (from - piece.from) / (piece.to - piece.from) * (piece.capsule.b - piece.capsule.a);
    rest.from = from;
    return rest;
}

When when_in(double t) { return t > 0 ? When::swept : When::laid_in; }

}  // namespace

Hold::Hold(const Surroundings& around, const Placing& placing)
    : hook(around.layout, placing.bend, placing.hook, true), lever(around.layout, placing.bend, placing.hook, false), around_(&around), placing_(placing) {
    const Angle target = around.layout.part.bends[placing.bend].angle;
    const BendSpan& span = around.layout.spans[placing.bend];
    set_ = set_angle(around.springback, target).rad();
    target_ = target.rad();
    taken_ = (span.end - span.start).mm;
    const double radius = around.form_radius;
    const Vector3d rolled(radius * (1 - around.share_stretched), 0, 0);
    sweep_ = {1, rolled, radius, 0, set_};
    slide_ = {0, rolled, radius, 0, set_};
    pass_ = {-1, Vector3d::Zero(), radius, 0, set_};
    back_ = {-1, Vector3d::Zero(), radius, 0, std::min(set_, target_)};
    Element arc;
    arc.start.aside = Vector3d::UnitY();
    arc.angle = set_;
    arc.length = radius * set_;
    arc.to = taken_;
    arc_ = pieces(arc, around.tube_radius, radius);
}

/// One element against solids. A ball around it is looked at first.
bool Hold::hits(const Element& element, Stands stands, const Motion& motion, const OnContact& on_contact) const {
    if (element.length <= 0) return false;
    Motion of_ball = motion;
    of_ball.only_beyond = -std::numeric_limits<double>::infinity();
    const Capsule around = ball(element, around_->tube_radius);
    std::vector<TubePiece> cut;
    for (const std::size_t solid : around_->standing[static_cast<std::size_t>(stands)]) {
        const PlacedSolid& still = around_->solids[solid];
        if (surely_clear(around, still, motion) || !first_contact(around, still, of_ball)) continue;
        if (cut.empty()) cut = pieces(element, around_->tube_radius, around_->form_radius);
        for (const TubePiece& piece : cut)
            if (const auto t = first_contact(piece.capsule, still, motion))
                if (on_contact(solid, piece, *t)) return true;
    }
    return false;
}

/// The element once the bend is released: on the finished radius, opened to the angle wanted. Of a straight
/// in hand only what lies this far past the bend's end.
Element Hold::released(const Element& element, double beyond_end) const {
    Element there = beyond(element, taken_ + beyond_end);
    const Eigen::Matrix3d turn = Eigen::AngleAxisd(target_, Vector3d::UnitZ()).toRotationMatrix();
    const Vector3d centre(0, around_->layout.part.radius.mm, 0), before = centre + Vector3d(taken_, 0, 0);
    const auto come = [&](Vector3d& place) { place = centre + turn * (place - before); };
    come(there.start.at);
    come(there.centre);
    there.start.along = turn * there.start.along;
    there.start.aside = turn * there.start.aside;
    return there;
}

bool Hold::hook_hits(const Element& element, const OnHit& on_hit) const {
    const auto resting = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{When::laid_in, solid, {}, false, piece, true, at_rest, t, 0});
    };
    const auto passed = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{when_in(t), solid, {}, false, piece, true, pass_, t, t});
    };
    // Any bender lets a straight tube lie in it, however long: along its axis nothing fixed is in the way.
    return (!element.in_hand && hits(element, Stands::fixed, at_rest, resting)) || hits(element, Stands::bench, at_rest, resting) ||
           hits(beyond(element, around_->hook_straight), Stands::lever, pass_, passed) || (!element.in_hand && arc_hits(element, on_hit));
}

/// An element of the hook side against the arc that is being made, piece by piece as it comes to lie on the form.
bool Hold::arc_hits(const Element& element, const OnHit& on_hit) const {
    const Vector3d centre(0, around_->form_radius, 0);
    const double reach = element.reach + around_->form_radius + 2 * around_->tube_radius + tolerance::handling_room.mm + tolerance::handling_sagitta.mm;
    if ((element.centre - centre).norm() > reach) return false;
    for (const TubePiece& piece : pieces(element, around_->tube_radius, around_->form_radius))
        for (std::size_t i = 0; i < arc_.size(); ++i) {
            if (piece.from + arc_[i].from < around_->apart_along || !first_contact(piece.capsule, arc_[i].capsule, at_rest)) continue;
            const double laid = set_ * static_cast<double>(i) / static_cast<double>(arc_.size());
            if (on_hit(Hit{When::swept, {}, arc_[i], false, piece, true, at_rest, laid, laid})) return true;
        }
    return false;
}

bool Hold::lever_hits(const Element& element, const OnHit& on_hit) const {
    Motion sweep = sweep_, past_bench = sweep_;
    if (element.in_hand) sweep.only_beyond = around_->lever_straight, past_bench.only_beyond = 0;
    const auto with = [&](const Motion& motion) {
        return [&](std::size_t solid, const TubePiece& piece, double t) { return on_hit(Hit{when_in(t), solid, {}, false, piece, false, motion, t, t}); };
    };
    if (hits(element, Stands::fixed, sweep, with(sweep)) || hits(element, Stands::bench, past_bench, with(past_bench))) return true;
    if (element.in_hand) return false;  // it lies along the lever, and can't come to the arc
    const auto on_the_way_back = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{When::taken_out, solid, {}, false, piece, false, back_, t, t});
    };
    if (hits(element, Stands::lever, slide_, with(slide_)) || hits(released(element, 0), Stands::lever, back_, on_the_way_back)) return true;
    const Vector3d centre(0, around_->form_radius, 0);
    const Capsule moving = ball(element, around_->tube_radius);
    const Capsule whole_arc{centre, centre, around_->form_radius + around_->tube_radius + tolerance::handling_sagitta.mm};
    if (surely_clear(moving, whole_arc, sweep_) || !first_contact(moving, whole_arc, sweep_)) return false;
    Motion late = sweep_;
    for (const TubePiece& piece : pieces(element, around_->tube_radius, around_->form_radius))
        for (std::size_t i = 0; i < arc_.size(); ++i) {
            if (piece.from - arc_[i].to < around_->apart_along) continue;
            late.from = set_ * static_cast<double>(i) / static_cast<double>(arc_.size());
            if (const auto t = first_contact(piece.capsule, arc_[i].capsule, late))
                if (on_hit(Hit{When::swept, {}, arc_[i], false, piece, false, late, *t, *t})) return true;
        }
    return false;
}

bool Hold::pair_hits(const Element& lever_element, const Element& hook_element, const OnHit& on_hit) const {
    // Two straights on either side of the bend part from each other until they are parallel at half a turn.
    if (lever_element.in_hand && hook_element.in_hand && set_ <= std::numbers::pi) return false;
    const double radius = around_->tube_radius, apart = around_->apart_along;
    const Capsule moving = ball(lever_element, radius + tolerance::handling_sagitta.mm), still = ball(hook_element, radius + tolerance::handling_sagitta.mm);
    if (surely_clear(moving, still, sweep_) || !first_contact(moving, still, sweep_)) return false;
    Motion motion = sweep_;
    if (lever_element.in_hand) motion.only_beyond = 0;
    const auto look = [&](const std::optional<TubePiece>& swept, const std::optional<TubePiece>& lying) {
        if (!swept || !lying) return false;
        const auto t = first_contact(swept->capsule, lying->capsule, motion);
        return t && on_hit(Hit{when_in(*t), {}, *lying, true, *swept, false, motion, *t, *t});
    };
    const std::vector<TubePiece> lying = pieces(hook_element, radius, around_->form_radius);
    for (const TubePiece& p : pieces(lever_element, radius, around_->form_radius)) {
        if (!first_contact(p.capsule, still, motion)) continue;
        for (const TubePiece& q : lying) {
            // As in tube/clearance: places too near along the tube to have turned back are left out.
            const bool all = p.from >= apart || q.from >= apart;
            if (all ? look(p, q) : look(p, from_on(q, apart)) || look(from_on(p, apart), q)) return true;
        }
    }
    return false;
}

bool Hold::way_hits(const Element& element, bool hook_side, bool out, std::size_t way, const OnHit& on_hit) const {
    const bool opened = out && !hook_side;
    const Element all = opened ? released(element, 0) : element, free = opened ? released(element, around_->lever_straight) : element;
    Motion leaving;
    leaving.shift = -ways[way];
    leaving.to = 2 * (around_->extent + all.centre.norm() + all.reach) + around_->form_radius;
    const auto hit = [&](std::size_t solid, const TubePiece& piece, double t) {
        return on_hit(Hit{out ? When::taken_out : When::laid_in, solid, {}, false, piece, hook_side, leaving, t, opened ? target_ : 0});
    };
    return ((opened || !element.in_hand) && hits(free, Stands::fixed, leaving, hit)) || hits(all, Stands::bench, leaving, hit);
}

}  // namespace tubewright
