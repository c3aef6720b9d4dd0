// The scrap log, and what the line in hand is cut from.

#include <algorithm>
#include <functional>
#include <map>

#include "present/pieces.h"
#include "present/stock_words.h"
#include "present/words.h"
#include "state/cut_plan.h"

namespace tubewright {
namespace {

/// One day's scrap, the newest entry first. Lengths are as they are shown, so that they add up to the last
/// sixteenth.
struct ScrapDay {
    std::vector<const Scrap*> entries;
    Length scrapped, used;  ///< `used`: made into finished lines, and scrapped
};
using ScrapDays = std::map<std::string, ScrapDay, std::greater<>>;

ScrapDays scrap_days(const Work& work, const Tape& tape) {
    ScrapDays days;
    for (auto scrap = work.scrap.rbegin(); scrap != work.scrap.rend(); ++scrap) {
        ScrapDay& day = days[scrap->day];
        day.entries.push_back(&*scrap);
        day.scrapped += shown_scrap(*scrap, tape);
        day.used += shown_scrap(*scrap, tape);
    }
    for (const auto& [day, tubes] : work.used)
        for (const auto& [tube, length] : tubes) days[day].used += on_tape(length, tape);
    return days;
}

double share_of(Length part, Length whole) { return whole > Length{} ? part / whole : 0; }

using LogRows = std::vector<std::vector<std::string>>;

std::string why_scrapped(const Scrap& scrap) {
    const bool one_bend = scrap.bend && (scrap.reason == Reason::wrong_place || scrap.reason == Reason::wrong_way || scrap.reason == Reason::over_bent);
    return reason_word(scrap.reason) + (one_bend ? ", " + bend_name(*scrap.bend) : "");
}

/// The day's own row, then one for each entry.
LogRows rows_of_day(const std::string& name, const ScrapDay& day, const Tape& tape) {
    const std::string count = day.entries.empty() ? "no scrap" : counted(day.entries.size(), "piece", "pieces");
    LogRows rows{{day_word(name), count, "of " + text(day.used, tape) + " used", text(day.scrapped, tape), percent(share_of(day.scrapped, day.used))}};
    std::vector<double> shares;
    for (const Scrap* scrap : day.entries) shares.push_back(share_of(shown_scrap(*scrap, tape), day.used));
    const std::vector<std::string> said = percents(shares);
    for (std::size_t i = 0; i < day.entries.size(); ++i) {
        const Scrap& scrap = *day.entries[i];
        rows.push_back({"", scrap.line, why_scrapped(scrap), text(shown_scrap(scrap, tape), tape), said[i]});
    }
    return rows;
}

struct LogPage {
    LogRows rows;
    std::vector<std::size_t> heads;
};

/// The day stands over its entries on each page anew, and never last without any.
std::vector<LogPage> log_pages(const ScrapDays& days, const Tape& tape) {
    std::vector<LogPage> pages(1);
    for (const auto& [name, day] : days) {
        const LogRows rows = rows_of_day(name, day, tape);
        const auto begin_day = [&] {
            pages.back().heads.push_back(pages.back().rows.size());
            pages.back().rows.push_back(rows.front());
        };
        if (pages.back().rows.size() + std::min<std::size_t>(rows.size(), 2) > log_rows_on_a_page) pages.emplace_back();
        begin_day();
        for (std::size_t i = 1; i < rows.size(); ++i) {
            if (pages.back().rows.size() == log_rows_on_a_page) {
                pages.emplace_back();
                begin_day();
            }
            pages.back().rows.push_back(rows[i]);
        }
    }
    return pages;
}

/// The reason that most of the scrap, by length, was made for.
Reason worst_reason(const std::vector<Scrap>& log) {
    std::map<Reason, Length> by_reason;
    for (const Scrap& scrap : log) by_reason[scrap.reason] += scrap.scrapped;
    return std::max_element(by_reason.begin(), by_reason.end(), [](const auto& a, const auto& b) { return a.second < b.second; })->first;
}

std::vector<TextView> scrap_totals(const State& state, const ScrapDays& days) {
    if (state.work.scrap.empty()) return {{"Nothing has been scrapped.", Tone::go}};
    const Tape tape = reader_tape(state);
    Length scrapped, used;
    for (const auto& [name, day] : days) {
        scrapped += day.scrapped;
        used += day.used;
    }
    std::vector<TextView> totals{{"Scrap in all " + text(scrapped, tape) + " of " + text(used, tape) + " used up: " + percent(share_of(scrapped, used))}};
    if (scrapped > Length{}) totals.push_back({"Most of it: " + reason_word(worst_reason(state.work.scrap)), Tone::caution});
    return totals;
}

/// Nothing where a stick of this length is long enough for the line in hand.
std::string too_short_words(const State& state, Length stick) {
    if (!too_short_by(state, stick)) return "";
    const Tape tape = reader_tape(state);
    const Length shown = on_tape(stick_standing(state).needed, tape) - down_on_tape(stick, tape);
    if (shown > Length{}) return "too short by " + text(shown, tape);
    return "too short by less than the tape shows";
}

/// One row for each way to come by a stick: a new one, one of another length, an offcut.
std::vector<RowView> stick_rows(const State& state) {
    const Tape tape = reader_tape(state);
    const Line& line = sheet_in_hand(state)->line;
    std::vector<RowView> rows;
    const auto come_in = [&] {
        if (line.stick) rows.push_back({press_button("new-stick", "A new stick, " + text(*line.stick, tape), NewStick{*line.stick}), "one more that came in, as this tube is sold", "", std::nullopt, Tone::plain});
        rows.push_back({press_button("other-stick", "A stick of another length", GoTo{Screen::stick_length}), "one more that came in: type its length", "", std::nullopt, Tone::plain});
    };
    // A whole stick on the rack goes first: what has not come in is not to be booked by a quick thumb.
    const std::vector<RackLength> there = offcuts_of_tube(state);
    const bool has_stick = std::any_of(there.begin(), there.end(), [](const RackLength& length) { return length.kind == PieceKind::stick; });
    if (!has_stick) come_in();
    const auto planned = planned_piece(state);
    const auto add = [&](const RackLength& length) {
        const bool as_planned = planned && *planned == length.piece;
        rows.push_back({unless(press_button("offcut-" + std::to_string(length.piece.n), capital(kind_word(length.kind)) + ", " + left_text(measured(length.length), tape), TakeOffcut{length.piece}), too_short_words(state, measured(length.length))),
                        place_words(length), as_planned ? "as planned" : "", std::nullopt, as_planned ? Tone::go : Tone::plain});
        if (as_planned) std::rotate(rows.begin(), rows.end() - 1, rows.end());
    };
    for (const RackLength& length : there) add(length);
    if (has_stick) come_in();
    for (const RackLength& length : lengths_on_rack(*state.work.rack.ledger, stock_tube(line.tube)))
        if (length.kind == PieceKind::coil)
            rows.push_back({press_button("coil-" + std::to_string(length.piece.n), "Coil, " + left_text(measured(length.length), tape), ShowPiece{length.piece}), "a length has to be straightened off it", "", std::nullopt, Tone::plain});
    return rows;
}

std::string stick_heading(const State& state) {
    const StickStanding stick = stick_standing(state);
    const Tape tape = reader_tape(state);
    std::string heading = stick.left ? "On the stick " + left_text(*stick.left, tape) : "No stick yet";
    if (stick.needed > Length{} && !work_in_hand(state).cut) heading += "; this line takes " + text(stick.needed, tape);
    return heading;
}

}  // namespace

void fill_scrap(const State& state, ScreenView& view) {
    const Tape tape = reader_tape(state);
    TableBody body;
    body.heading = "Scrap log";
    body.columns = {"day", "line", "reason", "scrap", "share"};
    const ScrapDays days = scrap_days(state.work, tape);
    std::vector<LogPage> pages = log_pages(days, tape);
    const Page page = page_of(state, pages.size(), 1);
    body.rows = std::move(pages[page.from].rows);
    body.heads = std::move(pages[page.from].heads);
    body.totals = scrap_totals(state, days);
    body.pager = pager_of(state, page);
    view.header = header_of(state, "Tubewright", "scrap log");
    view.body = std::move(body);
    view.footer = side_footer(state);
    view.footer.buttons.push_back(press_button("figures", "What it costs", GoTo{Screen::figures}));
}

void fill_stock(const State& state, ScreenView& view) {
    view.footer = side_footer(state);
    ListBody body;
    body.heading = stick_heading(state);
    show_page_of(state, stick_rows(state), body);
    body.notes = {{"What is left of the stick in use stays on the rack."}};
    view.footer.buttons.push_back(press_button("rack", "The whole rack", GoTo{Screen::rack}));
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
    const std::string too_short = typed ? too_short_words(state, *typed) : "";
    if (!too_short.empty()) body.lines.push_back({capital(too_short) + ". Type a longer one, or hold to use it for a shorter line.", Tone::caution});
    body.keys = number_keys(tape.unit == Unit::inch);
    body.columns = 4;
    view.header = line_header(state, "stick");
    view.body = std::move(body);
    const std::string why_not = typed ? too_short : state.looks.typed.empty() ? "nothing typed yet" : "more than 0, up to " + text(longest_stick, tape);
    view.footer = side_footer(state);
    if (!too_short.empty()) {
        view.footer.buttons.push_back(press_button("short-stick", "Hold: use it", NewStick{*typed}));
        view.footer.buttons.back().held = true;
    }
    view.footer.buttons.push_back(unless(press_button("next", "Use this stick", Next{}, Weight::main), why_not));
    view.footer.main_id = "next";
}

}  // namespace tubewright
