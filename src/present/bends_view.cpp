// What the shop's own bends say: the log of one bender and tube, one bend of it, and what can be done with all of them.

#include <algorithm>

#include "base/tolerance.h"
#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// A right angle is what most bends are.
constexpr Angle told_at{90};

std::string within_words(const SpringbackState& known, Angle target, const Tape& tape) {
    return "mostly within " + text(std::max(set_to(known.belief, target, known.scatter).next_sd, tolerance::good_bend), tape);
}

std::string from_words(const SpringbackState& known) {
    if (known.learned_from > 0) return counted(known.learned_from, "bend", "bends") + " logged";
    if (known.others > 0) return "From " + counted(known.others, "bend", "bends") + " of other tube";
    return "No bend logged yet";
}

/// Which bend it was; nothing where nobody knows.
std::string of_words(const LoggedBend& logged) {
    if (is_of_a_piece(logged)) return "A piece bent to measure the bender";
    return logged.of.line.empty() ? "" : capital(bend_name(logged.of.bend)) + " of " + logged.of.line;
}

/// How it counts, in a word or two.
TextView standing_of(const SpringbackState& known, const Record& record) {
    if (record.left_out) return {"left out"};
    if (record.standing == RecordStanding::asked) return {"measure again", Tone::caution};
    for (const Followed& followed : known.readings)
        if (followed.id == record.id && followed.weight < not_followed) return {"hardly counts", Tone::caution};
    return {"counts", Tone::go};
}

RowView bend_row(const State& state, const LoggedBend& logged) {
    const Tape tape = reader_tape(state);
    const BendCheck& check = logged.check;
    const TextView standing = standing_of(*springback_in_hand(state), check.record);
    RowView row;
    row.touch = press_button("bend-" + std::to_string(check.record.id), "Pulled to " + text(check.set, tape) + ", read " + text(check.measured, tape), PickRecord{check.record.id});
    row.detail = day_word(check.record.day) + (of_words(logged).empty() ? "" : ": " + of_words(logged));
    row.right = standing.text;
    row.tone = standing.tone == Tone::go ? Tone::plain : standing.tone;
    return row;
}

/// Where the lever goes for a right angle, by the log and by the physics.
TextView pull_words(const State& state, const SpringbackState& known) {
    const Tape tape = reader_tape(state);
    const Line& line = sheet_in_hand(state)->line;
    if (known.opens_backwards) return {"These bends read as if they closed after the pull. Look at the lever's scale; the sheet goes by the physics.", Tone::stop};
    const std::string by_physics = lever_text(set_angle(physics_of(line), told_at), tape);
    if (!is_learned(known)) return {"For " + text(told_at, tape) + " the lever goes to " + by_physics + ". Each bend you check with the protractor goes in here."};
    return {"For " + text(told_at, tape) + " the lever goes to " + lever_text(set_angle(known.belief.line, told_at), tape) + "; before any bend it was " + by_physics + "."};
}

std::optional<TextView> drift_words(const SpringbackState& known, const Tape& tape) {
    if (!known.drift) return std::nullopt;
    const Angle by{std::abs(known.drift->by.deg)};
    return TextView{"The last " + std::to_string(drift_readings) + " open " + text(by, tape) + (known.drift->by > Angle{} ? " more" : " less") + " than those before. New tube? Say so under More.", Tone::caution};
}

std::string lot_words(const std::string& lot) { return lot.empty() ? "first tube" : "tube of " + (lot.size() > 10 ? day_word(lot.substr(0, 10)) + lot.substr(10) : day_word(lot)); }

}  // namespace

std::string sureness_words(const State& state, Angle target) {
    const SpringbackState* known = springback_in_hand(state);
    return known ? from_words(*known) + ": " + within_words(*known, target, reader_tape(state)) + "." : "";
}

void fill_bends(const State& state, ScreenView& view) {
    const SpringbackState* known = springback_in_hand(state);
    const Tape tape = reader_tape(state);
    const std::vector<LoggedBend> bends = bends_in_hand(state);
    ListBody body;
    body.heading = known ? from_words(*known) + ": " + within_words(*known, told_at, tape) : "Bends";
    const Page page = page_of(state, bends.size(), rows_on_a_page);
    for (std::size_t i = page.from; known && i < page.to; ++i) body.rows.push_back(bend_row(state, bends[i]));
    if (known) body.notes.push_back(pull_words(state, *known));
    if (const auto drift = known ? drift_words(*known, tape) : std::nullopt) body.notes = {*drift};
    body.pager = pager_of(state, page);
    view.header = line_header(state, "bends, " + lot_words(lot_in_use(state.work, sheet_in_hand(state)->line.tube)));
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(press_button("hand", "Turns and legs", GoTo{Screen::hand}));
    view.footer.buttons.push_back(press_button("bends-more", "More", GoTo{Screen::bends_more}));
}

void fill_bend_record(const State& state, ScreenView& view) {
    const LoggedBend& logged = *record_in_sight(state);
    const BendCheck& check = logged.check;
    const Tape tape = reader_tape(state);
    const std::int64_t id = check.record.id;
    ChoiceBody body;
    body.heading = (of_words(logged).empty() ? "A bend" : of_words(logged)) + ", " + day_word(check.record.day);
    body.hero = text(check.measured, tape);
    body.lines = {{"Pulled to " + text(check.set, tape) + (check.target ? ", wanted " + text(*check.target, tape) : "") + ". It opened " + text(check.set - check.measured, tape) + "; " + lot_words(check.lot) + "."}};
    if (check.record.left_out) body.lines.push_back({"Left out: nothing is learned from it.", Tone::caution});
    else if (check.record.standing == RecordStanding::asked) body.lines.push_back({"So far off that nothing is learned from it before you have measured it again.", Tone::caution});
    else if (springback_in_hand(state) && standing_of(*springback_in_hand(state), check.record).tone == Tone::caution) body.lines.push_back({"It lies off what the others say, and hardly counts.", Tone::caution});
    else body.lines.push_back({"It counts.", Tone::go});
    body.choices = {press_button("leave-out", check.record.left_out ? "Put it back" : "Leave it out", LeaveRecordOut{id})};
    if (check.record.standing == RecordStanding::asked && !check.record.left_out) body.choices.push_back(press_button("is-right", "Measured again: it is right", RecordIsRight{id}));
    view.header = line_header(state, "one bend");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_bends_more(const State& state, ScreenView& view) {
    const bool none = bends_in_hand(state).empty();
    ChoiceBody body;
    body.heading = "New tube, and copies";
    body.lines = {{"Tube of another delivery springs back a little differently: say when you begin with it."}, {"A copy holds every bend of the shop. Nothing in the log is lost by bringing one in."}};
    ButtonView forget = unless(press_button("forget", "Hold: forget the bends of this tube", ForgetBends{}, Weight::warn), none ? "there are none" : "");
    forget.held = true;
    body.choices = {press_button("new-tube", "New tube bought", NewTube{}), unless(press_button("write", "Write a copy", WriteBends{}), state.work.bends.empty() ? "no bend is logged" : ""),
                    press_button("bring", "Bring a copy in", GoTo{Screen::bend_files}), forget};
    view.header = line_header(state, "bends");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_bend_files(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Which copy?";
    std::vector<RowView> rows;
    for (const std::string& file : state.bend_files) rows.push_back({press_button("file-" + file, file, BringBends{file}), "", "", std::nullopt, Tone::plain});
    show_page_of(state, rows, body);
    if (state.bend_files.empty()) body.notes = {{"No copy is there. Put one into the folder " + state.bend_folder + ".", Tone::caution}};
    view.header = line_header(state, "bends");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

}  // namespace tubewright
