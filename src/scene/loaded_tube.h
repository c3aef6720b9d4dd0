#pragma once
// The tube as it lies in the bender at one step: made bends formed, coming ones still straight.

#include <optional>
#include <vector>

#include "bench/sheet.h"
#include "bench/stance.h"
#include "tube/centreline.h"

namespace tubewright {

/// A piece of tube as drawn, in the operator's frame with the hook-side tangent point at the origin.
struct DrawnStretch {
    Stretch stretch;                  ///< a straight, or a bend that is formed
    std::optional<std::size_t> bend;  ///< also for a bend that is still straight
    bool formed = false;
    Length from_a;                    ///< where it begins on the straight, cut tube
    bool gap = false;                 ///< left out of the drawing: the tube is shown broken here
};

/// The bend in hand as it is drawn: still straight, or formed to this radius and angle.
struct Formed {
    Length radius;
    Angle angle;
};

/// From A to B.
struct LoadedTube {
    std::vector<DrawnStretch> stretches;
    std::size_t now;  ///< the stretch of the bend in hand
    End hook;

    /// Stretches on one side of the bend in hand, nearest first.
    std::vector<std::size_t> side(End end) const;
};

/// How far straights are drawn. A longer one is drawn broken, as on a drawing, and closed up, so that
/// bender, mark and made legs stay large beside a tube a hundred times as long as it is thick.
struct DrawnLength {
    Length near_bend;   ///< kept next to the bend in hand, true to scale
    Length beyond;      ///< kept at the far side of the break
    Length elsewhere;   ///< of a straight that does not adjoin the bend in hand, in all
    Length gap;         ///< the break itself
};

LoadedTube loaded_tube(const Sheet& sheet, std::size_t step, const std::optional<Formed>& formed, const DrawnLength& drawn);

/// Frames along a stretch, from A to B, close enough for a smooth arc.
std::vector<Frame> frames_of(const Stretch& stretch);

/// The place this far from A on the straight, cut tube; none where the drawing leaves it out.
std::optional<Frame> frame_at(const LoadedTube& tube, Length from_a);

}  // namespace tubewright
