#include "bench/tube_side.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <bit>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

void cut_up(std::vector<TubePiece>& found, const TubePiece& piece, double form_radius) {
    const Vector3d middle = (piece.capsule.a + piece.capsule.b) / 2;
    const double half = (piece.capsule.b - piece.capsule.a).norm() / 2;
    if (half <= std::max(2 * form_radius, middle.norm() / 2)) {
        found.push_back(piece);
        return;
    }
    const double between = (piece.from + piece.to) / 2;
    cut_up(found, {{piece.capsule.a, middle, piece.capsule.radius}, piece.from, between}, form_radius);
    cut_up(found, {{middle, piece.capsule.b, piece.capsule.radius}, between, piece.to}, form_radius);
}

Vector3d on_arc(const Element& arc, double turned) {
    const double radius = arc.length / arc.angle;
    return arc.start.at + radius * (std::sin(turned) * arc.start.along + (1 - std::cos(turned)) * arc.start.aside);
}

Element arc_of(const Frame& start, double radius, double angle, double from, double to) {
    Element arc;
    arc.start = start;
    arc.length = radius * angle;
    arc.angle = angle;
    arc.from = from;
    arc.to = to;
    // The ball about the middle of the chord; past half a turn, about the centre.
    if (angle <= std::numbers::pi) {
        arc.centre = (start.at + on_arc(arc, angle)) / 2;
        arc.reach = std::max(radius * std::sin(angle / 2), radius * (1 - std::cos(angle / 2)));
    } else {
        arc.centre = start.at + radius * start.aside;
        arc.reach = radius;
    }
    return arc;
}

}  // namespace

std::vector<TubePiece> pieces(const Element& element, double tube_radius, double form_radius) {
    std::vector<TubePiece> found;
    if (element.angle == 0) {
        cut_up(found, {{element.start.at, element.start.at + element.length * element.start.along, tube_radius}, element.from, element.to}, form_radius);
        return found;
    }
    // sagitta = R (1 - cos(a/2))  =>  a = 2 acos(1 - sagitta/R)
    const double sagitta = tolerance::handling_sagitta.mm, radius = element.length / element.angle;
    const int count = std::max(1, static_cast<int>(std::ceil(element.angle / (2 * std::acos(std::clamp(1 - sagitta / radius, 0.0, 1.0))))));
    const auto share = [&](int i) { return static_cast<double>(i) / count; };
    Vector3d last = element.start.at;
    for (int i = 1; i <= count; ++i) {
        const Vector3d next = on_arc(element, share(i) * element.angle);
        found.push_back({{last, next, tube_radius + sagitta}, std::lerp(element.from, element.to, share(i - 1)), std::lerp(element.from, element.to, share(i))});
        last = next;
    }
    return found;
}

Element beyond(const Element& element, double length) {
    if (!element.in_hand || length <= element.from) return element;
    Element rest = element;
    const double less = std::min(length - element.from, element.length);
    rest.start.at += less * element.start.along;
    rest.length -= less;
    rest.from += less;
    rest.centre = rest.start.at + rest.length / 2 * rest.start.along;
    rest.reach = rest.length / 2;
    return rest;
}

TubeSide::TubeSide(const Layout& layout, std::size_t bend, End hook, bool hook_side)
    : layout_(&layout), bend_(bend), towards_b_((hook == End::A) != hook_side) {
    const BendSpan& span = layout.spans[bend];
    start_ = hook == End::A ? span.start.mm : span.end.mm;
    whole_ = towards_b_ ? layout.cut_length.mm - start_ : start_;
    for (std::size_t i = 0; i < layout.spans.size() && i < 64; ++i)
        if (i != bend && (i > bend) == towards_b_ && is_made(layout.part.bends[i])) mask_ |= std::uint64_t{1} << i;
    SideNode root;
    Frame tangent;
    tangent.along = hook_side ? -Vector3d::UnitX() : Vector3d(Vector3d::UnitX());
    root.tail = straight(tangent, 0, whole_);
    root.path_free = 1;
    root.tail.in_hand = true;
    nodes_.push_back(root);
    known_[0] = 0;
}

double TubeSide::outwards(std::size_t bend, bool far_side) const {
    const BendSpan& span = layout_->spans[bend];
    const double place = (far_side == towards_b_ ? span.end : span.start).mm;
    return towards_b_ ? place - start_ : start_ - place;
}

Element TubeSide::straight(const Frame& start, double from, double to) const {
    Element run;
    run.start = start;
    run.length = std::max(0.0, to - from);
    run.from = from;
    run.to = from + run.length;
    run.centre = start.at + run.length / 2 * start.along;
    run.reach = run.length / 2;
    return run;
}

int TubeSide::node(std::uint64_t made) {
    if (const auto found = known_.find(made); found != known_.end()) return found->second;
    const auto outermost = static_cast<std::size_t>(towards_b_ ? 63 - std::countl_zero(made) : std::countr_zero(made));
    SideNode node;
    node.parent = this->node(made & ~(std::uint64_t{1} << outermost));
    const Element& before = at(node.parent).tail;
    node.run = straight(before.start, before.from, outwards(outermost, false));
    node.run.in_hand = before.in_hand;
    Frame here = gone_straight(before.start, {node.run.length});
    // Which side the bend turns to, against the bend in hand, which turns to the swing. Walking from B to A
    // the same side lies at the opposite turn about the way gone.
    Angle direction = direction_in_section(layout_->part, outermost) - direction_in_section(layout_->part, bend_);
    if (!towards_b_) direction = -direction;
    const Frame after = gone_round(here, layout_->part.radius, layout_->part.bends[outermost].angle, direction);
    here.aside = side(here, direction);
    const double far = outwards(outermost, true);
    node.arc = arc_of(here, layout_->part.radius.mm, layout_->part.bends[outermost].angle.rad(), node.run.to, far);
    node.tail = straight(after, far, whole_);
    nodes_.push_back(node);
    return known_[made] = static_cast<int>(nodes_.size()) - 1;
}

std::vector<Element> TubeSide::whole(int node) const {
    std::vector<Element> all{nodes_[static_cast<std::size_t>(node)].tail};
    for (int i = node; i > 0; i = nodes_[static_cast<std::size_t>(i)].parent) {
        all.push_back(nodes_[static_cast<std::size_t>(i)].arc);
        all.push_back(nodes_[static_cast<std::size_t>(i)].run);
    }
    std::reverse(all.begin(), all.end());
    return all;
}

}  // namespace tubewright
