// The scrap log, the stick in use, and the offcuts.

#include <algorithm>
#include <charconv>
#include <map>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// The reason that most of the scrap, by length, was made for.
Reason worst_reason(const std::vector<Scrap>& log) {
    std::map<Reason, Length> by_reason;
    for (const Scrap& scrap : log) by_reason[scrap.reason] += scrap.scrapped;
    return std::max_element(by_reason.begin(), by_reason.end(), [](const auto& a, const auto& b) { return a.second < b.second; })->first;
}

std::vector<TextView> scrap_totals(const State& state) {
    if (state.work.scrap.empty()) return {{"Nothing has been scrapped.", Tone::go}};
    const Tape tape = reader_tape(state);
    Length scrapped, cut;
    for (const Scrap& scrap : state.work.scrap) scrapped += scrap.scrapped;
    for (const auto& [day, tubes] : state.work.used)
        for (const auto& [tube, length] : tubes) cut += length;
    cut += scrapped;
    std::vector<TextView> totals{{"Scrap in all " + text(scrapped, tape) + " of " + text(cut, tape) + " used up: " + percent(cut > Length{} ? scrapped / cut : 0)}};
    if (scrapped > Length{}) totals.push_back({"Most of it: " + reason_word(worst_reason(state.work.scrap)), Tone::caution});
    return totals;
}

/// "stainless-304 4763x711" as a reader says it; see tube_key().
std::string key_words(const std::string& key, const Tape& tape) {
    const std::size_t gap = key.rfind(' '), cross = key.rfind('x');
    if (gap == std::string::npos || cross == std::string::npos || cross < gap) return key;
    const auto millimetres = [](const std::string& digits) {
        long long value = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), value);
        return Length{static_cast<double>(value) / 1000};
    };
    const Tube tube{millimetres(key.substr(gap + 1, cross - gap - 1)), millimetres(key.substr(cross + 1)), ""};
    return od_text(tube.od, tape) + " " + key.substr(0, gap);
}

std::string offcut_why_not(const State& state, const Offcut& offcut) {
    const StickStanding stick = stick_standing(state);
    if (work_in_hand(state).cut) return "";
    return offcut.length < stick.needed ? "too short by " + text(stick.needed - offcut.length, reader_tape(state)) : "";
}

/// One row for each way to come by a stick: a new one, one of another length, an offcut.
std::vector<RowView> stick_rows(const State& state) {
    const Tape tape = reader_tape(state);
    const Line& line = sheet_in_hand(state)->line;
    std::vector<RowView> rows;
    if (line.stick) rows.push_back({press_button("new-stick", "A new stick, " + text(*line.stick, tape), NewStick{*line.stick}), "as this tube is sold", "", std::nullopt, Tone::plain});
    rows.push_back({press_button("other-stick", "A stick of another length", GoTo{Screen::stick_length}), "type its length", "", std::nullopt, Tone::plain});
    for (const Offcut& offcut : offcuts_of_tube(state))
        rows.push_back({unless(press_button("offcut-" + std::to_string(offcut.id), "Offcut, " + text(offcut.length, tape), TakeOffcut{offcut.id}), offcut_why_not(state, offcut)),
                        "kept " + day_word(offcut.day), "", std::nullopt, Tone::plain});
    return rows;
}

std::string stick_heading(const State& state) {
    const StickStanding stick = stick_standing(state);
    const Tape tape = reader_tape(state);
    std::string heading = stick.left ? "On the stick " + text(*stick.left, tape) : "No stick yet";
    if (stick.needed > Length{} && !work_in_hand(state).cut) heading += "; this line takes " + text(stick.needed, tape);
    return heading;
}

void fill_rack(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    TableBody body;
    body.heading = "Sticks in use and offcuts";
    body.columns = {"tube", "what", "length", "kept"};
    std::vector<std::vector<std::string>> rows;
    for (const auto& [tube, length] : state.work.stick) rows.push_back({key_words(tube, tape), "stick", text(length, tape), ""});
    for (const Offcut& offcut : offcuts_of_tube(state)) rows.push_back({key_words(offcut.tube, tape), "offcut", text(offcut.length, tape), day_word(offcut.day)});
    const Page page = page_of(state, rows.size(), figures_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) body.rows.push_back(rows[i]);
    body.totals = {{rows.empty() ? "Nothing on the rack is known yet. A stick is entered from a line." : "To take an offcut, open the line first."}};
    body.pager = pager_of(state, page);
    view.header = header_of(state, "Tubewright", "stick and offcuts");
    view.body = std::move(body);
}

}  // namespace

void fill_scrap(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    TableBody body;
    body.heading = "Scrap log";
    body.columns = {"day", "line", "reason", "scrap", "share"};
    const std::size_t count = state.work.scrap.size();
    const Page page = page_of(state, count, figures_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) {
        const Scrap& scrap = state.work.scrap[count - 1 - i];  // newest first
        const Length whole = scrap.scrapped + scrap.kept;
        body.rows.push_back({day_word(scrap.day), scrap.line, reason_word(scrap.reason), text(scrap.scrapped, tape), percent(whole > Length{} ? scrap.scrapped / whole : 0)});
    }
    body.totals = scrap_totals(state);
    body.pager = pager_of(state, page);
    view.header = header_of(state, "Tubewright", "scrap log");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

void fill_stock(const State& state, ScreenView& view) {
    view.footer = side_footer(state);
    if (!sheet_in_hand(state)) return fill_rack(state, view);
    ListBody body;
    body.heading = stick_heading(state);
    const std::vector<RowView> rows = stick_rows(state);
    const Page page = page_of(state, rows.size(), rows_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) body.rows.push_back(rows[i]);
    body.notes = {{"What is left of the stick in use becomes an offcut."}};
    body.pager = pager_of(state, page);
    view.header = line_header(state, "stick and offcuts");
    view.body = std::move(body);
}

void fill_stick_length(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    const StickStanding stick = stick_standing(state);
    KeypadBody body;
    body.asks = "How long is the stick?";
    body.entry = state.looks.typed;
    body.unit = unit_word(tape.unit);
    if (stick.needed > Length{}) body.lines.push_back({"this line takes " + text(stick.needed, tape)});
    const auto typed = typed_stick(state);
    if (typed && *typed < stick.needed) body.lines.push_back({text(stick.needed - *typed, tape) + " too short for this line", Tone::caution});
    body.keys = number_keys(tape.unit == Unit::inch);
    body.columns = 4;
    view.header = line_header(state, "stick");
    view.body = std::move(body);
    const std::string why_not = typed ? "" : state.looks.typed.empty() ? "nothing typed yet" : "more than 0, up to " + text(longest_stick, tape);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(unless(press_button("next", "Use this stick", Next{}, Weight::main), why_not));
    view.footer.main_id = "next";
}

}  // namespace tubewright
