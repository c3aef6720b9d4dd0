#pragma once
// What speaks against making a line as it stands: facts first; the words are made in present.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/quantity.h"
#include "base/words.h"
#include "bench/handling.h"
#include "bench/way_out.h"

namespace tubewright {

// Bends count from 0 here; `side` is hook or lever.
/// The straight on one side of a bend is shorter than that side of the bender holds; it ends at a bend already
/// made or at the tube's end, and there has to take the pieces slid on besides (`with_pieces`). Once it is known that no order
/// works (`no_order`): by how much longer that straight makes one possible, where that alone does it and was tried (`enough`).
struct NoRoomInBender { std::size_t bend; bool hook_side; Length straight, needed; std::optional<std::size_t> made_neighbour; std::optional<End> at_end; bool with_pieces = false; bool no_order = false; std::optional<Length> enough = {}; };
/// Two bends, or a bend and a measured end, want the same piece of tube.
struct CornersOverlap { std::size_t first; std::optional<std::size_t> second; std::optional<End> at_end; Length missing; };
/// The straight from a measured end to the first bend is shorter than flare, nut and sleeve need.
struct EndTooShort { End end; std::size_t bend; Length straight, needed; };
/// The bend, or the pull that springback asks for, goes further than the bender.
struct AngleBeyondBender { std::size_t bend; Angle set, target, limit; };
/// The radius is under the material's least (`stop`) or under its usual one.
struct RadiusTooTight { Length radius, least; bool stop; };
/// A wall that the fitting's flare does not take.
struct WallTooHeavy { End end; Length wall, heaviest; };
/// A 45 degree single flare, where the usual seat is made for a double flare.
struct SingleFlareOnBrake { End end; };
/// Two stretches, counted as in tube/clearance.h, that touch, or run through each other (`stop`).
struct HitsItself { std::size_t first, second; Length gap; bool stop; };
/// The line can't be cut from one of the lengths the tube is sold in.
struct LongerThanStick { Length cut, stick; };
/// A corner that is no bend at all, or too sharp to be laid out from its corner.
struct DegenerateCorner { std::size_t bend; Angle angle; };
/// What has to be on the tube before `bend` traps it between itself and `end`.
struct TrappedPieces { std::size_t bend; End end; std::vector<std::string> pieces; };
/// The tube and the bender's groove are of different sizes.
struct WrongGroove { Length od, groove; };
/// No mark of the bender falls on straight tube; `mark` is the one that was wanted.
struct MarkOffStraight { std::size_t bend; std::string mark; };
/// A straight line between two fixed points.
struct NoBend {};
/// A bend so slight that the springback rule is not linear there.
struct SmallAngle { std::size_t bend; Angle angle; };

/// Straight tube on one side of a bend, and what the bender needs there.
struct StraightShort { bool hook_side; Length has, needed; };
/// Whatever the order, some bend is left over: `bend`, held at `hook`, runs into `solid` (empty: into the tube itself) by
/// `depth`, 0 where it only comes too near; or straight tube is `short_of`; or neither, where no place for a mark is left.
/// `made`: bends that can be made before; `ways`: what would free it; `every_way` was tried to its end.
struct NoOrderPossible { std::size_t made; std::optional<std::size_t> bend; std::optional<End> hook; std::optional<Length> depth; std::string solid; std::vector<WayOut> ways = {}; std::optional<StraightShort> short_of = {}; bool every_way = true; };

/// Nobody has looked for a good order, nor for what is in the tube's way: the person stopped it, or there are too many bends.
struct OrderNotLooked { bool stopped; };

/// How far a bend's ink mark has to move from where it is inked, towards end B; 0: it stays.
struct InkMove {
    std::size_t bend;
    Length by;
    bool operator==(const InkMove&) const = default;
};

/// Whether the bends that are left of a cut tube go in another order. `now` and `then`: how they come, as settled and in that
/// other order; `ink`: of what is inked, for `then`. `stance`: where no order goes, another one does if the bender stands so.
/// `every_order`, and every stance, was tried, not only the most likely.
struct OtherRest {
    enum class Is { looking, stopped, found, none } is = Is::looking;
    std::vector<Placing> now, then;
    std::vector<InkMove> ink;
    std::optional<SetUp> stance;
    bool every_order = true;
    bool operator==(const OtherRest&) const = default;
};

/// The tube is cut, its order settled; as the bender stands now, something is in this bend's way. `free`: how it could
/// stand so that nothing is, for this bend and all after it.
/// `new_measures`: the bender's card has been changed since the cut. `rest`: none where no other order can help, as for a bend
/// that is begun.
struct HitsAsItStands { std::uint64_t made; Placing placing; Obstacle obstacle; std::string solid; std::optional<SetUp> free; bool new_measures = false; std::optional<OtherRest> rest = {}; };

/// The bender's card has been changed since the tube was cut; the bends still to make were looked at again with it, and
/// nothing is in their way. Whether another order would now be better nobody has asked.
struct LookedAgain {};

using Fact = std::variant<NoRoomInBender, CornersOverlap, EndTooShort, AngleBeyondBender, RadiusTooTight,
                          WallTooHeavy, HitsItself, LongerThanStick, DegenerateCorner, TrappedPieces,
                          WrongGroove, MarkOffStraight, NoBend, SmallAngle, SingleFlareOnBrake, NoOrderPossible, OrderNotLooked, HitsAsItStands, LookedAgain>;

/// A stop forbids making the line as it stands, a caution asks for a look, a note tells.
enum class Severity { stop, caution, note };

/// One fact with its weight, the code that tests and files know it by, and the bend it belongs to.
struct Finding {
    Severity severity;
    std::string code;                  ///< stable, such as "short-straight"
    std::optional<std::size_t> bend;   ///< from 0
    Fact fact;
};

}  // namespace tubewright
