// What a tape reads of the bent tube, leg by leg, and the log of turns and legs that the hand is learned from.

#include <algorithm>
#include <cmath>

#include "bench/hand_log.h"
#include "present/pieces.h"
#include "present/rescue_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

constexpr Length as_told{25.4 / 16};  // what a nut draws in without a thought; our choice

std::string whole_name(const TapeLeg& leg) { return (leg.after ? bend_name(*leg.after) : end_name(End::A)) + " to " + (leg.before ? bend_name(*leg.before) : end_name(End::B)); }

std::string off_text(Length off, const Tape& tape) {
    const std::string by = text(Length{std::abs(off.mm)}, tape);
    return by == text(Length{}, tape) ? "as told" : by + (off.mm > 0 ? " more" : " less");
}

/// As it lies now: its bends may have been read anew since.
bool is_far_off(const LegHere& here) {
    if (!here.check) return false;
    LegCheck now = *here.check;
    now.expected = here.leg.outside;
    return asks_again(now, Hand{});
}

RowView leg_row(const State& state, const LegHere& here, std::size_t i) {
    const Tape tape = reader_tape(state);
    RowView row;
    row.touch = press_button("leg-" + std::to_string(i + 1), capital(whole_name(here.leg)) + ": " + text(here.leg.outside, tape), AskLeg{i});
    row.detail = "touch it, and type what the tape reads";
    if (!here.check) return row;
    const Length off = here.check->read - here.leg.outside;
    row.detail = "the tape read " + text(here.check->read, tape) + ": " + off_text(off, tape);
    const bool far = is_far_off(here);
    row.right = far ? "far off" : "";
    row.tone = far ? Tone::caution : std::abs(off.mm) <= as_told.mm ? Tone::go : Tone::plain;
    return row;
}

RowView record_row(const Record& record, bool slip, const std::string& what, const std::string& wanted) {
    RowView row;
    row.touch = press_button("hand-" + std::to_string(record.id), what, LeaveOutOfHand{record.id});
    row.detail = day_word(record.day) + ": " + wanted;
    row.right = record.left_out ? "left out" : slip ? "too far off to count" : "counts";
    if (!record.left_out && slip) row.tone = Tone::caution;
    return row;
}

std::string leg_words(const LoggedLeg& logged) {
    const bool last = logged.after == logged.of.bend;
    return whole_name(TapeLeg{logged.after, last ? std::nullopt : std::optional(logged.of.bend), {}});
}

/// The newest first.
std::vector<RowView> hand_rows(const State& state) {
    const Tape tape = reader_tape(state);
    std::vector<std::pair<std::int64_t, RowView>> rows;
    for (const LoggedTurn& logged : state.work.turn_log)
        rows.emplace_back(logged.check.record.id, record_row(logged.check.record, asks_again(logged.check, Hand{}), capital(bend_name(logged.of.bend)) + " against " + bend_name(logged.against) + ", " + logged.of.line,
                                                             "turned " + round_words(logged.check.measured, tape) + ", wanted " + round_words(logged.check.wanted, tape)));
    for (const LoggedLeg& logged : state.work.leg_log)
        rows.emplace_back(logged.check.record.id, record_row(logged.check.record, asks_again(logged.check, Hand{}), capital(leg_words(logged)) + ", " + logged.of.line, "taped " + text(logged.check.read, tape) + ", expected " + text(logged.check.expected, tape)));
    std::sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<RowView> newest_first;
    for (auto& [id, row] : rows) newest_first.push_back(std::move(row));
    return newest_first;
}

std::string hand_words(const State& state) {
    const Unit unit = reader_tape(state).unit;
    const Hand& hand = state.hand;
    return "As your hand is believed to work, two times in three: an angle within " + text(hand.angle_sd, reader_tape(state)) + ", a turn within " + text(hand.turn_sd, reader_tape(state)) + ", a mark within " + band_text(hand.mark_sd, unit) + ".";
}

}  // namespace

void fill_legs(const State& state, ScreenView& view) {
    const std::vector<LegHere> legs = legs_here(state);
    ListBody body;
    body.heading = "What does the tape read?";
    std::vector<RowView> rows;
    for (std::size_t i = 0; i < legs.size(); ++i) rows.push_back(leg_row(state, legs[i], i));
    show_page_of(state, rows, body);
    if (std::any_of(legs.begin(), legs.end(), is_far_off)) body.notes = {{"That is further off than working by hand explains. Tape it again; if it stays so, hold the tube in its place before an end is cut or flared.", Tone::caution}};
    else body.notes = {{"Cut ends, not flared yet, and outside corners: a straight block along the outside of the legs. How near the marks come is learned of bends that were measured."}};
    view.header = line_header(state, "taped");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_leg(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    const LegHere here = legs_here(state)[state.looks.leg];
    KeypadBody body;
    body.asks = "What does the tape read, " + whole_name(here.leg) + "?";
    body.entry = state.looks.typed;
    body.unit = unit_word(tape.unit);
    body.lines = {{"expected " + text(here.leg.outside, tape)}};
    body.keys = number_keys(tape.unit == Unit::inch);
    body.columns = 4;
    view.header = line_header(state, "taped");
    view.body = std::move(body);
    view.footer = side_footer(state);
    const std::string why_not = state.looks.typed.empty() ? "nothing typed yet" : typed_leg(state) ? "" : "more than 0, up to " + text(longest_stick, tape);
    view.footer.buttons.push_back(unless(press_button("next", "Take it", Next{}, Weight::main), why_not));
    view.footer.main_id = "next";
}

void fill_hand(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Turns and legs as they were measured";
    const std::vector<RowView> rows = hand_rows(state);
    show_page_of(state, rows, body);
    body.notes = {{hand_words(state)}};
    body.notes.push_back({rows.empty() ? "None yet. Legs are taped at the finish, turns where a tube is to be saved." : "Touch one to leave it out, or to put it back."});
    view.header = line_header(state, "bends");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

}  // namespace tubewright
