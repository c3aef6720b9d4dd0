#include "bench/slip_remedy.h"

#include <cmath>

#include "tube/route_edits.h"

namespace tubewright {
namespace {

/// Of legs or straights: the numbers that differ, each in its place.
MeasuredRoute with_numbers_of(MeasuredRoute route, const Route& meant) {
    route.measured_to = meant.measured_to;
    route.runs = meant.runs;
    for (std::size_t i = 0; i < route.bends.size(); ++i) {
        route.bends[i].angle = meant.bends[i].angle;
        if (i > 0) route.bends[i].rotation = meant.bends[i].rotation;
    }
    return route;
}

std::optional<MeasuredRoute> with_moves_changed(MeasuredRoute route, const Slip& slip) {
    if (!slip.leg || route.moves.size() != slip.meant.runs.size()) return std::nullopt;  // some were joined to one leg
    MeasuredMove& move = route.moves[*slip.leg];
    switch (slip.kind) {
        case SlipKind::move_reversed: {
            std::map<MoveWay, Length> along;
            for (const auto& [way, length] : move.along) along[against(way)] = length;
            move.along = std::move(along);
            return route;
        }
        case SlipKind::moves_swapped: std::swap(move, route.moves[*slip.leg + 1]); return route;
        case SlipKind::length:
            if (move.along.size() != 1) return std::nullopt;
            move.along.begin()->second = slip.meant.runs[*slip.leg];
            return route;
        default: return std::nullopt;
    }
}

std::optional<MeasuredRoute> with_points_changed(MeasuredRoute route, const Slip& slip) {
    if (!slip.leg || route.points.size() != slip.meant.runs.size() + 1) return std::nullopt;
    std::vector<MeasuredPoint>& points = route.points;
    const std::size_t near = *slip.leg, far = near + 1;
    MeasuredPoint shift{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const Length along = points[far][axis] - points[near][axis];
        if (slip.kind == SlipKind::move_reversed) shift[axis] = -2 * along;
        else if (slip.kind == SlipKind::moves_swapped) shift[axis] = points[far + 1][axis] - points[far][axis] - along;
        else if (slip.kind != SlipKind::length) return std::nullopt;
    }
    if (slip.kind == SlipKind::length) {
        const auto& a = points[near];
        const auto& b = points[far];
        const double was = std::hypot(b[0].mm - a[0].mm, b[1].mm - a[1].mm, b[2].mm - a[2].mm);
        for (std::size_t axis = 0; axis < 3; ++axis) shift[axis] = (slip.meant.runs[near].mm / was - 1) * (b[axis] - a[axis]);
    }
    const std::size_t end = slip.kind == SlipKind::moves_swapped ? far + 1 : points.size();
    for (std::size_t i = far; i < end; ++i)
        for (std::size_t axis = 0; axis < 3; ++axis) points[i][axis] += shift[axis];
    return route;
}

std::optional<MeasuredRoute> changed(const MeasuredRoute& entered, const Slip& slip) {
    if (slip.kind == SlipKind::mirrored) return mirrored(entered);
    if (slip.kind == SlipKind::ends_swapped) return reversed(entered);
    switch (entered.form) {
        case RouteForm::legs:
        case RouteForm::straights: return with_numbers_of(entered, slip.meant);
        case RouteForm::moves: return with_moves_changed(entered, slip);
        case RouteForm::points: return with_points_changed(entered, slip);
    }
    return std::nullopt;
}

/// Far below what a tape shows; moves and points go through sines and back.
constexpr Length same_place{0.01};

bool same_line(const Route& one, const Route& other) {
    if (one.bends.size() != other.bends.size() || one.measured_to != other.measured_to) return false;
    const Length od{}, radius{10};  // any will do, if it is the same
    const WireShape a = shape_of({one, od, radius}, TapeEdge::centre), b = shape_of({other, od, radius}, TapeEdge::centre);
    for (std::size_t i = 0; i < a.points.size(); ++i)
        if ((a.points[i] - b.points[i]).norm() > same_place.mm) return false;
    return true;
}

}  // namespace

std::optional<MeasuredRoute> without_slip(const MeasuredRoute& entered, const Slip& slip) {
    if ((entered.form == RouteForm::legs || entered.form == RouteForm::straights) && entered.bends.size() != slip.meant.bends.size()) return std::nullopt;
    std::optional<MeasuredRoute> route = changed(entered, slip);
    if (!route) return std::nullopt;
    const auto made = route_from(*route);
    if (!made.ok() || !same_line(made.value(), slip.meant)) return std::nullopt;
    return route;
}

}  // namespace tubewright
