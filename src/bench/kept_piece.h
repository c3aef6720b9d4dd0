#pragma once
// A piece that a bender is learned from as the shop writes it down: reading by reading, while it is cut, inked, bent
// and taped. Plain records; the book keeps them.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"

namespace tubewright {

/// An ink line on the piece that lay on this line of the bender; none where it has not been taped yet.
struct KeptInk {
    std::string mark;
    std::optional<Length> from_hook_end;
    bool operator==(const KeptInk&) const = default;
};

struct KeptPiece {
    std::int64_t id = 0;          ///< given once, never used again
    std::string tube;             ///< tube key
    Angle aim;                    ///< of the lever's scale; half_turn: bent back on itself, for its width alone
    int tape = 32;                ///< parts of an inch that are read: 32 or 64
    std::optional<Length> cut;
    std::vector<KeptInk> inks;    ///< in the order they were put on
    bool loaded = false;
    std::optional<Angle> set;     ///< where the lever stood; none while it is not bent
    std::optional<Angle> angle;   ///< after release
    std::optional<Length> hook_leg, lever_leg, width;
    std::optional<Length> crown_gap;  ///< taken by whoever wants the radius surer and can bend no half turn
    bool operator==(const KeptPiece&) const = default;
};
inline constexpr Angle half_turn{180};
inline bool is_half_turn(const KeptPiece& piece) { return piece.aim == half_turn; }

/// What is done with a piece, in order. Of a half turn only `pull` and `width`. No piece waits for a `crown_gap`.
enum class PieceStep { cut, mark, ink, load, pull, angle, hook_leg, lever_leg, width, crown_gap, done };
PieceStep next_step(const KeptPiece& piece);

/// The reading that a step asks for, typed as a number: mm or degrees. `ink` is the last one put on.
std::optional<double> reading_at(const KeptPiece& piece, PieceStep step, std::size_t ink = 0);
/// Whether that reading is one that a piece measured to the end can have besides.
bool can_add(const KeptPiece& piece, PieceStep step);
/// The same put down; steps that ask for no number change nothing.
KeptPiece with_reading(KeptPiece piece, PieceStep step, double reading, std::size_t ink = 0);

}  // namespace tubewright
