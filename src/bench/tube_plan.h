#pragma once
// A line as it lies on its straight, cut tube, so that one bend may come out otherwise than planned while the others stay
// where they are inked.

#include <vector>

#include "bench/sheet.h"

namespace tubewright {

struct BendOnTube {
    Length at;        ///< its tangent point on the hook side, from cut end A: what the ink mark fixes
    End hook;
    Angle angle;
    Angle direction;  ///< of its centre in the tube's section, from the index line
    bool operator==(const BendOnTube&) const = default;
};

struct TubePlan {
    std::vector<BendOnTube> bends;  ///< from A to B
    Length cut_length;
    Length end_a, end_b;            ///< the measured ends, from cut end A
    Length radius;                  ///< of the finished bends
    double stretch = 0;             ///< the bender's
    bool operator==(const TubePlan&) const = default;
};

/// As the sheet, which has a layout, wants it.
TubePlan plan_on_tube(const Sheet& sheet);

/// A bend takes its tube from its lever side.
BendSpan span_of(const TubePlan& plan, std::size_t bend);

/// Straights are negative where bends overlap.
Part part_of(const TubePlan& plan);
Layout layout_of(const TubePlan& plan);

/// The line with this plan for its route, in straights, and with the trim that the plan leaves: bend_sheet() with the growth that
/// the plan was laid out with puts every mark where the plan has it.
Line line_as_planned(const Line& line, const TubePlan& plan);

/// That sheet: in the order of this one, with its springback, hand and set-up; each bend by its bender's usual mark.
Sheet sheet_as_planned(const Sheet& sheet, const TubePlan& plan);

}  // namespace tubewright
