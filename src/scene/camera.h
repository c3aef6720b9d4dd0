#pragma once
// How a scene is looked at: from where the operator stands, behind -y and above.

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "scene/scene.h"

namespace tubewright {

/// A place in a picture, as shares of its width and height from the upper left corner.
struct Share {
    double x = 0, y = 0;
};

struct Camera {
    Eigen::Vector3d eye = Eigen::Vector3d::Zero();
    Eigen::Vector3d right = Eigen::Vector3d::UnitX(), up = Eigen::Vector3d::UnitZ(), ahead = Eigen::Vector3d::UnitY();
    double tall = 0.25;     ///< tangent of half the angle of view, upward
    double aspect = 1;      ///< width / height
    double near = 1, far = 1000;  ///< mm

    Eigen::Matrix4d view() const;        ///< operator's frame to the eye's: x right, y up, z backward
    Eigen::Matrix4d projection() const;  ///< to OpenGL's clip space
};

/// The camera with this outlook that shows all places, none nearer to the picture's edge than `margin` of
/// half its size, from as near as that allows.
Camera fitted(const std::vector<Eigen::Vector3d>& places, const Outlook& outlook, double aspect, double margin = 0.06);

/// The scene's outermost places, fitted.
Camera camera_for(const Scene& scene, double aspect);

/// Where a place appears; none behind the eye.
std::optional<Share> project(const Camera& camera, const Eigen::Vector3d& place);

/// Anchors that lie in the picture.
std::map<Anchor, Share> anchors_in(const Scene& scene, const Camera& camera);

}  // namespace tubewright
