#include "state/entry.h"

#include <algorithm>
#include <cmath>

#include "tube/route_edits.h"
#include "tube/route_limits.h"

namespace tubewright {
namespace {

using What = Cell::What;

/// How long a leg is drawn that is known to come but is not measured yet.
constexpr Length stub{60};

const std::optional<DraftTube>& tube_of(const Draft& job, const DraftLine& line) { return line.tube ? line.tube : job.tube; }
const std::optional<DraftBender>& bender_of(const Draft& job, const DraftLine& line) { return line.bender ? line.bender : job.bender; }

/// The x- key that a line's file keeps it by.
const KeptKey flat_key{"\"x-lies-flat\"", "true"};

bool goes_along_runs(RouteForm form) { return form == RouteForm::legs || form == RouteForm::straights; }

bool length_fits(RouteForm form, Length length) {
    return std::isfinite(length.mm) && length.mm <= limits::longest_run && (length.mm > 0 || (form == RouteForm::straights && length.mm == 0));
}

}  // namespace

std::vector<Cell> cells_of(const MeasuredRoute& route) {
    std::vector<Cell> cells;
    if (route.form == RouteForm::points) {
        for (std::size_t i = 0; i < route.points.size(); ++i)
            for (const What axis : {What::x, What::y, What::z}) cells.push_back({axis, i});
        cells.push_back({What::x, route.points.size()});
        return cells;
    }
    if (!goes_along_runs(route.form)) {
        for (std::size_t i = 0; i <= route.moves.size(); ++i) cells.push_back({What::move, i});
        return cells;
    }
    for (std::size_t i = 0;; ++i) {
        cells.push_back({What::run, i});
        if (i >= route.runs.size()) return cells;
        cells.push_back({What::angle, i});
        if (i >= route.bends.size()) return cells;
        if (i == 0) continue;
        cells.push_back({What::turn, i});
        if (!route.bends[i].rotation) return cells;
    }
}

bool has_value(const MeasuredRoute& route, const Cell& cell) {
    switch (cell.what) {
        case What::run: return cell.index < route.runs.size();
        case What::angle: return cell.index < route.bends.size();
        case What::turn: return cell.index < route.bends.size() && route.bends[cell.index].rotation.has_value();
        case What::move: return cell.index < route.moves.size() && !route.moves[cell.index].along.empty();
        case What::x:
        case What::y:
        case What::z: return cell.index < route.points.size();
        case What::trim_a:
        case What::trim_b:
        case What::pieces:
        case What::od:
        case What::wall: return false;
    }
    return false;
}

bool stands_alone(const Cell& cell) {
    return trimmed_end(cell) || cell.what == What::pieces || cell.what == What::od || cell.what == What::wall;
}

std::optional<std::size_t> axis_of(const Cell& cell) {
    if (cell.what == What::x) return 0;
    if (cell.what == What::y) return 1;
    if (cell.what == What::z) return 2;
    return std::nullopt;
}

std::optional<End> trimmed_end(const Cell& cell) {
    if (cell.what == What::trim_a) return End::A;
    if (cell.what == What::trim_b) return End::B;
    return std::nullopt;
}

bool looks_flat(const MeasuredRoute& route) { return route.bends.size() > 1 && is_flat(route); }

Cell cell_after(const MeasuredRoute& route, const Cell& cell) {
    const std::vector<Cell> cells = cells_of(route);
    const auto here = std::find(cells.begin(), cells.end(), cell);
    return here == cells.end() || here + 1 == cells.end() ? cells.back() : *(here + 1);
}

bool takes(const MeasuredRoute& route, const Cell& cell, Length length) {
    return cell.what == What::run && cell.index <= route.runs.size() && cell.index <= limits::most_bends && length_fits(route.form, length);
}

bool takes(const MeasuredRoute& route, const Cell& cell, Angle angle) {
    if (!std::isfinite(angle.deg)) return false;
    if (cell.what == What::turn) return cell.index > 0 && cell.index < route.bends.size() && std::abs(angle.deg) <= limits::most_rotation;
    if (cell.what != What::angle || cell.index > route.bends.size() || cell.index >= limits::most_bends) return false;
    return angle.deg > 0 && (route.form == RouteForm::straights ? angle.deg < 360 : angle.deg <= 180);
}

bool takes_coordinate(const MeasuredRoute& route, const std::vector<Length>& next, const Cell& cell, Length length) {
    const auto axis = axis_of(cell);
    if (!axis || !std::isfinite(length.mm) || std::abs(length.mm) > limits::longest_run) return false;
    MeasuredRoute then = route;
    if (cell.index == route.points.size()) {
        if (route.points.size() >= limits::most_bends + 2 || next.size() < *axis) return false;
        if (*axis < 2) return true;  // no whole point yet that could lie on another
        then.points.push_back({next[0], next[1], length});
    } else if (cell.index < route.points.size()) {
        then.points[cell.index][*axis] = length;
    } else {
        return false;
    }
    const auto trouble = route_from(then);
    return trouble.ok() || !std::holds_alternative<SamePoint>(trouble.trouble());
}

MeasuredRoute with_length(MeasuredRoute route, const Cell& cell, Length length) {
    if (!takes(route, cell, length)) return route;
    if (cell.index == route.runs.size()) route.runs.push_back(length);
    else route.runs[cell.index] = length;
    return route;
}

MeasuredRoute with_angle(MeasuredRoute route, const Cell& cell, Angle angle) {
    if (!takes(route, cell, angle)) return route;
    if (cell.what == What::turn) route.bends[cell.index].rotation = wrapped(angle);
    else if (cell.index == route.bends.size()) route.bends.push_back({angle});
    else route.bends[cell.index].angle = angle;
    return route;
}

MeasuredRoute with_way(MeasuredRoute route, const Cell& cell, MoveWay way, Length length) {
    if (cell.what != What::move || cell.index > route.moves.size() || cell.index > limits::most_bends) return route;
    if (!std::isfinite(length.mm) || length.mm < 0 || length.mm > limits::longest_run) return route;
    if (cell.index == route.moves.size()) route.moves.emplace_back();
    std::map<MoveWay, Length>& along = route.moves[cell.index].along;
    along.erase(against(way));
    if (length.mm > 0) along[way] = length;
    else along.erase(way);
    if (along.empty() && cell.index + 1 == route.moves.size()) route.moves.pop_back();
    return route;
}

bool keeps_numbers(const MeasuredRoute& route, const FormChoice& choice) {
    if (route.form == choice.form) return true;
    if (goes_along_runs(route.form) && goes_along_runs(choice.form)) return true;
    return route.runs.empty() && route.moves.empty() && route.points.empty();
}

MeasuredRoute in_form(MeasuredRoute route, const FormChoice& choice) {
    if (!keeps_numbers(route, choice)) {
        MeasuredRoute fresh;
        fresh.kept = route.kept;
        route = fresh;
    }
    route.form = choice.form;
    route.measured_to = choice.form == RouteForm::legs ? choice.measured_to : TapeEdge::centre;
    return route;
}

bool takes_diameter(Length od) { return od.mm >= limits::least_od && od.mm <= limits::most_od; }
bool takes_wall(Length od, Length wall) { return wall.mm >= limits::least_wall && wall.mm < od.mm / 2; }
bool is_whole(const DraftTube& tube) { return !tube.tube.material.empty() && takes_wall(tube.tube.od, tube.tube.wall); }

bool said_flat(const DraftLine& line) { return std::find(line.kept.begin(), line.kept.end(), flat_key) != line.kept.end(); }
void say_flat(DraftLine& line, bool flat) {
    std::erase_if(line.kept, [](const KeptKey& key) { return key.key == flat_key.key; });
    if (flat) line.kept.push_back(flat_key);
}

std::optional<Ask> open_question_of(const Draft& job, const DraftLine& line) {
    if (!tube_of(job, line) || !takes_wall(tube_of(job, line)->tube.od, tube_of(job, line)->tube.wall)) return Ask::tube;
    if (tube_of(job, line)->tube.material.empty()) return Ask::material;
    if (!bender_of(job, line)) return Ask::bender;
    if (line.a.fitting.empty() || line.b.fitting.empty()) return Ask::fittings;
    return std::nullopt;
}

std::vector<BenderOffer> benders_for(const Offers& offers, const Draft& job, const DraftLine& line) {
    std::vector<BenderOffer> suited;
    const std::optional<DraftTube>& tube = tube_of(job, line);
    for (const BenderOffer& bender : offers.benders)
        if (!tube || std::abs(bender.od.mm - tube->tube.od.mm) < 0.02) suited.push_back(bender);
    return suited.empty() ? offers.benders : suited;
}

std::optional<Draft> shown_part(const Entry& entry) {
    if (entry.page.line >= entry.page.job.lines.size() || open_question_of(entry.page.job, entry.line())) return std::nullopt;
    Draft part = entry.page.job;
    part.lines = {entry.line()};
    MeasuredRoute& route = part.lines.front().route;
    route = drawable(route, stub);
    if (!route_from(route).ok()) return std::nullopt;
    return part;
}

std::optional<Line> with_turn_tried(const Entry& entry, const Line& worked_out, Angle turn) {
    const MeasuredRoute& route = entry.line().route;
    if (entry.page.cell.what != What::turn || !takes(route, entry.page.cell, turn)) return std::nullopt;
    const auto tried = route_from(drawable(with_angle(route, entry.page.cell, turn), stub));
    if (!tried.ok()) return std::nullopt;
    Line line = worked_out;
    line.route = tried.value();
    line.bend_notes.assign(line.route.bends.size(), "");
    return line;
}

std::string new_line_name(const Draft& job) {
    for (std::size_t number = job.lines.size() + 1;; ++number) {
        const std::string name = "line " + std::to_string(number);
        if (std::none_of(job.lines.begin(), job.lines.end(), [&](const DraftLine& line) { return line.name == name; })) return name;
    }
}

}  // namespace tubewright
