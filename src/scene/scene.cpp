#include "scene/scene.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <algorithm>
#include <cassert>
#include <cmath>

#include "base/tolerance.h"
#include "bench/laid_over.h"
#include "bench/stance.h"
#include "bench/wrong_turn.h"
#include "scene/bender_solids.h"
#include "scene/loaded_tube.h"
#include "scene/outlook.h"
#include "scene/solids.h"
#include "scene/tube_solids.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

void add(Scene& scene, std::vector<Mesh> meshes) {
    for (Mesh& mesh : meshes) scene.meshes.push_back(std::move(mesh));
}

BenderShape shape_of(const Sheet& sheet, const Step& step) {
    const Bender& bender = sheet.line.bender;
    const double od = sheet.line.tube.od.mm;
    const double offset = bender.marks[step.align_to].offset.mm;
    // The hook grips within the straight that the bender asks for, but does not cover the mark.
    double hook_back = std::clamp(0.75 * bender.hook_straight.mm, 1.1 * od, std::max(1.1 * od, 1.6 * bender.radius.mm));
    if (std::abs(hook_back + offset) < 1.8 * od) hook_back = 1.8 * od - offset;
    return {stance(sheet.set_up), bender.radius.mm, od, hook_back, offset};
}

DrawnLength drawn_length(const Sheet& sheet, const Step& step) {
    const Length radius = sheet.line.bender.radius, od = sheet.line.tube.od;
    const Length offset{std::abs(sheet.line.bender.marks[step.align_to].offset.mm)};
    return {std::max(2.3 * radius, offset + 3 * od), 0.7 * radius, 2.6 * radius, 1.5 * od};
}

/// What is drawn for one step, in all its moves.
struct Staging {
    const Sheet& sheet;
    const Step& step;
    BenderShape shape;
    Angle from, set;  ///< where the lever begins and stops
    LoadedTube now, pulled, released;
};

Staging staging_for(const Sheet& sheet, std::size_t number, const std::optional<Pulled>& again) {
    const Step& step = sheet.steps[number];
    const DrawnLength drawn = drawn_length(sheet, step);
    std::optional<Formed> lies;
    if (again) lies = Formed{step.finished_radius, again->from};
    const Angle set = again ? again->to : step.set;
    return {sheet, step, shape_of(sheet, step), again ? again->from : Angle{4}, set,
            loaded_tube(sheet, number, lies, drawn),
            loaded_tube(sheet, number, Formed{sheet.line.bender.radius, set}, drawn),
            loaded_tube(sheet, number, Formed{step.finished_radius, step.target}, drawn)};
}

/// The stretches of one side that have to be seen: up to the made neighbour and the leg beyond it, and on
/// where that leg is too short to show which way it goes.
std::vector<std::size_t> in_sight(const LoadedTube& tube, End side) {
    std::vector<std::size_t> seen;
    int formed = 0;
    Length beyond;
    for (const std::size_t i : tube.side(side)) {
        const DrawnStretch& drawn = tube.stretches[i];
        if (drawn.formed && ++formed >= 2 && beyond >= 1.5 * drawn.stretch.radius) break;
        if (formed > 0 && !(formed == 1 && drawn.formed)) beyond += drawn.stretch.length;
        seen.push_back(i);
    }
    return seen;
}

/// The made neighbour and the leg beyond it. Empty where there is none.
std::vector<Vector3d> neighbour_path(const Staging& stage) {
    if (!stage.step.neighbour) return {};
    const End side = stage.step.neighbour->bend < stage.step.bend ? End::A : End::B;
    std::vector<std::size_t> leg = in_sight(stage.now, side);
    leg.erase(leg.begin(), std::find_if(leg.begin(), leg.end(), [&](std::size_t i) { return stage.now.stretches[i].formed; }));
    return path_outward(stage.now, leg, side);
}

/// The same where it must not lie.
std::vector<Vector3d> wrong_way_path(const Staging& stage) {
    std::vector<Vector3d> path = neighbour_path(stage);
    if (path.empty()) return {};
    // About the axis, which runs through the origin.
    const Eigen::AngleAxisd over((*wrong_leg_roll(stage.step) - stage.step.neighbour->leg_roll).rad(), stage.shape.stand.axis);
    for (Vector3d& place : path) place = over * place;
    return path;
}

std::vector<Vector3d> after_pull_path(const Staging& stage) {
    const End lever = other(stage.step.hook);
    std::vector<std::size_t> swept{stage.pulled.now};
    for (const std::size_t i : in_sight(stage.pulled, lever)) swept.push_back(i);
    return path_outward(stage.pulled, swept, lever);
}

void show(Scene& scene, const Vector3d& place) {
    scene.outermost.push_back(place);
    scene.bounds.take_in(place);
}

void show_path(Scene& scene, const std::vector<Vector3d>& path, double round) {
    for (const Vector3d& place : path)
        for (const Vector3d way : {Vector3d::UnitX(), Vector3d::UnitY(), Vector3d::UnitZ()})
            for (const double side : {-round, round}) show(scene, place + side * way);
}

/// The same for the moves of a step: bender, mark, both sides of the tube now and after the pull, the twin.
void show_stage(Scene& scene, const Staging& stage, const std::vector<Mesh>& bender) {
    for (const Mesh& mesh : bender) {
        Bounds bounds;
        bounds.take_in(mesh);
        for (const Vector3d& corner : bounds.corners()) show(scene, corner);
    }
    const double round = stage.shape.od / 2;
    for (const End side : {End::A, End::B}) show_path(scene, path_outward(stage.now, in_sight(stage.now, side), side), round);
    show_path(scene, after_pull_path(stage), round);
    show_path(scene, wrong_way_path(stage), round);
}

/// Where a path leads in the end; zero for no path.
Vector3d last_way(const std::vector<Vector3d>& path) {
    return path.size() < 2 ? Vector3d(Vector3d::Zero()) : Vector3d((path.back() - path[path.size() - 2]).normalized());
}

/// The end itself, or, where the tube goes on out of sight, the last place in sight.
Vector3d end_in_sight(const LoadedTube& tube, End side) {
    const std::vector<std::size_t> seen = in_sight(tube, side);
    if (seen.empty()) return frame_in(tube.stretches[tube.now].stretch, side == End::A ? Length{} : tube.stretches[tube.now].stretch.length).at;
    return path_outward(tube, {seen.back()}, side).back();
}

/// A place that far along a path, by length.
Vector3d along_path(const std::vector<Vector3d>& path, double share) {
    double whole = 0;
    for (std::size_t i = 1; i < path.size(); ++i) whole += (path[i] - path[i - 1]).norm();
    double left = share * whole;
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double run = (path[i] - path[i - 1]).norm();
        if (run >= left && run > 0) return path[i - 1] + left / run * (path[i] - path[i - 1]);
        left -= run;
    }
    return path.back();
}

void add_ghosts(Scene& scene, const Staging& stage, PictureKind kind) {
    const double od = stage.shape.od, round = 0.46 * od, dash = 0.9 * od, gap = 1.5 * od;
    if (const auto twin = wrong_way_path(stage); kind == PictureKind::turned && !twin.empty()) {
        add(scene, dashed(twin, round, dash, gap, Ink::wrong_way));
        scene.anchors[Anchor::wrong_way] = along_path(twin, 0.8);
    }
    if (kind != PictureKind::pulled) return;
    const std::vector<Vector3d> pulled = after_pull_path(stage);
    add(scene, dashed(pulled, round, dash, gap, Ink::after_pull));
    add(scene, sweep_arrow(stage.shape, stage.from, stage.set));
    scene.anchors[Anchor::after_pull] = along_path(pulled, 0.85);
}

/// Where the ink mark lies: in the form of the tube that is drawn, where the drawing has that place.
std::optional<Frame> ink_mark_frame(const Staging& stage, const LoadedTube& tube) {
    const Length from_a = mark_from_a(stage.step, stage.sheet.layout->cut_length);
    return frame_at(tube, from_a);
}

void add_tube(Scene& scene, const Staging& stage, const LoadedTube& tube) {
    const Tube& size = stage.sheet.line.tube;
    add(scene, tube_solids(tube, size));
    add(scene, index_line(tube, size.od));
    if (const auto frame = ink_mark_frame(stage, tube)) scene.meshes.push_back(ink_ring(*frame, size.od));
    scene.bends = drawn_bends(tube);
    scene.anchors[Anchor::hook_end] = end_in_sight(tube, stage.step.hook);
    scene.anchors[Anchor::lever_end] = end_in_sight(tube, other(stage.step.hook));
    if (!stage.step.neighbour) return;
    for (const DrawnBend& drawn : scene.bends)
        if (drawn.bend == stage.step.neighbour->bend) scene.anchors[Anchor::bend] = along_path(drawn.path, 0.5);
}

Scene step_scene(const Sheet& sheet, std::size_t number, PictureKind kind, const std::optional<Pulled>& again) {
    const Staging stage = staging_for(sheet, number, again);
    Scene scene;
    scene.od = sheet.line.tube.od;
    scene.outlook = outlook_for(sheet.set_up, {last_way(after_pull_path(stage)), last_way(neighbour_path(stage)), last_way(wrong_way_path(stage))});
    std::vector<Mesh> bender = bender_solids(stage.shape);
    show_stage(scene, stage, bender);
    const double lowest = std::min(scene.bounds.low.z(), -1.2 * stage.shape.radius);
    scene.bench_top_z = lowest - 0.4 * stage.shape.od;
    add(scene, std::move(bender));
    add(scene, bender_foot(stage.shape, scene.bench_top_z));
    add_tube(scene, stage, kind == PictureKind::checked ? stage.released : stage.now);
    add_ghosts(scene, stage, kind);
    scene.anchors[Anchor::form] = stage.shape.place(0, stage.shape.radius, stage.shape.od);
    scene.anchors[Anchor::lever] = stage.shape.lever_grip();
    if (const auto frame = ink_mark_frame(stage, stage.now); frame && kind != PictureKind::checked) scene.anchors[Anchor::mark] = frame->at;
    return scene;
}

/// Turns the part so that it lies flat, its longest way from left to right and A at the left.
Eigen::Matrix3d laid_flat(const std::vector<Vector3d>& path, const Vector3d& middle) {
    Eigen::Matrix3d spread = Eigen::Matrix3d::Zero();
    for (const Vector3d& place : path) spread += (place - middle) * (place - middle).transpose();
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(spread);  // least spread first
    Vector3d right = solver.eigenvectors().col(2), up = solver.eigenvectors().col(0);
    if (right.dot(path.back() - path.front()) < 0) right = -right;
    if (up.dot(Vector3d::UnitZ()) < 0) up = -up;
    Eigen::Matrix3d turn;
    turn << right, up.cross(right), up;  // right-handed: a part and its mirror image look different
    return turn.transpose();
}

/// A tape drawn tight between two places, with a knob where each end is held.
void add_tape(Scene& scene, const Vector3d& from, const Vector3d& to) {
    show(scene, from);
    show(scene, to);
    // A long line is a hair in its picture: knobs and tape are seen all the same.
    const double knob = std::max(1.2 * scene.od.mm, 0.013 * scene.bounds.size()), length = (to - from).norm();
    if (length < knob) return;
    const Vector3d step = (0.01 * knob / length) * (to - from);
    for (const Vector3d& place : {from, to}) scene.meshes.push_back(rod({place - step, place + step}, knob, Ink::gauge));
    add(scene, dashed({from, to}, 0.28 * knob, 1.6 * knob, 0.9 * knob, Ink::gauge));
    scene.anchors[Anchor::gauge_1] = from;
    scene.anchors[Anchor::gauge_2] = to;
}

/// `touched`: of the same part, for the tape.
Scene scene_of(const Tube& size, const Part& part, std::optional<std::size_t> lit, std::optional<Span> taped, const WireShape& touched) {
    std::vector<Stretch> stretches = centreline(part);
    std::vector<Vector3d> path;
    for (const Stretch& stretch : stretches)
        for (int i = 0; i <= 16; ++i) path.push_back(frame_in(stretch, (i / 16.0) * stretch.length).at);
    Vector3d middle = Vector3d::Zero();
    for (const Vector3d& place : path) middle += place / static_cast<double>(path.size());
    const Eigen::Matrix3d turn = laid_flat(path, middle);
    LoadedTube tube{{}, lit.value_or(stretches.size()), End::A};
    Scene scene;
    for (Stretch& stretch : stretches) {
        stretch.start = {turn * (stretch.start.at - middle), turn * stretch.start.along, turn * stretch.start.aside};
        DrawnStretch drawn;
        drawn.stretch = stretch;
        drawn.formed = stretch.bend >= 0 && stretch.angle >= tolerance::no_bend;
        if (stretch.bend >= 0) drawn.bend = static_cast<std::size_t>(stretch.bend);
        tube.stretches.push_back(drawn);
        show_path(scene, path_of(stretch), size.od.mm / 2);
    }
    scene.od = size.od;
    add(scene, tube_solids(tube, size));
    scene.bends = drawn_bends(tube);
    std::vector<Vector3d> legs;
    for (const Stretch& stretch : stretches)
        if (stretch.bend < 0) legs.push_back(stretch.start.along);
    scene.outlook = outlook_for_part(legs);
    if (taped && taped->to < touched.points.size() && taped->from < taped->to) add_tape(scene, turn * (touched.points[taped->from] - middle), turn * (touched.points[taped->to] - middle));
    scene.bench_top_z = scene.bounds.low.z() - 0.2 * size.od.mm;
    scene.anchors[Anchor::hook_end] = path_of(stretches.front()).front();
    scene.anchors[Anchor::lever_end] = path_of(stretches.back()).back();
    if (lit && *lit < stretches.size()) scene.anchors[Anchor::bend] = frame_in(stretches[*lit], 0.5 * stretches[*lit].length).at;
    return scene;
}

}  // namespace

Scene part_scene(const Sheet& sheet, std::optional<std::size_t> lit, std::optional<Span> taped) {
    assert(sheet.layout);
    const Route& route = sheet.line.route;
    return scene_of(sheet.line.tube, sheet.layout->part, lit, taped, shape_of(Wire{route, sheet.line.tube.od, sheet.line.bender.radius}, route.measured_to));
}

Scene made_scene(const Tube& size, const Part& part, std::optional<std::size_t> lit, std::optional<Span> taped) {
    return scene_of(size, part, lit, taped, shape_of(Wire{{RouteForm::straights, TapeEdge::centre, part.straights, part.bends}, size.od, part.radius}, TapeEdge::outside));
}

Scene laid_over_scene(const Tube& size, const Part& wanted, const Part& made) {
    std::vector<Stretch> as_wanted = centreline(wanted), as_made = centreline(made);
    const Eigen::Isometry3d placed = laid_over(key_places(wanted), key_places(made), EndTolerance{}).placed;
    std::vector<Vector3d> path;
    for (const Stretch& stretch : as_wanted)
        for (const Vector3d& place : path_of(stretch)) path.push_back(place);
    Vector3d middle = Vector3d::Zero();
    for (const Vector3d& place : path) middle += place / static_cast<double>(path.size());
    const Eigen::Isometry3d flat = Eigen::Isometry3d(laid_flat(path, middle)) * Eigen::Translation3d(-middle);
    const auto move = [](std::vector<Stretch>& stretches, const Eigen::Isometry3d& by) {
        for (Stretch& stretch : stretches) stretch.start = {by * stretch.start.at, by.linear() * stretch.start.along, by.linear() * stretch.start.aside};
    };
    move(as_wanted, flat);
    move(as_made, flat * placed);
    Scene scene;
    scene.od = size.od;
    // Where both are the same what is made covers what was wanted.
    constexpr double thinner = 0.88;
    scene.meshes.push_back(tube_solid(as_wanted, {thinner * size.od, thinner * size.wall, size.material}, Ink::stands));
    scene.meshes.push_back(tube_solid(as_made, size, Ink::swings));
    std::vector<Vector3d> legs;
    for (const auto& stretches : {as_wanted, as_made})
        for (const Stretch& stretch : stretches) {
            show_path(scene, path_of(stretch), size.od.mm / 2);
            if (stretch.bend < 0) legs.push_back(stretch.start.along);
        }
    scene.outlook = outlook_for_part(legs);
    scene.bench_top_z = scene.bounds.low.z() - 0.2 * size.od.mm;
    scene.anchors[Anchor::hook_end] = as_made.front().start.at;
    scene.anchors[Anchor::lever_end] = path_of(as_made.back()).back();
    return scene;
}

Scene bench_scene(const Sheet& sheet, std::size_t step, PictureKind kind, const std::optional<Pulled>& again) {
    assert(sheet.layout);
    return kind == PictureKind::finished ? part_scene(sheet) : step_scene(sheet, step, kind, again);
}

}  // namespace tubewright
