#include "tube/measured.h"

#include <cmath>

#include "base/tolerance.h"
#include "tube/route_limits.h"

namespace tubewright {
namespace {

using Trouble = std::optional<RouteTrouble>;

// Written so that what is no number at all lies outside too.
bool within(double value, double least, double most) { return value >= least && value <= most; }

Trouble count_trouble(RouteList list, std::size_t given, std::size_t least, std::size_t most) {
    if (given >= least && given <= most) return std::nullopt;
    return CountOutOfRange{list, given, least, most};
}

Trouble run_trouble(const MeasuredRoute& route, std::size_t i) {
    const Length run = route.runs[i];
    const bool something = run.mm > 0 || route.form == RouteForm::straights;
    if (something && within(run.mm, 0, limits::longest_run)) return std::nullopt;
    return RunOutOfRange{i, run};
}

Trouble bend_trouble(const MeasuredRoute& route, std::size_t i) {
    const MeasuredBend& bend = route.bends[i];
    // A corner turns by 180 at most; a bend between straights may go round further.
    const bool turns = route.form == RouteForm::legs ? within(bend.angle.deg, 0, 180) : within(bend.angle.deg, 0, 360) && bend.angle.deg < 360;
    if (!turns) return AngleOutOfRange{i, bend.angle};
    if (!bend.rotation) return i == 0 ? Trouble() : RotationMissing{i};
    if (!within(bend.rotation->deg, -limits::most_rotation, limits::most_rotation)) return RotationOutOfRange{i, *bend.rotation};
    if (i == 0 && bend.rotation->deg != 0) return FirstBendTurned{*bend.rotation};
    return std::nullopt;
}

Trouble runs_and_bends_trouble(const MeasuredRoute& route) {
    if (const Trouble count = count_trouble(RouteList::runs, route.runs.size(), 1, limits::most_bends + 1)) return count;
    for (std::size_t i = 0; i < route.runs.size(); ++i)
        if (const Trouble run = run_trouble(route, i)) return run;
    if (route.bends.size() + 1 != route.runs.size()) return RunsAndBendsDisagree{route.runs.size(), route.bends.size()};
    for (std::size_t i = 0; i < route.bends.size(); ++i)
        if (const Trouble bend = bend_trouble(route, i)) return bend;
    return std::nullopt;
}

Eigen::Vector3d in_mm(const MeasuredPoint& point) { return {point[0].mm, point[1].mm, point[2].mm}; }

Trouble points_trouble(const MeasuredRoute& route) {
    const std::vector<MeasuredPoint>& points = route.points;
    if (const Trouble count = count_trouble(RouteList::points, points.size(), 2, limits::most_bends + 2)) return count;
    for (std::size_t i = 0; i < points.size(); ++i) {
        for (std::size_t axis = 0; axis < 3; ++axis)
            if (!within(points[i][axis].mm, -limits::longest_run, limits::longest_run)) return CoordinateOutOfRange{i, axis, points[i][axis]};
        if (i > 0 && (in_mm(points[i]) - in_mm(points[i - 1])).norm() < limits::points_apart) return SamePoint{i};
    }
    return std::nullopt;
}

Eigen::Vector3d direction(MoveWay way) {
    switch (way) {
        case MoveWay::forward: return Eigen::Vector3d::UnitX();
        case MoveWay::back: return -Eigen::Vector3d::UnitX();
        case MoveWay::left: return Eigen::Vector3d::UnitY();
        case MoveWay::right: return -Eigen::Vector3d::UnitY();
        case MoveWay::up: return Eigen::Vector3d::UnitZ();
        case MoveWay::down: return -Eigen::Vector3d::UnitZ();
    }
    return Eigen::Vector3d::Zero();
}

Eigen::Vector3d in_mm(const MeasuredMove& move) {
    Eigen::Vector3d sum = Eigen::Vector3d::Zero();
    for (const auto& [way, length] : move.along) sum += length.mm * direction(way);
    return sum;
}

Trouble move_trouble(const MeasuredMove& move, std::size_t i) {
    for (const auto& [way, length] : move.along) {
        if (!within(length.mm, 0, limits::longest_run)) return MoveOutOfRange{i, way, length};
        if (way < against(way) && move.along.contains(against(way))) return GoesBothWays{i, way, against(way)};
    }
    if (in_mm(move).norm() < limits::points_apart) return GoesNowhere{i};
    return std::nullopt;
}

Trouble moves_trouble(const MeasuredRoute& route) {
    if (const Trouble count = count_trouble(RouteList::moves, route.moves.size(), 1, limits::most_bends + 1)) return count;
    for (std::size_t i = 0; i < route.moves.size(); ++i)
        if (const Trouble move = move_trouble(route.moves[i], i)) return move;
    return std::nullopt;
}

bool same_direction(const Eigen::Vector3d& a, const Eigen::Vector3d& b) {
    return (a.normalized() - b.normalized()).norm() < tolerance::no_bend.rad();  // the chord of a small angle is the angle
}

Route route_of_runs(const MeasuredRoute& measured) {
    Route route{measured.form, measured.form == RouteForm::legs ? measured.measured_to : TapeEdge::centre, measured.runs, {}};
    for (const MeasuredBend& bend : measured.bends) route.bends.push_back({bend.angle, bend.rotation.value_or(Angle{})});
    return route;
}

Route route_of_points(const MeasuredRoute& measured) {
    std::vector<Eigen::Vector3d> points;
    for (const MeasuredPoint& point : measured.points) points.push_back(in_mm(point));
    return route_through(points, RouteForm::points);
}

Route route_of_moves(const MeasuredRoute& measured) {
    std::vector<Eigen::Vector3d> moves;
    for (const MeasuredMove& given : measured.moves) {
        const Eigen::Vector3d move = in_mm(given);
        if (!moves.empty() && same_direction(moves.back(), move)) moves.back() += move;
        else moves.push_back(move);
    }
    std::vector<Eigen::Vector3d> points{Eigen::Vector3d::Zero()};
    for (const Eigen::Vector3d& move : moves) points.push_back(points.back() + move);
    return route_through(points, RouteForm::moves);
}

}  // namespace

MoveWay against(MoveWay way) {
    switch (way) {
        case MoveWay::forward: return MoveWay::back;
        case MoveWay::back: return MoveWay::forward;
        case MoveWay::left: return MoveWay::right;
        case MoveWay::right: return MoveWay::left;
        case MoveWay::up: return MoveWay::down;
        case MoveWay::down: return MoveWay::up;
    }
    return way;
}

Result<Route, RouteTrouble> route_from(const MeasuredRoute& measured) {
    const Trouble trouble = measured.form == RouteForm::points  ? points_trouble(measured)
                            : measured.form == RouteForm::moves ? moves_trouble(measured)
                                                                : runs_and_bends_trouble(measured);
    if (trouble) return *trouble;
    switch (measured.form) {
        case RouteForm::points: return route_of_points(measured);
        case RouteForm::moves: return route_of_moves(measured);
        default: return route_of_runs(measured);
    }
}

std::vector<std::string> bend_notes(const MeasuredRoute& measured, const Route& route) {
    std::vector<std::string> notes(route.bends.size());
    for (std::size_t i = 0; i < measured.bends.size() && i < notes.size(); ++i) notes[i] = measured.bends[i].note;
    return notes;
}

}  // namespace tubewright
