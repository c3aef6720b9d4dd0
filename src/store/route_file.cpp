#include "store/route_file.h"

#include <array>

#include "base/tolerance.h"
#include "store/limits.h"

namespace tubewright {
namespace {

Bend bend_from(const Node& node, bool first, RouteForm form) {
    node.known_keys({"angle", "rotation", "note"});
    Bend bend;
    // A corner turns by 180 at most; a bend between straights may go round further.
    bend.angle = node.at("angle").angle(form == RouteForm::legs ? Range{0, 180} : Range{0, 360, false, true});
    const auto rotation = node.find("rotation");
    if (rotation && first) {
        if (rotation->number({-360, 360}) != 0) rotation->refuse_value("0, or none: the first bend has no bend before it");
    } else if (rotation) {
        bend.rotation = rotation->angle({-360, 360});
    } else if (!first) {
        node.at("rotation", "degrees against the bend before, -360 to 360");
    }
    return bend;
}

void read_bends(const Node& node, RouteGiven& given, std::size_t wanted, const std::string& runs) {
    const Node list = node.at("bends", "a list of bends");
    const std::vector<Node> bends = list.items(0, limits::most_bends);
    if (bends.size() != wanted)
        list.refuse(has_entries(bends.size()), std::to_string(wanted) + ", one less than " + runs);
    for (std::size_t i = 0; i < bends.size(); ++i) {
        given.route.bends.push_back(bend_from(bends[i], i == 0, given.route.form));
        const auto note = bends[i].find("note");
        given.bend_notes.push_back(note ? note->note() : "");
    }
}

RouteGiven legs_from(const Node& node, Unit unit) {
    node.known_keys({"form", "measured_to", "legs", "bends"});
    RouteGiven given;
    given.route.form = RouteForm::legs;
    if (const auto edge = node.find("measured_to"))
        given.route.measured_to = edge->one_of<TapeEdge>({{"centre", TapeEdge::centre}, {"outside", TapeEdge::outside}, {"inside", TapeEdge::inside}});
    for (const Node& leg : node.at("legs", "a list of lengths").items(1, limits::most_bends + 1))
        given.route.runs.push_back(leg.length(unit, {0, limits::longest_run, true}));
    read_bends(node, given, given.route.runs.size() - 1, "legs");
    return given;
}

RouteGiven straights_from(const Node& node, Unit unit) {
    node.known_keys({"form", "straights", "bends"});
    RouteGiven given;
    given.route.form = RouteForm::straights;
    for (const Node& straight : node.at("straights", "a list of lengths").items(1, limits::most_bends + 1))
        given.route.runs.push_back(straight.length(unit, {0, limits::longest_run}));
    read_bends(node, given, given.route.runs.size() - 1, "straights");
    return given;
}

RouteGiven through(const std::vector<Eigen::Vector3d>& points_mm, RouteForm form) {
    RouteGiven given{route_through(points_mm, form), {}};
    given.bend_notes.resize(given.route.bends.size());
    return given;
}

RouteGiven points_from(const Node& node, Unit unit) {
    node.known_keys({"form", "points"});
    std::vector<Eigen::Vector3d> points;
    for (const Node& item : node.at("points", "a list of [x, y, z]").items(2, limits::most_bends + 2)) {
        const std::vector<Node> xyz = item.items(3, 3);
        const auto mm = [&](std::size_t i) { return xyz[i].length(unit, {-limits::longest_run, limits::longest_run}).mm; };
        points.emplace_back(mm(0), mm(1), mm(2));
        if (points.size() > 1 && (points.back() - points[points.size() - 2]).norm() < limits::points_apart)
            item.refuse("is where the point before it is", "neighbouring points apart");
    }
    return through(points, RouteForm::points);
}

/// One way of a move and its opposite.
struct Ways {
    const char* name;
    const char* against;
    Eigen::Vector3d direction;
};
const std::array<Ways, 3> ways{{{"forward", "back", Eigen::Vector3d::UnitX()},
                                {"left", "right", Eigen::Vector3d::UnitY()},
                                {"up", "down", Eigen::Vector3d::UnitZ()}}};

Eigen::Vector3d move_from(const Node& item, Unit unit) {
    item.known_keys({"forward", "back", "left", "right", "up", "down"});
    const Range range{0, limits::longest_run};
    Eigen::Vector3d move = Eigen::Vector3d::Zero();
    for (const Ways& way : ways) {
        const auto there = item.find(way.name), back = item.find(way.against);
        if (there && back)
            item.refuse(std::string("goes ") + way.name + " and " + way.against + " at once", std::string("either ") + way.name + " or " + way.against);
        if (there) move += there->length(unit, range).mm * way.direction;
        if (back) move -= back->length(unit, range).mm * way.direction;
    }
    if (move.norm() < limits::points_apart) item.refuse("goes nowhere", "a length forward, back, left, right, up or down");
    return move;
}

bool same_direction(const Eigen::Vector3d& a, const Eigen::Vector3d& b) {
    return (a.normalized() - b.normalized()).norm() < tolerance::no_bend.rad();  // the chord of a small angle is the angle
}

RouteGiven moves_from(const Node& node, Unit unit) {
    node.known_keys({"form", "moves"});
    std::vector<Eigen::Vector3d> moves;
    for (const Node& item : node.at("moves", "a list of moves").items(1, limits::most_bends + 1)) {
        const Eigen::Vector3d move = move_from(item, unit);
        if (!moves.empty() && same_direction(moves.back(), move)) moves.back() += move;
        else moves.push_back(move);
    }
    std::vector<Eigen::Vector3d> points{Eigen::Vector3d::Zero()};
    for (const Eigen::Vector3d& move : moves) points.push_back(points.back() + move);
    return through(points, RouteForm::moves);
}

}  // namespace

RouteGiven route_from(const Node& node, Unit unit) {
    const Node form = node.at("form", "legs, straights, points, moves");
    const RouteForm kind = form.one_of<RouteForm>({{"legs", RouteForm::legs}, {"straights", RouteForm::straights}, {"points", RouteForm::points}, {"moves", RouteForm::moves}});
    if (kind != RouteForm::legs && node.has("measured_to"))
        node.at("measured_to").refuse("goes with legs only", "no measured_to beside form " + form.text());
    switch (kind) {
        case RouteForm::legs: return legs_from(node, unit);
        case RouteForm::straights: return straights_from(node, unit);
        case RouteForm::points: return points_from(node, unit);
        case RouteForm::moves: return moves_from(node, unit);
    }
    form.refuse_value("legs, straights, points, moves");
}

}  // namespace tubewright
