// The four forms of a route in a job file. Frame of points and moves: +x forward, +y left, +z up.

#include "store/route_file.h"

#include "desk.h"
#include "tube/centreline.h"

namespace tubewright {
namespace {

Route route_of(const std::string& route) { return job_of(job_with_route(route)).lines[0].route; }

}  // namespace

TEST_CASE("forward, then up, then left: two square corners, and the left turn is a quarter back") {
    // Along x, up z: normal x cross z = -y. Along z, left y: normal z cross y = -x.
    // From -y to -x about the direction of travel z: (-y) cross (-x) = y cross x = -z, so -90 degrees.
    const Route route = route_of(R"({ "form": "moves", "moves": [ {"forward": 5}, {"up": 4}, {"left": 6} ] })");
    REQUIRE(route.bends.size() == 2);
    CHECK(route.bends[0].angle.deg == Approx(90));
    CHECK(route.bends[0].rotation.deg == 0);
    CHECK(route.bends[1].angle.deg == Approx(90));
    CHECK(route.bends[1].rotation.deg == Approx(-90));
    CHECK(route.runs[0].mm == Approx(127.0));
    CHECK(route.runs[1].mm == Approx(101.6));
    CHECK(route.runs[2].mm == Approx(152.4));
    CHECK(route.form == RouteForm::moves);
}

TEST_CASE("moves against the others give the mirror image") {
    const Route route = route_of(R"({ "form": "moves", "moves": [ {"forward": 5}, {"up": 4}, {"right": 6} ] })");
    CHECK(route.bends[1].rotation.deg == Approx(90));
}

TEST_CASE("equal directions join into one leg, slanted ones too") {
    const Route straight = route_of(R"({ "form": "moves", "moves": [ {"forward": 5}, {"forward": 2.5}, {"left": 4} ] })");
    REQUIRE(straight.bends.size() == 1);
    CHECK(straight.runs[0].mm == Approx(190.5));
    // 3-4-5: two pieces of one slanted leg of 5 + 10 in
    const Route slanted = route_of(R"({ "form": "moves", "moves": [ {"up": 3, "left": 4}, {"left": 8, "up": 6}, {"forward": 4} ] })");
    REQUIRE(slanted.bends.size() == 1);
    CHECK(slanted.runs[0].mm == Approx(15 * 25.4));
    CHECK(slanted.bends[0].angle.deg == Approx(90));
}

TEST_CASE("points and moves through the same corners are the same route") {
    const Route moves = route_of(R"({ "form": "moves", "moves": [ {"forward": 8}, {"forward": 4, "left": 3}, {"back": 0.5, "down": 7}, {"right": 9} ] })");
    const Route points = route_of(R"({ "form": "points", "points": [ [1, 2, 3], [9, 2, 3], [13, 5, 3], [12.5, 5, -4], [12.5, -4, -4] ] })");
    REQUIRE(points.runs.size() == moves.runs.size());
    for (std::size_t i = 0; i < moves.runs.size(); ++i) CHECK(points.runs[i].mm == Approx(moves.runs[i].mm));
    for (std::size_t i = 0; i < moves.bends.size(); ++i) {
        CHECK(points.bends[i].angle.deg == Approx(moves.bends[i].angle.deg));
        CHECK(points.bends[i].rotation.deg == Approx(moves.bends[i].rotation.deg));
    }
}

TEST_CASE("legs: every tape edge; none said is the centre") {
    const std::string rest = R"("legs": [10, 12], "bends": [ {"angle": 60} ] })";
    CHECK(route_of("{ \"form\": \"legs\", " + rest).measured_to == TapeEdge::centre);
    CHECK(route_of("{ \"form\": \"legs\", \"measured_to\": \"outside\", " + rest).measured_to == TapeEdge::outside);
    CHECK(route_of("{ \"form\": \"legs\", \"measured_to\": \"inside\", " + rest).measured_to == TapeEdge::inside);
}

TEST_CASE("straights: also beyond 170 degrees, and with no straight between two bends") {
    const Route route = route_of(R"({ "form": "straights", "straights": [6, 0, 6], "bends": [ {"angle": 180}, {"angle": 200, "rotation": 180} ] })");
    CHECK(route.form == RouteForm::straights);
    CHECK(route.bends[0].angle == Angle{180});
    CHECK(route.bends[1].angle == Angle{200});
    CHECK(route.runs[1] == Length{});
}

TEST_CASE("a line without bends is read; that it has none is the bench's to say") {
    CHECK(route_of(R"({ "form": "legs", "legs": [40], "bends": [] })").bends.empty());
    CHECK(route_of(R"({ "form": "points", "points": [ [0, 0, 0], [40, 0, 0] ] })").bends.empty());
    CHECK(route_of(R"({ "form": "moves", "moves": [ {"forward": 20}, {"forward": 20} ] })").bends.empty());
}

TEST_CASE("a corner too sharp or too flat to lay out is read; the bench makes a finding of it") {
    CHECK(route_of(R"({ "form": "legs", "legs": [10, 10], "bends": [ {"angle": 180} ] })").bends[0].angle == Angle{180});
    CHECK(route_of(R"({ "form": "legs", "legs": [10, 10], "bends": [ {"angle": 0} ] })").bends[0].angle == Angle{});
    CHECK(route_of(R"({ "form": "points", "points": [ [0, 0, 0], [10, 0, 0], [4, 0, 0] ] })").bends[0].angle.deg == Approx(180));
    CHECK(route_of(R"({ "form": "moves", "moves": [ {"forward": 10}, {"back": 6} ] })").bends[0].angle.deg == Approx(180));
    CHECK(route_of(R"({ "form": "points", "points": [ [0, 0, 0], [10, 0, 0], [14, 0, 0] ] })").bends[0].angle == Angle{});
}

}  // namespace tubewright
