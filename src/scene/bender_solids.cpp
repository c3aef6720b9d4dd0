#include "scene/bender_solids.h"

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "scene/solids.h"

namespace tubewright {
namespace {

using Eigen::Vector2d;
using Eigen::Vector3d;

// Heights on the form's axis, in outside diameters of the tube; the tube's centre line lies at 0.
constexpr double form_half = 0.78, hook_arm_top = 0.90, hook_arm_bottom = 1.25, lever_top = 1.32, lever_bottom = 1.75;
constexpr double follower_top = 0.02;
constexpr double follower_from = -0.3, follower_to = 1.6;  // along the tube, in radii of the form

std::vector<Vector3d> link_outline(const BenderShape& shape, const Vector2d& from, const Vector2d& to, double half, double front_side) {
    const double heading = std::atan2(to.y() - from.y(), to.x() - from.x());
    std::vector<Vector3d> outline;
    constexpr int steps = 12;
    for (int end = 0; end < 2; ++end)
        for (int i = 0; i <= steps; ++i) {
            const double turn = heading + std::numbers::pi * (0.5 + end + static_cast<double>(i) / steps);
            const Vector2d& middle = end == 0 ? from : to;
            outline.push_back(shape.place(middle.x() + half * std::cos(turn), middle.y() + half * std::sin(turn), front_side));
        }
    return outline;
}

/// Profile of the form: flanges a little short of the tube's middle, so that the tube is seen in its groove.
std::vector<Vector2d> form_profile(double radius, double od) {
    const double half = form_half * od, rim = radius - 0.2 * od, chamfer = 0.12 * od;
    std::vector<Vector2d> profile{{0, -half}, {rim - chamfer, -half}, {rim, -half + chamfer}};
    const double open = std::acos(0.4);  // where the groove's circle, half a tube across, meets the rim
    for (int i = 0; i <= 12; ++i) {
        const double turn = open * (i / 6.0 - 1);
        profile.emplace_back(radius - 0.5 * od * std::cos(turn), 0.5 * od * std::sin(turn));
    }
    const double ring = 0.74 * radius, hub = 0.3 * radius, low = half - 0.16 * od, high = half + 0.12 * od;
    for (const Vector2d& place : {Vector2d(rim, half - chamfer), Vector2d(rim - chamfer, half), Vector2d(ring, half), Vector2d(ring - 0.1 * od, low),
                                  Vector2d(hub + 0.05 * od, low), Vector2d(hub, high - chamfer), Vector2d(hub - chamfer, high), Vector2d(0, high)})
        profile.push_back(place);
    return profile;
}

Mesh form(const BenderShape& shape) {
    return turned({shape.place(0, shape.radius, 0), shape.front(), shape.stand.axis}, form_profile(shape.radius, shape.od), Ink::form);
}

std::vector<Mesh> hook(const BenderShape& shape) {
    const double od = shape.od, round = 0.86 * od;
    std::vector<Mesh> meshes;
    const Vector2d centre{0, shape.radius}, root{-shape.hook_back, round};
    meshes.push_back(extruded(link_outline(shape, centre, root, 0.62 * od, -hook_arm_bottom * od), (hook_arm_bottom - hook_arm_top) * od * shape.front(), Ink::hook));
    // Two bent rods side by side: up beside the tube, over it and down on the far side.
    for (const double aside : {-0.36 * od, 0.36 * od}) {
        std::vector<Vector3d> path{shape.place(-shape.hook_back + aside, round, -1.05 * od)};
        for (int i = 0; i <= 20; ++i) {
            const double turn = std::numbers::pi * 1.16 * i / 20;
            path.push_back(shape.place(-shape.hook_back + aside, round * std::cos(turn), round * std::sin(turn)));
        }
        meshes.push_back(rod(path, 0.3 * od, Ink::hook));
    }
    return meshes;
}

constexpr double lever_slant = 0.2;  // of the handle against the tube, so that it is seen beside it

Vector2d lever_root(const BenderShape& shape) { return {0.8 * shape.radius, -1.0 * shape.od}; }

Vector3d on_handle(const BenderShape& shape, double out) {
    const Vector2d there = lever_root(shape) + out * Vector2d(std::cos(lever_slant), -std::sin(lever_slant));
    return shape.place(there.x(), there.y(), -0.5 * (lever_top + lever_bottom) * shape.od);
}

std::vector<Mesh> lever(const BenderShape& shape) {
    const double od = shape.od, radius = shape.radius;
    std::vector<Mesh> meshes;
    meshes.push_back(extruded(link_outline(shape, {0, radius}, lever_root(shape), 0.62 * od, -lever_bottom * od),
                              (lever_top - lever_bottom) * od * -shape.front(), Ink::lever));
    // The follower: outside the tube, level with its middle, so that the tube stays in sight above it.
    std::vector<Vector3d> outline;
    for (const Vector2d& corner : {Vector2d(follower_from * radius, -0.5 * od), Vector2d(follower_to * radius, -0.5 * od), Vector2d(follower_to * radius, -1.3 * od),
                                   Vector2d((follower_to - 0.15) * radius, -1.75 * od), Vector2d((follower_from + 0.15) * radius, -1.75 * od), Vector2d(follower_from * radius, -1.3 * od)})
        outline.push_back(shape.place(corner.x(), corner.y(), -lever_bottom * od));
    meshes.push_back(extruded(outline, (lever_bottom + follower_top) * od * shape.front(), Ink::lever));
    meshes.push_back(rod({on_handle(shape, 0), on_handle(shape, 2.2 * radius)}, 0.38 * od, Ink::lever));
    meshes.push_back(rod({on_handle(shape, 1.5 * radius), on_handle(shape, 2.9 * radius)}, 0.62 * od, Ink::grip));
    return meshes;
}

/// The reference mark: a pointer that ends at the tube, on the follower where that is, else on a shoe of its own.
std::vector<Mesh> mark(const BenderShape& shape) {
    const double od = shape.od, at = shape.mark_offset, half = 0.42 * od;
    std::vector<Mesh> meshes;
    const auto outline = [&](std::initializer_list<Vector2d> corners, double front_side) {
        std::vector<Vector3d> places;
        for (const Vector2d& corner : corners) places.push_back(shape.place(at + corner.x(), corner.y(), front_side));
        return places;
    };
    if (at - half < follower_from * shape.radius || at + half > follower_to * shape.radius)
        meshes.push_back(extruded(outline({{-half - 0.2 * od, -0.52 * od}, {half + 0.2 * od, -0.52 * od}, {half + 0.2 * od, -1.75 * od}, {-half - 0.2 * od, -1.75 * od}}, -hook_arm_bottom * od),
                                  (hook_arm_bottom + follower_top) * od * shape.front(), Ink::form));
    meshes.push_back(extruded(outline({{0, -0.56 * od}, {half, -1.6 * od}, {-half, -1.6 * od}}, follower_top * od), 0.16 * od * shape.front(), Ink::reference_mark));
    return meshes;
}

}  // namespace

Vector3d BenderShape::front() const {
    // Of the two sides of the bend's plane the one that looks up or, where the plane stands upright, toward the operator.
    const Vector3d& n = stand.normal;
    return n.z() - n.y() >= 0 ? n : Vector3d(-n);
}

Vector3d BenderShape::place(double along, double swing, double front_side) const {
    return along * stand.axis + swing * stand.swing + front_side * front();
}

Vector3d BenderShape::swung(const Vector3d& at, Angle lever_angle) const {
    // From the axis towards the swing is right-handed about the normal.
    const Vector3d centre = place(0, radius, 0);
    return centre + Eigen::AngleAxisd(lever_angle.rad(), stand.normal) * (at - centre);
}

Vector3d BenderShape::lever_grip() const { return on_handle(*this, 2.2 * radius); }

double BenderShape::reach_of_grip() const {
    const Vector3d out = lever_grip() - place(0, radius, 0);
    return (out - out.dot(stand.normal) * stand.normal).norm();
}

std::vector<Mesh> bender_solids(const BenderShape& shape) {
    std::vector<Mesh> meshes{form(shape)};
    for (const auto& part : {hook(shape), lever(shape), mark(shape)}) meshes.insert(meshes.end(), part.begin(), part.end());
    return meshes;
}

std::vector<Mesh> bender_foot(const BenderShape& shape, double bench_top_z) {
    const double wide = 0.3 * shape.radius;
    Vector3d top = shape.place(0, shape.radius, -form_half * shape.od);
    std::vector<Mesh> meshes;
    const bool upright = std::abs(shape.front().z()) > 0.5;
    if (!upright) {  // the form's axis lies level: a stub back from it, then a post beside the lever
        const Vector3d behind = shape.place(0, shape.radius, -(lever_bottom + 1.2) * shape.od);
        meshes.push_back(rod({top, behind}, 0.7 * wide, Ink::post));
        top = behind;
    }
    const auto square = [&](double half, double z) {
        return std::vector<Vector3d>{{top.x() - half, top.y() - half, z}, {top.x() + half, top.y() - half, z}, {top.x() + half, top.y() + half, z}, {top.x() - half, top.y() + half, z}};
    };
    const double above = upright ? 0 : wide;
    meshes.push_back(extruded(square(wide, bench_top_z), {0, 0, top.z() + above - bench_top_z}, Ink::post));
    meshes.push_back(extruded(square(2.1 * wide, bench_top_z), {0, 0, 0.35 * shape.od}, Ink::post));
    return meshes;
}

std::vector<Mesh> sweep_arrow(const BenderShape& shape, Angle from, Angle to) {
    const double head = 1.9 * shape.od, reach = 0.86 * shape.reach_of_grip();
    const Vector3d centre = shape.place(0, shape.radius, 0);
    const double start = std::atan2(-shape.radius + shape.lever_grip().dot(shape.stand.swing), shape.lever_grip().dot(shape.stand.axis));
    const auto at = [&](double turn) {
        return Vector3d(centre + reach * (std::cos(start + turn) * shape.stand.axis + std::sin(start + turn) * shape.stand.swing));
    };
    const double first = from.rad(), last = std::max(to.rad() - head / reach, first + head / reach);
    std::vector<Vector3d> path;
    const int steps = 2 + static_cast<int>((last - first) / 0.07);
    for (int i = 0; i <= steps; ++i) path.push_back(at(first + (last - first) * i / steps));
    std::vector<Mesh> meshes{rod(path, 0.3 * shape.od, Ink::after_pull)};
    Frame tip = frames_along({at(last - 0.02), at(last + 0.02)}).front();
    tip.at = at(last);
    meshes.push_back(turned(tip, {{0, 0}, {0.85 * shape.od, 0}, {0.06 * shape.od, head}, {0, head}}, Ink::after_pull));
    return meshes;
}

}  // namespace tubewright
