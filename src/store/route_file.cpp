#include "store/route_file.h"

#include "store/limits.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

struct Reading {
    Unit unit;
    const RawText& raw;
    Entered entered;

    std::size_t at_least(std::size_t entries) const { return entered == Entered::to_the_end ? entries : 0; }
};

constexpr Range rotations{-limits::most_rotation, limits::most_rotation};

// A corner turns by 180 at most; a bend between straights may go round further.
Range angles(RouteForm form) { return form == RouteForm::legs ? Range{0, 180} : Range{0, 360, false, true}; }

Range lengths(RouteForm form) { return {0, limits::longest_run, form == RouteForm::legs}; }

MeasuredBend bend_from(const Node& node, RouteForm form, const Reading& reading) {
    node.known_keys({"angle", "rotation", "note"});
    MeasuredBend bend{node.at("angle").angle(angles(form))};
    if (const auto rotation = node.find("rotation")) bend.rotation = rotation->angle(rotations);
    if (const auto note = node.find("note")) bend.note = note->note();
    bend.kept = reading.raw.kept(node.place());
    return bend;
}

void read_runs_and_bends(const Node& node, MeasuredRoute& route, const char* runs, const Reading& reading) {
    for (const Node& run : node.at(runs, "a list of lengths").items(reading.at_least(1), limits::most_bends + 1))
        route.runs.push_back(run.length(reading.unit, lengths(route.form)));
    for (const Node& bend : node.at("bends", "a list of bends").items(0, limits::most_bends)) route.bends.push_back(bend_from(bend, route.form, reading));
}

void read_legs(const Node& node, MeasuredRoute& route, const Reading& reading) {
    node.known_keys({"form", "measured_to", "legs", "bends"});
    if (const auto edge = node.find("measured_to"))
        route.measured_to = edge->one_of<TapeEdge>({{"centre", TapeEdge::centre}, {"outside", TapeEdge::outside}, {"inside", TapeEdge::inside}});
    read_runs_and_bends(node, route, "legs", reading);
}

void read_straights(const Node& node, MeasuredRoute& route, const Reading& reading) {
    node.known_keys({"form", "straights", "bends"});
    read_runs_and_bends(node, route, "straights", reading);
}

void read_points(const Node& node, MeasuredRoute& route, const Reading& reading) {
    node.known_keys({"form", "points"});
    for (const Node& item : node.at("points", "a list of [x, y, z]").items(reading.at_least(2), limits::most_bends + 2)) {
        const std::vector<Node> xyz = item.items(3, 3);
        MeasuredPoint point;
        for (std::size_t axis = 0; axis < 3; ++axis) point[axis] = xyz[axis].length(reading.unit, {-limits::longest_run, limits::longest_run});
        route.points.push_back(point);
    }
}

void read_moves(const Node& node, MeasuredRoute& route, const Reading& reading) {
    node.known_keys({"form", "moves"});
    for (const Node& item : node.at("moves", "a list of moves").items(reading.at_least(1), limits::most_bends + 1)) {
        item.known_keys({"forward", "back", "left", "right", "up", "down"});
        MeasuredMove move;
        for (const MoveWay way : all_move_ways)
            if (const auto length = item.find(name_of(way))) move.along[way] = length->length(reading.unit, {0, limits::longest_run});
        move.kept = reading.raw.kept(item.place());
        route.moves.push_back(std::move(move));
    }
}

/// What a trouble is, said after the place of the route.
struct Said { std::string place, what, allowed; };

std::string entry(const std::string& list, std::size_t i) { return "." + list + "[" + std::to_string(i) + "]"; }

struct Say {
    const MeasuredRoute& route;
    Unit unit;

    std::string runs() const { return route.form == RouteForm::straights ? "straights" : "legs"; }
    std::string list(RouteList which) const {
        switch (which) {
            case RouteList::runs: return runs();
            case RouteList::bends: return "bends";
            case RouteList::points: return "points";
            case RouteList::moves: return "moves";
        }
        return "";
    }
    std::string is(Length length) const { return "is " + figure(length.mm / mm_in(unit)); }
    static std::string is(Angle angle) { return "is " + figure(angle.deg); }

    Said operator()(const CountOutOfRange& t) const {
        return {"." + list(t.list), has_entries(t.given), "a list of " + std::to_string(t.least) + " to " + std::to_string(t.most)};
    }
    Said operator()(const RunsAndBendsDisagree& t) const {
        return {".bends", has_entries(t.bends), std::to_string(t.runs - 1) + ", one less than " + runs()};
    }
    Said operator()(const RunOutOfRange& t) const { return {entry(runs(), t.run), is(t.given), allowed_lengths(lengths(route.form), unit)}; }
    Said operator()(const AngleOutOfRange& t) const { return {entry("bends", t.bend) + ".angle", is(t.given), allowed_numbers(angles(route.form))}; }
    Said operator()(const RotationMissing& t) const {
        return {entry("bends", t.bend) + ".rotation", "is missing", "degrees against the bend before, -360 to 360"};
    }
    Said operator()(const RotationOutOfRange& t) const { return {entry("bends", t.bend) + ".rotation", is(t.given), allowed_numbers(rotations)}; }
    Said operator()(const FirstBendTurned& t) const {
        return {entry("bends", 0) + ".rotation", is(t.rotation), "0, or none: the first bend has no bend before it"};
    }
    Said operator()(const CoordinateOutOfRange& t) const {
        return {entry("points", t.point) + "[" + std::to_string(t.axis) + "]", is(t.given), allowed_lengths({-limits::longest_run, limits::longest_run}, unit)};
    }
    Said operator()(const SamePoint& t) const { return {entry("points", t.point), "is where the point before it is", "neighbouring points apart"}; }
    Said operator()(const GoesBothWays& t) const {
        const std::string way = name_of(t.way), back = name_of(t.against);
        return {entry("moves", t.move), "goes " + way + " and " + back + " at once", "either " + way + " or " + back};
    }
    Said operator()(const MoveOutOfRange& t) const {
        return {entry("moves", t.move) + "." + name_of(t.way), is(t.given), allowed_lengths({0, limits::longest_run}, unit)};
    }
    Said operator()(const GoesNowhere& t) const {
        return {entry("moves", t.move), "goes nowhere", "a length forward, back, left, right, up or down"};
    }
};

}  // namespace

const char* name_of(MoveWay way) {
    switch (way) {
        case MoveWay::forward: return "forward";
        case MoveWay::back: return "back";
        case MoveWay::left: return "left";
        case MoveWay::right: return "right";
        case MoveWay::up: return "up";
        case MoveWay::down: return "down";
    }
    return "";
}

const char* name_of(RouteForm form) {
    switch (form) {
        case RouteForm::legs: return "legs";
        case RouteForm::straights: return "straights";
        case RouteForm::points: return "points";
        case RouteForm::moves: return "moves";
    }
    return "";
}

const char* name_of(TapeEdge edge) {
    switch (edge) {
        case TapeEdge::centre: return "centre";
        case TapeEdge::outside: return "outside";
        case TapeEdge::inside: return "inside";
    }
    return "";
}

Refusal refusal_of(const RouteTrouble& trouble, const MeasuredRoute& route, Unit unit, const std::string& file, const std::string& place) {
    const Said said = std::visit(Say{route, unit}, trouble);
    return {file, place + said.place, said.what, said.allowed};
}

MeasuredRoute measured_from(const Node& node, Unit unit, const RawText& raw, Entered entered) {
    const Reading reading{unit, raw, entered};
    const Node form = node.at("form", "legs, straights, points, moves");
    MeasuredRoute route;
    route.form = form.one_of<RouteForm>({{"legs", RouteForm::legs}, {"straights", RouteForm::straights}, {"points", RouteForm::points}, {"moves", RouteForm::moves}});
    if (route.form != RouteForm::legs && node.has("measured_to"))
        node.at("measured_to").refuse("goes with legs only", "no measured_to beside form " + form.text());
    switch (route.form) {
        case RouteForm::legs: read_legs(node, route, reading); break;
        case RouteForm::straights: read_straights(node, route, reading); break;
        case RouteForm::points: read_points(node, route, reading); break;
        case RouteForm::moves: read_moves(node, route, reading); break;
    }
    route.kept = raw.kept(node.place());
    if (entered == Entered::so_far) return route;
    if (const auto made = route_from(route); !made.ok()) throw refusal_of(made.trouble(), route, unit, node.file(), node.place());
    return route;
}

}  // namespace tubewright
