// A job being entered: its questions, its lines, undo, and what is on the disk of it.

#include <algorithm>
#include <cmath>

#include "bench/sheet.h"
#include "state/apply_entry.h"
#include "tube/route_edits.h"

namespace tubewright {

namespace {

/// A tube that is whole: only such a one can stand in a file.
Draft fit_to_keep(Draft job) {
    const auto half_said = [](const std::optional<DraftTube>& tube) { return tube && !is_whole(*tube); };
    if (half_said(job.tube)) job.tube.reset();
    for (DraftLine& line : job.lines)
        if (half_said(line.tube)) line.tube.reset();
    return job;
}

}  // namespace

DraftLine fresh_line(const Draft& job) {
    DraftLine line;
    line.name = new_line_name(job);
    line.unfinished = true;
    line.route.measured_to = TapeEdge::outside;
    if (job.lines.empty()) return line;
    const DraftLine& last = job.lines.back();  // the next line of a job is mostly of the same tube, with the same ends
    line.tube = last.tube;
    line.bender = last.bender;
    line.a.fitting = last.a.fitting;
    line.b.fitting = last.b.fitting;
    line.route.form = last.route.form == RouteForm::points ? RouteForm::legs : last.route.form;
    line.route.measured_to = last.route.measured_to;
    return line;
}

void show_page(State& state) { show(state, state.entry->page.ask ? Screen::ask : Screen::route); }

void go_on(Doing& doing, Ask answered) {
    EntryPage& page = doing.state.entry->page;
    const DraftLine& line = doing.state.entry->line();
    if (answered == Ask::service && doing.state.entry->in_a_row) page.ask = Ask::tube;
    else if (const auto open = open_question_of(page.job, line)) page.ask = open;
    else if (doing.state.entry->in_a_row && answered != Ask::form) page.ask = Ask::form;
    else page.ask.reset();
    if (page.ask) return show_page(doing.state);
    show(doing.state, doing.state.entry->in_a_row ? Screen::route : Screen::draft);
}

void keep_draft(Doing& doing) {
    Entry& entry = *doing.state.entry;
    doing.requests.push_back(KeepDraft{entry.path, fit_to_keep(entry.page.job), shown_part(entry)});
}

namespace {

/// Whether the route stays and something else is bent, or on something else.
bool changes_tube_or_bender(const EntryPage& was, const EntryPage& is) {
    if (was.line != is.line || was.line >= was.job.lines.size() || is.line >= is.job.lines.size()) return false;
    const DraftLine &before = was.job.lines[was.line], &after = is.job.lines[is.line];
    if (before.route != after.route) return false;
    return (before.tube ? before.tube : was.job.tube) != (after.tube ? after.tube : is.job.tube) || (before.bender ? before.bender : was.job.bender) != (after.bender ? after.bender : is.job.bender);
}

}  // namespace

void change_entry(Doing& doing, EntryPage next) {
    Entry& entry = *doing.state.entry;
    if (next.job == entry.page.job && next.point == entry.page.point) {
        entry.page = std::move(next);
        return;
    }
    if (!changes_tube_or_bender(entry.page, next)) doing.state.entry_was.reset();
    else if (!doing.state.entry_was) doing.state.entry_was = doing.state.entry_sheet;
    entry.past.push_back(entry.page);
    entry.future.clear();
    entry.page = std::move(next);
    keep_draft(doing);
}

bool at_route(const State& state) { return line_is_entered(state) && state.looks.screen == Screen::route; }

bool line_is_entered(const State& state) {
    return state.entry && state.entry->page.line < state.entry->page.job.lines.size();
}

void new_job(Doing& doing) {
    State& state = doing.state;
    Entry entry;
    entry.page.job.name = state.day.empty() ? "New job" : "New job " + state.day;
    entry.page.job.unit = state.settings.unit.value_or(Unit::inch);
    entry.page.job.lines = {fresh_line(entry.page.job)};
    state.entry = std::move(entry);
    state.entry_sheet.reset();
    state.entry_remedies.clear();
    state.entry_was.reset();
    show_page(state);
}

namespace {

bool is_taken_for_flat(const DraftLine& line) { return said_flat(line) || looks_flat(line.route); }

/// Another line comes into hand.
void pick_line(EntryPage& page, std::size_t line) {
    page.line = line;
    page.point.clear();
    page.cell = cells_of(page.job.lines[line].route).back();
    page.flat = is_taken_for_flat(page.job.lines[line]);
}

}  // namespace

void draft_read(Doing& doing, const DraftRead& read) {
    if (read.job.lines.empty()) return;
    Entry entry;
    entry.path = read.path;
    entry.in_a_row = false;
    entry.from_bench = !read.prove.empty();
    entry.page.job = read.job;
    entry.page.ask.reset();
    for (std::size_t i = 0; i < read.job.lines.size(); ++i)
        if (read.job.lines[i].name == read.prove) entry.page.line = i;
    entry.page.cell = cells_of(entry.line().route).back();
    entry.page.flat = is_taken_for_flat(entry.line());
    doing.state.entry = std::move(entry);
    doing.state.entry_sheet.reset();
    doing.state.entry_remedies.clear();
    doing.state.entry_was.reset();
    show(doing.state, read.prove.empty() ? Screen::draft : Screen::prove);
    keep_draft(doing);
}

void add_line(Doing& doing) {
    if (!doing.state.entry) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines.push_back(fresh_line(next.job));
    say_flat(next.job.lines.back(), said_flat(doing.state.entry->line()));  // the next line mostly lies as this one does
    pick_line(next, next.job.lines.size() - 1);
    next.ask = open_question_of(next.job, next.job.lines.back());
    doing.state.entry->in_a_row = true;
    change_entry(doing, std::move(next));
    show_page(doing.state);
}

void open_draft_line(Doing& doing, std::size_t line) {
    if (!doing.state.entry || line >= doing.state.entry->page.job.lines.size()) return;
    EntryPage& page = doing.state.entry->page;
    pick_line(page, line);
    doing.state.entry_was.reset();
    page.ask.reset();
    show(doing.state, Screen::draft);
    keep_draft(doing);
}

void ask_for(Doing& doing, Ask ask) {
    if (!line_is_entered(doing.state)) return;
    doing.state.entry->page.ask = ask;
    doing.state.entry->in_a_row = doing.state.entry->in_a_row && ask == Ask::points_file;  // one way to answer how it was measured
    if (ask == Ask::points_file) doing.requests.push_back(ReadPointFiles{});
    show(doing.state, Screen::ask);
}

void answer(Doing& doing, const std::string& id) {
    State& state = doing.state;
    if (!line_is_entered(state) || state.looks.screen != Screen::ask || !state.entry->page.ask) return;
    if (answer_points(doing, id)) return;
    EntryPage next = state.entry->page;
    const Ask answered = *next.ask;
    if (!take_answer(state.offers, next, id)) return;
    change_entry(doing, std::move(next));
    if (id == "flat" || id == "not-flat" || id == "own" || id == "shared") return;  // said beside the question
    go_on(doing, answered);
}

void copy_line(Doing& doing, bool in_mirror) {
    if (!line_is_entered(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine copy = next.job.lines[next.line];
    copy.name = new_line_name(next.job);
    copy.proof.reset();
    if (in_mirror) copy.route = mirrored(copy.route);
    next.job.lines.push_back(std::move(copy));
    pick_line(next, next.job.lines.size() - 1);
    change_entry(doing, std::move(next));
    show(doing.state, Screen::draft);
}

void take_line_out(Doing& doing) {
    if (!line_is_entered(doing.state) || doing.state.entry->page.job.lines.size() < 2) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines.erase(next.job.lines.begin() + static_cast<std::ptrdiff_t>(next.line));
    pick_line(next, std::min(next.line, next.job.lines.size() - 1));
    change_entry(doing, std::move(next));
    show(doing.state, Screen::draft);
}

namespace {

bool at_entry(const State& state) {
    const Screen screen = state.looks.screen;
    return state.entry && (screen == Screen::draft || screen == Screen::ask || screen == Screen::route || screen == Screen::word || screen == Screen::prove);
}

bool bring_back(Doing& doing, std::vector<EntryPage>& from, std::vector<EntryPage>& to) {
    Entry& entry = *doing.state.entry;
    const bool proved = doing.state.looks.screen == Screen::prove;
    if (from.empty() || (proved && !is_proof_step(from.back(), entry.page))) return true;
    to.push_back(entry.page);
    entry.page = from.back();
    from.pop_back();
    doing.state.entry_was.reset();
    keep_draft(doing);
    if (proved) {
        show(doing.state, Screen::prove);
        work_out_proof(doing.state);
        return true;
    }
    if (entry.page.ask || doing.state.looks.screen != Screen::draft) show_page(doing.state);
    return true;
}

}  // namespace

bool undo_entry(Doing& doing) { return at_entry(doing.state) && bring_back(doing, doing.state.entry->past, doing.state.entry->future); }
bool redo_entry(Doing& doing) { return at_entry(doing.state) && bring_back(doing, doing.state.entry->future, doing.state.entry->past); }

namespace {

Shop shop_for(const State& state) {
    const Length od = state.entry_sheet->line.tube.od;
    Shop shop{state.offers.cards, {}, {}, {state.entry->page.job.unit == Unit::inch ? 25.4 / 16 : 0.5}};
    for (const TubeOffer& tube : state.offers.tubes)
        if (std::abs(tube.od.mm - od.mm) < 0.001) shop.walls.push_back(tube.wall);
    for (const NamedOffer& fitting : state.offers.fittings) shop.fittings.push_back(fitting.id);
    return shop;
}

}  // namespace

void draft_kept(Doing& doing, const DraftKept& kept) {
    State& state = doing.state;
    if (!state.entry) return;
    if (!kept.path.empty()) state.entry->path = kept.path;
    if (!kept.sentence.empty()) state.looks.notice = kept.sentence;
    state.entry->trouble = kept.trouble;
    state.entry_try.reset();
    state.entry_sheet = kept.line ? std::make_shared<const Sheet>(bend_sheet(*kept.line, {})) : nullptr;
    work_out_proof(state);
    if (state.looks.screen == Screen::prove && (!state.proving || no_proof(state) != NoProof::none)) show(state, Screen::draft);
    state.entry_remedies.clear();
    if (!state.entry_sheet) return;
    state.entry_remedies = remedies(*state.entry_sheet, shop_for(state));
    for (std::optional<Remedy>& remedy : state.entry_remedies) {
        EntryPage tried = state.entry->page;
        if (remedy && !with_remedy(state.offers, tried, *remedy)) remedy.reset();
    }
}

void turn_picture(Doing& doing, const Orbit& by) {
    if (!at_entry(doing.state) || !std::isfinite(by.over.deg) || !std::isfinite(by.round.deg)) return;
    constexpr double most_over = 70;  // whatever the picture starts from, it never turns past straight down
    const Orbit was = doing.state.entry->orbit.value_or(Orbit{});
    doing.state.entry->orbit = Orbit{{std::clamp(was.over.deg + by.over.deg, -most_over, most_over)}, wrapped(was.round + by.round)};
}

void enlarge_picture(Doing& doing) {
    State& state = doing.state;
    if (at_entry(state)) state.looks.large_picture = !state.looks.large_picture && entry_in_sight(state);
}

void straight_on(Doing& doing) {
    if (doing.state.entry) doing.state.entry->orbit.reset();
}

}  // namespace tubewright
