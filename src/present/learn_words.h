#pragma once
// Inside present: what pieces teach of a bender, in words.

#include <string>
#include <vector>

#include "bench/learning.h"
#include "present/text.h"
#include "state/action.h"

namespace tubewright {

/// What is in the way of learning: what is wrong, what to do, and the readings that may be at fault.
struct LearnTroubleWords {
    std::string what, to_do;
    std::vector<PieceSpot> again;
};
LearnTroubleWords learn_trouble_words(const LearnTrouble& trouble, const std::vector<KeptPiece>& pieces, const Tape& tape);

/// "hook leg", "ink for line 0": as it stands in the middle of a sentence.
std::string reading_name(const KeptPiece& piece, const PieceSpot& spot);
std::string reading_value(const KeptPiece& piece, const PieceSpot& spot, const Tape& tape);
/// Every reading of a piece, in the order they were taken.
std::vector<PieceSpot> readings_of(const KeptPiece& piece);
PieceSpot spot_of(const KeptPiece& piece, PieceReading which);

/// "a bend to 45°", "a half turn".
std::string aim_words(Angle aim, const Tape& tape);

/// "1/32\" past where the bend starts".
std::string offset_words(Length offset, Unit unit);
/// "1/32\" past", in a column of its own.
std::string brief_offset(Length offset, Unit unit);
/// What the line shows, as far as it can be told, and what would tell.
std::string meaning_words(const MarkMeaning& meaning, const Tape& tape);
/// "the corner of the bend".
std::string meant_place(MarkMeans means);

/// 19 times in 20 the truth lies within this of what was learned.
inline Length band(Length sd) { return 1.96 * sd; }

}  // namespace tubewright
