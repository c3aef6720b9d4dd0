#pragma once
// How far the proof of a line's entry is: what is asked next, and what can be said.

#include "bench/line.h"
#include "bench/proof.h"

namespace tubewright {

struct Proving {
    enum class Stage { reading, hand, verdict };

    ProofEntry entry;
    LineProof kept;                    ///< of this wire; a fresh one where there is none
    Stage stage = Stage::reading;
    std::optional<TapeTask> task;      ///< to tape now, or what could still be taped
    std::optional<HandQuestion> hand;  ///< not answered yet
    bool enough = false;               ///< readings to say that the entry agrees: two, or all that there are
    Proof proof;

    std::size_t readings() const { return kept.taken.readings.size(); }
};

Wire wire_of(const Line& line);

/// What was kept is taken where it is of this wire. A reading is asked for until as many as wanted are there (two that name
/// one slip beyond doubt, else three), or until no two points are left; then the question of the hand, where nothing speaks
/// against the entry or two slips are still likely.
Proving proving(const Wire& wire, Unit unit, const std::optional<LineProof>& kept);

/// A slip found beyond doubt: at least this likely, and not by a single reading that stands against the others. Our choice.
inline constexpr double beyond_doubt = 0.9;

/// The same in short, for the line's page.
enum class ProofStanding { none, stale, begun, agrees, speaks_against };
ProofStanding proof_standing(const Wire& wire, Unit unit, const std::optional<LineProof>& kept);
ProofStanding standing_of(const Proving& now);  ///< with what is kept of this wire

}  // namespace tubewright
