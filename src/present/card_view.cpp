// A bender's card: what its owner may measure, and the keypad for one number of it.

#include "present/card_words.h"
#include "present/pieces.h"

namespace tubewright {
namespace {

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

RowView figure_row(const CardFigure& figure, const CardEdit& card, const SetUp& set_up, const Tape& tape) {
    const CardWords words = card_words(card, figure.gauge, set_up);
    RowView row;
    row.touch = press_button("figure-" + figure.id, words.name, PickFigure{figure.id});
    row.detail = words.detail;
    row.right = figure_text(figure, figure.value, tape);
    return row;
}

RowView solid_row(const Bender& bender, std::size_t i) {
    const Solid& solid = bender.body[i];
    RowView row;
    row.touch = press_button("solid-" + std::to_string(i), solid.name, PickSolid{i});
    row.detail = shape_word(solid.shape) + ", " + stands_words(solid.stands);
    return row;
}

std::vector<CardFigure> figures_of(const CardEdit& card) { return card.solid ? solid_figures(card.bender, *card.solid) : card_figures(card.bender); }

std::vector<RowView> rows_of(const State& state, const CardEdit& card, const SetUp& set_up) {
    std::vector<RowView> rows;
    if (!card.solid) {
        RowView learn;
        learn.touch = press_button("learn", "Measure this bender", LearnBender{});
        const std::size_t pieces = pieces_here(state).size();
        learn.detail = pieces == 0 ? "from short pieces, bent and taped" : counted(pieces, "piece", "pieces") + " so far";
        rows.push_back(std::move(learn));
    }
    for (const CardFigure& figure : figures_of(card)) rows.push_back(figure_row(figure, card, set_up, reader_tape(state)));
    if (card.solid) return rows;
    for (std::size_t i = 0; i < card.bender.body.size(); ++i) rows.push_back(solid_row(card.bender, i));
    const auto shipped = state.shipped_cards.find(card.bender.id);
    if (shipped == state.shipped_cards.end() || shipped->second == card.bender) return rows;
    RowView back;
    back.touch = press_button("shipped", "The shipped figures", TakeShipped{});
    back.detail = "all of them, as they came; Undo takes it back";
    rows.push_back(back);
    return rows;
}

/// Of the kinds that this body has.
std::vector<std::pair<Swatch, std::string>> legend_of(const CardEdit& card) {
    std::vector<std::pair<Swatch, std::string>> legend;
    const auto add = [&](Stands stands, Swatch swatch) {
        for (std::size_t i = 0; i < card.bender.body.size(); ++i)
            if (card.bender.body[i].stands == stands && card.solid != i) return legend.emplace_back(swatch, stands_words(stands)), void();
    };
    add(Stands::fixed, Swatch::stands);
    add(Stands::lever, Swatch::swings);
    add(Stands::bench, Swatch::on_bench);
    if (card.solid) legend.emplace_back(Swatch::picked, "this one");
    return legend;
}

PictureView card_picture(const State& state, const CardEdit& card, const std::vector<CardFigure>& shown, bool legend = true) {
    const Tape tape = reader_tape(state);
    const Angle lever{card.swung ? 90.0 : 0.0};
    const std::string what = card.solid ? card.bender.body[*card.solid].name : "The bender";
    PictureView picture{PictureView::Kind::card, 0, what + ", lever at " + text(lever, tape), {}, std::nullopt, std::nullopt};
    picture.card = CardPicture{card.bender, sheet_in_hand(state)->set_up, lever, card.solid};
    constexpr Anchor anchors[] = {Anchor::gauge_1, Anchor::gauge_2, Anchor::gauge_3};
    for (const CardFigure& figure : shown) {
        if (figure.gauge.of == CardGauge::Of::stretch) continue;  // lies at no place of the bender
        if (picture.card->gauges.size() == std::size(anchors)) break;
        picture.labels.push_back({anchors[picture.card->gauges.size()], card_words(card, figure.gauge, picture.card->set_up).brief + " " + figure_text(figure, figure.value, tape)});
        picture.card->gauges.push_back(figure.gauge);
    }
    if (legend) picture.legend = legend_of(card);
    return picture;
}

ButtonView card_undo(const CardEdit& card) { return unless(press_button("undo", "Undo", Undo{}), card.past.empty() ? "nothing to undo" : ""); }

/// A piece that is cut keeps the order it was begun with; its own screen says so where it no longer fits.
TextView kept_words(const State& state, const CardEdit& card) {
    const bool own = state.own_cards.contains(card.bender.id);
    const std::string kept = std::string(own ? "Kept as your own card" : "The shipped card is back") + ": the sheets go by it.";
    bool begun = false;
    for (const Sheet& sheet : state.sheets) {
        const auto work = state.work.lines.find(line_key(state.job_id, sheet.line.name));
        if (work == state.work.lines.end() || !work->second.cut || work->second.stage == Stage::done || sheet.line.bender.id != card.bender.id) continue;
        begun = true;
        const Misfit against = misfit(sheet, work->second);
        if (against != Misfit::none && against != Misfit::ink) return {kept + " The tube already cut no longer fits them: see " + sheet.line.name + ".", Tone::stop};
        for (const Finding& finding : sheet.findings)
            if (finding.code == "hits-as-it-stands") return {kept + " Looked at again, the tube already cut now hits something: see " + sheet.line.name + ".", Tone::stop};
    }
    return {kept + (begun ? " A tube already cut keeps its order of bends, looked at again: nothing is in its way." : ""), Tone::go};
}

/// Of what is shown now; the most pressing one alone, there is room for no more.
TextView card_note(const State& state, const CardEdit& card) {
    if (card.kept && sheet_in_hand(state)->line.bender != card.bender)
        return {"The card is kept. This job file carries a card of its own, which still counts for it.", Tone::caution};
    if (!card.past.empty()) return {"Not kept yet: the sheets still go by the card as it was.", Tone::caution};
    if (card.kept) return kept_words(state, card);
    if (!state.own_cards.contains(card.bender.id)) return {"Measure your own bender; the shipped figures are of a bender of our own.", Tone::caution};
    return {state.shipped_cards.contains(card.bender.id) ? "This is your own card. The last page has the way back to the shipped one." : "This is your own card."};
}

/// With the number that is being typed, as soon as it can be taken.
PictureView picture_while_typing(const State& state, CardEdit card, CardFigure figure) {
    if (figure_bar(state) == FigureBar::none) {
        figure.value = *typed_figure(state, figure);
        card.bender = with_figure(card.bender, figure.id, figure.value);
    }
    return card_picture(state, card, {figure}, false);
}

void fill_figure(const State& state, const CardEdit& card, const CardFigure& figure, ScreenView& view) {
    const Tape tape = reader_tape(state);
    KeypadBody body;
    const CardWords words = card_words(card, figure.gauge, sheet_in_hand(state)->set_up);
    body.asks = words.asks;
    const std::string& typed = state.looks.typed;
    body.entry = !typed.empty() && typed.front() == '-' ? "−" + typed.substr(1) : typed;
    body.unit = figure.measure == Measure::length ? unit_word(tape.unit) : figure.measure == Measure::angle ? "degrees" : "";
    body.lines = {{"now " + figure_text(figure, figure.value, tape) + (words.plus.empty() ? "" : "; " + words.plus)}};
    if (words.plus.empty()) body.lines.push_back({"allowed: " + allowed_words(figure, tape)});
    const std::string why_not = why_not_taken(state, figure, tape);
    if (!typed.empty() && figure_bar(state) != FigureBar::nothing_typed && !why_not.empty()) body.lines.push_back({"Not taken: " + why_not + ".", Tone::caution});
    body.keys = number_keys(figure.measure != Measure::length || tape.unit == Unit::inch);
    body.columns = 4;
    body.picture = picture_while_typing(state, card, figure);
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
    const std::vector<RowView> rows = rows_of(state, card, sheet_in_hand(state)->set_up);
    const Page page = page_of(state, rows.size(), rows_on_a_page);
    CardBody body;
    body.figures.rows.assign(rows.begin() + static_cast<std::ptrdiff_t>(page.from), rows.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.figures.notes = {card_note(state, card)};
    body.figures.pager = pager_of(state, page);
    // The first row of the bender's own is no number.
    const auto at = [&](std::size_t row) { return row > 0 && !card.solid ? row - 1 : row; };
    std::vector<CardFigure> shown = figures_of(card);
    shown.resize(std::min(at(page.to), shown.size()));
    shown.erase(shown.begin(), shown.begin() + static_cast<std::ptrdiff_t>(std::min(at(page.from), shown.size())));
    body.picture = card_picture(state, card, shown);
    view.body = std::move(body);
    view.footer.buttons = {card_undo(card), back_button(),
                           press_button("swing", card.swung ? "Lever back to 0" : "Lever to a right angle", SwingCard{}),
                           unless(press_button("keep", "Keep as my own card", KeepCard{}, Weight::main), card.past.empty() ? "nothing has been changed" : "")};
    view.footer.back_id = "back";
}

}  // namespace tubewright
