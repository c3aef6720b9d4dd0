#pragma once
// The simple solids that pictures are made of: swept, turned and extruded. All are closed.

#include <Eigen/Core>
#include <vector>

#include "scene/mesh.h"
#include "tube/centreline.h"

namespace tubewright {

/// A round section of this radius (mm), square to the frame's `along`.
struct Station {
    Frame frame;
    double radius;
};

/// Bores of a swept solid's two ends (radius in mm); 0 for a flat end.
struct Bores {
    double start = 0, end = 0;
};

/// Round solid through all stations, at least two, that follow each other along.
Mesh swept(const std::vector<Station>& stations, Ink ink, const Bores& bores = {});

/// Round rod with round ends along a path of at least two places.
Mesh rod(const std::vector<Eigen::Vector3d>& path, double radius, Ink ink);

/// Solid of revolution about axis.along. The profile is (radius, height), from the axis at the bottom
/// to the axis at the top, with the solid on its left.
Mesh turned(const Frame& axis, const std::vector<Eigen::Vector2d>& profile, Ink ink);

/// A flat convex outline, moved by `by`. The outline may run either way round.
Mesh extruded(std::vector<Eigen::Vector3d> outline, const Eigen::Vector3d& by, Ink ink);

/// Frames along a path, kept from twisting.
std::vector<Frame> frames_along(const std::vector<Eigen::Vector3d>& path);

/// The path in dashes, each a rod, beginning with one.
std::vector<Mesh> dashed(const std::vector<Eigen::Vector3d>& path, double radius, double dash, double gap, Ink ink);

}  // namespace tubewright
