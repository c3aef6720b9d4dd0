#include "tube/touch_points.h"

#include <Eigen/Geometry>
#include <cassert>
#include <cmath>

#include "base/tolerance.h"
#include "tube/part.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// From the corner of the centre lines to the corner that is touched: od/2 / cos(angle/2) along the bisector.
Vector3d edge_offset(TapeEdge touched, Length od, Angle angle, const Vector3d& before, const Vector3d& past) {
    if (touched == TapeEdge::centre || angle < tolerance::no_bend) return Vector3d::Zero();
    const Vector3d inward = (past - before).normalized();
    const double reach = od.mm / 2 / std::cos(angle.rad() / 2);
    return (touched == TapeEdge::inside ? reach : -reach) * inward;
}

}  // namespace

WireShape shape_of(const Wire& wire, TapeEdge touched) {
    // Legs to the centre are straights between bends of no radius.
    const Part part = part_from(wire.route, wire.route.form == RouteForm::straights ? wire.radius : Length{}, wire.od);
    WireShape shape;
    Vector3d at = Vector3d::Zero(), along = Vector3d::UnitX(), normal = Vector3d::UnitZ();
    shape.points.push_back(at);
    for (std::size_t i = 0; i < part.bends.size(); ++i) {
        const Angle angle = part.bends[i].angle;
        shape.along.push_back(along);
        at += part.straights[i].mm * along;
        if (i > 0) normal = Eigen::AngleAxisd(part.bends[i].rotation.rad(), along) * normal;
        const Vector3d past = Eigen::AngleAxisd(angle.rad(), normal) * along;
        const Vector3d pivot = at + part.radius.mm * normal.cross(along);
        Vector3d corner = at;
        if (angle <= tolerance::sharpest_corner)
            corner += setback(part.radius, angle).mm * along + edge_offset(touched, wire.od, angle, along, past);
        shape.points.push_back(corner);
        shape.normal.push_back(normal);
        shape.pivot.push_back(pivot);
        at = pivot - part.radius.mm * normal.cross(past);
        along = past.normalized();
        normal = (normal - normal.dot(along) * along).normalized();
    }
    shape.along.push_back(along);
    shape.points.push_back(at + part.straights.back().mm * along);
    return shape;
}

bool can_be_touched(const Route& route, std::size_t point) {
    constexpr Angle flattest_seen{5};
    if (point == 0 || point == route.bends.size() + 1) return true;
    const Angle angle = route.bends[point - 1].angle;
    return angle >= flattest_seen && angle <= tolerance::sharpest_touched;
}

Length apart(const WireShape& shape, Span span) { return {(shape.points[span.to] - shape.points[span.from]).norm()}; }

Eigen::VectorXd growth_of(const WireShape& shape, Span span) {
    const std::size_t legs = shape.along.size(), bends = shape.normal.size();
    Eigen::VectorXd growth = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(legs + 2 * bends));
    const Vector3d far = shape.points[span.to], across = far - shape.points[span.from];
    if (across.norm() == 0) return growth;
    const Vector3d u = across.normalized();
    for (std::size_t leg = span.from; leg < span.to; ++leg) growth[static_cast<Eigen::Index>(leg)] = u.dot(shape.along[leg]);
    for (std::size_t bend = span.from; bend + 1 < span.to; ++bend) {
        const Vector3d arm = (far - shape.pivot[bend]).cross(u);  // u . (axis x r) = axis . (r x u)
        growth[static_cast<Eigen::Index>(legs + bend)] = shape.normal[bend].dot(arm);
        const Vector3d roll = (far - shape.points[bend + 1]).cross(u);
        if (bend > span.from) growth[static_cast<Eigen::Index>(legs + bends + bend)] = shape.along[bend].dot(roll);
    }
    return growth;
}

Length most_different(const WireShape& one, const WireShape& other) {
    assert(one.points.size() == other.points.size());
    double most = 0;
    for (std::size_t i = 0; i < one.points.size(); ++i)
        for (std::size_t k = i + 1; k < one.points.size(); ++k)
            most = std::max(most, std::abs(apart(one, {i, k}).mm - apart(other, {i, k}).mm));
    return {most};
}

}  // namespace tubewright
