// Corner points: typed one by one, brought in from a table, and written out as one.

#include "state/apply_entry.h"
#include "state/rules.h"
#include "tube/corners.h"
#include "tube/route_edits.h"

namespace tubewright {
namespace {

void nothing_typed(State& state) {
    state.looks.typed.clear();
    state.looks.page = 0;
}

bool has_numbers(const MeasuredRoute& route) { return !route.runs.empty() || !route.moves.empty() || !route.points.empty(); }

void show_question(State& state, Ask ask) {
    state.entry->page.ask = ask;
    show_page(state);
}

std::vector<MeasuredPoint> corners_of(const State& state) {
    const MeasuredRoute& route = state.entry->line().route;
    if (route.form == RouteForm::points) return route.points;
    std::vector<MeasuredPoint> points;
    if (!route_from(route).ok() || !state.entry_sheet || !state.entry_sheet->layout) return points;  // half a wire ends nowhere
    const auto places = corners(state.entry_sheet->layout->part);
    if (!places) return points;
    for (const Eigen::Vector3d& place : *places) points.push_back({Length{place.x()}, Length{place.y()}, Length{place.z()}});
    return points;
}

}  // namespace

void put_coordinate(Doing& doing) {
    const auto length = typed_run(doing.state);
    EntryPage next = doing.state.entry->page;
    MeasuredRoute& route = next.job.lines[next.line].route;
    if (!length || !takes_coordinate(route, next.point, next.cell, *length)) return;
    const std::size_t axis = *axis_of(next.cell);
    if (next.cell.index < route.points.size()) {
        route.points[next.cell.index][axis] = *length;
        next.cell = cell_after(route, next.cell);
    } else if (axis < 2) {
        next.point.resize(axis);
        next.point.push_back(*length);
        next.cell.what = axis == 0 ? Cell::What::y : Cell::What::z;
    } else {
        route.points.push_back({next.point[0], next.point[1], *length});
        next.point.clear();
        next.cell = cells_of(route).back();
    }
    if (next.job != doing.state.entry->page.job) next.job.lines[next.line].unfinished = true;
    change_entry(doing, std::move(next));
    nothing_typed(doing.state);
}

void put_point_in(Doing& doing) {
    if (!at_route(doing.state)) return;
    EntryPage next = doing.state.entry->page;
    DraftLine& line = next.job.lines[next.line];
    if (!axis_of(next.cell) || next.cell.index + 1 >= line.route.points.size()) return;
    line.route = with_point_after(line.route, next.cell.index);
    line.unfinished = true;
    next.cell = {Cell::What::x, next.cell.index + 1};
    change_entry(doing, std::move(next));
    nothing_typed(doing.state);
}

void point_files_are(Doing& doing, const PointFilesAre& told) {
    if (!doing.state.entry) return;
    doing.state.entry->points_in = {told.folder, told.files, "", Unit::inch, {}};
}

bool answer_points(Doing& doing, const std::string& id) {
    State& state = doing.state;
    const Ask ask = *state.entry->page.ask;
    PointsIn& in = state.entry->points_in;
    if (ask == Ask::points_file && id == "again") {
        doing.requests.push_back(ReadPointFiles{});
        return true;
    }
    if (ask == Ask::points_file && id.rfind("file-", 0) == 0) {
        for (const PointsFile& file : in.files) {
            if ("file-" + file.name != id || !file.trouble.empty()) continue;
            in.file = file.name;
            show_question(state, Ask::points_unit);
            break;
        }
        return true;
    }
    if (ask == Ask::points_unit && (id == "in" || id == "mm")) {
        doing.requests.push_back(ReadPoints{in.file, id == "in" ? Unit::inch : Unit::mm});
        return true;
    }
    return false;
}

void points_read(Doing& doing, const PointsRead& read) {
    State& state = doing.state;
    if (!line_is_entered(state) || state.entry->page.ask != Ask::points_unit || state.entry->points_in.file != read.file) return;
    state.entry->points_in.unit = read.unit;
    state.entry->points_in.points = read.points;
    show_question(state, Ask::points_read);
}

void take_points(Doing& doing) {
    State& state = doing.state;
    if (state.entry->page.ask != Ask::points_read || state.entry->points_in.points.size() < 2) return;
    EntryPage next = state.entry->page;
    if (has_numbers(next.job.lines[next.line].route)) {  // nothing that was entered is written over
        next.job.lines.push_back(fresh_line(next.job));
        next.line = next.job.lines.size() - 1;
    }
    DraftLine& line = next.job.lines[next.line];
    line.route = in_form(line.route, {RouteForm::points, TapeEdge::centre});
    line.route.points = state.entry->points_in.points;
    line.unfinished = true;
    next.point.clear();
    next.cell = cells_of(line.route).back();
    next.ask = open_question_of(next.job, line);
    state.entry->in_a_row = next.ask.has_value();
    change_entry(doing, std::move(next));
    if (state.entry->page.ask) show_page(state);
    else show(state, Screen::draft);
}

bool has_corners(const State& state) { return line_is_entered(state) && corners_of(state).size() > 1; }

void write_points(Doing& doing) {
    const State& state = doing.state;
    if (!has_corners(state)) return;
    doing.requests.push_back(WritePointsFile{state.entry->page.job.name + " " + state.entry->line().name, state.entry->page.job.unit, corners_of(state)});
}

}  // namespace tubewright
