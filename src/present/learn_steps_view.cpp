// A bender being learned: the piece in hand, one step at a time.

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "present/entry_pieces.h"
#include "present/learn_pieces.h"

namespace tubewright {
namespace {

using Shape = PieceView::Shape;
using Taped = PieceView::Taped;

constexpr std::size_t lines_on_a_page = 8, gauges_shown = 3;

const Bender& bender_here(const State& state) { return sheet_in_hand(state)->line.bender; }

std::string read_to_words(const Tape& tape) { return tape.unit == Unit::mm ? "half a millimetre" : tape.denominator == 64 ? "1/64\"" : "1/32\""; }

std::string typed_words(const State& state, const PieceSpot& spot) {
    if (state.looks.typed.empty()) return "?";
    return state.looks.typed + (spot.step == PieceStep::angle ? "°" : reader_unit(state) == Unit::inch ? "\"" : " mm");
}

std::string trouble_with_typed(const State& state, const PieceSpot& spot) {
    if (state.looks.typed.empty()) return "nothing typed yet";
    const auto number = typed_number(state.looks.typed);
    if (!number) return "no number yet";
    if (typed_spot(state)) return "";
    if (*number <= 0) return "it has to be more than 0";
    return spot.step == PieceStep::angle ? "180 at most" : "too long for a piece";
}

/// What is asked, and how it is taped.
struct StepWords {
    std::string asks;
    std::vector<TextView> lines;
};

StepWords ink_words(const State& state, const KeptPiece& piece, std::size_t ink) {
    const std::string& mark = piece.inks[ink].mark;
    if (ink == 0) {
        const PiecePlan plan = piece_plan(bender_here(state), reader_unit(state));
        return {"Ink a line round it, about " + text(plan.ink, piece_tape(state)) + " from one end. How far is it exactly?", {{"That end goes in the hook. The ink will lie at line " + mark + "."}}};
    }
    return {"How far from the hook end is the ink for line " + mark + "?", {{"Lay it in, the first ink at line " + piece.inks.front().mark + ", ink it at line " + mark + ", take it out."}}};
}

/// A protractor has two scales.
std::optional<TextView> other_scale_note(const State& state, const KeptPiece& piece) {
    const auto typed = typed_spot(state);
    const double other = 180 - piece.aim.deg;
    if (!typed || std::abs(other - piece.aim.deg) < 2 * tolerance::other_scale.deg || std::abs(*typed - other) > tolerance::other_scale.deg) return std::nullopt;
    return TextView{"Is that the other scale of the protractor? It would be " + text(Angle{180 - *typed}, piece_tape(state)) + " then.", Tone::caution};
}

StepWords step_words(const State& state, const KeptPiece& piece, const PieceSpot& spot) {
    const Tape tape = piece_tape(state);
    switch (spot.step) {
        case PieceStep::cut: return {"Cut a straight piece, about " + text(piece_plan(bender_here(state), tape.unit).cut, tape) + ". How long is it exactly?", {{"Ends square, burrs off. Read it to " + read_to_words(tape) + "."}}};
        case PieceStep::ink: return ink_words(state, piece, spot.ink);
        case PieceStep::angle: {
            const auto note = other_scale_note(state, piece);
            return {"What does the protractor say?", {note ? *note : TextView{"Let it lie five minutes first. Straight is 0, a square corner 90. How far it opened goes into the bends logged."}}};
        }
        case PieceStep::hook_leg: return {"How long is the hook leg, outside?", {{"A block flat on the outside of the lever leg; tape from the hook end to the block."}}};
        case PieceStep::lever_leg: return {"How long is the lever leg, outside?", {{"Now the block on the outside of the hook leg; tape from the lever end to the block."}}};
        case PieceStep::width: return {"How wide is it, outside to outside?", {{"Square across both legs, right where the bend ends. A caliper is best."}}};
        case PieceStep::crown_gap: return {"How wide is the gap at the corner?", {{"Two straight edges on the outside of the legs meet at a corner. From there to the tube: a drill's shank or a caliper, no tape."}}};
        case PieceStep::mark:
        case PieceStep::load:
        case PieceStep::pull:
        case PieceStep::done: break;
    }
    return {};
}

PieceView drawn(const State& state, const KeptPiece& piece, const PieceSpot& spot) {
    PieceView view;
    view.taped_words = typed_words(state, spot);
    view.hook_end = "hook end";
    view.lever_end = "lever end";
    view.angle = piece.aim;
    switch (spot.step) {
        case PieceStep::ink:
            view.taped = Taped::ink;
            view.ink = spot.ink == 0 ? 1.0 / 3 : 0.45;
            view.ink_words = "ink";
            return view;
        case PieceStep::angle: view.taped = Taped::angle; break;
        case PieceStep::hook_leg:
            view.taped = Taped::hook_leg;
            view.lever_end.clear();
            break;
        case PieceStep::lever_leg:
            view.taped = Taped::lever_leg;
            view.hook_end.clear();
            break;
        case PieceStep::crown_gap:
            view.taped = Taped::crown_gap;
            view.hook_end.clear();
            view.lever_end.clear();
            break;
        case PieceStep::width:
            view.taped = Taped::width;
            view.shape = Shape::bent_back;
            view.hook_end.clear();
            view.lever_end.clear();
            return view;
        case PieceStep::cut:
        case PieceStep::mark:
        case PieceStep::load:
        case PieceStep::pull:
        case PieceStep::done:
            view.taped = Taped::whole;
            view.hook_end.clear();
            view.lever_end.clear();
            return view;
    }
    view.shape = Shape::bent;
    return view;
}

void fill_reading_of(const State& state, const KeptPiece& piece, const PieceSpot& spot, ScreenView& view) {
    const Tape tape = piece_tape(state);
    StepWords words = step_words(state, piece, spot);
    RouteBody body;
    body.asks = words.asks;
    body.lines = std::move(words.lines);
    body.piece = drawn(state, piece, spot);
    if (spot.step == PieceStep::angle) {
        body.keys = number_keys(true);
        body.columns = 4;
    } else {
        fill_length_keys(body, tape.unit);
        const bool by_caliper = spot.step == PieceStep::width || spot.step == PieceStep::crown_gap;
        if (tape.unit == Unit::inch && tape.denominator == 64 && !by_caliper)
            std::replace_if(body.keys.begin(), body.keys.end(), [](const ButtonView& key) { return key.id == "key-."; }, press_button("key-+1/64", "+1/64", Key{"+1/64"}));
    }
    view.body = std::move(body);
    view.footer = learn_footer(state);
    auto& buttons = view.footer.buttons;
    if (!state.looks.typed.empty() && spot.step != PieceStep::angle) {  // whose keys have one of their own
        std::erase_if(buttons, [](const ButtonView& button) { return button.id == "redo"; });
        buttons.front() = press_button("key-back", "Rub out", Key{"back"});
    }
    if (!state.learn->again && !readings_of(piece).empty()) buttons.push_back(press_button("drop", "Spoiled: another piece", DropPiece{piece.id}));
    const std::string typed = typed_words(state, spot);
    add_main(view.footer, unless(press_button("next", typed == "?" ? "Take it" : "Take " + typed, Next{}), trouble_with_typed(state, spot)));
}

PictureView card_with_lines(const State& state, Angle lever, const std::vector<std::size_t>& lines, const std::string& caption) {
    const Sheet& sheet = *sheet_in_hand(state);
    PictureView picture{PictureView::Kind::card, 0, caption, {}, std::nullopt, std::nullopt};
    picture.card = CardPicture{sheet.line.bender, sheet.set_up, lever, std::nullopt};
    constexpr Anchor anchors[gauges_shown] = {Anchor::gauge_1, Anchor::gauge_2, Anchor::gauge_3};
    for (std::size_t i = 0; i < std::min(lines.size(), gauges_shown); ++i) {
        picture.card->gauges.push_back({CardGauge::Of::mark, lines[i]});
        picture.labels.push_back({anchors[i], "line " + sheet.line.bender.marks[lines[i]].name});
    }
    return picture;
}

std::vector<std::size_t> line_called(const Bender& bender, const std::string& name) {
    for (std::size_t i = 0; i < bender.marks.size(); ++i)
        if (bender.marks[i].name == name) return {i};
    return {};
}

void fill_loading(const State& state, const KeptPiece& piece, ScreenView& view) {
    const std::string& mark = piece.inks.front().mark;
    MoveBody body;
    body.asks = "Lay the piece in the bender.";
    body.hero = "Ink at line " + mark;
    body.lines = {{"The hook end goes in the hook, the lever stands at 0."}, {"Does the bender show more lines? Each of them can be inked on this piece too."}};
    body.picture = card_with_lines(state, {}, line_called(bender_here(state), mark), "");
    view.body = std::move(body);
    view.footer = learn_footer(state);
    view.footer.buttons.push_back(press_button("other-ink", "Ink one more line", OtherInk{}));
    add_main(view.footer, press_button("next", "It lies in", Next{}));
}

void fill_pulling(const State& state, const KeptPiece& piece, ScreenView& view) {
    const std::string to = text(piece.aim, piece_tape(state));
    MoveBody body;
    body.asks = "By the bender's own scale:";
    body.hero = "Pull to " + to;
    if (is_half_turn(piece)) body.lines = {{"A short piece of the same tube, about " + text(piece_plan(bender_here(state), reader_unit(state)).cut, piece_tape(state)) + ", with about a third of it on the hook side. It needs no ink."}};
    body.lines.push_back({"Let go, and take it out."});
    body.picture = card_with_lines(state, piece.aim, {}, "");
    view.body = std::move(body);
    view.footer = learn_footer(state);
    view.footer.buttons.push_back(press_button("drop", "Spoiled: another piece", DropPiece{piece.id}));
    add_main(view.footer, press_button("next", "Pulled to " + to, Next{}));
}

/// The card's lines, and any other by its name.
void fill_marks(const State& state, ScreenView& view) {
    const Bender& bender = bender_here(state);
    const Page page = page_of(state, bender.marks.size(), lines_on_a_page);
    TilesBody body;
    body.heading = "At which line of the bender does the ink lie?";
    body.columns = 3;
    std::vector<std::size_t> shown;
    for (std::size_t i = page.from; i < page.to; ++i) {
        const std::string& name = bender.marks[i].name;
        body.tiles.push_back({unless(press_button("line-" + name, name, PutInk{name}), bar_to_mark(state, name) == MarkBar::taken ? "inked already" : ""), "line"});
        shown.push_back(i);
    }
    body.tiles.push_back({press_button("name-line", "Another line", NameMark{}), "not on the card"});
    body.picture = card_with_lines(state, {}, shown, "");
    view.body = std::move(body);
    view.footer = learn_footer(state);
    if (page.pages > 1) view.footer.buttons.push_back(press_button("more-lines", "More lines", page_turn(state, (page.page + 1) % page.pages)));
}

void fill_name(const State& state, ScreenView& view) {
    const MarkBar bar = bar_to_mark(state, without_blanks(state.looks.typed));
    fill_letters(state, "What does the line say? A letter or a word of your own.", bar == MarkBar::empty ? "no name yet" : bar == MarkBar::taken ? "inked already" : "", view);
}

std::optional<KeptPiece> piece_of(const State& state, std::int64_t id) {
    for (const KeptPiece& piece : pieces_here(state))
        if (piece.id == id) return piece;
    return std::nullopt;
}

}  // namespace

void fill_learn_step(const State& state, ScreenView& view) {
    switch (learn_page(state)) {
        case LearnPage::name: return fill_name(state, view);
        case LearnPage::mark: return fill_marks(state, view);
        default: break;
    }
    if (const auto spot = spot_in_hand(state)) return fill_reading_of(state, *piece_of(state, spot->piece), *spot, view);
    const KeptPiece piece = *piece_in_work(state);
    if (next_step(piece) == PieceStep::load) return fill_loading(state, piece, view);
    fill_pulling(state, piece, view);
}

}  // namespace tubewright
