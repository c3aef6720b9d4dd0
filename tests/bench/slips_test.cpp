#include "bench/slips.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "bench/wires.h"

using namespace tubewright;

namespace {

/// The slips of this kind at this bend or leg.
std::vector<Slip> slips_of(const ProofEntry& entry, SlipKind kind, std::optional<std::size_t> bend, std::optional<std::size_t> leg = std::nullopt) {
    std::vector<Slip> found;
    for (const Slip& slip : plausible_slips(entry.wire, entry.unit))
        if (slip.kind == kind && slip.bend == bend && slip.leg == leg) found.push_back(slip);
    return found;
}

ProofEntry with(const ProofEntry& entry, const Slip& slip) {
    ProofEntry meant = entry;
    meant.wire.route = slip.meant;
    return meant;
}

}  // namespace

TEST_CASE("a bend the other way, alone or with the rest: the ends of a step by Pythagoras") {
    // Entered as a staircase in one plane: 6 along, 4 up, 3 along, 5 up: ends 9 and 9 apart, 12.7279.
    // Bend 2 alone the other way: 6 along, 4 up, 3 back, then bend 3 goes left as it did, now down: 3 and -1, 3.1623.
    // All from bend 2 on by half a turn about the upright leg: 6 along, 4 up, 3 back, and up again: 3 and 9, 9.4868.
    // All from bend 3 on: 6, 4, 3 and 5 down: 9 and 1, 9.0554.
    const ProofEntry step = entry_of({6, 4, 3, 5}, {{90, 0}, {90, 180}, {90, 180}});
    CHECK(distance(step, {0, 4}).inch() == Approx(12.7279).margin(0.00005));
    const auto alone = slips_of(step, SlipKind::bend_other_way, 1), rest = slips_of(step, SlipKind::rest_other_way, 1), last = slips_of(step, SlipKind::rest_other_way, 2);
    REQUIRE(alone.size() == 1);
    CHECK(distance(with(step, alone[0]), {0, 4}).inch() == Approx(3.1623).margin(0.00005));
    REQUIRE(rest.size() == 1);
    CHECK(distance(with(step, rest[0]), {0, 4}).inch() == Approx(9.4868).margin(0.00005));
    REQUIRE(last.size() == 1);
    CHECK(distance(with(step, last[0]), {0, 4}).inch() == Approx(9.0554).margin(0.00005));
    CHECK(slips_of(step, SlipKind::turn_mirrored, 1).empty());  // 180 has no other sign
}

TEST_CASE("alone or with the rest differ where the bend past it leaves the plane's half") {
    // 6 along, 4 up, 3 along, then 5 at 45 degrees up. With the rest: 3 back, then 45 degrees between back and up.
    const ProofEntry line = entry_of({6, 4, 3, 5}, {{90, 0}, {90, 180}, {45, 180}});
    const double s = 5 / std::sqrt(2.0);
    CHECK(distance(line, {0, 4}).inch() == Approx(std::hypot(9 + s, 4 + s)));
    CHECK(distance(with(line, slips_of(line, SlipKind::rest_other_way, 1)[0]), {0, 4}).inch() == Approx(std::hypot(3 - s, 4 + s)));
    // Alone: bend 3 goes left as it did, and from going back left is down.
    CHECK(distance(with(line, slips_of(line, SlipKind::bend_other_way, 1)[0]), {0, 4}).inch() == Approx(std::hypot(3 - s, 4 - s)));
}

TEST_CASE("angles, legs and edges") {
    const ProofEntry line = entry_of({6, 4, 3}, {{30, 0}, {45, 90}});
    CHECK(slips_of(line, SlipKind::complement, 0)[0].meant.bends[0].angle.deg == 60);
    CHECK(slips_of(line, SlipKind::supplement, 1)[0].meant.bends[1].angle.deg == 135);
    CHECK(slips_of(line, SlipKind::complement, 1).empty());  // 45 is its own
    CHECK(slips_of(line, SlipKind::bends_swapped, 0)[0].meant.bends[0].angle.deg == 45);
    const Route swapped = slips_of(line, SlipKind::legs_swapped, std::nullopt, 1)[0].meant;
    CHECK(swapped.runs[1].inch() == Approx(3));
    CHECK(swapped.runs[2].inch() == Approx(4));
    const auto edges = slips_of(line, SlipKind::wrong_edge, std::nullopt);
    CHECK(edges.size() == 2);
    for (const Slip& slip : edges) CHECK(slip.meant.measured_to != TapeEdge::centre);
    CHECK(slips_of(line, SlipKind::turn_mirrored, 1)[0].meant.bends[1].rotation.deg == -90);
    CHECK(slips_of(line, SlipKind::mirrored, std::nullopt)[0].meant.bends[1].rotation.deg == -90);
    CHECK_FALSE(slips_of(line, SlipKind::length, std::nullopt, 2).empty());
}

TEST_CASE("entered from the other end it is the same line with its points counted backwards") {
    const ProofEntry line = entry_of({6, 4, 3, 7, 5}, {{30, 0}, {45, 90}, {60, -30}, {90, 160}});
    const ProofEntry turned = with(line, slips_of(line, SlipKind::ends_swapped, std::nullopt)[0]);
    for (std::size_t i = 0; i < 6; ++i)
        for (std::size_t k = i + 1; k < 6; ++k) CHECK(distance(turned, {5 - k, 5 - i}).mm == Approx(distance(line, {i, k}).mm));
    // It is no mirror image: the same wire twice turned is the first one again, and a screw stays a screw.
    CHECK(turned.wire.route.bends[1].rotation.deg == 160);
    CHECK(with(turned, slips_of(turned, SlipKind::ends_swapped, std::nullopt)[0]).wire.route == line.wire.route);
}

TEST_CASE("with a corner of no degrees in it, turns stay between the bends that bend") {
    const ProofEntry line = entry_of({6, 4, 3, 7}, {{90, 0}, {0, 0}, {45, 70}});
    CHECK(slips_of(line, SlipKind::bend_other_way, 1).empty());
    CHECK(slips_of(line, SlipKind::bend_other_way, 0)[0].meant.bends[2].rotation.deg == Approx(-110));
    const Route turned = slips_of(line, SlipKind::ends_swapped, std::nullopt)[0].meant;
    CHECK(turned.bends[0].angle.deg == 45);
    CHECK(turned.bends[1].angle.deg == 0);
    CHECK(turned.bends[1].rotation.deg == 0);
    CHECK(turned.bends[2].rotation.deg == 70);
}

TEST_CASE("a route of moves slips by its moves: down for up, and two in the wrong order") {
    // Forward 6, up 4, left 3, forward 5. Ends: 11, 4, 3: sqrt(146) = 12.0830. Down for up: the same; from end A to corner 3:
    // 6, 4, 3, both. Left the other way mirrors it. Forward 5 the other way: 1, 4, 3: sqrt(26) = 5.0990.
    const std::vector<Eigen::Vector3d> points{{0, 0, 0}, {6 * 25.4, 0, 0}, {6 * 25.4, 0, 4 * 25.4}, {6 * 25.4, 3 * 25.4, 4 * 25.4}, {11 * 25.4, 3 * 25.4, 4 * 25.4}};
    ProofEntry line = entry_of({}, {});
    line.wire.route = route_through(points, RouteForm::moves);
    CHECK(distance(line, {0, 4}).inch() == Approx(12.0830).margin(0.00005));
    CHECK(distance(with(line, slips_of(line, SlipKind::move_reversed, std::nullopt, 1).at(0)), {0, 4}).inch() == Approx(12.0830).margin(0.00005));
    const ProofEntry back = with(line, slips_of(line, SlipKind::move_reversed, std::nullopt, 3).at(0));
    CHECK(distance(back, {0, 4}).inch() == Approx(5.0990).margin(0.00005));
    CHECK(distance(back, {3, 4}).inch() == Approx(5));
    // Left before up: from corner 1 to corner 3 the same 5 in, from A to corner 2 now 6 and 3: sqrt(45) = 6.7082.
    const ProofEntry swapped = with(line, slips_of(line, SlipKind::moves_swapped, std::nullopt, 1).at(0));
    CHECK(distance(swapped, {0, 2}).inch() == Approx(6.7082).margin(0.00005));
    CHECK(distance(swapped, {1, 3}).inch() == Approx(5));
    CHECK(slips_of(line, SlipKind::rest_other_way, 1).empty());
    CHECK(slips_of(line, SlipKind::wrong_edge, std::nullopt).empty());
}

TEST_CASE("a move that would double back is no slip that anyone meant") {
    // Two moves nearly in one line, then one square to them: the first the other way would be a corner of 180 degrees.
    ProofEntry line = entry_of({}, {});
    line.wire.route = route_through({{0, 0, 0}, {100, 0, 0}, {200, 0.01, 0}, {200, 100, 0}}, RouteForm::moves);
    CHECK(slips_of(line, SlipKind::move_reversed, std::nullopt, 0).empty());
    CHECK(slips_of(line, SlipKind::move_reversed, std::nullopt, 2).size() == 1);
}
