// The numbers of the route in hand: what the finger types, taps and takes back.

#include <algorithm>

#include "state/apply_entry.h"
#include "tube/route_edits.h"

namespace tubewright {
namespace {

using What = Cell::What;

bool at_route(const State& state) { return line_is_entered(state) && state.looks.screen == Screen::route; }

void clear_typed(Looks& looks) {
    looks.typed.clear();
    looks.keypad = false;
    looks.page = 0;  // the numbers are turned to the one in hand
}

/// The route with a number put in; on to the next cell where it was one.
void put(Doing& doing, MeasuredRoute route) {
    EntryPage next = doing.state.entry->page;
    MeasuredRoute& here = next.job.lines[next.line].route;
    const bool taken = has_value(route, next.cell);
    here = std::move(route);
    next.job.lines[next.line].unfinished = true;
    if (taken) next.cell = cell_after(here, next.cell);
    change_entry(doing, std::move(next));
    clear_typed(doing.state.looks);
}

}  // namespace

std::optional<Length> typed_run(const State& state) {
    if (!at_route(state)) return std::nullopt;
    const auto number = typed_number(state.looks.typed);
    if (!number) return std::nullopt;
    return Length{state.entry->page.job.unit == Unit::inch ? *number * 25.4 : *number};
}

void pick_cell(Doing& doing, const Cell& cell) {
    if (!line_is_entered(doing.state)) return;
    EntryPage& page = doing.state.entry->page;
    const std::vector<Cell> cells = cells_of(page.job.lines[page.line].route);
    if (!trimmed_end(cell) && std::find(cells.begin(), cells.end(), cell) == cells.end()) return;
    page.cell = cell;
    page.ask.reset();
    show(doing.state, Screen::route);
}

void give_angle(Doing& doing, Angle angle) {
    if (!at_route(doing.state)) return;
    const Entry& entry = *doing.state.entry;
    if (takes(entry.line().route, entry.page.cell, angle)) put(doing, with_angle(entry.line().route, entry.page.cell, angle));
}

void give_way(Doing& doing, MoveWay way) {
    const auto length = typed_run(doing.state);
    if (!length) return;
    EntryPage next = doing.state.entry->page;
    MeasuredRoute& route = next.job.lines[next.line].route;
    route = with_way(route, next.cell, way, *length);
    next.job.lines[next.line].unfinished = true;
    change_entry(doing, std::move(next));
    clear_typed(doing.state.looks);
}

void split_leg(Doing& doing) {
    const auto before = typed_run(doing.state);
    if (!before) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    if (next.cell.what != What::run || !has_value(line.route, next.cell)) return;
    if (before->mm <= 0 || *before >= line.route.runs[next.cell.index]) return;
    line.route = with_bend_in(line.route, next.cell.index, *before);
    line.unfinished = true;
    next.cell = {What::angle, next.cell.index};
    change_entry(doing, std::move(next));
    clear_typed(doing.state.looks);
}

void take_bend_out(Doing& doing, std::size_t bend) {
    if (!line_is_entered(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    if (bend >= line.route.bends.size()) return;
    line.route = without_bend(line.route, bend);
    line.unfinished = true;
    next.cell = cells_of(line.route).back();
    change_entry(doing, std::move(next));
    clear_typed(doing.state.looks);
}

void take_last_out(Doing& doing) {
    if (!at_route(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    const std::vector<Cell> cells = cells_of(line.route);
    const auto last = std::find_if(cells.rbegin(), cells.rend(), [&](const Cell& cell) { return has_value(line.route, cell); });
    if (last == cells.rend()) return;
    switch (last->what) {
        case What::run: line.route.runs.pop_back(); break;
        case What::angle: line.route.bends.pop_back(); break;
        case What::turn: line.route.bends.back().rotation.reset(); break;
        case What::move: line.route.moves.pop_back(); break;
        case What::trim_a:
        case What::trim_b: break;
    }
    line.unfinished = true;
    next.cell = *last;
    change_entry(doing, std::move(next));
    clear_typed(doing.state.looks);
}

namespace {

void put_trim(Doing& doing, End end) {
    const auto length = typed_run(doing.state);
    if (!length || *length > longest_trim) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].end(end).trim = *length;
    next.cell = cells_of(next.job.lines[next.line].route).back();
    change_entry(doing, std::move(next));
    show(doing.state, Screen::draft);
}

}  // namespace

void mirror_line(Doing& doing) {
    if (!line_is_entered(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].route = mirrored(next.job.lines[next.line].route);
    change_entry(doing, std::move(next));
}

void reverse_line(Doing& doing) {
    if (!line_is_entered(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    if (!route_from(line.route).ok()) return;  // of half a wire nobody knows where the other end is
    line.route = reversed(line.route);
    std::swap(line.a, line.b);
    next.cell = cells_of(line.route).back();
    change_entry(doing, std::move(next));
}

bool can_finish(const State& state) {
    return line_is_entered(state) && !open_question_of(state.entry->page.job, state.entry->line()) && route_from(state.entry->line().route).ok();
}

void finish_line(Doing& doing) {
    if (!can_finish(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].unfinished = false;
    doing.state.entry->in_a_row = false;
    change_entry(doing, std::move(next));
    show(doing.state, Screen::draft);
}

void next_at_entry(Doing& doing) {
    State& state = doing.state;
    if (!line_is_entered(state)) return;
    if (state.looks.screen == Screen::draft) {
        const auto& lines = state.entry->page.job.lines;
        const bool whole = std::none_of(lines.begin(), lines.end(), [](const DraftLine& line) { return line.unfinished; });
        if (whole && !state.entry->path.empty()) doing.requests.push_back(ReadJob{state.entry->path});
        return;
    }
    if (!at_route(state)) return;
    const Cell cell = state.entry->page.cell;
    if (cell.what == What::move) {
        // The move is said; the next one begins.
        if (state.looks.typed.empty() && has_value(state.entry->line().route, cell)) state.entry->page.cell = cell_after(state.entry->line().route, cell);
        return;
    }
    if (const auto end = trimmed_end(cell)) return put_trim(doing, *end);
    if (cell.what == What::run) {
        if (const auto length = typed_run(state); length && takes(state.entry->line().route, cell, *length)) put(doing, with_length(state.entry->line().route, cell, *length));
        return;
    }
    if (const auto number = typed_number(state.looks.typed)) give_angle(doing, Angle{*number});
}

void back_at_entry(Doing& doing) {
    State& state = doing.state;
    if (!state.entry) return show(state, Screen::shelf);
    if (state.looks.screen == Screen::draft) {
        doing.requests.push_back(ReadShelf{});
        return show(state, Screen::shelf);
    }
    state.entry->page.ask.reset();
    show(state, Screen::draft);
}

}  // namespace tubewright
