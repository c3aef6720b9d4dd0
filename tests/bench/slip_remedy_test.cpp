// A slip taken back in the form that the line was entered in.

#include "bench/slip_remedy.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "bench/wires.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Wire wire_from(const MeasuredRoute& route) { return {route_from(route).value(), {6.35}, {19}}; }

std::vector<Slip> slips_of(const MeasuredRoute& route) { return plausible_slips(wire_from(route), Unit::inch); }

Slip slip_of(const MeasuredRoute& route, SlipKind kind, std::optional<std::size_t> bend, std::optional<std::size_t> leg = std::nullopt) {
    for (const Slip& slip : slips_of(route))
        if (slip.kind == kind && slip.bend == bend && slip.leg == leg) return slip;
    throw std::runtime_error("no such slip");
}

MeasuredRoute legs() {
    MeasuredRoute route;
    route.measured_to = TapeEdge::outside;
    route.runs = {6_in, 4_in, 3_in, 9_in};
    route.bends = {{{90}, {}, "at the rail"}, {{30}, Angle{90}}, {{45}, Angle{-60}, "under the member"}};
    return route;
}

MeasuredRoute moves() {
    MeasuredRoute route;
    route.form = RouteForm::moves;
    route.moves = {{{{MoveWay::forward, 18_in}}}, {{{MoveWay::left, 3_in}}}, {{{MoveWay::up, 5_in}}}, {{{MoveWay::back, 4_in}, {MoveWay::down, 4_in}}}};
    return route;
}

MeasuredRoute points() {
    MeasuredRoute route;
    route.form = RouteForm::points;
    route.points = {{0_mm, 0_mm, 0_mm}, {180_mm, 0_mm, 0_mm}, {180_mm, 70_mm, 0_mm}, {180_mm, 70_mm, 110_mm}};
    return route;
}

}  // namespace

TEST_CASE("what is taken back is one number, notes stay where they are") {
    const MeasuredRoute entered = legs();
    MeasuredRoute wanted = entered;
    wanted.bends[1].angle = Angle{60};  // 90 - 30
    CHECK(without_slip(entered, slip_of(entered, SlipKind::complement, 1)) == wanted);
    wanted = entered;
    wanted.bends[2].rotation = Angle{60};
    CHECK(without_slip(entered, slip_of(entered, SlipKind::turn_mirrored, 2)) == wanted);
    wanted = entered;
    std::swap(wanted.runs[1], wanted.runs[2]);
    CHECK(without_slip(entered, slip_of(entered, SlipKind::legs_swapped, std::nullopt, 1)) == wanted);
    // Bend 2 alone the other way: half a turn more there, and half a turn less at the bend past it.
    wanted = entered;
    wanted.bends[1].rotation = Angle{-90};
    wanted.bends[2].rotation = Angle{120};
    const auto alone = without_slip(entered, slip_of(entered, SlipKind::bend_other_way, 1));
    REQUIRE(alone);
    CHECK(alone->bends[1].rotation->deg == Approx(-90));
    CHECK(alone->bends[2].rotation->deg == Approx(120));
    CHECK(alone->bends[2].note == "under the member");
}

TEST_CASE("a move the wrong way, two in the wrong order, a length of one way") {
    MeasuredRoute wanted = moves();
    wanted.moves[2].along = {{MoveWay::down, 5_in}};
    CHECK(without_slip(moves(), slip_of(moves(), SlipKind::move_reversed, std::nullopt, 2)) == wanted);
    wanted = moves();
    std::swap(wanted.moves[1], wanted.moves[2]);
    CHECK(without_slip(moves(), slip_of(moves(), SlipKind::moves_swapped, std::nullopt, 1)) == wanted);
    // A move that goes two ways at once has no one length to put right, and two moves of one leg neither.
    CHECK_FALSE(without_slip(moves(), slip_of(moves(), SlipKind::length, std::nullopt, 3)));
    MeasuredRoute joined = moves();
    joined.moves.insert(joined.moves.begin(), joined.moves.front());
    CHECK_FALSE(without_slip(joined, slip_of(joined, SlipKind::move_reversed, std::nullopt, 2)));
}

TEST_CASE("of points all those past the slip are moved") {
    MeasuredRoute wanted = points();
    wanted.points[2][1] = wanted.points[3][1] = -70_mm;
    CHECK(without_slip(points(), slip_of(points(), SlipKind::move_reversed, std::nullopt, 1)) == wanted);
    wanted = points();
    wanted.points[2] = {180_mm, 0_mm, 110_mm};
    CHECK(without_slip(points(), slip_of(points(), SlipKind::moves_swapped, std::nullopt, 1)) == wanted);
}

TEST_CASE("every slip is taken back to what was meant, in every form") {
    MeasuredRoute straights = legs();
    straights.form = RouteForm::straights;
    straights.measured_to = TapeEdge::centre;
    for (const MeasuredRoute& entered : {legs(), straights, moves(), points()}) {
        std::size_t back = 0, none = 0;
        for (const Slip& slip : slips_of(entered)) {
            INFO("form " << static_cast<int>(entered.form) << ", slip " << static_cast<int>(slip.kind));
            const auto route = without_slip(entered, slip);
            none += !route;
            if (!route) continue;
            ++back;
            const Wire wire = wire_from(entered);
            const WireShape made = shape_of({route_from(*route).value(), wire.od, wire.radius}, TapeEdge::outside), meant = shape_of({slip.meant, wire.od, wire.radius}, TapeEdge::outside);
            for (std::size_t i = 0; i < made.points.size(); ++i) CHECK((made.points[i] - meant.points[i]).norm() < 0.01);
        }
        CHECK(back > 20);
        // Only the lengths of the move that goes two ways can't be said.
        if (entered.form != RouteForm::moves) CHECK(none == 0);
    }
}
