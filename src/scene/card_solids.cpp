#include "scene/card_solids.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "bench/stance.h"
#include "scene/solids.h"

namespace tubewright {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Matrix3d bender_to_operator(const SetUp& set_up) {
    const Stance stand = stance(set_up);
    Matrix3d turn;
    turn << stand.axis, stand.swing, stand.normal;
    return turn;
}

Mesh box_mesh(const Vector3d& low, const Vector3d& high, const CardPlacing& place, Ink ink) {
    const std::vector<Vector3d> outline{place(low), place({high.x(), low.y(), low.z()}), place({high.x(), high.y(), low.z()}), place({low.x(), high.y(), low.z()})};
    return extruded(outline, place.turn * Vector3d(0, 0, high.z() - low.z()), ink);
}

Mesh cylinder_mesh(const Cylinder& round, const CardPlacing& place, Ink ink) {
    const Vector3d along = round.to - round.from;
    Frame axis;
    axis.at = place(round.from);
    axis.along = place.turn * along.normalized();
    axis.aside = axis.along.unitOrthogonal();
    const double radius = round.radius.mm, length = along.norm();
    return turned(axis, {{0, 0}, {radius, 0}, {radius, length}, {0, length}}, ink);
}

/// The plate's middle is the place of the plane nearest to the middle of what else is seen.
Mesh plate_mesh(const HalfSpace& space, const CardPlacing& place, const Bounds& around, double thick, Ink ink) {
    const Vector3d into = place.turn * space.into.normalized(), middle = (around.low + around.high) / 2;
    const Vector3d centre = middle - into.dot(middle - place(space.at)) * into, u = into.unitOrthogonal(), v = into.cross(u);
    const double half = (around.high - around.low).maxCoeff() / 2;
    return extruded({centre + half * (u + v), centre + half * (v - u), centre - half * (u + v), centre + half * (u - v)}, thick * into, ink);
}

/// Three steps along the frame's axes, one after the other.
std::array<GaugeLine, 3> steps_to(const Vector3d& start, const Vector3d& way, const CardPlacing& place) {
    std::array<GaugeLine, 3> steps;
    Vector3d at = start;
    for (int i = 0; i < 3; ++i) {
        const Vector3d next = at + way[i] * Vector3d::Unit(i);
        steps[static_cast<std::size_t>(i)] = {place(at), place(next), {}};
        at = next;
    }
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j)
            if (i != j) steps[i].others.push_back({steps[j].from, steps[j].to});
    return steps;
}

GaugeLine solid_line(const Solid& solid, const CardPlacing& place, std::size_t which, double direction_length) {
    const bool second = which >= 3;
    if (const auto* box = std::get_if<Block>(&solid.shape)) return steps_to(Vector3d::Zero(), second ? box->to : box->from, place)[which % 3];
    if (const auto* space = std::get_if<HalfSpace>(&solid.shape))
        return second ? steps_to(space->at, direction_length * space->into.normalized(), place)[which % 3] : steps_to(Vector3d::Zero(), space->at, place)[which % 3];
    const Cylinder& round = std::get<Cylinder>(solid.shape);
    if (which != radius_of_cylinder) return steps_to(Vector3d::Zero(), second ? round.to : round.from, place)[which % 3];
    return {place(round.from), place(round.from + round.radius.mm * (round.to - round.from).unitOrthogonal()), {}};
}

std::optional<GaugeLine> long_enough(GaugeLine line) {
    if ((line.to - line.from).norm() < tolerance::arithmetic) return std::nullopt;
    return line;
}

}  // namespace

CardPlacing card_placing(Stands stands, const Bender& bender, const SetUp& set_up, Angle lever) {
    if (stands == Stands::bench) return {Matrix3d::Identity(), Vector3d::Zero()};
    const Matrix3d to_operator = bender_to_operator(set_up);
    if (stands == Stands::fixed) return {to_operator, Vector3d::Zero()};
    // From the axis to the swing is a right-handed turn about the normal.
    const Matrix3d swung = Eigen::AngleAxisd(lever.rad(), Vector3d::UnitZ()).toRotationMatrix();
    const Vector3d centre(0, bender.radius.mm, 0);
    return {to_operator * swung, to_operator * (centre - swung * centre)};
}

std::optional<Mesh> card_solid(const Solid& solid, const CardPlacing& place, const Bounds& around, Length thick, Ink ink) {
    if (const auto* round = std::get_if<Cylinder>(&solid.shape)) return cylinder_mesh(*round, place, ink);
    if (const auto* space = std::get_if<HalfSpace>(&solid.shape)) return plate_mesh(*space, place, around, thick.mm, ink);
    const Block& box = std::get<Block>(solid.shape);
    Vector3d low = box.from.cwiseMin(box.to), high = box.from.cwiseMax(box.to);
    if (solid.stands == Stands::bench) {
        low = low.cwiseMax(around.low);
        high = high.cwiseMin(around.high);
        if ((high - low).minCoeff() <= 0) return std::nullopt;
    }
    return box_mesh(low, high, place, ink);
}

std::optional<GaugeLine> gauge_line(const Bender& bender, const SetUp& set_up, Angle lever, std::optional<std::size_t> solid, const CardGauge& gauge, double direction_length) {
    const CardPlacing still = card_placing(Stands::fixed, bender, set_up, lever), swung = card_placing(Stands::lever, bender, set_up, lever);
    const auto along = [](const CardPlacing& place, double x, double y) { return long_enough({place(Vector3d::Zero()), place({x, y, 0}), {}}); };
    switch (gauge.of) {
        case CardGauge::Of::radius: return along(still, 0, bender.radius.mm);
        case CardGauge::Of::hook: return along(still, -bender.hook_straight.mm, 0);
        case CardGauge::Of::lever: return along(swung, bender.lever_straight.mm, 0);
        case CardGauge::Of::mark: return gauge.which < bender.marks.size() ? along(still, bender.marks[gauge.which].offset.mm, 0) : std::nullopt;
        case CardGauge::Of::max_angle:
        case CardGauge::Of::stretch: return std::nullopt;
        case CardGauge::Of::solid: break;
    }
    if (!solid || *solid >= bender.body.size()) return std::nullopt;
    const Solid& one = bender.body[*solid];
    return long_enough(solid_line(one, card_placing(one.stands, bender, set_up, lever), gauge.which, direction_length));
}

std::vector<Mesh> gauge_arrow(const Vector3d& from, const Vector3d& to, double thick) {
    const Vector3d way = (to - from).normalized();
    const double length = (to - from).norm(), head = std::min(6 * thick, 0.6 * length), wide = std::min(2.6 * thick, 0.4 * length);
    Frame tip;
    tip.at = to - head * way;
    tip.along = way;
    tip.aside = way.unitOrthogonal();
    return {rod({from, tip.at}, std::min(thick, 0.25 * length), Ink::gauge), turned(tip, {{0, 0}, {wide, 0}, {0.06 * wide, head}, {0, head}}, Ink::gauge)};
}

}  // namespace tubewright
