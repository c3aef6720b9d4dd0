#pragma once
// A lever bender as the shop knows it.

#include <Eigen/Core>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "bench/solid.h"

namespace tubewright {

/// A line on the bender's shoe or form that an ink mark is put on. `offset` is along the tube from
/// the hook-side tangent point, where the bend starts, positive towards the lever side. It does not
/// depend on the bend angle.
struct ReferenceMark {
    std::string name;
    Length offset;
    bool operator==(const ReferenceMark&) const = default;
};

/// How the bender stands in front of the operator: on which hand the hook is, and which way the
/// lever side of the tube is swept.
enum class HookHand { left, right };
enum class Swing { away, toward, up, down };
struct SetUp {
    HookHand hook = HookHand::left;
    Swing swing = Swing::away;
    bool operator==(const SetUp&) const = default;
};

struct Bender {
    std::string id, name;
    Length tube_od;
    Length radius;       ///< of the form, to the tube's centre line
    Angle max_angle;     ///< the furthest the lever goes on its scale
    double stretch = 0;  ///< share of the arc that is not taken from the straight tube
    std::vector<ReferenceMark> marks;  ///< at least one
    std::string preferred_mark;        ///< a name in marks, or empty: the first one
    Length hook_straight;   ///< straight tube needed before the start of the bend
    Length lever_straight;  ///< straight tube needed past the end of the bend
    SetUp set_up;
    std::vector<Solid> body;  ///< what the tube may run into; nothing is looked for where it is empty
    bool operator==(const Bender&) const = default;
};

/// The mark to lay out for unless told otherwise. Index into marks.
std::size_t usual_mark(const Bender& bender);

}  // namespace tubewright
