#include "scene/card_scene.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "bench/stance.h"
#include "scene/solids.h"

namespace tubewright {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double right_angle = 90;

/// Where a solid's own frame lies in the operator's.
struct Placing {
    Matrix3d turn;
    Vector3d shift;
    Vector3d operator()(const Vector3d& place) const { return turn * place + shift; }
};

Matrix3d bender_to_operator(const SetUp& set_up) {
    const Stance stand = stance(set_up);
    Matrix3d turn;
    turn << stand.axis, stand.swing, stand.normal;
    return turn;
}

Placing placing_of(Stands stands, const Bender& bender, const Matrix3d& to_operator, Angle lever) {
    if (stands == Stands::bench) return {Matrix3d::Identity(), Vector3d::Zero()};
    if (stands == Stands::fixed) return {to_operator, Vector3d::Zero()};
    // From the axis to the swing is a right-handed turn about the normal.
    const Matrix3d swung = Eigen::AngleAxisd(lever.rad(), Vector3d::UnitZ()).toRotationMatrix();
    const Vector3d centre(0, bender.radius.mm, 0);
    return {to_operator * swung, to_operator * (centre - swung * centre)};
}

Mesh box_mesh(const Vector3d& from, const Vector3d& to, const Placing& place, Ink ink) {
    const Vector3d low = from.cwiseMin(to), high = from.cwiseMax(to);
    const std::vector<Vector3d> outline{place(low), place({high.x(), low.y(), low.z()}), place({high.x(), high.y(), low.z()}), place({low.x(), high.y(), low.z()})};
    return extruded(outline, place.turn * Vector3d(0, 0, high.z() - low.z()), ink);
}

Mesh cylinder_mesh(const Cylinder& round, const Placing& place, Ink ink) {
    const Vector3d along = round.to - round.from;
    Frame axis;
    axis.at = place(round.from);
    axis.along = place.turn * along.normalized();
    axis.aside = axis.along.unitOrthogonal();
    const double radius = round.radius.mm, length = along.norm();
    return turned(axis, {{0, 0}, {radius, 0}, {radius, length}, {0, length}}, ink);
}

/// The plate's middle is the place of the plane nearest to the middle of what else is seen.
Mesh plate_mesh(const HalfSpace& space, const Placing& place, const Bounds& around, double thick, Ink ink) {
    const Vector3d into = place.turn * space.into.normalized(), middle = (around.low + around.high) / 2;
    const Vector3d centre = middle - into.dot(middle - place(space.at)) * into, u = into.unitOrthogonal(), v = into.cross(u);
    const double half = around.size() / 2;
    return extruded({centre + half * (u + v), centre + half * (v - u), centre - half * (u + v), centre + half * (u - v)}, thick * into, ink);
}

Ink ink_of(Stands stands) {
    switch (stands) {
        case Stands::fixed: return Ink::form;
        case Stands::lever: return Ink::lever;
        case Stands::bench: return Ink::bench_top;
    }
    return Ink::form;
}

Anchor anchor_of(Stands stands) {
    switch (stands) {
        case Stands::fixed: return Anchor::form;
        case Stands::lever: return Anchor::lever;
        case Stands::bench: return Anchor::bench_body;
    }
    return Anchor::form;
}

Vector3d middle_of(const Mesh& mesh) {
    Bounds bounds;
    bounds.take_in(mesh);
    return (bounds.low + bounds.high) / 2;
}

struct Picture {
    const Bender& bender;
    Matrix3d to_operator;
    CardLook look;
    Bounds around;  ///< how far what stands on the bench is drawn

    Ink ink(std::size_t i) const { return look.picked == i ? Ink::after_pull : ink_of(bender.body[i].stands); }
    std::optional<Mesh> mesh(std::size_t i, Angle lever) const;
    std::vector<Vector3d> tube(double from, double to, Angle lever) const;
};

/// None where all of it lies out of sight.
std::optional<Mesh> Picture::mesh(std::size_t i, Angle lever) const {
    const Solid& solid = bender.body[i];
    const Placing place = placing_of(solid.stands, bender, to_operator, lever);
    if (const auto* round = std::get_if<Cylinder>(&solid.shape)) return cylinder_mesh(*round, place, ink(i));
    if (const auto* space = std::get_if<HalfSpace>(&solid.shape)) return plate_mesh(*space, place, around, bender.tube_od.mm, ink(i));
    const Block& box = std::get<Block>(solid.shape);
    if (solid.stands != Stands::bench) return box_mesh(box.from, box.to, place, ink(i));
    const Vector3d low = box.from.cwiseMin(box.to).cwiseMax(around.low), high = box.from.cwiseMax(box.to).cwiseMin(around.high);
    if ((high - low).minCoeff() <= 0) return std::nullopt;
    return box_mesh(low, high, place, ink(i));
}

/// The centre line between two lengths along it from the start of the bend, bent as far as the lever has gone.
std::vector<Vector3d> Picture::tube(double from, double to, Angle lever) const {
    const double radius = bender.radius.mm, arc = arc_length(bender.radius, lever).mm;
    const auto at = [&](double s) -> Vector3d {
        if (s <= 0) return to_operator * Vector3d(s, 0, 0);
        const double turned_by = std::min(s, arc) / radius, beyond = std::max(0.0, s - arc);
        return to_operator * Vector3d(radius * std::sin(turned_by) + beyond * std::cos(turned_by), radius * (1 - std::cos(turned_by)) + beyond * std::sin(turned_by), 0);
    };
    std::vector<Vector3d> path;
    constexpr int steps = 24;
    for (int i = 0; i <= steps; ++i) path.push_back(at(from + (to - from) * i / steps));
    return path;
}

Mesh tube_mesh(const std::vector<Vector3d>& path, double radius, Ink ink) {
    std::vector<Station> stations;
    for (const Frame& frame : frames_along(path)) stations.push_back({frame, radius});
    return swept(stations, ink);
}

/// Hook side to lever side: on out, the hook's straight, the bend, the lever's straight, on out.
void add_tube(Scene& scene, const Picture& picture) {
    const Bender& bender = picture.bender;
    const double od = bender.tube_od.mm, hook = bender.hook_straight.mm, arc = arc_length(bender.radius, picture.look.lever).mm;
    const double lever = arc + bender.lever_straight.mm, out = 4 * od;
    const auto stretch = [&](double from, double to, Ink ink) {
        if (to > from) scene.meshes.push_back(tube_mesh(picture.tube(from, to, picture.look.lever), od / 2, ink));
    };
    stretch(-hook - out, -hook, Ink::tube);
    stretch(-hook, 0, Ink::tube_done);
    stretch(0, arc, Ink::tube);
    stretch(arc, lever, Ink::tube_now);
    stretch(lever, lever + out, Ink::tube);
    scene.anchors[Anchor::hook_end] = picture.tube(-hook / 2, 0, picture.look.lever).front();
    scene.anchors[Anchor::lever_end] = picture.tube(0, (arc + lever) / 2, picture.look.lever).back();
}

/// What the bender itself takes up, at both ends of the lever's way.
Bounds bender_bounds(const Picture& picture) {
    const Bender& bender = picture.bender;
    const double od = bender.tube_od.mm;
    Bounds bounds;
    for (const double lever : {0.0, right_angle / 2, right_angle}) {
        const double end = arc_length(bender.radius, {lever}).mm + bender.lever_straight.mm + 4 * od;
        for (const Vector3d& place : picture.tube(-bender.hook_straight.mm - 4 * od, end, {lever}))
            for (const double side : {-od / 2, od / 2}) bounds.take_in(place + side * Vector3d::Ones());
        for (std::size_t i = 0; i < bender.body.size(); ++i)
            if (bender.body[i].stands != Stands::bench && !std::holds_alternative<HalfSpace>(bender.body[i].shape)) bounds.take_in(*picture.mesh(i, {lever}));
    }
    return bounds;
}

void show(Scene& scene, const Bounds& bounds) {
    for (const Vector3d& corner : bounds.corners()) {
        scene.outermost.push_back(corner);
        scene.bounds.take_in(corner);
    }
}

}  // namespace

Scene card_scene(const Bender& bender, const SetUp& set_up, const CardLook& look) {
    Picture picture{bender, bender_to_operator(set_up), look, {}};
    const Bounds own = bender_bounds(picture);
    const Vector3d more = Vector3d::Constant(0.15 * own.size());
    picture.around = {own.low - more, own.high + more};
    Scene scene;
    scene.od = bender.tube_od;
    scene.outlook = outlook_for(set_up, {Vector3d::Zero(), Vector3d::Zero(), Vector3d::Zero()});
    show(scene, own);
    add_tube(scene, picture);
    for (std::size_t i = 0; i < bender.body.size(); ++i) {
        auto mesh = picture.mesh(i, look.lever);
        if (!mesh) continue;
        const Vector3d middle = middle_of(*mesh);
        scene.anchors.emplace(anchor_of(bender.body[i].stands), middle);
        if (look.picked == i) scene.anchors[Anchor::picked] = middle;
        scene.meshes.push_back(std::move(*mesh));
    }
    scene.bench_top_z = picture.around.low.z();
    return scene;
}

}  // namespace tubewright
