// The numbers of the route in hand: what the finger types, taps and takes back.

#include <algorithm>
#include <cmath>

#include "bench/sheet.h"
#include "state/apply_entry.h"
#include "tube/route_edits.h"

namespace tubewright {
namespace {

using What = Cell::What;

void clear_typed(State& state) {
    Looks& looks = state.looks;
    looks.typed.clear();
    looks.keypad = false;
    looks.page = 0;  // the numbers are turned to the one in hand
    state.entry_try.reset();
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
    clear_typed(doing.state);
}

}  // namespace

std::optional<Length> typed_run(const State& state) {
    if (!at_route(state)) return std::nullopt;
    const std::string& typed = state.looks.typed;
    const bool minus = axis_of(state.entry->page.cell) && !typed.empty() && typed.front() == '-';
    const auto number = typed_number(minus ? typed.substr(1) : typed);
    if (!number) return std::nullopt;
    const double in_mm = state.entry->page.job.unit == Unit::inch ? *number * 25.4 : *number;
    return Length{minus ? -in_mm : in_mm};
}

std::optional<int> typed_pieces(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (!at_route(state) || !number || *number < 1 || *number > most_pieces || std::floor(*number) != *number) return std::nullopt;
    return static_cast<int>(*number);
}

void press_number_key(Doing& doing, const std::string& key) {
    State& state = doing.state;
    if (!at_route(state)) return;
    std::string& typed = state.looks.typed;
    state.entry_try.reset();
    if (key == "keypad") {
        state.looks.keypad = true;
        typed.clear();
        return;
    }
    const bool minus = !typed.empty() && typed.front() == '-';
    const std::string number = minus ? typed.substr(1) : typed;
    if (key == "sign") {
        if (axis_of(state.entry->page.cell)) typed = minus ? number : "-" + number;
    } else if (key == "clear" || (key == "back" && number.empty())) {
        typed.clear();
    } else {
        typed = (minus ? "-" : "") + with_key(number, key);
    }
}

void turn_to(Doing& doing, Angle clockwise) {
    State& state = doing.state;
    if (!at_route(state) || state.entry->page.cell.what != What::turn || !std::isfinite(clockwise.deg)) return;
    const int deg = static_cast<int>(std::lround(wrapped(clockwise).deg));
    state.looks.keypad = false;
    state.looks.typed = std::to_string(deg < 0 ? deg + 360 : deg);
    const auto line = state.entry_sheet ? with_turn_tried(*state.entry, state.entry_sheet->line, Angle{static_cast<double>(deg)}) : std::nullopt;
    state.entry_try = line ? std::make_shared<const Sheet>(bend_sheet(*line)) : nullptr;
}

void pick_cell(Doing& doing, const Cell& cell) {
    if (!line_is_entered(doing.state)) return;
    EntryPage& page = doing.state.entry->page;
    const std::vector<Cell> cells = cells_of(page.job.lines[page.line].route);
    if (!stands_alone(cell) && std::find(cells.begin(), cells.end(), cell) == cells.end()) return;
    page.cell = cell;
    page.point.clear();
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
    clear_typed(doing.state);
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
    clear_typed(doing.state);
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
    clear_typed(doing.state);
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
        case What::x:
        case What::y:
        case What::z: line.route.points.pop_back(); break;
        case What::trim_a:
        case What::trim_b:
        case What::pieces:
        case What::od:
        case What::wall: break;
    }
    line.unfinished = true;
    next.cell = *last;
    change_entry(doing, std::move(next));
    clear_typed(doing.state);
}

namespace {

void put_pieces(Doing& doing) {
    const auto pieces = typed_pieces(doing.state);
    if (!pieces) return;
    EntryPage next = doing.state.entry->page;
    next.job.lines[next.line].quantity = *pieces;
    next.cell = cells_of(next.job.lines[next.line].route).back();
    next.ask = Ask::about;
    change_entry(doing, std::move(next));
    show_page(doing.state);
}

/// The diameter, then the wall of tube that is in no list.
void put_tube(Doing& doing) {
    const auto length = typed_run(doing.state);
    if (!length) return;
    EntryPage next = doing.state.entry->page;
    std::optional<DraftTube>& tube = tube_in_hand(next);
    if (next.cell.what == What::od) {
        if (!takes_diameter(*length)) return;
        const std::string material = tube ? tube->tube.material : "";
        if (tube) tube->tube = {*length, {}, material};
        else tube = DraftTube{{*length, {}, material}};
        next.cell = {What::wall, 0};
        change_entry(doing, std::move(next));
        return clear_typed(doing.state);
    }
    if (!tube || !takes_wall(tube->tube.od, *length)) return;
    tube->tube.wall = *length;
    settle_bender(doing.state.offers, next);
    next.cell = cells_of(next.job.lines[next.line].route).back();
    change_entry(doing, std::move(next));
    go_on(doing, Ask::tube);
}

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

void take_cell_out(Doing& doing) {
    if (!at_route(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    if (!has_value(line.route, next.cell)) return;
    if (next.cell.what == What::move) line.route = without_move(line.route, next.cell.index);
    else if (axis_of(next.cell)) line.route = without_point(line.route, next.cell.index);
    else return;
    line.unfinished = true;
    const std::vector<Cell> cells = cells_of(line.route);
    if (!has_value(line.route, next.cell)) next.cell = cells.back();
    change_entry(doing, std::move(next));
    clear_typed(doing.state);
}

bool with_remedy(const Offers& all, EntryPage& page, const Remedy& remedy) {
    DraftLine& line = page.job.lines[page.line];
    if (const auto* longer = std::get_if<LongerStraight>(&remedy)) {
        auto route = with_longer_run(line.route, longer->straight, longer->by);
        if (!route || !route_from(drawable(*route, Length{1})).ok()) return false;
        line.route = *std::move(route);
    } else if (const auto* out = std::get_if<BendOut>(&remedy)) {
        const bool points = line.route.form == RouteForm::points;
        if (points ? out->bend + 2 >= line.route.points.size() : out->bend >= line.route.bends.size()) return false;
        line.route = points ? without_point(line.route, out->bend + 1) : without_bend(line.route, out->bend);
    } else if (const auto* bender = std::get_if<OtherBender>(&remedy)) {
        if (bender->bender >= all.cards.size()) return false;
        // Of several lines just this one.
        (page.job.lines.size() > 1 ? line.bender : bender_in_hand(page)) = DraftBender{all.cards[bender->bender].id};
    } else if (const auto* wall = std::get_if<OtherWall>(&remedy)) {
        const std::optional<DraftTube> tube = tube_in_hand(page);
        if (!tube) return false;
        std::optional<DraftTube>& changed = page.job.lines.size() > 1 ? line.tube : tube_in_hand(page);
        changed = tube;
        changed->tube.wall = wall->wall;
    } else if (const auto* fitting = std::get_if<OtherFitting>(&remedy)) {
        line.end(fitting->end).fitting = fitting->fitting;
        line.end(fitting->end).allowance.reset();
    }
    return true;
}

void take_remedy(Doing& doing, const Remedy& remedy) {
    State& state = doing.state;
    const auto& offered = state.entry_remedies;
    if (!line_is_entered(state) || std::find(offered.begin(), offered.end(), std::optional(remedy)) == offered.end()) return;
    EntryPage next = state.entry->page;
    if (!with_remedy(state.offers, next, remedy)) return;
    const std::vector<Cell> cells = cells_of(next.job.lines[next.line].route);
    if (!stands_alone(next.cell) && std::find(cells.begin(), cells.end(), next.cell) == cells.end()) next.cell = cells.back();
    change_entry(doing, std::move(next));
    clear_typed(doing.state);
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
    if (state.looks.large_picture) return enlarge_picture(doing);
    if (state.looks.screen == Screen::word) return take_word(doing);
    if (state.looks.screen == Screen::ask) return take_points(doing);
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
    if (cell.what == What::pieces) return put_pieces(doing);
    if (cell.what == What::od || cell.what == What::wall) return put_tube(doing);
    if (axis_of(cell)) return put_coordinate(doing);
    if (cell.what == What::run) {
        if (const auto length = typed_run(state); length && takes(state.entry->line().route, cell, *length)) put(doing, with_length(state.entry->line().route, cell, *length));
        return;
    }
    if (const auto number = typed_number(state.looks.typed)) give_angle(doing, Angle{*number});
}

void back_at_entry(Doing& doing) {
    State& state = doing.state;
    if (!state.entry) return show(state, Screen::shelf);
    if (state.looks.large_picture) {
        state.looks.large_picture = false;
        return;
    }
    if (state.looks.screen == Screen::draft) {
        doing.requests.push_back(ReadShelf{});
        return show(state, Screen::shelf);
    }
    EntryPage& page = state.entry->page;
    if (state.looks.screen == Screen::word || (state.looks.screen == Screen::route && page.cell.what == Cell::What::pieces)) {
        page.ask = Ask::about;
        state.entry->word.reset();
        return show_page(state);
    }
    if (state.looks.screen == Screen::ask && (page.ask == Ask::points_unit || page.ask == Ask::points_read)) {
        page.ask = page.ask == Ask::points_read ? Ask::points_unit : Ask::points_file;
        return show_page(state);
    }
    if (stands_alone(page.cell) && line_is_entered(state)) page.cell = cells_of(state.entry->line().route).back();
    page.ask.reset();
    page.point.clear();
    show(state, Screen::draft);
}

}  // namespace tubewright
