// A bender learned from pieces that are cut, inked, bent and taped, one step at a time.

#include <algorithm>

#include "bench/learning.h"
#include "state/doing.h"

namespace tubewright {
namespace {

bool at_learning(const State& state) { return state.looks.screen == Screen::learn && state.learn && sheet_in_hand(state); }

/// A piece has only few inks; one tube shows no more lines than a bender has.
constexpr std::size_t most_inks = 20;

void work_out_learning(State& state) {
    const Sheet& sheet = *sheet_in_hand(state);
    auto learning = learn_from(belief_of(sheet.line, sheet.springback), sheet.line.bender, pieces_here(state));
    state.learn->learning = learning ? std::make_shared<const Learning>(std::move(*learning)) : nullptr;
}

/// Nothing half-done is left on the screen.
void turn_to_next(State& state) {
    state.looks.typed.clear();
    state.looks.keypad = false;
    state.looks.page = 0;
    const std::size_t picked = state.learn->picked;
    auto learning = std::move(state.learn->learning);
    state.learn = Learn{};
    state.learn->picked = picked;
    state.learn->learning = std::move(learning);
}

/// The pieces of the bender in hand are changed, as one touch for undo.
template <class Change>
void change_pieces(Doing& doing, Change change) {
    Work next = doing.state.work;
    std::vector<KeptPiece>& pieces = next.pieces[sheet_in_hand(doing.state)->line.bender.id];
    change(pieces, next);
    if (pieces.empty()) next.pieces.erase(sheet_in_hand(doing.state)->line.bender.id);
    change_work(doing, std::move(next));
    turn_to_next(doing.state);
    work_out_learning(doing.state);
}

template <class Change>
void change_piece(Doing& doing, std::int64_t id, Change change) {
    change_pieces(doing, [&](std::vector<KeptPiece>& pieces, Work&) {
        for (KeptPiece& piece : pieces)
            if (piece.id == id) change(piece);
    });
}

bool is_here(const State& state, std::int64_t id) {
    const std::vector<KeptPiece> pieces = pieces_here(state);
    return std::any_of(pieces.begin(), pieces.end(), [&](const KeptPiece& piece) { return piece.id == id; });
}

void take_typed(Doing& doing) {
    const auto spot = spot_in_hand(doing.state);
    const auto reading = typed_spot(doing.state);
    if (!spot || !reading) return;
    const bool readings = doing.state.learn->readings;
    change_pieces(doing, [&](std::vector<KeptPiece>& pieces, Work& next) {
        for (KeptPiece& piece : pieces) {
            if (piece.id != spot->piece) continue;
            piece = with_reading(piece, spot->step, *reading, spot->ink);
            if (spot->step == PieceStep::angle) log_piece(doing.state, next, piece);
        }
    });
    doing.state.learn->readings = readings;
}

}  // namespace

void learn_bender_here(Doing& doing) {
    State& state = doing.state;
    if (state.looks.screen != Screen::card || !state.card || !state.card->figure.empty() || !sheet_in_hand(state)) return;
    show_beside(state, Screen::learn);
    state.learn = Learn{};
    work_out_learning(state);
}

void start_piece(Doing& doing, Angle aim) {
    const State& state = doing.state;
    if (!at_learning(state) || learn_page(state) != LearnPage::more || !can_aim(sheet_in_hand(state)->line.bender, aim)) return;
    change_pieces(doing, [&](std::vector<KeptPiece>& pieces, Work& next) {
        KeptPiece piece;
        piece.id = next.next_id++;
        piece.tube = tube_key(sheet_in_hand(state)->line.tube);
        piece.aim = aim;
        piece.tape = state.settings.tape_denominator == 64 ? 64 : 32;
        pieces.push_back(std::move(piece));
    });
}

void put_ink(Doing& doing, const std::string& mark) {
    const State& state = doing.state;
    const LearnPage page = at_learning(state) ? learn_page(state) : LearnPage::result;
    if (page != LearnPage::mark && page != LearnPage::name) return;
    if (bar_to_mark(state, mark) != MarkBar::none) return;
    change_piece(doing, piece_in_work(state)->id, [&](KeptPiece& piece) { piece.inks.push_back({mark, {}}); });
}

void other_ink(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state)) return;
    const auto piece = piece_in_work(state);
    if (!piece || next_step(*piece) != PieceStep::load || piece->inks.size() >= most_inks) return;
    const bool on = !state.learn->other_ink;
    turn_to_next(state);
    state.learn->other_ink = on;
}

void name_mark(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state) || learn_page(state) != LearnPage::mark) return;
    state.looks.typed.clear();
    state.looks.keypad = true;
    state.looks.page = 1;  // a capital first
}

void more_pieces(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state) || !state.learn->learning) return;
    const bool on = !state.learn->more;
    turn_to_next(state);
    state.learn->more = on;
}

void show_readings(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state) || pieces_here(state).empty()) return;
    const bool on = !state.learn->readings;
    turn_to_next(state);
    state.learn->readings = on;
}

void read_again(Doing& doing, const PieceSpot& spot) {
    State& state = doing.state;
    if (!at_learning(state)) return;
    for (const KeptPiece& piece : pieces_here(state)) {
        if (piece.id != spot.piece || !(reading_at(piece, spot.step, spot.ink) || can_add(piece, spot.step))) continue;
        const bool readings = state.learn->readings;
        turn_to_next(state);
        state.learn->readings = readings;
        state.learn->again = spot;
    }
}

void drop_piece(Doing& doing, std::int64_t id) {
    if (!at_learning(doing.state) || !is_here(doing.state, id)) return;
    change_pieces(doing, [&](std::vector<KeptPiece>& pieces, Work& next) {
        std::erase_if(pieces, [&](const KeptPiece& piece) { return piece.id == id; });
        forget_piece(next, id);
    });
}

void pick_learned(Doing& doing, std::size_t row) {
    State& state = doing.state;
    if (!at_learning(state) || learn_page(state) != LearnPage::result || row > state.learn->learning->meanings.size()) return;
    state.learn->picked = row;
}

/// As changes of the card that are still to be kept: they are looked at there, and undo takes them back.
void put_on_card(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state) || learn_page(state) != LearnPage::result) return;
    const auto card = card_as_learned(state);
    if (!card || *card == state.card->bender) return;
    change_card(*state.card, *card);
    leave_beside(state);
}

void next_at_learning(Doing& doing) {
    const State& state = doing.state;
    if (!at_learning(state)) return;
    const LearnPage page = learn_page(state);
    if (page == LearnPage::name) return put_ink(doing, without_blanks(state.looks.typed));
    if (page != LearnPage::step || spot_in_hand(state)) return take_typed(doing);
    const KeptPiece piece = *piece_in_work(state);
    const bool loads = next_step(piece) == PieceStep::load;
    change_piece(doing, piece.id, [&](KeptPiece& now) {
        if (loads) now.loaded = true;
        else now.set = now.aim;
    });
}

void back_at_learning(Doing& doing) {
    State& state = doing.state;
    if (!at_learning(state)) return leave_beside(state);
    const LearnPage page = learn_page(state);
    if (page == LearnPage::name) {
        state.looks.keypad = false;
        state.looks.page = 0;
        state.looks.typed.clear();
        return;
    }
    if (page == LearnPage::mark && state.learn->other_ink) return other_ink(doing);
    if (page == LearnPage::readings) return show_readings(doing);
    if (page == LearnPage::more && state.learn->learning) return more_pieces(doing);
    if (page != LearnPage::again) return leave_beside(state);
    const bool readings = state.learn->readings;
    turn_to_next(state);
    state.learn->readings = readings;
}

void press_learning_key(Doing& doing, const std::string& key) {
    State& state = doing.state;
    if (!at_learning(state)) return;
    std::string& typed = state.looks.typed;
    if (learn_page(state) == LearnPage::name) {
        const std::size_t before = typed.size();
        typed = with_letter(typed, key, longest_mark_name);
        if (typed.size() > before && state.looks.page == 1) state.looks.page = 0;
    } else if (spot_in_hand(state)) {
        typed = with_key(typed, key);
    }
}

void undo_learning(Doing& doing) {
    if (!can_undo_learning(doing.state)) return;
    undo(doing);
    turn_to_next(doing.state);
    work_out_learning(doing.state);
}

void redo_learning(Doing& doing) {
    if (!can_redo_learning(doing.state)) return;
    redo(doing);
    turn_to_next(doing.state);
    work_out_learning(doing.state);
}

}  // namespace tubewright
