#include "tube/route.h"

#include <Eigen/Geometry>
#include <cassert>
#include <cmath>
#include <numbers>
#include <optional>

#include "base/tolerance.h"

namespace tubewright {
namespace {

// atan2 keeps its digits near 0 and near 180, where acos of a dot product loses half of them.
double angle_between(const Eigen::Vector3d& a, const Eigen::Vector3d& b) {
    return std::atan2(a.cross(b).norm(), a.dot(b));
}

Angle in_degrees(double radians) { return {radians * 180.0 / std::numbers::pi}; }

/// Any direction across `leg`; used where a leg doubles back on itself and leaves the plane open.
Eigen::Vector3d across(const Eigen::Vector3d& leg) { return leg.unitOrthogonal(); }

}  // namespace

Route route_through(const std::vector<Eigen::Vector3d>& points_mm, RouteForm form) {
    assert(points_mm.size() >= 2);
    Route route;
    route.form = form;
    std::vector<Eigen::Vector3d> legs;
    for (std::size_t i = 0; i + 1 < points_mm.size(); ++i) {
        const Eigen::Vector3d leg = points_mm[i + 1] - points_mm[i];
        route.runs.push_back({leg.norm()});
        legs.push_back(leg.normalized());
    }
    // The normal of the last real bend's plane. Past a bend of no degrees it is carried on as it is.
    std::optional<Eigen::Vector3d> normal;
    for (std::size_t i = 0; i + 1 < legs.size(); ++i) {
        Bend bend;
        bend.angle = in_degrees(angle_between(legs[i], legs[i + 1]));
        if (bend.angle < tolerance::no_bend) {
            route.bends.push_back({});
            continue;
        }
        const Eigen::Vector3d cross = legs[i].cross(legs[i + 1]);
        const Eigen::Vector3d here = cross.norm() > 0 ? cross.normalized() : across(legs[i]);
        // rotation = atan2((before x here) . leg, before . here): right-handed about the leg between
        if (normal) bend.rotation = wrapped(in_degrees(std::atan2(normal->cross(here).dot(legs[i]), normal->dot(here))));
        normal = here;
        route.bends.push_back(bend);
    }
    return route;
}

}  // namespace tubewright
