#include "tube/measured.h"

#include <catch2/catch.hpp>
#include <limits>

#include "tube/route_limits.h"

namespace tubewright {
namespace {

using namespace literals;

MeasuredRoute of_runs(RouteForm form, std::vector<Length> runs, std::vector<MeasuredBend> bends) {
    MeasuredRoute route;
    route.form = form;
    route.runs = std::move(runs);
    route.bends = std::move(bends);
    return route;
}

MeasuredRoute through(std::vector<MeasuredPoint> points) {
    MeasuredRoute route;
    route.form = RouteForm::points;
    route.points = std::move(points);
    return route;
}

MeasuredRoute along(std::vector<MeasuredMove> moves) {
    MeasuredRoute route;
    route.form = RouteForm::moves;
    route.moves = std::move(moves);
    return route;
}

/// The trouble, which has to be of this kind.
template <class T>
T trouble(const MeasuredRoute& route) {
    const auto made = route_from(route);
    if (made.ok()) FAIL("it made a route");
    REQUIRE(std::holds_alternative<T>(made.trouble()));
    return std::get<T>(made.trouble());
}

}  // namespace

TEST_CASE("legs are taken over as they were measured, to the edge they were measured to") {
    MeasuredRoute measured = of_runs(RouteForm::legs, {100_mm, 50_mm, 70_mm}, {{90_deg}, {45_deg, -90_deg, "under the step"}});
    measured.measured_to = TapeEdge::outside;
    const auto made = route_from(measured);
    REQUIRE(made.ok());
    CHECK(made.value() == Route{RouteForm::legs, TapeEdge::outside, {100_mm, 50_mm, 70_mm}, {{90_deg, 0_deg}, {45_deg, -90_deg}}});
    CHECK(bend_notes(measured, made.value()) == std::vector<std::string>{"", "under the step"});
}

TEST_CASE("moves of equal direction join, and the corner between up and left turns a quarter back") {
    // Along z, left y: normal z cross y = -x; before it, along x, up z: normal x cross z = -y.
    // From -y to -x about z is -90 degrees.
    const auto made = route_from(along({{{{MoveWay::forward, 30_mm}}}, {{{MoveWay::forward, 20_mm}}}, {{{MoveWay::up, 40_mm}}}, {{{MoveWay::left, 60_mm}}}}));
    REQUIRE(made.ok());
    const Route& route = made.value();
    REQUIRE(route.bends.size() == 2);
    CHECK(route.runs[0].mm == Approx(50));
    CHECK(route.bends[1].angle.deg == Approx(90));
    CHECK(route.bends[1].rotation.deg == Approx(-90));
    CHECK(bend_notes(along({}), route) == std::vector<std::string>{"", ""});
}

TEST_CASE("each way has its opposite, and that one's is the way itself") {
    for (const MoveWay way : all_move_ways) {
        CHECK(against(way) != way);
        CHECK(against(against(way)) == way);
        // There and back over a stretch across: a U whose ends lie side by side.
        const MoveWay across = way == MoveWay::up || way == MoveWay::down ? MoveWay::left : MoveWay::up;
        const auto made = route_from(along({{{{way, 10_mm}}}, {{{across, 10_mm}}}, {{{against(way), 10_mm}}}}));
        REQUIRE(made.ok());
        CHECK(made.value().bends[1].rotation.deg == Approx(0).margin(1e-9));
    }
}

TEST_CASE("points a 3-4-5 triangle apart") {
    const auto made = route_from(through({{0_mm, 0_mm, 0_mm}, {3_mm, 4_mm, 0_mm}, {3_mm, 4_mm, 7_mm}}));
    REQUIRE(made.ok());
    CHECK(made.value().runs[0].mm == Approx(5));
    CHECK(made.value().runs[1].mm == Approx(7));
    CHECK(made.value().bends[0].angle.deg == Approx(90));
}

TEST_CASE("what is not yet there is named") {
    CHECK(trouble<CountOutOfRange>(MeasuredRoute{}).list == RouteList::runs);
    CHECK(trouble<CountOutOfRange>(through({{0_mm, 0_mm, 0_mm}})).given == 1);
    CHECK(trouble<CountOutOfRange>(along({})).list == RouteList::moves);
    const auto half = trouble<RunsAndBendsDisagree>(of_runs(RouteForm::legs, {100_mm}, {{90_deg}}));
    CHECK(half.runs == 1);
    CHECK(half.bends == 1);
    CHECK(trouble<RotationMissing>(of_runs(RouteForm::legs, {9_mm, 9_mm, 9_mm}, {{90_deg}, {90_deg}})).bend == 1);
}

TEST_CASE("numbers that no route has are named where they stand") {
    const double none = std::numeric_limits<double>::quiet_NaN(), endless = std::numeric_limits<double>::infinity();
    for (const double bad : {0.0, -5.0, 100001.0, none, endless})
        CHECK(trouble<RunOutOfRange>(of_runs(RouteForm::legs, {9_mm, {bad}}, {{90_deg}})).run == 1);
    CHECK(route_from(of_runs(RouteForm::straights, {9_mm, 0_mm}, {{90_deg}})).ok());
    CHECK(trouble<RunOutOfRange>(of_runs(RouteForm::straights, {9_mm, {-1}}, {{90_deg}})).run == 1);
    for (const double bad : {-1.0, 180.5, none}) CHECK(trouble<AngleOutOfRange>(of_runs(RouteForm::legs, {9_mm, 9_mm}, {{{bad}}})).bend == 0);
    CHECK(route_from(of_runs(RouteForm::straights, {9_mm, 9_mm}, {{359.9_deg}})).ok());
    CHECK(trouble<AngleOutOfRange>(of_runs(RouteForm::straights, {9_mm, 9_mm}, {{360_deg}})).bend == 0);
    CHECK(trouble<FirstBendTurned>(of_runs(RouteForm::legs, {9_mm, 9_mm}, {{90_deg, 10_deg}})).rotation == 10_deg);
    CHECK(route_from(of_runs(RouteForm::legs, {9_mm, 9_mm}, {{90_deg, 0_deg}})).ok());
    for (const double bad : {-360.5, 361.0, none})
        CHECK(trouble<RotationOutOfRange>(of_runs(RouteForm::legs, {9_mm, 9_mm, 9_mm}, {{90_deg}, {90_deg, Angle{bad}}})).bend == 1);
    for (const double bad : {none, 100001.0, -100001.0}) {
        const auto point = trouble<CoordinateOutOfRange>(through({{0_mm, 0_mm, 0_mm}, {1_mm, {bad}, 0_mm}}));
        CHECK(point.point == 1);
        CHECK(point.axis == 1);
    }
    for (const double bad : {none, -1.0, 100001.0}) CHECK(trouble<MoveOutOfRange>(along({{{{MoveWay::up, {bad}}}}})).way == MoveWay::up);
    std::vector<Length> many(limits::most_bends + 2, 9_mm);
    CHECK(trouble<CountOutOfRange>(of_runs(RouteForm::legs, many, {})).most == limits::most_bends + 1);
}

TEST_CASE("points and moves that go nowhere, or both ways") {
    CHECK(trouble<SamePoint>(through({{1_mm, 2_mm, 3_mm}, {4_mm, 2_mm, 3_mm}, {4_mm, 2_mm, 3.0005_mm}})).point == 2);
    const auto both = trouble<GoesBothWays>(along({{{{MoveWay::forward, 9_mm}}}, {{{MoveWay::right, 4_mm}, {MoveWay::left, 4_mm}}}}));
    CHECK(both.move == 1);
    CHECK(both.way == MoveWay::left);
    CHECK(both.against == MoveWay::right);
    CHECK(trouble<GoesNowhere>(along({{{{MoveWay::forward, 9_mm}}}, {}})).move == 1);
    CHECK(trouble<GoesNowhere>(along({{{{MoveWay::up, 0_mm}}}})).move == 0);
}

}  // namespace tubewright
