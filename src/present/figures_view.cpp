// What the scrap book says of the shop, and copies of all that the program keeps.

#include <algorithm>

#include "present/pieces.h"
#include "present/stock_words.h"
#include "present/words.h"
#include "stock/shop_figures.h"
#include "state/rack.h"

namespace tubewright {
namespace {

struct Bar {
    std::string name;
    ScrapSum sum;
};

/// Where nothing was paid that is known, by length.
double weight(const ScrapSum& sum, bool by_money) { return static_cast<double>(by_money ? sum.cost.cents : sum.length.um); }

std::vector<Bar> bars_of(const State& state, const std::vector<ScrapRecord>& records) {
    std::vector<Bar> bars;
    switch (state.looks.figures) {
        case FiguresBy::reason:
            for (const auto& [reason, sum] : scrap_by_reason(records)) bars.push_back({capital(reason), sum});
            break;
        case FiguresBy::line:
            for (const auto& [line, sum] : scrap_by_line(mistakes_of(records))) bars.push_back({line.empty() ? "of no line" : line_of_key(state, line), sum});
            break;
        case FiguresBy::tube:
            for (const auto& [tube, sum] : scrap_by_tube(records)) bars.push_back({tube_words(state, tube), sum});
            break;
        case FiguresBy::week: {
            if (records.empty()) break;
            const int first = std::min_element(records.begin(), records.end(), [](const auto& a, const auto& b) { return a.day < b.day; })->day;
            const auto weeks = scrap_by_week(records, first);
            for (int week = weeks.rbegin()->first; week >= 0; --week)
                bars.push_back({"Week from " + day_word(day_of(first + 7 * week)), weeks.contains(week) ? weeks.at(week) : ScrapSum{}});
            return bars;
        }
        case FiguresBy::bends: break;
    }
    std::stable_sort(bars.begin(), bars.end(), [](const Bar& a, const Bar& b) { return std::pair(a.sum.cost, a.sum.length) > std::pair(b.sum.cost, b.sum.length); });
    return bars;
}

std::vector<RowView> scrap_rows(const State& state, const std::vector<ScrapRecord>& records) {
    const Tape tape = reader_tape(state);
    const std::vector<Bar> bars = bars_of(state, records);
    const bool by_money = scrap_in_all(records).cost.cents > 0;
    double most = 0;
    for (const Bar& bar : bars) most = std::max(most, weight(bar.sum, by_money));
    std::vector<RowView> rows;
    for (const Bar& bar : bars) {
        RowView row;
        row.touch = press_button("bar-" + std::to_string(rows.size() + 1), bar.name, ShowFigures{state.looks.figures});
        row.detail = bar.sum.pieces == 0 ? "no scrap" : counted(static_cast<std::size_t>(bar.sum.pieces), "time", "times") + ", " + text(measured(bar.sum.length), tape);
        row.right = by_money ? money_text(bar.sum.cost) : text(measured(bar.sum.length), tape);
        row.done = most > 0 ? weight(bar.sum, by_money) / most : 0;
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<RowView> bend_rows(const State& state) {
    const Tape tape = reader_tape(state);
    std::vector<RowView> rows;
    for (const auto& [tube, came_out] : bends_by_tube(state.work)) {
        RowView row;
        row.touch = press_button("bar-" + std::to_string(rows.size() + 1), tube_words(state, tube), ShowFigures{FiguresBy::bends});
        row.detail = counted(static_cast<std::size_t>(came_out.bends), "bend", "bends") + ": a right angle opens " + text(came_out.opens_at_90, tape) + " on the average";
        row.right = "off " + text(came_out.off, tape);
        rows.push_back(std::move(row));
    }
    return rows;
}

/// What this program has against each reason.
std::string help_against(const std::string& reason) {
    const auto is = [&](Reason one) { return reason == ledger_reason(one); };
    if (is(Reason::wrong_way)) return "At the turn, hold the tube against the picture and its crossed-out twin before you pull.";
    if (is(Reason::wrong_place)) return "See which line of the bender the marks go on, and learn the bender from a piece.";
    if (is(Reason::over_bent)) return "Check each bend with the protractor: the next pull is reckoned from it.";
    if (is(Reason::kinked)) return "Look at the bender's card: the form may be too tight for this tube, or its size another.";
    if (is(Reason::too_short)) return "Prove the entry with a tape before you cut.";
    if (is(Reason::end_spoiled)) return "Practise the flare on short ends, and leave a trim on at that end.";
    if (is(Reason::does_not_fit)) return "Prove the entry with a tape before you cut; hold the first part on the vehicle before its ends are made.";
    if (reason == reason_short_end) return "Plan the jobs of a week together: fewer short ends are left.";
    return "";
}

std::vector<TextView> figure_notes(const State& state, const std::vector<ScrapRecord>& records) {
    const FirstTimeRight right = first_time_right(*state.work.rack.ledger);
    std::vector<TextView> notes;
    if (right.made > 0) notes.push_back({std::to_string(right.first_time) + " of " + counted(static_cast<std::size_t>(right.made), "line", "lines") + " came out right the first time: " + percent(*right.rate()) + "."});
    if (const auto most = costliest_reason(records)) {
        const std::string help = help_against(most->reason);
        notes.push_back({"Most of what went wrong: " + most->reason + ", " + percent(most->share) + "." + (help.empty() ? "" : " " + help), Tone::caution});
    }
    return notes;
}

std::string backup_words(const BackupFile& file) { return day_word(file.day) + (file.number > 1 ? ", number " + std::to_string(file.number) : ""); }

ButtonView by_button(const State& state, const char* id, const char* label, FiguresBy by) {
    ButtonView button = press_button(id, label, ShowFigures{by});
    button.chosen = state.looks.figures == by;
    return button;
}

}  // namespace

void fill_figures(const State& state, ScreenView& view) {
    const std::vector<ScrapRecord> records = scrap_records(*state.work.rack.ledger);
    const bool bends = state.looks.figures == FiguresBy::bends;
    ListBody body;
    const std::vector<RowView> rows = bends ? bend_rows(state) : scrap_rows(state, records);
    const ScrapSum all = scrap_in_all(records);
    body.heading = bends ? "How your bends come out" : "Scrap, trims and short ends too: " + text(measured(all.length), reader_tape(state)) + (all.cost.cents > 0 ? ", " + money_text(all.cost) : "");
    show_page_of(state, rows, body);
    if (!bends) body.notes = figure_notes(state, records);
    if (rows.empty()) body.notes.insert(body.notes.begin(), {bends ? "No bend has been checked with the protractor yet." : "Nothing has been scrapped since the rack is kept.", Tone::go});
    view.header = header_of(state, "Tubewright", "figures");
    view.body = std::move(body);
    view.footer.buttons = {back_button(), by_button(state, "by-reason", "Reason", FiguresBy::reason), by_button(state, "by-line", "Line", FiguresBy::line), by_button(state, "by-tube", "Tube", FiguresBy::tube),
                           by_button(state, "by-week", "Week", FiguresBy::week), by_button(state, "by-bends", "Bends", FiguresBy::bends)};
    view.footer.back_id = "back";
}

void fill_keep_safe(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Backups";
    std::vector<RowView> rows;
    for (const BackupFile& file : state.backups) {
        RowView row;
        row.touch = press_button("backup-" + file.name, "Hold: go back to " + backup_words(file), RestoreBackup{file.name});
        row.touch.held = true;
        row.detail = file.name;
        rows.push_back(std::move(row));
    }
    show_page_of(state, rows, body);
    body.notes = {{state.backups.empty() ? "No backup is there yet. One holds the shop book, your jobs, your benders' cards, points and bends."
                                         : "They lie in " + state.backup_folder + ". Going back makes a backup of today first."}};
    view.header = header_of(state, "Tubewright", "backups and tables");
    view.body = std::move(body);
    view.footer.buttons = {back_button(), press_button("tables", "Write tables", WriteTables{}), press_button("make-backup", "Back up now", MakeBackup{}, Weight::main)};
    view.footer.back_id = "back";
    view.footer.main_id = "make-backup";
}

}  // namespace tubewright
