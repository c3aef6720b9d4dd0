#include "scene/card_scene.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "scene/card_solids.h"
#include "scene/solids.h"

namespace tubewright {
namespace {

using Eigen::Vector2d;
using Eigen::Vector3d;

constexpr std::array<double, 3> lever_angles{0, 45, 90};
/// How far the bench is drawn round the bender, in sizes of tube and form.
constexpr double bench_drawn = 10;

Ink ink_of(Stands stands) {
    switch (stands) {
        case Stands::fixed: return Ink::stands;
        case Stands::lever: return Ink::swings;
        case Stands::bench: return Ink::on_bench;
    }
    return Ink::stands;
}

struct Picture {
    const Bender& bender;
    SetUp set_up;
    CardLook look;
    Bounds around;  ///< how far what stands on the bench is drawn

    CardPlacing placing(Stands stands, Angle lever) const { return card_placing(stands, bender, set_up, lever); }
    std::optional<Mesh> mesh(std::size_t i, Angle lever) const {
        const Solid& solid = bender.body[i];
        return card_solid(solid, placing(solid.stands, lever), around, bender.tube_od, look.picked == i ? Ink::picked : ink_of(solid.stands));
    }
    std::vector<Vector3d> tube(double from, double to, Angle lever) const;
    bool shows(CardGauge::Of of) const {
        return std::any_of(look.gauges.begin(), look.gauges.end(), [&](const CardGauge& one) { return one.of == of; });
    }
    double out() const { return 3 * bender.tube_od.mm; }  ///< tube that is seen beyond what hook and lever need
};

/// The centre line between two lengths along it from the start of the bend, bent as far as the lever has gone.
std::vector<Vector3d> Picture::tube(double from, double to, Angle lever) const {
    const CardPlacing place = placing(Stands::fixed, lever);
    const double radius = bender.radius.mm, arc = arc_length(bender.radius, lever).mm;
    const auto at = [&](double s) -> Vector3d {
        if (s <= 0) return place({s, 0, 0});
        const double turned_by = std::min(s, arc) / radius, beyond = std::max(0.0, s - arc);
        return place({radius * std::sin(turned_by) + beyond * std::cos(turned_by), radius * (1 - std::cos(turned_by)) + beyond * std::sin(turned_by), 0});
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
    const double hook = bender.hook_straight.mm, arc = arc_length(bender.radius, picture.look.lever).mm, lever = arc + bender.lever_straight.mm;
    const auto stretch = [&](double from, double to, Ink ink) {
        if (to > from) scene.meshes.push_back(tube_mesh(picture.tube(from, to, picture.look.lever), bender.tube_od.mm / 2, ink));
    };
    stretch(-hook - picture.out(), -hook, Ink::tube);
    stretch(-hook, 0, picture.shows(CardGauge::Of::hook) ? Ink::tube_done : Ink::tube);
    stretch(0, arc, Ink::tube);
    stretch(arc, lever, picture.shows(CardGauge::Of::lever) ? Ink::tube_now : Ink::tube);
    stretch(lever, lever + picture.out(), Ink::tube);
}

/// Tube and form, at both ends of the lever's way.
std::vector<Vector3d> places_in_sight(const Picture& picture) {
    const Bender& bender = picture.bender;
    const CardPlacing place = picture.placing(Stands::fixed, {});
    std::vector<Vector3d> places;
    for (const double lever : lever_angles) {
        const double end = arc_length(bender.radius, {lever}).mm + bender.lever_straight.mm + picture.out();
        for (const Vector3d& at : picture.tube(-bender.hook_straight.mm - picture.out(), end, {lever}))
            for (const double side : {-bender.tube_od.mm, bender.tube_od.mm}) places.push_back(at + side * Vector3d::UnitZ());
    }
    constexpr int around_form = 12;
    for (int i = 0; i < around_form; ++i) {
        const double turn = 2 * std::numbers::pi * i / around_form, radius = bender.radius.mm;
        for (const double across : {-bender.tube_od.mm, bender.tube_od.mm}) places.push_back(place({radius * std::sin(turn), radius * (1 - std::cos(turn)), across}));
    }
    return places;
}

/// What has to be seen of the solid pointed out.
std::vector<Vector3d> places_of_picked(const Picture& picture) {
    std::vector<Vector3d> places;
    const auto& picked = picture.look.picked;
    if (!picked || std::holds_alternative<HalfSpace>(picture.bender.body[*picked].shape)) return places;
    for (const double lever : lever_angles)
        if (const auto mesh = picture.mesh(*picked, {lever}))
            for (const Vertex& vertex : mesh->vertices) places.push_back(vertex.at.cast<double>());
    return places;
}

Bounds bounds_of(const std::vector<Vector3d>& places) {
    Bounds bounds;
    for (const Vector3d& place : places) bounds.take_in(place);
    return bounds;
}

Bounds bounds_of(const Mesh& mesh) {
    Bounds bounds;
    bounds.take_in(mesh);
    return bounds;
}

/// A solid that lies flat and far around under the bender.
bool is_bench_top(const Solid& solid, const Bounds& drawn, double size) {
    if (solid.stands != Stands::bench) return false;
    if (const auto* space = std::get_if<HalfSpace>(&solid.shape)) return space->into.normalized().z() < -0.99;
    const Vector3d span = drawn.high - drawn.low;
    return std::holds_alternative<Block>(solid.shape) && std::min(span.x(), span.y()) > 2 * size;
}

void add_bench_top(Scene& scene, const Mesh& mesh, bool picked) {
    const Bounds drawn = bounds_of(mesh);
    const Vector2d low = drawn.low.head<2>(), high = drawn.high.head<2>(), middle = (low + high) / 2;
    scene.bench_top_z = drawn.high.z();
    // Of one that is pointed out the bare solid is seen.
    scene.bench_top = BenchTop{low, picked ? low : high, middle, (high - low).norm() / 2};
}

void add_body(Scene& scene, const Picture& picture, double size) {
    for (std::size_t i = 0; i < picture.bender.body.size(); ++i) {
        auto mesh = picture.mesh(i, picture.look.lever);
        if (!mesh) continue;
        const Bounds drawn = bounds_of(*mesh);
        const bool picked = picture.look.picked == i;
        if (picked) scene.anchors[Anchor::picked] = (drawn.low + drawn.high) / 2;
        if (!scene.bench_top && is_bench_top(picture.bender.body[i], drawn, size)) {
            add_bench_top(scene, *mesh, picked);
            if (!picked) mesh->ink = Ink::bench_top;
        }
        scene.meshes.push_back(std::move(*mesh));
    }
}

void add(std::vector<Mesh>& meshes, std::vector<Mesh> more) {
    for (Mesh& mesh : more) meshes.push_back(std::move(mesh));
}

void add_gauges(Scene& scene, const Picture& picture) {
    constexpr std::array<Anchor, 3> anchors{Anchor::gauge_1, Anchor::gauge_2, Anchor::gauge_3};
    const double thick = 0.006 * scene.bounds.size();
    for (std::size_t i = 0; i < std::min(anchors.size(), picture.look.gauges.size()); ++i) {
        const auto line = gauge_line(picture.bender, picture.set_up, picture.look.lever, picture.look.picked, picture.look.gauges[i], 0.25 * scene.bounds.size());
        if (!line) {
            // A line where the bend starts has no arrow, but it has a place.
            const CardGauge& gauge = picture.look.gauges[i];
            if (gauge.of == CardGauge::Of::mark && gauge.which < picture.bender.marks.size()) scene.anchors[anchors[i]] = card_placing(Stands::fixed, picture.bender, picture.set_up, picture.look.lever)({picture.bender.marks[gauge.which].offset.mm, 0, 0});
            continue;
        }
        scene.anchors[anchors[i]] = (line->from + line->to) / 2;
        add(scene.meshes, gauge_arrow(line->from, line->to, thick));
        // One number alone still shows the way to its place.
        if (picture.look.gauges.size() > 1) continue;
        for (const auto& [from, to] : line->others)
            if ((to - from).norm() > thick) scene.meshes.push_back(rod({from, to}, 0.4 * thick, Ink::gauge));
    }
}

}  // namespace

Scene card_scene(const Bender& bender, const SetUp& set_up, const CardLook& look) {
    Picture picture{bender, set_up, look, {}};
    if (look.picked && *look.picked >= bender.body.size()) picture.look.picked.reset();
    Scene scene;
    scene.od = bender.tube_od;
    scene.outlook = outlook_for(set_up, {Vector3d::Zero(), Vector3d::Zero(), Vector3d::Zero()});
    scene.outermost = places_in_sight(picture);
    const Bounds own = bounds_of(scene.outermost);
    const Vector3d more = Vector3d::Constant(bench_drawn * own.size());
    picture.around = {own.low - more, own.high + more};
    for (const Vector3d& place : places_of_picked(picture)) scene.outermost.push_back(place);
    scene.bounds = bounds_of(scene.outermost);
    scene.bench_top_z = own.low.z() - 0.15 * own.size();
    add_tube(scene, picture);
    add_body(scene, picture, own.size());
    add_gauges(scene, picture);
    return scene;
}

}  // namespace tubewright
