#include "scene/camera.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>

namespace tubewright {
namespace {

using Eigen::Vector3d;

constexpr double half_view_deg = 13;  // a long lens: little distortion, yet near things look nearer

Camera turned_to(const Outlook& outlook, double aspect) {
    Camera camera;
    camera.aspect = aspect;
    camera.tall = std::tan(Angle{half_view_deg}.rad());
    camera.ahead = ahead(outlook);
    camera.right = camera.ahead.cross(Vector3d::UnitZ()).normalized();
    camera.up = camera.right.cross(camera.ahead);
    return camera;
}

/// Along one axis of the picture every place asks: |place - eye| <= tan * (depth of place - depth of eye).
///   eye - tan * eye_depth >= most of (place - tan * depth)
///   eye + tan * eye_depth <= least of (place + tan * depth)
struct Squeeze {
    double most = -std::numeric_limits<double>::infinity(), least = std::numeric_limits<double>::infinity();
    void take_in(double place, double depth, double tan) {
        most = std::max(most, place - tan * depth);
        least = std::min(least, place + tan * depth);
    }
    double furthest(double tan) const { return (least - most) / (2 * tan); }
    double middle() const { return (least + most) / 2; }
};

}  // namespace

Eigen::Matrix4d Camera::view() const {
    Eigen::Matrix4d view = Eigen::Matrix4d::Identity();
    view.block<1, 3>(0, 0) = right.transpose();
    view.block<1, 3>(1, 0) = up.transpose();
    view.block<1, 3>(2, 0) = -ahead.transpose();
    view.block<3, 1>(0, 3) = -(view.block<3, 3>(0, 0) * eye);
    return view;
}

Eigen::Matrix4d Camera::projection() const {
    // The usual perspective matrix, OpenGL 3.3 core specification leaves it to the program; derived from
    // x / (aspect * tall * depth), y / (tall * depth), depth near -> -1, far -> 1.
    Eigen::Matrix4d clip = Eigen::Matrix4d::Zero();
    clip(0, 0) = 1 / (aspect * tall);
    clip(1, 1) = 1 / tall;
    clip(2, 2) = -(far + near) / (far - near);
    clip(2, 3) = -2 * far * near / (far - near);
    clip(3, 2) = -1;
    return clip;
}

Camera fitted(const std::vector<Vector3d>& places, const Outlook& outlook, double aspect, double margin) {
    Camera camera = turned_to(outlook, aspect);
    const double tan_up = camera.tall * (1 - margin), tan_right = tan_up * aspect;
    Squeeze across, upward;
    double nearest = std::numeric_limits<double>::infinity(), furthest = -nearest;
    for (const Vector3d& place : places) {
        const double depth = place.dot(camera.ahead);
        across.take_in(place.dot(camera.right), depth, tan_right);
        upward.take_in(place.dot(camera.up), depth, tan_up);
        nearest = std::min(nearest, depth);
        furthest = std::max(furthest, depth);
    }
    if (places.empty()) return camera;
    const double eye_depth = std::min(across.furthest(tan_right), upward.furthest(tan_up));
    camera.eye = across.middle() * camera.right + upward.middle() * camera.up + eye_depth * camera.ahead;
    // Room before and behind for tube that runs out of the bounds.
    const double distance = nearest - eye_depth, deep = furthest - nearest;
    camera.near = 0.3 * std::max(distance, 1.0);
    camera.far = distance + 6 * std::max(deep, distance);
    return camera;
}

Camera camera_for(const Scene& scene, double aspect) { return fitted(scene.outermost, scene.outlook, aspect); }

std::optional<Share> project(const Camera& camera, const Vector3d& place) {
    const Vector3d out = place - camera.eye;
    const double depth = out.dot(camera.ahead);
    if (depth <= 0) return std::nullopt;
    const double x = out.dot(camera.right) / (depth * camera.tall * camera.aspect), y = out.dot(camera.up) / (depth * camera.tall);
    return Share{(1 + x) / 2, (1 - y) / 2};
}

std::map<Anchor, Share> anchors_in(const Scene& scene, const Camera& camera) {
    std::map<Anchor, Share> seen;
    for (const auto& [anchor, place] : scene.anchors) {
        const auto share = project(camera, place);
        if (share && share->x >= 0 && share->x <= 1 && share->y >= 0 && share->y <= 1) seen[anchor] = *share;
    }
    return seen;
}

}  // namespace tubewright
