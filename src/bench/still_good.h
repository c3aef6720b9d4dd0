#pragma once
// What a tube that can't be saved is still good for.

#include <vector>

#include "bench/laid_over.h"
#include "bench/tube_plan.h"

namespace tubewright {

/// The made bends are bends of that line, beginning with `first_bend`; the rest of it can still be made of what is straight.
struct GoodForLine {
    std::size_t line;        ///< place in the list of sheets
    bool turned_round;       ///< the piece's end B is the line's end A
    std::size_t first_bend;  ///< from 0
    TubePlan plan;           ///< of that line on this piece, A and B as the line has them
    EndsOff off;
    bool operator==(const GoodForLine&) const = default;
};

/// A straight piece from one end of the tube to the first bend, and which lines it is long enough for.
struct StraightEnd {
    End end;
    Length length;
    std::vector<std::size_t> lines;
    bool operator==(const StraightEnd&) const = default;
};

struct StillGood {
    std::vector<GoodForLine> lines;     ///< that fits best first, one for each line
    std::vector<StraightEnd> straights; ///< the longer first
};

/// `sheet` is that of the tube, `made` what is made of it, `plan` where that lies. Lines of the same tube on the same bender alone.
StillGood still_good(const Sheet& sheet, const std::vector<std::size_t>& made, const TubePlan& plan, const std::vector<Sheet>& sheets, const EndTolerance& tolerance = {});

}  // namespace tubewright
