#pragma once
// The solids a bender, its lever and the bench consist of, and how near a straight stretch of tube comes
// to one. Places are in mm.

#include <Eigen/Core>
#include <string>
#include <variant>

#include "base/quantity.h"

namespace tubewright {

/// Between two opposite corners, its edges along the frame's axes.
struct Block {
    Eigen::Vector3d from, to;
    bool operator==(const Block&) const = default;
};

/// Between the centres of its two flat ends.
struct Cylinder {
    Eigen::Vector3d from, to;
    Length radius;
    bool operator==(const Cylinder&) const = default;
};

/// All that lies beyond a plane through `at`; `into` points into the material.
struct HalfSpace {
    Eigen::Vector3d at, into;
    bool operator==(const HalfSpace&) const = default;
};

using Shape = std::variant<Block, Cylinder, HalfSpace>;

/// `fixed` and `lever` solids are given in the bender's frame (along the axis, the swing, the normal; origin
/// at the hook-side tangent point), the lever's at lever angle 0: they turn with it about the form's centre.
/// `bench` solids are given in the operator's frame (right, away, up; same origin): they stay where they
/// are when the bender is turned over to another set-up.
enum class Stands { fixed, lever, bench };
struct Solid {
    std::string name;
    Stands stands = Stands::fixed;
    Shape shape;
    bool operator==(const Solid&) const = default;
};

/// All that lies within `radius` of a straight line from a to b. A ball where a is b.
struct Capsule {
    Eigen::Vector3d a, b;
    double radius;
};

/// A solid made ready for many questions.
class PlacedSolid {
public:
    /// `turn` brings a place in the solid's own frame into the frame of the questions.
    PlacedSolid(const Shape& shape, const Eigen::Matrix3d& turn);

    /// From surface to surface. Where they run through each other, minus how far the capsule reaches in: its
    /// radius and, where its line lies inside, how deep the deepest place of the line does.
    double gap(const Capsule& capsule) const;

    /// The same where the capsule's line lies outside; where it lies inside, minus its radius, which is quicker.
    double clearance(const Capsule& capsule) const;

    /// A ball around it: its middle, and how far its places reach from there. Of a half space that is infinite.
    const Eigen::Vector3d& middle() const { return middle_; }
    double reach() const { return reach_; }

    /// Between which heights on the frame's third axis it lies.
    double lowest() const { return lowest_; }
    double highest() const { return highest_; }

    /// How far its furthest place is from the frame's origin; of a half space, the place it was given by.
    double extent() const { return extent_; }

private:
    enum class Kind { box, cylinder, half_space };
    double line_gap(const Capsule& capsule, bool depth) const;

    Kind kind_;
    Eigen::Matrix3d to_local_;  ///< into a frame with the solid's middle (a half space's plane) at the origin
    Eigen::Vector3d middle_, half_;  ///< of a cylinder half_ is radius, radius, half its length; it lies along z
    double extent_ = 0, reach_ = 0, lowest_ = 0, highest_ = 0;
};

/// From surface to surface; negative where they run through each other.
double gap(const Capsule& one, const Capsule& other);

}  // namespace tubewright
