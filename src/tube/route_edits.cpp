#include "tube/route_edits.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// What the rotations add up to between two bends, as it is written: none where it is the first bend's.
std::optional<Angle> turned_on(const std::optional<Angle>& first, const std::optional<Angle>& second) {
    if (!first || !second) return second;
    return wrapped(*first + *second);
}

bool goes_somewhere(const MeasuredMove& move) {
    return std::any_of(move.along.begin(), move.along.end(), [](const auto& way) { return way.second.mm > 0; });
}

Eigen::Vector3d place(const MeasuredPoint& point) { return {point[0].mm, point[1].mm, point[2].mm}; }

}  // namespace

MeasuredRoute mirrored(MeasuredRoute route) {
    for (MeasuredBend& bend : route.bends)
        if (bend.rotation) bend.rotation = wrapped(-*bend.rotation);
    for (MeasuredPoint& point : route.points) point[1] = -point[1];
    for (MeasuredMove& move : route.moves) {
        std::map<MoveWay, Length> along;
        for (const auto& [way, length] : move.along) along[way == MoveWay::left || way == MoveWay::right ? against(way) : way] = length;
        move.along = std::move(along);
    }
    return route;
}

MeasuredRoute reversed(MeasuredRoute route) {
    std::reverse(route.runs.begin(), route.runs.end());
    // The turn between two neighbours is the same number from either side, but it is written at the later one.
    for (std::size_t i = 0; i + 1 < route.bends.size(); ++i) route.bends[i].rotation = route.bends[i + 1].rotation;
    if (!route.bends.empty()) route.bends.back().rotation.reset();
    std::reverse(route.bends.begin(), route.bends.end());
    std::reverse(route.points.begin(), route.points.end());
    std::reverse(route.moves.begin(), route.moves.end());
    for (MeasuredMove& move : route.moves) {
        std::map<MoveWay, Length> along;
        for (const auto& [way, length] : move.along) along[against(way)] = length;
        move.along = std::move(along);
    }
    return route;
}

MeasuredRoute with_bend_in(MeasuredRoute route, std::size_t run, Length before) {
    assert(run < route.runs.size() && before.mm > 0 && before < route.runs[run]);
    const Length after = route.runs[run] - before;
    route.runs[run] = before;
    route.runs.insert(route.runs.begin() + static_cast<std::ptrdiff_t>(run) + 1, after);
    if (run == 0 && !route.bends.empty()) route.bends.front().rotation = Angle{};
    MeasuredBend straight;
    if (run > 0) straight.rotation = Angle{};
    route.bends.insert(route.bends.begin() + static_cast<std::ptrdiff_t>(run), straight);
    return route;
}

MeasuredRoute without_bend(MeasuredRoute route, std::size_t bend) {
    assert(bend < route.bends.size());
    if (bend + 1 < route.runs.size()) {
        route.runs[bend] += route.runs[bend + 1];
        route.runs.erase(route.runs.begin() + static_cast<std::ptrdiff_t>(bend) + 1);
    }
    if (bend + 1 < route.bends.size()) {
        std::optional<Angle>& next = route.bends[bend + 1].rotation;
        next = bend == 0 ? std::nullopt : turned_on(route.bends[bend].rotation, next);
    }
    route.bends.erase(route.bends.begin() + static_cast<std::ptrdiff_t>(bend));
    return route;
}

namespace {

void make_longer(MeasuredMove& move, Length by) {
    if (move.along.size() == 1) {
        move.along.begin()->second += by;  // to the last digit as it is said
        return;
    }
    double squares = 0;
    for (const auto& [way, length] : move.along) squares += length.mm * length.mm;
    const double whole = std::sqrt(squares), share = (whole + by.mm) / whole;
    for (auto& [way, length] : move.along) length = share * length;
}

}  // namespace

std::optional<MeasuredRoute> with_longer_run(MeasuredRoute route, std::size_t run, Length by) {
    switch (route.form) {
        case RouteForm::legs:
        case RouteForm::straights:
            if (run >= route.runs.size()) return std::nullopt;
            route.runs[run] += by;
            return route;
        case RouteForm::points: {
            if (run + 1 >= route.points.size()) return std::nullopt;
            const Eigen::Vector3d from = place(route.points[run]), step = by.mm * (place(route.points[run + 1]) - from).normalized();
            for (std::size_t i = run + 1; i < route.points.size(); ++i)
                for (std::size_t axis = 0; axis < 3; ++axis) route.points[i][axis] += Length{step[static_cast<Eigen::Index>(axis)]};
            return route;
        }
        case RouteForm::moves: {
            const auto whole = route_from(route);
            if (!whole.ok() || whole.value().runs.size() != route.moves.size() || run >= route.moves.size()) return std::nullopt;
            make_longer(route.moves[run], by);
            return route;
        }
    }
    return std::nullopt;
}

MeasuredRoute with_point_after(MeasuredRoute route, std::size_t point) {
    assert(point + 1 < route.points.size());
    MeasuredPoint between;
    for (std::size_t axis = 0; axis < 3; ++axis) between[axis] = 0.5 * (route.points[point][axis] + route.points[point + 1][axis]);
    route.points.insert(route.points.begin() + static_cast<std::ptrdiff_t>(point) + 1, between);
    return route;
}

MeasuredRoute without_point(MeasuredRoute route, std::size_t point) {
    assert(point < route.points.size());
    route.points.erase(route.points.begin() + static_cast<std::ptrdiff_t>(point));
    return route;
}

MeasuredRoute without_move(MeasuredRoute route, std::size_t move) {
    assert(move < route.moves.size());
    route.moves.erase(route.moves.begin() + static_cast<std::ptrdiff_t>(move));
    return route;
}

MeasuredRoute drawable(const MeasuredRoute& route, Length stub) {
    MeasuredRoute seen = route;
    seen.moves.erase(std::find_if_not(seen.moves.begin(), seen.moves.end(), goes_somewhere), seen.moves.end());
    std::size_t bends = 0;
    while (bends < seen.bends.size() && (bends == 0 || seen.bends[bends].rotation)) ++bends;
    if (seen.runs.size() == bends && bends > 0) seen.runs.push_back(stub);
    seen.runs.resize(std::min(seen.runs.size(), bends + 1));
    seen.bends.resize(seen.runs.empty() ? 0 : seen.runs.size() - 1);
    return seen;
}

bool is_flat(const MeasuredRoute& route) {
    return std::all_of(route.bends.begin(), route.bends.end(), [](const MeasuredBend& bend) {
        const double turn = std::abs(wrapped(bend.rotation.value_or(Angle{})).deg);
        return turn < tolerance::same_direction.deg || turn > 180 - tolerance::same_direction.deg;
    });
}

}  // namespace tubewright
