#pragma once
// Where everything lies on the straight, cut tube.

#include <vector>

#include "bench/line.h"
#include "bench/springback.h"
#include "tube/part.h"

namespace tubewright {

/// The stretch of straight tube that one bend takes, from the tube's end A.
struct BendSpan {
    Length start, end;  ///< tangent points on A's and B's side
    bool operator==(const BendSpan&) const = default;
};

struct Layout {
    Part part;             ///< the finished part, on the finished radius
    Length waste_a, waste_b;  ///< allowance + trim
    Length cut_length;
    std::vector<BendSpan> spans;  ///< one for each bend
    bool operator==(const Layout&) const = default;

    Length waste(End end) const { return end == End::A ? waste_a : waste_b; }
};

/// cut = waste A + straights + arcs * (1 - stretch) + waste B.
Layout layout(const Line& line, const Springback& springback);

/// Where the ink mark goes, from end A, so that with `hook` held the bend starts at the bender's
/// tangent point when the ink mark lies on the reference mark.
Length ink_mark(const Layout& layout, std::size_t bend, End hook, const ReferenceMark& mark);

}  // namespace tubewright
