#include "worked/routes.h"

#include <cmath>
#include <numbers>

namespace bench_world {
namespace {

using Eigen::AngleAxisd;
using Eigen::Vector3d;
using nlohmann::json;

constexpr double degree = std::numbers::pi / 180;

double between(std::mt19937& dice, double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice); }
int whole(std::mt19937& dice, int low, int high) { return std::uniform_int_distribution<int>(low, high)(dice); }

struct Setting {
    double unit;      // mm in one unit of the file
    double od, radius;  // mm
};

json card(std::mt19937& dice, const Setting& setting) {
    json marks = json::array();
    for (int i = whole(dice, 1, 4); i > 0; --i)
        marks.push_back({{"name", "m" + std::to_string(i)}, {"offset", between(dice, -1.5, 2.5) * setting.radius / setting.unit}});
    return {{"format", "tubewright-bender"}, {"version", 1}, {"id", "any"}, {"name", "any"}, {"units", setting.unit == 1 ? "mm" : "in"},
            {"tube_od", setting.od / setting.unit}, {"radius", setting.radius / setting.unit}, {"max_angle", 360},
            {"stretch", whole(dice, 0, 1) ? between(dice, 0, 0.03) : 0.0}, {"marks", marks}, {"hook_straight", 0.1}, {"lever_straight", 0.1},
            {"set_up", {{"hook", whole(dice, 0, 1) ? "left" : "right"}, {"swing", std::vector<const char*>{"away", "toward", "up", "down"}[static_cast<std::size_t>(whole(dice, 0, 3))]}}},
            {"body", json::array()}};
}

json move_of(const Vector3d& step, double unit) {
    json move = json::object();
    const char* names[3][2]{{"forward", "back"}, {"left", "right"}, {"up", "down"}};
    for (int axis = 0; axis < 3; ++axis)
        if (step[axis] != 0) move[names[axis][step[axis] < 0]] = std::abs(step[axis]) / unit;
    return move;
}

/// A walk on a grid whose corners turn by no less than 1 and no more than 160 degrees.
std::vector<Vector3d> grid_walk(std::mt19937& dice, int bends, double least) {
    std::vector<Vector3d> points{{0, 0, 0}};
    Vector3d last(0, 0, 0);
    while (points.size() < static_cast<std::size_t>(bends) + 2) {
        Vector3d step(whole(dice, -3, 3), whole(dice, -3, 3), whole(dice, -3, 3));
        if (step.norm() < 0.5) continue;
        step *= least / step.norm() * between(dice, 1, 2);
        if (last.norm() > 0) {
            const double turn = std::atan2(last.cross(step).norm(), last.dot(step)) / degree;
            if (turn < 1 || turn > 160) continue;
        }
        last = step;
        points.push_back(points.back() + step);
    }
    return points;
}

void fill_moves(std::mt19937& dice, Wanted& wanted, json& route, const Setting& setting, int bends) {
    wanted.corners_mm = grid_walk(dice, bends, 14 * setting.radius);
    route["form"] = "moves";
    for (std::size_t i = 1; i < wanted.corners_mm.size(); ++i) {
        const Vector3d step = wanted.corners_mm[i] - wanted.corners_mm[i - 1];
        // Now and then as two moves in one direction, which join.
        if (whole(dice, 0, 4) == 0) route["moves"].push_back(move_of(step * 0.5, setting.unit)), route["moves"].push_back(move_of(step * 0.5, setting.unit));
        else route["moves"].push_back(move_of(step, setting.unit));
    }
    const Vector3d first = (wanted.corners_mm[1] - wanted.corners_mm[0]).normalized(), second = wanted.corners_mm[2] - wanted.corners_mm[1];
    wanted.ink = (second - second.dot(first) * first).normalized();
}

void fill_legs(std::mt19937& dice, Wanted& wanted, json& route, const Setting& setting, const std::vector<double>& legs, bool as_points) {
    wanted.corners_mm = corners(legs, wanted.angles_deg, wanted.rotations_deg, wanted.ink);
    if (as_points) {
        route["form"] = "points";
        for (const Vector3d& point : wanted.corners_mm) route["points"].push_back({point.x() / setting.unit, point.y() / setting.unit, point.z() / setting.unit});
        return;
    }
    route["form"] = "legs";
    const char* edges[]{"centre", "outside", "inside"};
    const int edge = whole(dice, 0, 2);
    route["measured_to"] = edges[edge];
    for (std::size_t i = 0; i < legs.size(); ++i) {
        double read = legs[i];
        for (const std::size_t corner : {i, i + 1}) {
            if (corner == 0 || corner > wanted.angles_deg.size()) continue;
            const double shift = setting.od / 2 * std::tan(wanted.angles_deg[corner - 1] / 2 * degree);
            if (edge == 1) read += shift;
            if (edge == 2) read -= shift;
        }
        route["legs"].push_back(read / setting.unit);
    }
}

void fill_turns(std::mt19937& dice, Wanted& wanted, json& route, const Setting& setting, int bends) {
    const int form = whole(dice, 0, 2);
    for (int i = 0; i < bends; ++i) {
        wanted.angles_deg.push_back(form != 2 || whole(dice, 0, 2) > 0 ? between(dice, 1, 160) : whole(dice, 0, 1) ? 180.0 : between(dice, 160, 355));
        const double planes[]{0, 180, 90, -90, between(dice, -179, 179)};
        wanted.rotations_deg.push_back(i == 0 ? 0.0 : planes[whole(dice, 0, 4)]);
    }
    std::vector<double> legs;
    for (int i = 0; i <= bends; ++i) {
        double leg = between(dice, 0.5, 20) * setting.radius;
        if (form != 2 && i > 0) leg += 1.15 * setting.radius * std::tan(wanted.angles_deg[static_cast<std::size_t>(i - 1)] / 2 * degree);
        if (form != 2 && i < bends) leg += 1.15 * setting.radius * std::tan(wanted.angles_deg[static_cast<std::size_t>(i)] / 2 * degree);
        legs.push_back(leg);
    }
    if (form != 1)
        for (int i = 0; i < bends; ++i) {
            json bend{{"angle", wanted.angles_deg[static_cast<std::size_t>(i)]}};
            if (i > 0) bend["rotation"] = wanted.rotations_deg[static_cast<std::size_t>(i)];
            route["bends"].push_back(bend);
        }
    if (form == 2) {
        route["form"] = "straights";
        wanted.straights_mm = legs;
        for (const double leg : legs) route["straights"].push_back(leg / setting.unit);
        return;
    }
    fill_legs(dice, wanted, route, setting, legs, form == 1);
}

}  // namespace

std::vector<Vector3d> corners(const std::vector<double>& legs, const std::vector<double>& angles, const std::vector<double>& rotations, Vector3d& ink) {
    const Vector3d start(3, -7, 11);
    Vector3d along = Vector3d(0.3, 0.9, -0.2).normalized();
    Vector3d normal = along.cross(Vector3d(0.1, 0.2, 1)).normalized();
    ink = normal.cross(along);
    std::vector<Vector3d> points{start, start + legs[0] * along};
    for (std::size_t i = 0; i < angles.size(); ++i) {
        if (i > 0) normal = AngleAxisd(rotations[i] * degree, along) * normal;
        along = AngleAxisd(angles[i] * degree, normal) * along;
        points.push_back(points.back() + legs[i + 1] * along);
    }
    return points;
}

Wanted random_job(std::mt19937& dice) {
    Wanted wanted;
    const double ods[]{4.7625, 6.35, 9.525, 12.7};
    Setting setting{whole(dice, 0, 1) ? 25.4 : 1.0, ods[whole(dice, 0, 3)], 0};
    setting.radius = setting.od * between(dice, 2, 6);
    const int bends = whole(dice, 1, 12);
    json route;
    if (whole(dice, 0, 3) == 0) fill_moves(dice, wanted, route, setting, bends);
    else fill_turns(dice, wanted, route, setting, bends);
    const auto end = [&] {
        return json{{"fitting", "none"}, {"allowance", between(dice, 0, 5) / setting.unit}, {"trim", between(dice, 0, 30) / setting.unit}};
    };
    wanted.job = {{"format", "tubewright-job"}, {"version", 1}, {"name", "any"}, {"service", "other"}, {"units", setting.unit == 1 ? "mm" : "in"},
                  {"tube", {{"od", setting.od / setting.unit}, {"wall", setting.od * 0.12 / setting.unit}, {"material", "stainless-304"}}},
                  {"bender", card(dice, setting)},
                  {"lines", json::array({{{"name", "any"}, {"ends", {{"A", end()}, {"B", end()}}}, {"route", route}}})}};
    return wanted;
}

std::vector<std::pair<Vector3d, Vector3d>> walked(const Wanted& wanted, double radius) {
    Vector3d at(0, 0, 0), along(1, 0, 0), normal(0, 0, 1);
    std::vector<std::pair<Vector3d, Vector3d>> pieces;
    for (std::size_t i = 0; i < wanted.straights_mm.size(); ++i) {
        pieces.emplace_back(at, at + wanted.straights_mm[i] * along);
        at = pieces.back().second;
        if (i == wanted.angles_deg.size()) break;
        if (i > 0) normal = AngleAxisd(wanted.rotations_deg[i] * degree, along) * normal;
        const Vector3d centre = at + radius * normal.cross(along);
        const Eigen::Matrix3d turn = AngleAxisd(wanted.angles_deg[i] * degree, normal).toRotationMatrix();
        at = centre + turn * (at - centre);
        along = turn * along;
    }
    return pieces;
}

}  // namespace bench_world
