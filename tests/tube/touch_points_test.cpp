#include "tube/touch_points.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <random>

#include "tube/centreline.h"

using namespace tubewright;

namespace {

/// Inches and degrees; to the centre.
Wire wire_of(std::vector<double> legs, std::vector<std::pair<double, double>> bends) {
    Wire wire;
    for (const double leg : legs) wire.route.runs.push_back({leg * 25.4});
    for (const auto& [angle, rotation] : bends) wire.route.bends.push_back({{angle}, {rotation}});
    wire.od = {0.25 * 25.4};
    return wire;
}

double inches(const Wire& wire, Span span) { return apart(shape_of(wire, wire.route.measured_to), span).inch(); }

Wire random_wire(std::mt19937& dice) {
    std::uniform_real_distribution<double> leg(2, 20), angle(10, 120), rotation(-179, 180);
    std::vector<double> legs{leg(dice)};
    std::vector<std::pair<double, double>> bends;
    for (int i = 0; i < 6; ++i) {
        legs.push_back(leg(dice));
        bends.emplace_back(angle(dice), i ? rotation(dice) : 0);
    }
    return wire_of(legs, bends);
}

}  // namespace

TEST_CASE("a U, a Z and a corner out of the plane, of legs 6, 4 and 3 in, by Pythagoras") {
    // U: 6 forth, 3 back, 4 aside: sqrt(3^2 + 4^2) = 5. Z: 6 and 3 the same way: sqrt(9^2 + 4^2) = 9.8489.
    // A quarter turn: sqrt(6^2 + 4^2 + 3^2) = 7.8102.
    CHECK(inches(wire_of({6, 4, 3}, {{90, 0}, {90, 0}}), {0, 3}) == Approx(5));
    CHECK(inches(wire_of({6, 4, 3}, {{90, 0}, {90, 180}}), {0, 3}) == Approx(9.8489).margin(0.00005));
    CHECK(inches(wire_of({6, 4, 3}, {{90, 0}, {90, 90}}), {0, 3}) == Approx(7.8102).margin(0.00005));
    CHECK(inches(wire_of({6, 4, 3}, {{90, 0}, {90, 90}}), {1, 3}) == Approx(5));  // 4 and 3 at a square corner
    CHECK(inches(wire_of({6, 4, 3}, {{90, 0}, {90, 90}}), {1, 2}) == Approx(4));
}

TEST_CASE("a 45 degree offset of 12 in between legs of 20 in is 52 in long and 12 high") {
    // Travel 16.9706, advance 20 + 12 + 20 = 52: sqrt(52^2 + 12^2) = 53.3667.
    CHECK(inches(wire_of({20, 16.97056, 20}, {{45, 0}, {45, 180}}), {0, 3}) == Approx(53.3667).margin(0.0001));
}

TEST_CASE("corners touched outside lie half a diameter beyond both outer edges") {
    // 1/4 in tube. An L of 6 and 4 in to the outside: the outside corner is 6 from A along the leg and 1/8 aside:
    // sqrt(36 + 1/64) = 6.0013. In a U of 6, 4, 6 to the outside, corners are as far apart as the leg says: 4.
    Wire wire = wire_of({6, 4}, {{90, 0}});
    wire.route.measured_to = TapeEdge::outside;
    CHECK(inches(wire, {0, 1}) == Approx(6.0013).margin(0.00005));
    wire = wire_of({6, 4, 6}, {{90, 0}, {90, 0}});
    wire.route.measured_to = TapeEdge::outside;
    CHECK(inches(wire, {1, 2}) == Approx(4));
    wire.route.measured_to = TapeEdge::inside;
    CHECK(inches(wire, {1, 2}) == Approx(4));
    // To the inside the legs to the centre are 1/8 longer at each corner: ends of the U 4 1/4 apart.
    CHECK(inches(wire, {0, 3}) == Approx(4.25));
}

TEST_CASE("straights round a half circle of radius 2 in leave the ends 4 in apart, and no corner to touch") {
    Wire wire = wire_of({5, 5}, {{180, 0}});
    wire.route.form = RouteForm::straights;
    wire.radius = {2 * 25.4};
    CHECK(inches(wire, {0, 2}) == Approx(4));
    CHECK_FALSE(can_be_touched(wire.route, 1));
    CHECK(can_be_touched(wire.route, 2));
    // Straights of 5 at a square corner of that radius: 7 to the corner.
    wire.route.bends[0].angle = {90};
    CHECK(inches(wire, {0, 1}) == Approx(7));
}

TEST_CASE("the ends are where the centre line puts them") {
    std::mt19937 dice(20260301);
    for (int i = 0; i < 100; ++i) {
        const Wire wire = random_wire(dice);
        INFO("wire " << i);
        const Part part = part_from(wire.route, Length{1}, wire.od);
        CHECK(inches(wire, {0, 7}) * 25.4 == Approx(far_end(part).at.norm()));
    }
}

TEST_CASE("how a span grows with every entered number is what a small step of it shows") {
    std::mt19937 dice(20260302);
    for (int i = 0; i < 50; ++i) {
        Wire wire = random_wire(dice);
        if (i % 2) wire.route.form = RouteForm::straights, wire.radius = {20};
        const WireShape shape = shape_of(wire, TapeEdge::centre);
        for (const Span span : {Span{0, 7}, Span{1, 4}, Span{2, 7}, Span{0, 2}}) {
            const Eigen::VectorXd growth = growth_of(shape, span);
            const auto stepped = [&](auto change, double step) {
                Wire more = wire, less = wire;
                change(more.route, step);
                change(less.route, -step);
                return (apart(shape_of(more, TapeEdge::centre), span).mm - apart(shape_of(less, TapeEdge::centre), span).mm) / (2 * step);
            };
            constexpr double deg = 0.01, rad = 3.14159265358979323846 / 180;
            for (std::size_t k = 0; k < 7; ++k) {
                INFO("wire " << i << ", points " << span.from << " " << span.to << ", place " << k);
                CHECK(growth[static_cast<Eigen::Index>(k)] == Approx(stepped([&](Route& r, double s) { r.runs[k].mm += s; }, 0.01)).margin(1e-4));
                // The corner at the far end of a route of straights moves along its own leg as its angle grows.
                if (k == 6) continue;
                const bool corner = wire.route.form == RouteForm::straights && (k + 1 == span.to || k + 1 == span.from);
                if (!corner) CHECK(growth[static_cast<Eigen::Index>(7 + k)] == Approx(stepped([&](Route& r, double s) { r.bends[k].angle.deg += s; }, deg) / rad).margin(0.02));
                if (k > 0) CHECK(growth[static_cast<Eigen::Index>(13 + k)] == Approx(stepped([&](Route& r, double s) { r.bends[k].rotation.deg += s; }, deg) / rad).margin(0.02));
            }
        }
    }
}

TEST_CASE("a mirror image differs nowhere, a bend the other way does") {
    const WireShape right = shape_of(wire_of({6, 4, 3, 5}, {{90, 0}, {90, 90}, {45, 30}}), TapeEdge::centre);
    CHECK(most_different(right, shape_of(wire_of({6, 4, 3, 5}, {{90, 0}, {90, -90}, {45, -30}}), TapeEdge::centre)).mm == Approx(0).margin(1e-9));
    CHECK(most_different(right, shape_of(wire_of({6, 4, 3, 5}, {{90, 0}, {90, 90}, {45, -150}}), TapeEdge::centre)).inch() > 1);
}
