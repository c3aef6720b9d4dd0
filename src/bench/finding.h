#pragma once
// What speaks against making a line as it stands: facts first; the words are made in present.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity.h"
#include "base/words.h"

namespace tubewright {

// Bends count from 0 here; `side` is hook or lever.
struct NoRoomInBender { std::size_t bend; bool hook_side; Length straight, needed; std::optional<std::size_t> made_neighbour; std::optional<End> at_end; };
struct CornersOverlap { std::size_t first; std::optional<std::size_t> second; std::optional<End> at_end; Length missing; };
struct EndTooShort { End end; std::size_t bend; Length straight, needed; };
struct AngleBeyondBender { std::size_t bend; Angle set, target, limit; };
struct RadiusTooTight { Length radius, least; bool stop; };
struct WallTooHeavy { End end; Length wall, heaviest; };
struct SingleFlareOnBrake { End end; };  ///< 45 degrees; the usual seat is made for a double flare
struct HitsItself { std::size_t first, second; Length gap; bool stop; };  ///< stretches as in tube/clearance.h
struct LongerThanStick { Length cut, stick; };
struct DegenerateCorner { std::size_t bend; Angle angle; };
struct TrappedPieces { std::size_t bend; End end; std::vector<std::string> pieces; };
struct WrongGroove { Length od, groove; };
struct MarkOffStraight { std::size_t bend; std::string mark; };   ///< no mark of the bender falls on straight tube
struct NoBend {};                                    ///< a straight line between two fixed points
struct SmallAngle { std::size_t bend; Angle angle; };  ///< springback rule not linear there

/// Whatever the order, some bend is left over: `bend`, held at `hook`, runs into `solid` (empty: into the tube itself) by
/// `depth`; no depth where straight tube or mark is what is missing. `made`: bends that can be made before.
struct NoOrderPossible { std::size_t made; std::optional<std::size_t> bend; std::optional<End> hook; std::optional<Length> depth; std::string solid; };

using Fact = std::variant<NoRoomInBender, CornersOverlap, EndTooShort, AngleBeyondBender, RadiusTooTight,
                          WallTooHeavy, HitsItself, LongerThanStick, DegenerateCorner, TrappedPieces,
                          WrongGroove, MarkOffStraight, NoBend, SmallAngle, SingleFlareOnBrake, NoOrderPossible>;

enum class Severity { stop, caution, note };

struct Finding {
    Severity severity;
    std::string code;                  ///< stable, such as "short-straight"
    std::optional<std::size_t> bend;   ///< from 0
    Fact fact;
};

}  // namespace tubewright
