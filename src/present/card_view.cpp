// A bender's card: what its owner may measure, and the keypad for one number of it.

#include "present/pieces.h"
#include "state/card_figures.h"

namespace tubewright {
namespace {

/// To the thousandth of an inch or the hundredth of a millimetre: finer than a rule, as a caliper says it.
std::string figure_text(const CardFigure& figure, double value, const Tape& tape) {
    switch (figure.measure) {
        case Measure::length: return fine(Length{value}, tape);
        case Measure::angle: return text(Angle{value}, tape);
        case Measure::number: return plain(value);
    }
    return "";
}

std::string shape_word(const Shape& shape) {
    if (std::holds_alternative<Block>(shape)) return "box";
    return std::holds_alternative<Cylinder>(shape) ? "cylinder" : "half-space";
}

std::string stands_word(Stands stands) {
    switch (stands) {
        case Stands::fixed: return "stands still";
        case Stands::lever: return "goes with the lever";
        case Stands::bench: return "stands on the bench";
    }
    return "";
}

std::string allowed_words(const CardFigure& figure, const Tape& tape) {
    const std::string least = figure_text(figure, figure.least, tape), most = figure_text(figure, figure.most, tape);
    return (figure.above ? "more than " + least + ", up to " : least + " to ") + most;
}

std::string why_not_taken(const State& state, const CardFigure& figure, const Tape& tape) {
    switch (figure_bar(state)) {
        case FigureBar::none: return "";
        case FigureBar::nothing_typed: return state.looks.typed.empty() ? "nothing typed yet" : "that is no number yet";
        case FigureBar::too_small:
        case FigureBar::too_large: return "allowed is " + allowed_words(figure, tape);
        case FigureBar::flat: return "the box would have no thickness: its two corners lie level";
        case FigureBar::no_length: return "the cylinder would have no length: its two ends are one place";
        case FigureBar::nowhere: return "the half-space would face nowhere: one of the three is not 0";
    }
    return "";
}

RowView figure_row(const CardFigure& figure, const Tape& tape) {
    RowView row;
    row.touch = press_button("figure-" + figure.id, figure.name, PickFigure{figure.id});
    row.right = figure_text(figure, figure.value, tape);
    return row;
}

RowView solid_row(const Bender& bender, std::size_t i) {
    const Solid& solid = bender.body[i];
    RowView row;
    row.touch = press_button("solid-" + std::to_string(i), solid.name, PickSolid{i});
    row.detail = shape_word(solid.shape) + ", " + stands_word(solid.stands);
    return row;
}

std::vector<RowView> rows_of(const CardEdit& card, const Tape& tape) {
    std::vector<RowView> rows;
    for (const CardFigure& figure : card.solid ? solid_figures(card.bender, *card.solid) : card_figures(card.bender)) rows.push_back(figure_row(figure, tape));
    if (!card.solid)
        for (std::size_t i = 0; i < card.bender.body.size(); ++i) rows.push_back(solid_row(card.bender, i));
    return rows;
}

PictureView card_picture(const State& state, const CardEdit& card) {
    const Angle lever{card.swung ? 90.0 : 0.0};
    PictureView picture{PictureView::Kind::card, 0, "The card's body, lever at " + text(lever, reader_tape(state)), {}, std::nullopt, std::nullopt};
    picture.card = CardPicture{card.bender, sheet_in_hand(state)->set_up, lever, card.solid};
    picture.labels = {{Anchor::hook_end, "straight for the hook"}, {Anchor::lever_end, "straight for the lever"}};
    if (card.solid) picture.labels.push_back({Anchor::picked, card.bender.body[*card.solid].name});
    else picture.labels.insert(picture.labels.end(), {{Anchor::form, "stands still"}, {Anchor::lever, "with the lever"}, {Anchor::bench_body, "on the bench"}});
    return picture;
}

ButtonView card_undo(const CardEdit& card) { return unless(press_button("undo", "Undo", Undo{}), card.past.empty() ? "nothing to undo" : ""); }

/// Of what is shown now; the most pressing one alone, there is room for no more.
TextView card_note(const State& state, const CardEdit& card) {
    if (card.kept && sheet_in_hand(state)->line.bender != card.bender)
        return {"The card is kept. This job file carries a card of its own, which still counts for it.", Tone::caution};
    if (!card.past.empty()) return {"Not kept yet: the sheets still go by the card as it was.", Tone::caution};
    if (card.kept) return {"Kept as your own card: the sheets go by it.", Tone::go};
    if (!state.own_cards.contains(card.bender.id)) return {"Measure your own bender; the shipped figures are of a bender of our own.", Tone::caution};
    return {"This is your own card."};
}

void fill_figure(const State& state, const CardEdit& card, const CardFigure& figure, ScreenView& view) {
    const Tape tape = reader_tape(state);
    KeypadBody body;
    body.asks = (card.solid ? card.bender.body[*card.solid].name + ": " : "") + figure.name;
    const std::string& typed = state.looks.typed;
    body.entry = !typed.empty() && typed.front() == '-' ? "−" + typed.substr(1) : typed;
    body.unit = figure.measure == Measure::length ? unit_word(tape.unit) : figure.measure == Measure::angle ? "degrees" : "";
    body.lines = {{"now " + figure_text(figure, figure.value, tape)}, {"allowed: " + allowed_words(figure, tape)}};
    const std::string why_not = why_not_taken(state, figure, tape);
    if (!typed.empty() && figure_bar(state) != FigureBar::nothing_typed && !why_not.empty()) body.lines.push_back({"Not taken: " + why_not + ".", Tone::caution});
    body.keys = number_keys(figure.measure != Measure::length || tape.unit == Unit::inch);
    body.columns = 4;
    view.body = std::move(body);
    view.footer.buttons = {back_button()};
    view.footer.back_id = "back";
    if (figure.least < 0) view.footer.buttons.push_back(press_button("sign", "+ / −", Key{"sign"}));
    view.footer.buttons.push_back(unless(press_button("take", "Use this number", TakeFigure{}, Weight::main), why_not));
    view.footer.main_id = "take";
}

}  // namespace

void fill_card(const State& state, ScreenView& view) {
    const CardEdit& card = *state.card;
    view.header = line_header(state, "bender's measures");
    if (const auto figure = card_figure(card.bender, card.figure)) return fill_figure(state, card, *figure, view);
    const std::vector<RowView> rows = rows_of(card, reader_tape(state));
    const Page page = page_of(state, rows.size(), rows_on_a_page);
    CardBody body;
    body.figures.rows.assign(rows.begin() + static_cast<std::ptrdiff_t>(page.from), rows.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.figures.notes = {card_note(state, card)};
    body.figures.pager = pager_of(state, page);
    body.picture = card_picture(state, card);
    view.body = std::move(body);
    view.footer.buttons = {card_undo(card), back_button(),
                           press_button("swing", card.swung ? "Lever back to 0" : "Lever to a right angle", SwingCard{}),
                           unless(press_button("keep", "Keep as my own card", KeepCard{}, Weight::main), card.past.empty() ? "nothing has been changed" : "")};
    view.footer.back_id = "back";
}

}  // namespace tubewright
