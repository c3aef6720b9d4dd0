#include "bench/handling.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

using When = Obstacle::When;

/// A bender whose radius and holding lengths are round numbers, without springback, so that places can be
/// worked in the head: 6 mm tube on a 20 mm form, 25 mm held before the bend and 25 past it.
Line easy_line(std::vector<double> straights_mm, std::vector<std::pair<double, double>> bends_deg, std::vector<Solid> body = {}) {
    Line line = line_of({}, bends_deg);
    line.tube.od = 6_mm;
    line.bender.tube_od = 6_mm;
    line.bender.radius = 20_mm;
    line.bender.hook_straight = line.bender.lever_straight = 25_mm;
    line.bender.body = std::move(body);
    line.route.form = RouteForm::straights;
    for (const double straight : straights_mm) line.route.runs.push_back({straight});
    return line;
}

std::optional<Obstacle> in_the_way(const Line& line, std::uint64_t made, const Placing& placing, const Springback& springback = {}) {
    Handling handling(layout(line, springback), line.tube.od, line.bender, line.bender.set_up, springback);
    const auto found = handling.obstacle(made, placing);
    CHECK(handling.is_free(made, placing) == !found);
    return found;
}

constexpr std::uint64_t bend_1 = 1, bend_2 = 2;

}  // namespace

TEST_CASE("a free end that points down hits the bench top, and by how much") {
    // The first bend is made and its leg of 100 points down (rotation 90 between the two): the leg's end is
    // 20 + 100 below, as far as the bench top goes 90 below: 120 + 3 (its round end) - 90 = 33 too far.
    const Solid top{"bench top", Stands::bench, HalfSpace{{0, 0, -90}, {0, 0, -1}}};
    const Line line = easy_line({100, 60, 100}, {{90, 0}, {90, 90}}, {top});
    const auto down = in_the_way(line, bend_1, {1, End::A});
    REQUIRE(down);
    CHECK(down->when == When::laid_in);
    CHECK(down->solid == 0);
    CHECK(down->stretch == 0);
    CHECK(down->depth.mm == Approx(33).margin(0.2));
    // Held at the other end, the made leg is on the lever side and points the other way: up.
    CHECK_FALSE(in_the_way(line, bend_1, {1, End::B}));
    // Nothing made yet, nothing hangs down; and a bench top out of reach is none.
    CHECK_FALSE(in_the_way(line, 0, {1, End::A}));
    Line high = line;
    high.bender.body[0].shape = HalfSpace{{0, 0, -130}, {0, 0, -1}};
    CHECK_FALSE(in_the_way(high, bend_1, {1, End::A}));
    // Turned over, with the hook on the right, the same leg points up.
    Line over = line;
    over.bender.set_up.hook = HookHand::right;
    CHECK_FALSE(in_the_way(over, bend_1, {1, End::A}));
}

TEST_CASE("a bench solid stays where it is when the bender stands upright") {
    // Swing up: the tube's plane is upright, and 180 degrees of swing go over the top. Swing down: into the bench.
    const Solid top{"bench top", Stands::bench, HalfSpace{{0, 0, -90}, {0, 0, -1}}};
    Line line = easy_line({100, 150}, {{90, 0}}, {top});
    line.bender.set_up.swing = Swing::up;
    CHECK_FALSE(in_the_way(line, 0, {0, End::A}));
    line.bender.set_up.swing = Swing::down;
    const auto hit = in_the_way(line, 0, {0, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::swept);
    CHECK(hit->stretch == 2);
    // At 90 degrees the end lies 20 + 150 down: 170 + 3 - 90.
    CHECK(hit->depth.mm == Approx(83).margin(0.5));
    // The tube past the arc is L = 181.42 long; its end lies 20 (1 - cos t) + (181.42 - 20 t) sin t down.
    // It comes within 1 mm of the bench at 86 down: t = 29.3 degrees (0.5117 rad: 2.56 + 171.18 x 0.4897 = 86.4).
    CHECK(hit->lever.deg == Approx(29.1).margin(0.4));
}

TEST_CASE("a U-turn swings its far leg into the handle of the form") {
    // The handle runs back from the form, 30 above the tube's plane, between the U-turn's two legs 40 apart.
    const Solid handle{"handle of the form", Stands::fixed, Cylinder{{-40, 20, 30}, {-300, 20, 30}, 5_mm}};
    const Line line = easy_line({100, 100, 60}, {{180, 0}, {90, 90}}, {handle});
    CHECK_FALSE(in_the_way(line, 0, {0, End::A}));
    // With a quarter bend up at its end, 120 past the U-turn, that end comes down at 40 off the axis, beside the
    // handle. A handle further out stands where it passes.
    CHECK_FALSE(in_the_way(line, bend_2, {0, End::A}));
    Line crossed = line;
    crossed.bender.body[0].shape = Cylinder{{-40, 60, 30}, {-300, 60, 30}, 5_mm};
    const auto hit = in_the_way(crossed, bend_2, {0, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::swept);
    CHECK(hit->solid == 0);
    CHECK(hit->stretch == 4);
    CHECK(hit->lever > 90_deg);
    CHECK(hit->lever < 180_deg);
}

TEST_CASE("what turns with the lever meets the tube on the hook side") {
    // The made bend's leg hangs down 60 + 20 back from the start of the bend in hand. Seen from the form's centre at
    // (0, 20) it stands at (-80, -20): 82.46 away, 14.04 degrees past straight back.
    // A knob under the lever, as far away, 40 degrees towards the swing: the two come within a millimetre when
    // their middles are 3 + 5 + 1 apart, 2 asin(4.5 / 82.46) = 6.26 degrees: 180 + 14.04 - 40 - 6.26 = 147.8.
    const double away = std::hypot(80, 20), turned = (40_deg).rad();
    const Eigen::Vector3d at(away * std::cos(turned), 20 + away * std::sin(turned), 0);
    const Solid knob{"knob", Stands::lever, Cylinder{at - Eigen::Vector3d(0, 0, 30), at - Eigen::Vector3d(0, 0, 70), 5_mm}};
    const auto hit = in_the_way(easy_line({100, 60, 100}, {{90, 0}, {170, 90}}, {knob}), bend_1, {1, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::swept);
    CHECK(hit->stretch == 0);
    CHECK(hit->lever.deg == Approx(147.8).margin(0.6));
    CHECK_FALSE(in_the_way(easy_line({100, 60, 100}, {{90, 0}, {145, 90}}, {knob}), bend_1, {1, End::A}));
}

TEST_CASE("a two-inch jog: the second bend is free, unless a plate stands where the made leg lies") {
    // Offset 50.8 with two bends of 45 degrees on a 20 radius: 50.8 / sin 45 - 2 x 20 tan 22.5 = 55.27 between them.
    // With A on the hook the made leg slants away against the swing: from 5.86 off the axis at 69.4 back it comes
    // through the plate, 51 to 60 off, at 114 to 123 back.
    Line jog = easy_line({150, 55.27, 150}, {{45, 0}, {45, 180}});
    CHECK_FALSE(in_the_way(jog, bend_1, {1, End::A}));
    CHECK_FALSE(in_the_way(jog, bend_1, {1, End::B}));
    jog.bender.body = {{"plate", Stands::fixed, Block{{-150, -60, -20}, {-90, -51, 20}}}};
    const auto hit = in_the_way(jog, bend_1, {1, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::laid_in);
    CHECK(hit->stretch == 0);
    // Right through: half the plate's 9 and the tube's 3.
    CHECK(hit->depth.mm == Approx(7.5).margin(0.01));
    CHECK_FALSE(in_the_way(jog, bend_1, {1, End::B}));
}

namespace {

/// A form on a foot that stands on a floor, and the bar of a press frame that goes over the top where it is asked for.
std::vector<Solid> form_on_foot(bool bar) {
    std::vector<Solid> body{{"form", Stands::fixed, Cylinder{{0, 20, -5}, {0, 20, 5}, 14_mm}}, {"foot", Stands::fixed, Cylinder{{0, 20, -200}, {0, 20, -5}, 4_mm}},
                            {"floor", Stands::bench, HalfSpace{{0, 0, -200}, {0, 0, -1}}}};
    if (bar) {
        body.push_back({"pillar", Stands::fixed, Cylinder{{0, 20, 5}, {0, 20, 40}, 4_mm}});
        body.push_back({"bar", Stands::fixed, Block{{-300, 10, 40}, {300, 30, 50}}});
    }
    return body;
}

std::uint64_t all_before(std::size_t bend) { return (std::uint64_t{1} << bend) - 1; }

}  // namespace

TEST_CASE("a closed frame goes over the top of a form on a foot, but not where a bar closes that way") {
    // Four corners of 90 degrees; its two ends come to lie 10 apart on the last side: 30 + 10 + 20 = 60.
    const std::vector<double> sides{30, 60, 60, 60, 20};
    const std::vector<std::pair<double, double>> corners{{90, 0}, {90, 0}, {90, 0}, {90, 0}};
    const Line open = easy_line(sides, corners, form_on_foot(false)), barred = easy_line(sides, corners, form_on_foot(true));
    for (std::size_t bend = 0; bend < 4; ++bend) CHECK_FALSE(in_the_way(open, all_before(bend), {bend, End::A}));
    // Three sides of the frame reach round the form before the last corner is made.
    const auto hit = in_the_way(barred, all_before(3), {3, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::laid_in);
    REQUIRE(hit->solid);
    CHECK_FALSE(in_the_way(barred, 0, {0, End::A}));
}

TEST_CASE("a coil of twelve corners grows above the form, but not down round its foot") {
    // A turn of 10 degrees at each corner lifts the coil by 100 sin 5 = 8.7 for each side of 100, 35 for a whole round.
    // With A on the hook and a turn against the hand of the screw the made rounds lie above; the other way, below.
    const auto coil = [](double turn) {
        std::vector<std::pair<double, double>> corners(12, {90, turn});
        corners[0].second = 0;
        return easy_line(std::vector<double>(13, 60), corners, form_on_foot(false));
    };
    const Line up = coil(-10), down = coil(10);
    std::size_t first_blocked = 12;
    for (std::size_t bend = 0; bend < 12; ++bend) {
        INFO("corner " << bend + 1);
        CHECK_FALSE(in_the_way(up, all_before(bend), {bend, End::A}));
        if (first_blocked == 12 && in_the_way(down, all_before(bend), {bend, End::A})) first_blocked = bend;
    }
    // The fifth corner closes the first round: from the fourth on, three sides lie round the foot.
    CHECK(first_blocked >= 3);
    CHECK(first_blocked <= 5);
}

TEST_CASE("with nothing but itself in the way, a coil wound too tight says which stretches meet") {
    std::vector<std::pair<double, double>> corners(6, {90, 1});
    corners[0].second = 0;
    const Line coil = easy_line(std::vector<double>(7, 60), corners);
    // The first three corners made bring end A round to (20, 20), level with the form's centre, and about 3 under the plane.
    // The line of the swung tube passes it at 20 (1 - sin t); 3 + 3 + 1 mm apart, 6.3 of them in the plane: t = 43.2.
    // There the tube is 20 t + 20 cos t = 29.7 past the start, on the stretch of 31.4 that the bend will take.
    const auto hit = in_the_way(coil, all_before(3), {3, End::A});
    REQUIRE(hit);
    CHECK(hit->when == When::swept);
    CHECK_FALSE(hit->solid);
    CHECK(hit->lever.deg == Approx(43.2).margin(1.5));
    CHECK(hit->stretch == 7);
    CHECK(hit->other == 0);
    // At 90 the two lie one above the other: 6 - 3.
    CHECK(hit->depth.mm == Approx(3).margin(0.6));
    for (std::size_t bend = 0; bend < 3; ++bend) CHECK_FALSE(in_the_way(coil, all_before(bend), {bend, End::A}));
}

TEST_CASE("a side that runs to the tube's end needs room for its loose pieces besides hook or follower") {
    Line line = easy_line({100, 60, 100}, {{90, 0}, {90, 90}});
    line.bender.lever_straight = 30_mm;
    line.b.fitting.slide_on = {{"nut", "tube nut", "", 20_mm}, {"sleeve", "sleeve", "", 9_mm}};
    CHECK(stack_length(line.b.fitting) == 29_mm);
    CHECK(straight_needed(line, {1, End::A}, true, true) == 25_mm);
    CHECK(straight_needed(line, {1, End::A}, false, true) == 59_mm);
    CHECK(straight_needed(line, {1, End::A}, false, false) == 30_mm);
    CHECK(straight_needed(line, {1, End::B}, true, true) == 54_mm);
}
