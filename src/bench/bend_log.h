#pragma once
// What is written down of bends that were made and measured: the one log that springback and the hand's own spread
// are learned from. Plain records; the book keeps them in the order in which they were taken.

#include <cstdint>
#include <optional>
#include <string>

#include "base/quantity.h"
#include "tube/tube.h"

namespace tubewright {

/// Readings of one bender (by its id) and one tube belong together. A bender has one groove.
struct BenderAndTube {
    std::string bender;
    Tube tube;
    bool operator==(const BenderAndTube&) const = default;
};

/// How a record stands: `counted` at once; `asked`: too unlikely to be learned from until it was measured again;
/// `confirmed`: measured again, and the same. Decided when it is taken, and by the person; it never changes by itself.
enum class RecordStanding { counted, asked, confirmed };

/// What every record has. `left_out` is the person's doing, and can be taken back.
struct Record {
    std::int64_t id = 0;  ///< given once, never used again
    std::string day;      ///< 2026-11-25
    RecordStanding standing = RecordStanding::counted;
    bool left_out = false;
    bool operator==(const Record&) const = default;
};

/// Whether it is learned from.
inline bool is_learned_from(const Record& record) { return !record.left_out && record.standing != RecordStanding::asked; }

/// One bend after its last pull, released. One record for each bend: a further pull replaces what the pull before it gave.
struct BendCheck {
    Record record;
    BenderAndTube with;
    std::string lot;         ///< the delivery, as the person calls it; a new name begins a new stretch of the log
    std::optional<Angle> target;  ///< none for a piece that was bent only to learn from; no hand is judged by it
    Angle set;               ///< where the lever's scale stood at the last pull
    Angle measured;          ///< by the protractor, after a fixed wait
    bool set_was_read = true;  ///< false where the lever was pulled on without reading its scale
    bool operator==(const BendCheck&) const = default;
};

/// What a bend's plane was set by: a made neighbour, or the index line alone.
enum class TurnedBy { neighbour, index_line };

/// The rotation between two neighbouring bends, measured. `turned_by` neighbour: one of the two was turned against the
/// other; index_line: both were turned by the ink. Others say nothing simple and are not written down.
struct TurnCheck {
    Record record;
    TurnedBy turned_by;
    Angle wanted, measured;
    bool operator==(const TurnCheck&) const = default;
};

/// One leg of bench/tape_check as it was taped. `expected` is with the bends' angles as measured, so that what is left
/// is the marks' doing, and the tape's.
struct LegCheck {
    Record record;
    int marked_bends;  ///< at its two ends: 1 or 2
    Length expected, read;
    bool operator==(const LegCheck&) const = default;
};

}  // namespace tubewright
