// A bender learned from pieces: what to bend next, what was read, and what it says.

#include <algorithm>

#include "present/learn_pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

using Shape = PieceView::Shape;
using Taped = PieceView::Taped;

const Learning* learning_of(const State& state) { return state.learn->learning.get(); }

ListBody paged(const State& state, const std::vector<RowView>& rows) {
    ListBody body;
    show_page_of(state, rows, body);
    return body;
}

std::string aim_id(Angle aim) { return "bend-" + plain(aim.deg); }

// --- what to bend next

RowView aim_row(const State& state, Angle aim, const std::string& detail, const std::string& right = "") {
    RowView row;
    row.touch = press_button(aim_id(aim), capital(aim_words(aim, piece_tape(state))), StartPiece{aim});
    if (!can_aim(sheet_in_hand(state)->line.bender, aim)) row.touch = unless(row.touch, "the lever does not go so far");
    row.detail = detail;
    row.right = right;
    return row;
}

std::vector<RowView> first_rows(const State& state) {
    return {aim_row(state, {90}, "where the bend starts at a line of the bender"), aim_row(state, half_turn, "the radius, from its width alone"),
            aim_row(state, {45}, "what a line shows: start, corner or middle of the bend")};
}

/// Marks whose meaning that bend would tell.
std::vector<std::string> told_by(const Learning& learning, Angle aim) {
    std::vector<std::string> marks;
    for (const MarkMeaning& meaning : learning.meanings)
        if (meaning.try_next == aim) marks.push_back(meaning.mark);
    return marks;
}

std::vector<RowView> more_rows(const State& state, const Learning& learning) {
    const Unit unit = reader_unit(state);
    std::vector<RowView> rows;
    const auto tells = [&](Angle aim) {
        const std::vector<std::string> marks = told_by(learning, aim);
        return marks.empty() ? "" : marks.size() == 1 ? "; tells what line " + marks.front() + " shows" : "; tells what lines " + piece_list(marks) + " show";
    };
    for (const OneMore& more : learning.more) {
        const std::string right = more.offset_sd.empty() ? "" : "±" + band_text(band(more.worst_corner_sd), unit);
        rows.push_back(aim_row(state, more.angle, "radius good to " + fine_band(band(more.radius_sd), unit) + tells(more.angle), right));
    }
    for (const MarkMeaning& meaning : learning.meanings) {
        if (!meaning.try_next || std::any_of(rows.begin(), rows.end(), [&](const RowView& row) { return row.touch.id == aim_id(*meaning.try_next); })) continue;
        rows.insert(rows.begin() + (rows.empty() ? 0 : 1), aim_row(state, *meaning.try_next, tells(*meaning.try_next).substr(2)));
    }
    return rows;
}

void fill_more(const State& state, ScreenView& view) {
    const Learning* learning = learning_of(state);
    const bool known = learning && learning->learned;
    ListBody body = paged(state, known ? more_rows(state, *learning) : first_rows(state));
    body.heading = known ? "One more piece, and what it would bring" : "Which piece is bent?";
    if (known && !learning->learned->marks.empty())
        body.notes.push_back({"Right: how near a corner then comes out, at 30 to 120 degrees. Now it is ±" + band_text(band(worst_corner_sd(*learning->learned)), reader_unit(state)) + "."});
    else if (!learning)
        body.notes.push_back({"Have this line's tube ready, a tape and a protractor. Best is a bend to 90 and a half turn."});
    view.body = std::move(body);
    view.footer = learn_footer(state);
}

// --- what was read

bool is_odd(const Learning* learning, const PieceSpot& spot) {
    if (!learning || !learning->learned) return false;
    return std::any_of(learning->learned->odd.begin(), learning->learned->odd.end(), [&](const OddReading& odd) {
        const PieceSpot at = spot_of(learning->pieces[odd.piece], odd.which);
        return at.piece == spot.piece && at.step == spot.step;
    });
}

void fill_readings(const State& state, ScreenView& view) {
    const Tape tape = piece_tape(state);
    std::vector<RowView> rows;
    const std::vector<KeptPiece> pieces = pieces_here(state);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const std::string number = "Piece " + std::to_string(i + 1);
        for (const PieceSpot& spot : readings_of(pieces[i])) {
            RowView row;
            row.touch = press_button("again-" + std::to_string(spot.piece) + "-" + std::to_string(static_cast<int>(spot.step)) + "-" + std::to_string(spot.ink), number + ", " + reading_name(pieces[i], spot), ReadAgain{spot});
            row.right = reading_value(pieces[i], spot, tape);
            const bool odd = is_odd(learning_of(state), spot), asked = spot.step == PieceStep::angle && is_angle_odd(state, pieces[i]);
            row.detail = odd ? "does not go with the others: take it again" : asked ? "oddly far from where the lever stood: take it again" : "touch it to take it again";
            row.tone = odd || asked ? Tone::caution : Tone::plain;
            rows.push_back(std::move(row));
        }
        if (can_add(pieces[i], PieceStep::crown_gap) && !pieces[i].crown_gap) {
            const PieceSpot spot{pieces[i].id, PieceStep::crown_gap};
            RowView gap;
            gap.touch = press_button("gap-" + std::to_string(spot.piece), number + ": " + reading_name(pieces[i], spot), ReadAgain{spot});
            gap.detail = "not taken; makes the radius surer where no half turn can be bent";
            rows.push_back(std::move(gap));
        }
        RowView drop;
        drop.touch = press_button("drop-" + std::to_string(pieces[i].id), number + ": leave it out", DropPiece{pieces[i].id});
        drop.detail = capital(aim_words(pieces[i].aim, tape)) + ", all its readings; Undo brings it back";
        rows.push_back(std::move(drop));
    }
    view.body = paged(state, rows);
    view.footer = learn_footer(state);
}

// --- trouble

void fill_trouble(const State& state, ScreenView& view) {
    const Learning& learning = *learning_of(state);
    const LearnTroubleWords words = learn_trouble_words(*learning.trouble, learning.pieces, piece_tape(state));
    constexpr std::size_t most = 3;  // and the way to all of them
    ChoiceBody body;
    body.heading = words.what;
    body.lines = {{words.to_do, Tone::caution}};
    for (std::size_t i = 0; i < std::min(words.again.size(), most); ++i) {
        const PieceSpot& spot = words.again[i];
        for (const KeptPiece& piece : learning.pieces)
            if (piece.id == spot.piece) body.choices.push_back(press_button("again-" + std::to_string(i), capital(reading_name(piece, spot)) + " again", ReadAgain{spot}));
    }
    body.choices.push_back(press_button("readings", "All readings", ShowReadings{}));
    view.body = std::move(body);
    view.footer = learn_footer(state);
    view.footer.buttons.push_back(press_button("more", "One more piece", MorePieces{}));
}

// --- the result

RowView radius_row(const State& state, const LearnedBender& learned) {
    const Tape tape = piece_tape(state);
    RowView row;
    row.touch = press_button("learned-0", "Radius of the form", PickLearned{0});
    row.detail = fine(learned.form_radius, tape) + ", good to " + fine_band(band(learned.form_radius_sd), tape.unit);
    return row;
}

RowView mark_row(const State& state, const Learning& learning, std::size_t i) {
    const MarkMeaning& meaning = learning.meanings[i];
    const Unit unit = reader_unit(state);
    RowView row;
    row.touch = press_button("learned-" + std::to_string(i + 1), "Line " + meaning.mark, PickLearned{i + 1});
    for (const LearnedMark& mark : learning.learned->marks) {
        if (mark.name != meaning.mark) continue;
        row.detail = brief_offset(mark.offset, unit) + (mark.far_from_belief ? "; the card says otherwise" : ", good to " + band_text(band(mark.sd), unit));
        row.tone = mark.far_from_belief || meaning.none_fits ? Tone::caution : Tone::plain;
        return row;
    }
    row.detail = "moves with the angle: not for the card";
    return row;
}

/// What the radius goes by, and what would make it surer.
std::string radius_from(const State& state, const Learning& learning) {
    const auto has = [&](std::optional<Length> KeptPiece::* reading) { return std::any_of(learning.pieces.begin(), learning.pieces.end(), [&](const KeptPiece& piece) { return (piece.*reading).has_value(); }); };
    if (has(&KeptPiece::width)) return "";
    if (can_aim(sheet_in_hand(state)->line.bender, half_turn)) return has(&KeptPiece::crown_gap) ? "" : " So far it comes from the legs alone: a half turn makes it surer.";
    return has(&KeptPiece::crown_gap) ? "" : " So far it comes from the legs alone: the gap at the corner, under the pieces, makes it surer.";
}

std::string stretch_words(const LearnedBender& learned) {
    if (!tells_stretch(learned)) return " How much the tube stretches in a bend these pieces don't tell.";
    return " In a bend the tube stretches by " + percent(learned.stretch) + ".";
}

/// The row that is picked, drawn, and in words under it.
PieceView drawn_result(const State& state, const Learning& learning, std::size_t picked) {
    const LearnedBender& learned = *learning.learned;
    const Tape tape = piece_tape(state);
    PieceView view;
    if (picked == 0) {
        view.shape = Shape::bent;
        view.taped = Taped::radius;
        view.taped_words = fine(learned.form_radius, tape);
        view.caption = "To the middle of the tube: " + fine(learned.form_radius, tape) + ", good to " + fine_band(band(learned.form_radius_sd), tape.unit) + ". A finished bend of this tube has " + fine(learned.radius, tape) + "." + stretch_words(learned) + radius_from(state, learning);
        return view;
    }
    const MarkMeaning& meaning = learning.meanings[picked - 1];
    const Length arc = arc_length(learned.radius, {90});
    const double start = 0.4, wide = 0.4;
    view.bend = {start, start + wide};
    view.hook_end = "hook";
    view.lever_end = "lever";
    view.ink_words = "line " + meaning.mark;
    for (const LearnedMark& mark : learned.marks) {
        if (mark.name != meaning.mark) continue;
        view.taped = Taped::past_start;
        view.taped_words = brief_offset(mark.offset, tape.unit);
        view.ink = std::clamp(start + wide * (mark.offset / arc), 0.06, 0.94);
        view.caption = "Line " + mark.name + " lies " + offset_words(mark.offset, tape.unit) + ", good to " + band_text(band(mark.sd), tape.unit) + ". " + meaning_words(meaning, tape);
        return view;
    }
    view.caption = "Line " + meaning.mark + ": " + meaning_words(meaning, tape);
    view.ink = start + wide / 2;
    return view;
}

std::string odd_words(const Learning& learning) {
    const std::vector<OddReading>& odd = learning.learned->odd;
    const KeptPiece& piece = learning.pieces[odd.front().piece];
    std::string names = reading_name(piece, spot_of(piece, odd.front().which));
    // Often two can't be told apart: an ink that is off, and the leg on its side.
    if (odd.size() > 1 && odd[1].piece == odd[0].piece) names += " or " + reading_name(piece, spot_of(piece, odd[1].which));
    return "Piece " + std::to_string(odd.front().piece + 1) + ", " + names + ": not as the others say. Take it again.";
}

/// What the readings say of one another.
TextView readings_note(const State& state, const Learning& learning) {
    const Tape tape = piece_tape(state);
    if (!learning.learned->odd.empty()) return {odd_words(learning), Tone::caution};
    const auto asked = std::find_if(learning.pieces.begin(), learning.pieces.end(), [&](const KeptPiece& piece) { return is_angle_odd(state, piece); });
    if (asked != learning.pieces.end()) return {"Piece " + std::to_string(asked - learning.pieces.begin() + 1) + " reads oddly far from where the lever stood: take its angle again, or its springback counts for nothing.", Tone::caution};
    if (learning.learned->stretch_at_limit) return {"Legs and length don't go together well: tape them again.", Tone::caution};
    const std::string to = tape.unit == Unit::mm ? "half a millimetre" : tape.denominator == 64 ? "1/64\"" : "1/32\"";
    return {"All readings agree, as a tape read to " + to + " lets them.", Tone::go};
}

std::string why_not_on_card(const State& state) {
    const auto card = card_as_learned(state);
    if (!card) return "a card can't hold these numbers";
    return *card == state.card->bender ? "the card says so already" : "";
}

void fill_result(const State& state, ScreenView& view) {
    const Learning& learning = *learning_of(state);
    const std::size_t picked = std::min(state.learn->picked, learning.meanings.size());
    std::vector<RowView> rows{radius_row(state, *learning.learned)};
    for (std::size_t i = 0; i < learning.meanings.size(); ++i) rows.push_back(mark_row(state, learning, i));
    rows[picked].touch.chosen = true;
    if (rows[picked].tone == Tone::plain) rows[picked].tone = Tone::now;
    RowView readings;
    readings.touch = press_button("readings", counted(learning.pieces.size(), "piece", "pieces"), ShowReadings{});
    readings.detail = "all that was read, to take again or leave out";
    rows.push_back(std::move(readings));
    PieceBody body;
    body.figures = paged(state, rows);
    body.figures.notes = {readings_note(state, learning)};
    body.piece = drawn_result(state, learning, picked);
    view.body = std::move(body);
    view.footer = learn_footer(state);
    if (!learning.learned->odd.empty()) {
        const OddReading& odd = learning.learned->odd.front();
        const PieceSpot spot = spot_of(learning.pieces[odd.piece], odd.which);
        std::erase_if(view.footer.buttons, [](const ButtonView& button) { return button.id == "redo"; });
        view.footer.buttons.push_back(press_button("again", "Take it again", ReadAgain{spot}));
    }
    view.footer.buttons.push_back(press_button("more", "One more piece", MorePieces{}));
    // What was read oddly is not put on the card by a slip of the finger.
    ButtonView put = unless(press_button("put-on-card", learning.learned->odd.empty() ? "Put it on the card" : "Hold: put it on the card", PutOnCard{}), why_not_on_card(state));
    put.held = !learning.learned->odd.empty();
    add_main(view.footer, std::move(put));
}

std::string place_of(const State& state) {
    std::string place = "measuring the bender";
    const std::vector<KeptPiece> pieces = pieces_here(state);
    const auto number = [&](std::int64_t id) { return std::to_string(std::find_if(pieces.begin(), pieces.end(), [&](const KeptPiece& piece) { return piece.id == id; }) - pieces.begin() + 1); };
    if (state.learn->again) return place + ", piece " + number(state.learn->again->piece) + " again";
    if (const auto piece = piece_in_work(state)) return place + ", piece " + number(piece->id);
    return place;
}

}  // namespace

Tape piece_tape(const State& state) { return {reader_unit(state), std::max(32, state.settings.tape_denominator)}; }

FooterView learn_footer(const State& state) {
    FooterView footer;
    footer.buttons = {unless(press_button("undo", "Undo", Undo{}), can_undo_learning(state) ? "" : "nothing to undo")};
    if (can_redo_learning(state)) footer.buttons.push_back(press_button("redo", "Redo", Redo{}));
    footer.buttons.push_back(back_button());
    footer.back_id = "back";
    return footer;
}

void add_main(FooterView& footer, ButtonView main) {
    main.weight = Weight::main;
    footer.main_id = main.id;
    footer.buttons.push_back(std::move(main));
}

void fill_learn(const State& state, ScreenView& view) {
    view.header = line_header(state, place_of(state));
    switch (learn_page(state)) {
        case LearnPage::again:
        case LearnPage::name:
        case LearnPage::mark:
        case LearnPage::step: return fill_learn_step(state, view);
        case LearnPage::more: return fill_more(state, view);
        case LearnPage::readings: return fill_readings(state, view);
        case LearnPage::trouble: return fill_trouble(state, view);
        case LearnPage::result: return fill_result(state, view);
    }
}

}  // namespace tubewright
