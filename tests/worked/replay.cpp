#include "worked/replay.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "bench/stance.h"

namespace bench_world {
namespace {

using namespace tubewright;
using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double degree = std::numbers::pi / 180;
constexpr double spacing = 2;  ///< between neighbouring points, mm

// ---------------------------------------------------------------- places and solids

/// Outside minus inside: how far a place is from the surface. In the solid's own axes.
double from_surface(const Block& box, const Vector3d& place) {
    double outside = 0, inside = -1e9;
    for (int i = 0; i < 3; ++i) {
        const double low = std::min(box.from[i], box.to[i]) - place[i], high = place[i] - std::max(box.from[i], box.to[i]);
        const double out = std::max(low, high);
        outside += std::pow(std::max(out, 0.0), 2);
        inside = std::max(inside, out);
    }
    return inside > 0 ? std::sqrt(outside) : inside;
}

double from_surface(const Cylinder& cylinder, const Vector3d& place) {
    const Vector3d axis = (cylinder.to - cylinder.from).normalized(), from = place - cylinder.from;
    const double along = axis.dot(from), aside = (from - along * axis).norm() - cylinder.radius.mm;
    const double beyond = std::max(-along, along - (cylinder.to - cylinder.from).norm());
    if (aside > 0 && beyond > 0) return std::hypot(aside, beyond);
    return std::max(aside, beyond);
}

double from_surface(const HalfSpace& space, const Vector3d& place) { return -space.into.normalized().dot(place - space.at); }

double from_surface(const Solid& solid, const Vector3d& place) {
    return std::visit([&](const auto& shape) { return from_surface(shape, place); }, solid.shape);
}

// ---------------------------------------------------------------- the tube in points

enum class Side { hook, arc, lever };

struct Point {
    Vector3d at;
    double along;  ///< of the tube, from the bend's start outwards
    double past;   ///< the bend in hand: 0 on the arc, else from its start or end
    Side side;
    bool in_hand;  ///< on the straight that adjoins the bend in hand, or on its arc
};

/// The finger that walks along the tube: where it is, which way it goes, and where the swing's side has come to.
struct Finger {
    Vector3d at, ahead, swing;
};

/// With the lever at some angle, on the form or released. Lengths in mm, angles in radians.
struct Curve {
    double arc_radius, arc_angle, arc_takes;
};

class Tube {
public:
    Tube(const Layout& laid, std::uint64_t made, const Placing& placing) : laid_(laid), made_(made), now_(placing.bend), hook_a_(placing.hook == End::A) {
        for (const Bend& bend : laid.part.bends) sides_.push_back((sides_.empty() ? 0 : sides_.back()) + (sides_.empty() ? 0 : bend.rotation.rad()));
    }

    double taken() const { return (laid_.spans[now_].end - laid_.spans[now_].start).mm; }

    std::vector<Point> points(const Curve& shape) const {
        std::vector<Point> all;
        walk(all, {{0, 0, 0}, {-1, 0, 0}, {0, 1, 0}}, Side::hook, 0);
        const double t = shape.arc_angle, r = shape.arc_radius;
        const int steps = static_cast<int>(r * t / spacing) + 1;
        for (int i = 0; i <= steps; ++i) {
            const double here = t * i / steps;
            all.push_back({{r * std::sin(here), r * (1 - std::cos(here)), 0}, shape.arc_takes * i / steps, 0, Side::arc, true});
        }
        const Vector3d ahead(std::cos(t), std::sin(t), 0), swing(-std::sin(t), std::cos(t), 0);
        walk(all, {{r * std::sin(t), r * (1 - std::cos(t)), 0}, ahead, swing}, Side::lever, shape.arc_takes);
        return all;
    }

    /// Straight tube from the bend's start (hook) or end (lever) to the next made bend or the tube's end.
    double straight(Side side) const {
        double from = side == Side::hook ? 0 : taken(), least = whole(side) - from;
        for (const auto& [bend, start] : ahead_of(side)) least = std::min(least, start - from);
        return least;
    }

private:
    bool towards_b(Side side) const { return hook_a_ == (side == Side::lever); }
    double start() const { return (hook_a_ ? laid_.spans[now_].start : laid_.spans[now_].end).mm; }
    double whole(Side side) const { return towards_b(side) ? laid_.cut_length.mm - start() : start(); }

    /// Made bends on that side with the distance from the bend's start to each one's near end, in walking order.
    std::vector<std::pair<std::size_t, double>> ahead_of(Side side) const {
        std::vector<std::pair<std::size_t, double>> found;
        for (std::size_t i = 0; i < laid_.spans.size(); ++i) {
            if (!(made_ >> i & 1) || (towards_b(side) ? i <= now_ : i >= now_)) continue;
            found.emplace_back(i, towards_b(side) ? laid_.spans[i].start.mm - start() : start() - laid_.spans[i].end.mm);
        }
        std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
        return found;
    }

    void walk(std::vector<Point>& all, Finger finger, Side side, double gone) const {
        const double past_from = side == Side::hook ? 0 : gone;
        bool in_hand = true;
        const auto straight_to = [&](double until) {
            const int steps = std::max(1, static_cast<int>((until - gone) / spacing) + 1);
            for (int i = 0; i < steps; ++i) {
                const double on = (until - gone) * i / steps;
                all.push_back({finger.at + on * finger.ahead, gone + on, gone + on - past_from, side, in_hand});
            }
            finger.at += (until - gone) * finger.ahead;
            gone = until;
        };
        for (const auto& [bend, near] : ahead_of(side)) {
            straight_to(near);
            in_hand = false;
            const double angle = laid_.part.bends[bend].angle.rad(), r = laid_.part.radius.mm, takes = (laid_.spans[bend].end - laid_.spans[bend].start).mm;
            // Its side in the section, counted about the way from A to B.
            const double turned = (towards_b(side) ? 1 : -1) * (sides_[bend] - sides_[now_]);
            const Vector3d inwards = Eigen::AngleAxisd(turned, finger.ahead) * finger.swing, axis = finger.ahead.cross(inwards);
            const Vector3d centre = finger.at + r * inwards, spoke = finger.at - centre;
            const int steps = static_cast<int>(r * angle / spacing) + 1;
            for (int i = 0; i < steps; ++i)
                all.push_back({centre + Eigen::AngleAxisd(angle * i / steps, axis) * spoke, gone + takes * i / steps, gone + takes * i / steps - past_from, side, false});
            const Matrix3d turn = Eigen::AngleAxisd(angle, axis).toRotationMatrix();
            finger = {centre + turn * spoke, turn * finger.ahead, turn * finger.swing};
            gone += takes;
        }
        straight_to(whole(side));
        all.push_back({finger.at, gone, gone - past_from, side, in_hand});
    }

    const Layout& laid_;
    std::uint64_t made_;
    std::size_t now_;
    bool hook_a_;
    std::vector<double> sides_;  ///< of each bend in the section, radians from the index line
};

// ---------------------------------------------------------------- the tube at the bender

class AtBender {
public:
    AtBender(const Sheet& sheet, std::uint64_t made, const Placing& placing) : bender_(sheet.line.bender), tube_radius_(sheet.line.tube.od.mm / 2), tube_(*sheet.layout, made, placing) {
        const Stance stand = stance(sheet.set_up);
        to_operator_ << stand.axis, stand.swing, stand.normal;
        const Angle target = sheet.layout->part.bends[placing.bend].angle;
        set_ = set_angle(sheet.springback, target).rad();
        target_ = target.rad();
        finished_radius_ = sheet.layout->part.radius.mm;
    }

    Replay look(double room) const {
        Replay result{tube_.straight(Side::hook), tube_.straight(Side::lever)};
        const int moments = static_cast<int>(set_ / degree) + 1;
        for (int i = 0; i <= moments; ++i) {
            const double lever = set_ * i / moments;
            const std::vector<Point> points = tube_.points(on_form(lever));
            for (const Solid& solid : bender_.body) closer(result, solid, points, lever, false);
            if (i % 3 == 0 || i == moments) result.own_gap = std::min(result.own_gap, own_gap(points));
        }
        const std::vector<Point> opened = tube_.points(released());
        for (int i = moments; i >= 0; --i)
            for (const Solid& solid : bender_.body)
                if (solid.stands == Stands::lever) closer(result, solid, opened, std::min(set_, target_) * i / moments, true);
        result.comes_in = some_way(tube_.points(on_form(0)), room, false);
        result.goes_out = some_way(opened, room, true);
        return result;
    }

private:
    Curve on_form(double lever) const { return {bender_.radius.mm, lever, bender_.radius.mm * lever * (1 - bender_.stretch)}; }
    Curve released() const { return {finished_radius_, target_, tube_.taken()}; }

    /// What the bender is made to hold, and what any bender lets lie along it.
    bool meant_to_be_there(const Point& point, Stands stands) const {
        if (stands == Stands::bench || !point.in_hand) return false;
        if (point.side == Side::arc) return true;
        const double holds = (point.side == Side::hook ? bender_.hook_straight : bender_.lever_straight).mm;
        const bool along_it = (point.side == Side::hook) == (stands == Stands::fixed);
        return along_it || point.past <= holds;
    }

    double gap(const Solid& solid, const Vector3d& at, double lever) const {
        Vector3d place = at;
        if (solid.stands == Stands::bench) place = to_operator_ * at;
        if (solid.stands == Stands::lever) {
            const Vector3d centre(0, bender_.radius.mm, 0);
            place = centre + Eigen::AngleAxisd(-lever, Vector3d::UnitZ()) * (at - centre);
        }
        return from_surface(solid, place) - tube_radius_;
    }

    void closer(Replay& result, const Solid& solid, const std::vector<Point>& points, double lever, bool going_back) const {
        for (const Point& point : points) {
            if (meant_to_be_there(point, solid.stands) || (going_back && point.side != Side::lever)) continue;
            if (const double here = gap(solid, point.at, lever); here < result.gap) result.gap = here, result.nearest = solid.name;
        }
    }

    double own_gap(const std::vector<Point>& points) const {
        // Places less than half a circle of the form apart along the tube cannot have turned back to each other.
        const double near = std::numbers::pi * bender_.radius.mm;
        double least = 1e9;
        for (const Point& p : points)
            for (const Point& q : points)
                if (p.side < q.side && (p.side == Side::hook ? p.along + q.along : q.along - p.along) > near) least = std::min(least, (p.at - q.at).norm() - 2 * tube_radius_);
        return least;
    }

    /// The lever stands open then. The straight on the hook side slides in along the groove.
    bool some_way(const std::vector<Point>& points, double room, bool out) const {
        const double h = std::sqrt(0.5);
        for (const Vector3d& way : {Vector3d(0, 0, 1), Vector3d(0, -1, 0), Vector3d(0, -h, h), Vector3d(0, 0, -1), Vector3d(0, -h, -h)})
            if (clear_along(points, way, room, out)) return true;
        return false;
    }

    bool clear_along(const std::vector<Point>& points, const Vector3d& way, double room, bool out) const {
        for (double off = 0; off < 1500; off += 3)
            for (const Solid& solid : bender_.body) {
                if (solid.stands == Stands::lever) continue;
                for (const Point& point : points) {
                    const bool held = solid.stands == Stands::fixed && point.in_hand && (point.side != Side::lever || !out || point.past <= bender_.lever_straight.mm);
                    if (!held && gap(solid, point.at + off * way, 0) < room) return false;
                }
            }
        return true;
    }

    const Bender& bender_;
    double tube_radius_, set_ = 0, target_ = 0, finished_radius_ = 0;
    Tube tube_;
    Matrix3d to_operator_;
};

}  // namespace

Replay replay(const Sheet& sheet, std::uint64_t made, const Placing& placing, double room) { return AtBender(sheet, made, placing).look(room); }

std::vector<Replay> replay(const Sheet& sheet, const std::vector<Placing>& order, double room) {
    std::vector<Replay> all;
    std::uint64_t made = 0;
    for (const Placing& placing : order) {
        all.push_back(replay(sheet, made, placing, room));
        made |= std::uint64_t{1} << placing.bend;
    }
    return all;
}

}  // namespace bench_world
