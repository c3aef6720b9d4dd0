// The shelf of jobs, the lines of a job, and one line before work starts.

#include <algorithm>
#include <cmath>
#include <map>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

LineWork work_of(const Work& work, const std::string& key) {
    const auto found = work.lines.find(key);
    return found == work.lines.end() ? LineWork{} : found->second;
}

RowView job_row(const State& state, const ShelfEntry& entry, const std::string& id) {
    RowView row;
    row.touch = unless(press_button(id, entry.name.empty() ? entry.id : entry.name, OpenJob{entry.path}), entry.unfinished ? "" : entry.trouble);
    if (entry.unfinished) {
        row.detail = "being entered: touch it to go on";
        row.right = "not finished";
        row.tone = Tone::now;
        return row;
    }
    if (!entry.trouble.empty()) {
        row.tone = Tone::stop;
        return row;
    }
    int made = 0, asked = 0, begun = 0;
    for (std::size_t i = 0; i < entry.lines.size(); ++i) {
        const LineWork work = work_of(state.work, line_key(entry.id, entry.lines[i]));
        const int pieces = i < entry.quantities.size() ? std::max(1, entry.quantities[i]) : 1;
        made += std::min(work.finished, pieces);  // one line's extra pieces stand for no other line's
        asked += pieces;
        begun += work != LineWork{} ? 1 : 0;
    }
    row.detail = counted(entry.lines.size(), "line", "lines");
    row.right = begun == 0 ? "not begun" : std::to_string(made) + " of " + std::to_string(asked) + " made";
    if (asked > 0) row.done = static_cast<double>(made) / asked;
    return row;
}

double share_done(const Sheet& sheet, const LineWork& work) {
    if (sheet.line.quantity < 1) return 0;
    double pieces = work.finished;
    if (work.stage == Stage::bending && !sheet.steps.empty()) pieces += static_cast<double>(work.made.size()) / static_cast<double>(sheet.steps.size());
    if (work.stage == Stage::finish) pieces += 0.95;
    return std::clamp(pieces / sheet.line.quantity, 0.0, 1.0);
}

RowView line_row(const State& state, const Sheet& sheet) {
    const LineWork work = work_of(state.work, line_key(state.job_id, sheet.line.name));
    RowView row;
    row.touch = press_button("line-" + sheet.line.name, sheet.line.name, OpenLine{sheet.line.name});
    row.detail = counted(sheet.line.route.bends.size(), "bend", "bends");
    if (sheet.layout) row.detail += ", cut to " + text(sheet.layout->cut_length, reader_tape(state));
    row.right = line_standing(sheet, work);
    if (const std::size_t left = left_for_later(work); left > 0) row.detail += ", " + std::to_string(left) + " left for later";
    row.done = share_done(sheet, work);
    if (stopped(sheet)) row.tone = Tone::stop;
    else if (misfit(sheet, work) != Misfit::none) row.tone = Tone::caution;
    return row;
}

/// Turns that leave the plane of the bend before begin a new one.
std::size_t planes(const Route& route) {
    std::size_t count = route.bends.empty() ? 0 : 1;
    for (std::size_t i = 1; i < route.bends.size(); ++i) {
        const Angle turn = wrapped(route.bends[i].rotation);
        if (!shows_as(turn, 0) && !shows_as(turn, 180) && !shows_as(turn, -180)) ++count;
    }
    return count;
}

std::string bends_words(const Line& line) {
    const std::size_t count = line.route.bends.size();
    if (count == 0) return "none";
    return counted(count, "bend", "bends") + " in " + counted(planes(line.route), "plane", "planes");
}

ButtonView start_button(const State& state) {
    // It may come under a foot that is on its way to the switch: it is taken where all that it means is said, and by hand.
    if (reorder_button(state)) return press_button("see-order", "Another order: look", GoTo{Screen::order}, Weight::main);
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    ButtonView button = press_button("next", "Start: prepare", Next{}, Weight::main);
    if (bar_to_start(state) == Bar::looking) return unless(button, "the best order is being looked for");
    if (bar_to_start(state) == Bar::stopped) return unless(button, work.cut ? "what is marked stop comes first" : "what is marked stop has to be put right in the job");
    if (misfit(sheet, work) != Misfit::none) {
        button.label = "Go on";
        return button;
    }
    if (work.stage == Stage::done) {
        button.label = work.finished < sheet.line.quantity ? "Make another piece" : "One more than asked";
        return button;
    }
    if (work.stage == Stage::prepare && (work.cut || !work.ticks.empty())) button.label = "Go on: prepare";
    if (work.stage == Stage::mark_out) button.label = "Go on: mark out";
    if (work.stage == Stage::bending) button.label = "Go on: " + bend_name(sheet.steps[work.step].bend);
    if (work.stage == Stage::finish) button.label = "Go on: finish";
    return button;
}

std::vector<TextView> no_book_notes(const State& state) {
    if (state.book != BookStanding::without) return {};
    return {{"Without the shop book: nothing is remembered after switching off.", Tone::caution}};
}

/// order_notes() says it too, and stands on the same screen.
bool said_by_the_order(const Finding& finding) {
    const auto* fact = std::get_if<OrderNotLooked>(&finding.fact);
    return fact && fact->stopped;
}

}  // namespace

void fill_shelf(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Jobs";
    const Page page = page_of(state, state.shelf.size(), rows_on_a_page);
    std::map<std::string, int> seen;
    for (std::size_t i = 0; i < page.to; ++i) {
        const int before = seen[state.shelf[i].id]++;  // the same file name can lie in two folders
        const std::string id = "job-" + state.shelf[i].id + (before == 0 ? "" : "-again-" + std::to_string(before));
        if (i >= page.from) body.rows.push_back(job_row(state, state.shelf[i], id));
    }
    if (state.shelf.empty()) body.notes.push_back({"There is no job file yet. Put one into the folder jobs.", Tone::caution});
    for (const TextView& note : no_book_notes(state)) body.notes.push_back(note);
    body.pager = pager_of(state, page);
    view.header = header_of(state, "Tubewright", "");
    view.body = body;
    view.footer.buttons = {press_button("new-job", "New job", NewJob{}), press_button("settings", "Settings", GoTo{Screen::settings}), press_button("scrap", "Scrap log", GoTo{Screen::scrap}), press_button("rack", "The rack", GoTo{Screen::rack})};
    if (state.job) view.footer.buttons.push_back(press_button("lines", "Job in hand", GoTo{Screen::lines}));
}

void fill_lines(const State& state, ScreenView& view) {
    ListBody body;
    body.heading = "Lines of " + state.job->name;
    const Page page = page_of(state, state.sheets.size(), rows_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) body.rows.push_back(line_row(state, state.sheets[i]));
    body.notes = no_book_notes(state);
    body.pager = pager_of(state, page);
    view.header = header_of(state, state.job->name, service_word(state.job->service));
    view.body = body;
    view.footer.buttons = {press_button("scrap", "Scrap log", GoTo{Screen::scrap}), undo_button(state)};
    view.footer.buttons.push_back(press_button("change-job", "Change the job", ChangeJob{state.job_path}));
    view.footer.buttons.push_back(back_button());
    view.footer.buttons.push_back(press_button("plan", "Cutting plan", GoTo{Screen::plan}));
    if (can_redo(state)) view.footer.buttons.push_back(press_button("redo", "Redo", Redo{}));
    view.footer.back_id = "back";
}

void fill_line(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Tape tape = reader_tape(state);
    OverviewBody body;
    body.facts = {{"Tube", tube_words(sheet.line, tape)}, {"Cut to", sheet.layout ? text(sheet.layout->cut_length, tape) : "not known"}, {"Bends", bends_words(sheet.line)}};
    // What has to be slid on is on the tick list; here stands what speaks against the line.
    std::vector<TextView> said = no_book_notes(state), rest = other_rest_notes(state);
    for (const Finding& finding : sheet.findings) {
        if (std::holds_alternative<TrappedPieces>(finding.fact) || said_by_the_order(finding)) continue;
        said.push_back({sentence(finding, {tape, &sheet.line}), tone_of(finding.severity)});
        if (std::holds_alternative<HitsAsItStands>(finding.fact)) said.insert(said.end(), rest.begin(), rest.end()), rest.clear();
    }
    if (const auto note = proof_note(*state.line < state.proofs.size() ? state.proofs[*state.line] : ProofStanding::none, sheet.line.proof); note && !work.cut) said.push_back(*note);
    if (const std::size_t left = left_for_later(work); left > 0) said.insert(said.begin(), {counted(left, "tick is", "ticks are") + " left for the fitter, of pieces handed over.", Tone::caution});
    if (!sheet.line.note.empty()) said.push_back({"Note: " + sheet.line.note});
    for (const TextView& note : order_notes(state)) said.push_back(note);
    const Page page = page_of(state, said.size(), findings_on_a_page);
    body.findings.assign(said.begin() + static_cast<std::ptrdiff_t>(page.from), said.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.pager = pager_of(state, page);
    // No ribbon here: the finished line is what has to be seen, and takes its room.
    if (sheet.layout) body.picture = PictureView{PictureView::Kind::finished, 0, "The finished line", {{Anchor::hook_end, "A"}, {Anchor::lever_end, "B"}}};
    body.buttons = {press_button("stance", "How the bender stands", GoTo{Screen::stance}), unless(press_button("order", "Order of bends", GoTo{Screen::order}), sheet.steps.empty() ? "no bends" : ""), press_button("stock", "Stick and offcuts", GoTo{Screen::stock})};
    if (!sheet.steps.empty()) body.buttons.push_back(press_button("bends", "What your bends say", GoTo{Screen::bends}));
    view.header = line_header(state, piece_words(sheet.line, work));
    view.footer = side_footer(state);
    if (bar_to_start(state) == Bar::stopped && work.cut && work.stage != Stage::done)
        view.footer.buttons.insert(view.footer.buttons.begin(), press_button("wrong", "Went wrong", WentWrong{}, Weight::warn));
    if (const auto later = later_button(state)) view.footer.buttons.push_back(*later);
    if (sheet.layout && !work.cut) view.footer.buttons.push_back(unless(press_button("print", "Put on paper", PrintLine{}), bar_to_start(state) == Bar::looking ? "the order is looked for" : ""));
    if (!work.cut && sheet.layout && !sheet.line.route.bends.empty()) view.footer.buttons.push_back(press_button("prove", "Check the entry with a tape", ProveLine{}));
    ButtonView start = start_button(state);
    // What speaks against the line is read before work on it begins.
    if (start.enabled && work == for_next_piece(work)) start = through_pages(state, page, start);
    view.footer.main_id = start.id;
    view.footer.buttons.push_back(std::move(start));
    view.body = std::move(body);
}

}  // namespace tubewright
