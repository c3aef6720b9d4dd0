#pragma once
// What a picture of the bench holds: surfaces, the places that labels point at, and how to look at it.

#include <map>
#include <optional>
#include <vector>

#include "base/words.h"
#include "bench/sheet.h"
#include "scene/mesh.h"
#include "scene/outlook.h"
#include "tube/touch_points.h"

namespace tubewright {

enum class PictureKind { finished, marked, turned, pulled, checked };

/// The middle line of one bend in the picture, for finding a touched bend.
struct DrawnBend {
    std::size_t bend;
    std::vector<Eigen::Vector3d> path;
};

/// A second pull: the bend lies in the bender at what it read, and the lever goes on to `to`.
struct Pulled {
    Angle from, to;
    bool operator==(const Pulled&) const = default;
};

/// A bench top that ends somewhere, drawn on a solid of that height. x and y of its corners; it fades away
/// from `middle` outward, gone at three times `half`.
struct BenchTop {
    Eigen::Vector2d low, high, middle;
    double half = 0;
};

struct Scene {
    std::vector<Mesh> meshes;
    std::vector<Eigen::Vector3d> outermost;  ///< places round everything that has to be seen
    Bounds bounds;                     ///< of the same; a long tube may run out of it
    std::map<Anchor, Eigen::Vector3d> anchors;
    std::vector<DrawnBend> bends;
    Length od;
    double bench_top_z = 0;            ///< shadows fall there; the bench top itself has no mesh
    std::optional<BenchTop> bench_top; ///< where its edges are known
    Outlook outlook;
};

/// The finished part alone, lying flat, A at the left, with one of its stretches, counted as in tube/centreline.h, in the ink of tube_now; its
/// middle is the anchor `bend`.
/// With `taped`, a tape between these two touch points, on the edge that the legs were measured to; they are the anchors gauge_1 and
/// gauge_2.
Scene part_scene(const Sheet& sheet, std::optional<std::size_t> lit = std::nullopt, std::optional<Span> taped = std::nullopt);

/// The same of any part of that tube, taped on the outside of its corners.
Scene made_scene(const Tube& size, const Part& part, std::optional<std::size_t> lit = std::nullopt, std::optional<Span> taped = std::nullopt);

/// Two parts laid over each other as a fitter holds them (bench/laid_over.h), lying flat as the first would: what is wanted, of
/// the sheet's tube, and what is made. The ends of what is made are the anchors hook_end and lever_end.
Scene laid_over_scene(const Tube& size, const Part& wanted, const Part& made);

/// The tube as it lies in the bender in front of the operator (x right, y away, z up), the hook-side tangent
/// point at the origin: bends of earlier steps are formed, coming ones straight, rolled as the step says.
///   marked   the ink mark on the reference mark
///   turned   and, where it can be taken for right, the made neighbour at the mirrored roll
///   pulled   the tube now, and in dashes the lever side at the set angle; an arrow for the lever
///   checked  the bend after release, at its target
///   finished the part alone, lying flat, A at the left; `step` is not looked at
/// The bounds are the same for the four moves of a step, so that the picture stands still between them.
/// The sheet has a layout, and the step unless `finished`.
Scene bench_scene(const Sheet& sheet, std::size_t step, PictureKind kind, const std::optional<Pulled>& again = std::nullopt);

}  // namespace tubewright
