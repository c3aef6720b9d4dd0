#include "bench/kept_piece.h"

namespace tubewright {
namespace {

/// Where the reading of a step stands, or null.
std::optional<Length>* length_of(KeptPiece& piece, PieceStep step, std::size_t ink) {
    switch (step) {
        case PieceStep::cut: return &piece.cut;
        case PieceStep::ink: return ink < piece.inks.size() ? &piece.inks[ink].from_hook_end : nullptr;
        case PieceStep::hook_leg: return &piece.hook_leg;
        case PieceStep::lever_leg: return &piece.lever_leg;
        case PieceStep::width: return &piece.width;
        case PieceStep::crown_gap: return &piece.crown_gap;
        case PieceStep::mark:
        case PieceStep::load:
        case PieceStep::pull:
        case PieceStep::angle:
        case PieceStep::done: break;
    }
    return nullptr;
}

}  // namespace

PieceStep next_step(const KeptPiece& piece) {
    if (is_half_turn(piece)) return !piece.set ? PieceStep::pull : !piece.width ? PieceStep::width : PieceStep::done;
    if (!piece.cut) return PieceStep::cut;
    if (piece.inks.empty()) return PieceStep::mark;
    if (!piece.inks.back().from_hook_end) return PieceStep::ink;
    if (!piece.loaded) return PieceStep::load;
    if (!piece.set) return PieceStep::pull;
    if (!piece.angle) return PieceStep::angle;
    if (!piece.hook_leg) return PieceStep::hook_leg;
    return piece.lever_leg ? PieceStep::done : PieceStep::lever_leg;
}

std::optional<double> reading_at(const KeptPiece& piece, PieceStep step, std::size_t ink) {
    if (step == PieceStep::angle) return piece.angle ? std::optional(piece.angle->deg) : std::nullopt;
    KeptPiece copy = piece;
    const std::optional<Length>* at = length_of(copy, step, ink);
    return at && *at ? std::optional((*at)->mm) : std::nullopt;
}

bool can_add(const KeptPiece& piece, PieceStep step) { return step == PieceStep::crown_gap && !is_half_turn(piece) && next_step(piece) == PieceStep::done; }

KeptPiece with_reading(KeptPiece piece, PieceStep step, double reading, std::size_t ink) {
    if (step == PieceStep::angle) piece.angle = Angle{reading};
    else if (std::optional<Length>* at = length_of(piece, step, ink)) *at = Length{reading};
    return piece;
}

}  // namespace tubewright
