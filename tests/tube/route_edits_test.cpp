#include "tube/route_edits.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace tubewright;

namespace {

/// Ends and corners of legs, walked with a frame that turns: along, and the side the last bend turned to.
std::vector<Eigen::Vector3d> corners(const MeasuredRoute& route) {
    Eigen::Vector3d at(0, 0, 0), along(1, 0, 0), side(0, 1, 0);
    std::vector<Eigen::Vector3d> points{at};
    for (std::size_t i = 0; i < route.runs.size(); ++i) {
        at += route.runs[i].mm * along;
        points.push_back(at);
        if (i == route.bends.size()) break;
        if (i > 0) side = Eigen::AngleAxisd(route.bends[i].rotation.value().rad(), along) * side;
        const Eigen::Matrix3d corner = Eigen::AngleAxisd(route.bends[i].angle.rad(), along.cross(side).normalized()).toRotationMatrix();
        along = corner * along;
        side = corner * side;
    }
    return points;
}

/// The six edge lengths of every four neighbours and which hand they make: two wires are the same if all agree.
void check_same_shape(const std::vector<Eigen::Vector3d>& one, const std::vector<Eigen::Vector3d>& two, double hand = 1) {
    REQUIRE(one.size() == two.size());
    for (std::size_t i = 0; i < one.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) CHECK((one[i] - one[k]).norm() == Approx((two[i] - two[k]).norm()).margin(1e-9));
    const auto volume = [](const std::vector<Eigen::Vector3d>& p, std::size_t i) { return (p[i + 1] - p[i]).cross(p[i + 2] - p[i]).dot(p[i + 3] - p[i]); };
    for (std::size_t i = 0; i + 3 < one.size(); ++i) CHECK(volume(one, i) * hand == Approx(volume(two, i)).margin(1e-6));
}

MeasuredRoute random_legs(std::mt19937& dice) {
    std::uniform_real_distribution<double> length(20, 300), angle(10, 150), turn(-179, 180);
    MeasuredRoute route;
    const std::size_t bends = 2 + dice() % 5;
    for (std::size_t i = 0; i <= bends; ++i) route.runs.push_back({length(dice)});
    for (std::size_t i = 0; i < bends; ++i) {
        route.bends.push_back({Angle{angle(dice)}});
        if (i > 0) route.bends.back().rotation = Angle{turn(dice)};
    }
    return route;
}

MeasuredRoute legs(std::vector<double> runs, std::vector<std::pair<double, double>> bends) {
    MeasuredRoute route;
    for (const double run : runs) route.runs.push_back({run});
    for (const auto& [angle, turn] : bends) route.bends.push_back({Angle{angle}, Angle{turn}});
    if (!route.bends.empty()) route.bends.front().rotation.reset();
    return route;
}

}  // namespace

TEST_CASE("a wire in the mirror: the same distances, the other hand, and twice is none") {
    std::mt19937 dice(20260101);
    for (int i = 0; i < 100; ++i) {
        const MeasuredRoute route = random_legs(dice);
        check_same_shape(corners(route), corners(mirrored(route)), -1);
        CHECK(mirrored(mirrored(route)) == route);
    }
    CHECK(mirrored(legs({5, 5, 5}, {{90, 0}, {90, 180}})).bends[1].rotation == Angle{180});  // a Z stays a Z
}

TEST_CASE("a wire from its other end is the same wire") {
    std::mt19937 dice(20260102);
    for (int i = 0; i < 100; ++i) {
        const MeasuredRoute route = random_legs(dice);
        std::vector<Eigen::Vector3d> back = corners(route);
        std::reverse(back.begin(), back.end());
        check_same_shape(back, corners(reversed(route)));
        CHECK(reversed(reversed(route)) == route);
    }
}

TEST_CASE("a bend put into a leg changes nothing until it has an angle, and taken out again it is gone") {
    std::mt19937 dice(20260103);
    for (int i = 0; i < 100; ++i) {
        const MeasuredRoute route = random_legs(dice);
        const std::size_t run = dice() % route.runs.size();
        const MeasuredRoute more = with_bend_in(route, run, 0.25 * route.runs[run]);
        REQUIRE(more.bends.size() == route.bends.size() + 1);
        std::vector<Eigen::Vector3d> points = corners(more);
        points.erase(points.begin() + static_cast<std::ptrdiff_t>(run) + 1);
        check_same_shape(corners(route), points);
        const MeasuredRoute again = without_bend(more, run);
        REQUIRE(again.runs.size() == route.runs.size());
        CHECK(again.runs[run].mm == Approx(route.runs[run].mm));
        check_same_shape(corners(route), corners(again));
    }
}

TEST_CASE("a bend taken out leaves the others facing where they faced") {
    // Bend 2 turned 90 on and bend 3 90 further: without bend 2, bend 3 is turned by 180 against bend 1.
    const MeasuredRoute route = without_bend(legs({10, 5, 6, 10}, {{90, 0}, {45, 90}, {90, 90}}), 1);
    CHECK(route.runs == std::vector<Length>{{10}, {11}, {10}});
    CHECK(route.bends[1].rotation == Angle{180});
    // Without the first bend the second is the first, and has nothing to be turned against.
    CHECK_FALSE(without_bend(legs({10, 5, 6}, {{90, 0}, {45, 90}}), 0).bends[0].rotation);
    // The last bend of a route whose last leg is not entered yet has only itself to lose.
    CHECK(without_bend(legs({10}, {{90, 0}}), 0) == legs({10}, {}));
}

TEST_CASE("moves: mirrored left for right, and back from the other end") {
    MeasuredRoute route;
    route.form = RouteForm::moves;
    route.moves = {{{{MoveWay::forward, {12}}}}, {{{MoveWay::up, {4}}, {MoveWay::left, {4}}}}};
    const MeasuredRoute seen = mirrored(route), back = reversed(route);
    CHECK(seen.moves[1].along == std::map<MoveWay, Length>{{MoveWay::up, {4}}, {MoveWay::right, {4}}});
    CHECK(back.moves[0].along == std::map<MoveWay, Length>{{MoveWay::down, {4}}, {MoveWay::right, {4}}});
    CHECK(back.moves[1].along == std::map<MoveWay, Length>{{MoveWay::back, {12}}});
}

TEST_CASE("what can be drawn of a wire that is half entered") {
    const MeasuredRoute whole = legs({10, 5, 6}, {{90, 0}, {45, 90}});
    CHECK(drawable(whole, {3}) == whole);
    MeasuredRoute part = legs({10}, {});
    CHECK(drawable(part, {3}) == part);
    part.bends.push_back({Angle{90}});
    CHECK(drawable(part, {3}) == legs({10, 3}, {{90, 0}}));  // the next leg is seen to go off
    part.runs.push_back({5});
    part.bends.push_back({Angle{45}});                       // its turn is not said yet
    CHECK(drawable(part, {3}) == legs({10, 5}, {{90, 0}}));
    CHECK(drawable(MeasuredRoute{}, {3}) == MeasuredRoute{});
}

TEST_CASE("a wire that lies flat on the bench") {
    CHECK(is_flat(legs({10, 5, 6}, {{90, 0}, {45, 180}})));
    CHECK(is_flat(legs({10}, {})));
    CHECK_FALSE(is_flat(legs({10, 5, 6}, {{90, 0}, {45, 90}})));
}

TEST_CASE("a longer leg, straight, move or stretch between points leaves every other length and all angles") {
    std::mt19937 dice(5);
    for (int i = 0; i < 100; ++i) {
        const MeasuredRoute legs = random_legs(dice);
        MeasuredRoute points;
        points.form = RouteForm::points;
        for (const Eigen::Vector3d& p : corners(legs)) points.points.push_back({Length{p.x()}, Length{p.y()}, Length{p.z()}});
        const std::size_t run = dice() % legs.runs.size();
        const auto longer = with_longer_run(points, run, Length{12.7});
        REQUIRE(longer);
        std::vector<Eigen::Vector3d> then;
        for (const MeasuredPoint& p : longer->points) then.emplace_back(p[0].mm, p[1].mm, p[2].mm);
        check_same_shape(then, corners(*with_longer_run(legs, run, Length{12.7})));
        CHECK(with_longer_run(legs, run, Length{12.7})->runs[run] == legs.runs[run] + Length{12.7});
    }
    CHECK_FALSE(with_longer_run(MeasuredRoute{}, 0, Length{1}));
}

TEST_CASE("a move one way grows to the last digit, one two ways along its own direction, joined ones not at all") {
    MeasuredRoute route;
    route.form = RouteForm::moves;
    route.moves = {{{{MoveWay::forward, Length{304.8}}}, {}}, {{{MoveWay::up, Length{30}}, {MoveWay::left, Length{40}}}, {}}};
    CHECK(with_longer_run(route, 0, Length{25.4})->moves[0].along.at(MoveWay::forward) == Length{304.8 + 25.4});
    // 3, 4, 5: ten more on 50 makes 36 and 48.
    const auto both = with_longer_run(route, 1, Length{10});
    CHECK(both->moves[1].along.at(MoveWay::up).mm == Approx(36));
    CHECK(both->moves[1].along.at(MoveWay::left).mm == Approx(48));
    route.moves.insert(route.moves.begin(), route.moves.front());  // two moves forward are one leg
    CHECK_FALSE(with_longer_run(route, 0, Length{10}));
}

TEST_CASE("a point put in lies halfway, and taken out again leaves the route as it was") {
    MeasuredRoute route;
    route.form = RouteForm::points;
    route.points = {{Length{0}, Length{0}, Length{0}}, {Length{100}, Length{20}, Length{-40}}, {Length{100}, Length{90}, Length{-40}}};
    const MeasuredRoute more = with_point_after(route, 0);
    CHECK(more.points[1] == MeasuredPoint{Length{50}, Length{10}, Length{-20}});
    CHECK(without_point(more, 1) == route);
}
