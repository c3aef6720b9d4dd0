#pragma once
// What the pieces taught of a bender, all of it worked out for the screen; and the card with it.

#include "base/words.h"
#include "bench/kept_piece.h"
#include "bench/learn_bender.h"
#include "bench/line.h"

namespace tubewright {

/// How a piece is begun so that hook and lever have tube to hold, in whole inches or whole centimetres.
struct PiecePlan {
    Length cut, ink;  ///< its length, and how far from the hook end the first ink goes
    bool operator==(const PiecePlan&) const = default;
};
PiecePlan piece_plan(const Bender& bender, Unit unit);

/// The bends that a piece may be given: 45, 90, whatever tells two meanings of a mark apart, or half a turn; as far as the lever goes.
bool can_aim(const Bender& bender, Angle aim);

/// What is believed of this bender before: its card, and the physics of the tube.
BenderBelief belief_of(const Line& line, const Springback& springback);

/// As it is learned from. The piece is measured to the end.
BentPiece bent_piece(const KeptPiece& piece);

struct Learning {
    std::vector<KeptPiece> pieces;         ///< those measured to the end; troubles and odd readings count them
    std::optional<LearnedBender> learned;  ///< or
    std::optional<LearnTrouble> trouble;
    std::vector<MarkMeaning> meanings;     ///< of every mark inked, learned or moving
    std::vector<OneMore> more;             ///< the most useful first; only what the lever can do
};
/// Of the pieces of this tube; nothing where none is measured to the end.
std::optional<Learning> learn_from(const BenderBelief& belief, const Bender& bender, const std::vector<KeptPiece>& kept);

/// Whether the pieces themselves tell how much the tube stretches in a bend: what is believed before taken out again, the 95 % band
/// of what is left leaves out none at all. One piece and a tape can't (springback notes, section 6.3).
//   1 / sd^2 and mean / sd^2 of normal beliefs add up; taken to be so of stretch alone
bool tells_stretch(const LearnedBender& learned);

/// The card with what was learned: the form's radius and the marks' offsets, to the thousandth of an inch or the
/// hundredth of a millimetre, and the stretch, to the thousandth part, where it is told; marks that it did not have are
/// added. Nothing where a number is beyond what a card may hold.
std::optional<Bender> with_learned(Bender card, const LearnedBender& learned, Unit unit);

}  // namespace tubewright
