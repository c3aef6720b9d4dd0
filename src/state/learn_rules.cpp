// How far the learning of a bender is, from the pieces that stand in the book.

#include <algorithm>

#include "bench/learning.h"
#include "state/rules.h"

namespace tubewright {

std::vector<KeptPiece> pieces_here(const State& state) {
    std::vector<KeptPiece> pieces;
    const Sheet* sheet = sheet_in_hand(state);
    const auto kept = sheet ? state.work.pieces.find(sheet->line.bender.id) : state.work.pieces.end();
    if (kept == state.work.pieces.end()) return pieces;
    const std::string tube = tube_key(sheet->line.tube);
    std::copy_if(kept->second.begin(), kept->second.end(), std::back_inserter(pieces), [&](const KeptPiece& piece) { return piece.tube == tube; });
    return pieces;
}

std::optional<KeptPiece> piece_in_work(const State& state) {
    for (const KeptPiece& piece : pieces_here(state))
        if (next_step(piece) != PieceStep::done) return piece;
    return std::nullopt;
}

LearnPage learn_page(const State& state) {
    const Learn& learn = *state.learn;
    if (learn.again) return LearnPage::again;
    if (state.looks.keypad) return LearnPage::name;
    if (const auto piece = piece_in_work(state)) return learn.other_ink || next_step(*piece) == PieceStep::mark ? LearnPage::mark : LearnPage::step;
    if (learn.readings) return LearnPage::readings;
    if (learn.more || !learn.learning) return LearnPage::more;
    return learn.learning->trouble ? LearnPage::trouble : LearnPage::result;
}

std::optional<PieceSpot> spot_in_hand(const State& state) {
    if (state.looks.screen != Screen::learn || !state.learn) return std::nullopt;
    const LearnPage page = learn_page(state);
    if (page == LearnPage::again) return state.learn->again;
    const auto piece = piece_in_work(state);
    if (page != LearnPage::step || !piece) return std::nullopt;
    const PieceStep step = next_step(*piece);
    if (step == PieceStep::load || step == PieceStep::pull) return std::nullopt;
    return PieceSpot{piece->id, step, piece->inks.empty() ? 0 : piece->inks.size() - 1};
}

std::optional<double> typed_spot(const State& state) {
    const auto spot = spot_in_hand(state);
    const auto number = typed_number(state.looks.typed);
    if (!spot || !number || *number <= 0) return std::nullopt;
    if (spot->step == PieceStep::angle) return *number <= 180 ? number : std::nullopt;
    const double mm = reader_unit(state) == Unit::inch ? *number * 25.4 : *number;
    return mm <= longest_piece.mm ? std::optional(mm) : std::nullopt;
}

namespace {

/// Whether nothing but the pieces differs, and what the log has of them.
bool only_pieces_differ(Work one, const Work& other) {
    if (one.pieces == other.pieces) return false;
    one.pieces = other.pieces;
    const auto of_lines = [](std::vector<LoggedBend> bends) {
        std::erase_if(bends, is_of_a_piece);
        return bends;
    };
    if (of_lines(one.bends) != of_lines(other.bends)) return false;
    one.bends = other.bends;
    one.next_id = other.next_id;
    return one == other;
}

}  // namespace

bool can_undo_learning(const State& state) { return can_undo(state) && only_pieces_differ(state.past.back().work, state.work); }

bool can_redo_learning(const State& state) { return can_redo(state) && only_pieces_differ(state.future.front().work, state.work); }

MarkBar bar_to_mark(const State& state, const std::string& name) {
    if (name.empty()) return MarkBar::empty;
    const auto piece = piece_in_work(state);
    if (!piece) return MarkBar::none;
    return std::any_of(piece->inks.begin(), piece->inks.end(), [&](const KeptInk& ink) { return ink.mark == name; }) ? MarkBar::taken : MarkBar::none;
}

std::optional<Bender> card_as_learned(const State& state) {
    if (!state.card || !state.learn || !state.learn->learning || !state.learn->learning->learned) return std::nullopt;
    return with_learned(state.card->bender, *state.learn->learning->learned, reader_unit(state));
}

}  // namespace tubewright
