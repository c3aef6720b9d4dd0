#include "bench/sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numbers>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Line crossover() {
    Line line = line_of({6.5, 4.25, 12}, {{90, 0}, {45, 90}});
    line.a.allowance = 0.1_in;
    line.b.allowance = 0.1_in;
    line.b.trim = 0.5_in;
    return line;
}

}  // namespace

TEST_CASE("the sheet of a two-bend line, step by step") {
    // The prior of 3/16 x .028 304 on 9/16: growth 0.02765, zero 0.727, worked out apart from this program.
    // Finished radius 0.5625 * 1.02765 = 0.57805; setbacks 0.57805 and 0.23944.
    //   straights: 5.92195, 3.43251, 11.76056;  arcs 0.90800, 0.45400
    //   cut: 0.1 + 5.92195 + 0.90800 + 3.43251 + 0.45400 + 11.76056 + 0.6 = 23.17702
    // Bend 2's middle (10.59) lies nearer to the tube's (11.59) than bend 1's (6.48): it comes first, and the
    // work goes on towards A with B held.
    const Sheet sheet = bend_sheet(crossover());
    REQUIRE(sheet.layout);
    CHECK(sheet.layout->cut_length.inch() == Approx(23.17702).margin(2e-5));
    REQUIRE(sheet.steps.size() == 2);

    const Step& first = sheet.steps[0];
    CHECK(first.bend == 1);
    CHECK(first.target == 45_deg);
    CHECK(first.set.deg == Approx(45 * 1.02765 + 0.727).margin(0.001));
    CHECK(first.finished_radius.inch() == Approx(0.57805).margin(1e-5));
    CHECK_FALSE(first.neighbour);

    const Step& second = sheet.steps[1];
    CHECK(second.bend == 0);
    CHECK(second.hook == End::B);
    // B held, mark "0" at the start of the bend on B's side: 0.1 + 5.92195 + 0.90800 from A
    CHECK(second.mark_from == End::A);
    CHECK(second.mark.inch() == Approx(6.92995).margin(2e-5));
    CHECK(sheet.line.bender.marks[second.align_to].name == "0");
    CHECK(second.index_roll == Angle{0});
    REQUIRE(second.neighbour);
    CHECK(second.neighbour->bend == 1);
    // Bend 2 lies +90 from bend 1 about A to B; seen along B to A that is -90.
    CHECK(second.neighbour->leg_roll == Angle{-90});
    CHECK_FALSE(stopped(sheet));
}

TEST_CASE("the tally ends with the whole tube formed") {
    const Sheet sheet = bend_sheet(crossover());
    // After bend 2: its arc and the straight with the waste to B: 0.45400 + 11.76056 + 0.6
    CHECK(sheet.steps[0].formed.inch() == Approx(12.81456).margin(2e-5));
    CHECK(sheet.steps[1].formed == sheet.layout->cut_length);
    for (const Step& step : sheet.steps) CHECK((step.formed + step.left).mm == Approx(sheet.layout->cut_length.mm));
    CHECK(formed_length(sheet, 0).mm == 0);
}

TEST_CASE("the bench's choices: the other end of the tape, another mark, one end always held") {
    SheetChoice choice;
    choice.mark = "L";
    choice.mark_from = End::B;
    choice.hook = End::A;
    const Sheet sheet = bend_sheet(crossover(), choice);
    const Step& step = sheet.steps[1];
    CHECK(step.hook == End::A);
    CHECK(sheet.line.bender.marks[step.align_to].name == "L");
    // From A: 0.1 + 5.92195 + 0.5625 = 6.58445; from B: 23.17702 - 6.58445
    CHECK(step.mark_from == End::B);
    CHECK(step.mark.inch() == Approx(16.59257).margin(3e-5));
    CHECK(step.neighbour->leg_roll == Angle{90});
}

TEST_CASE("a mark that would lie beyond the end of the tube gives way to one that can be inked") {
    // One bend with a quarter inch of straight after it; L lies 2 in on, on this bender.
    Line line = line_of({6, 1}, {{30, 0}});
    line.bender.marks = {{"far", 2_in}, {"near", 0.1_in}};
    const Sheet sheet = bend_sheet(line, {"far", std::nullopt, End::A, End::A});
    CHECK(line.bender.marks[sheet.steps[0].align_to].name == "near");
}

TEST_CASE("where no mark falls on straight tube, that is a stop") {
    // Legs of 5 in, tube of about 9.8: a line 200 mm (7.9 in) past the bend's start lies beyond the end.
    Line line = line_of({5, 5}, {{90, 0}});
    line.bender.marks = {{"far", 200_mm}};
    const Sheet sheet = bend_sheet(line);
    CHECK(stopped(sheet));
    CHECK(std::any_of(sheet.findings.begin(), sheet.findings.end(), [](const Finding& f) { return f.code == "mark-off-straight" && f.bend == 0u; }));
}

TEST_CASE("index line and neighbour always agree") {
    // Both are rolls of directions in one section: their difference is the neighbour's own direction.
    const Sheet sheet = bend_sheet(line_of({5, 5, 5, 5}, {{60, 0}, {30, 100}, {90, -35}}));
    for (const Step& step : sheet.steps) {
        if (!step.neighbour) continue;
        const Angle direction = direction_in_section(sheet.layout->part, step.neighbour->bend);
        const Angle turned = step.hook == End::A ? direction : -direction;
        CHECK(wrapped(step.neighbour->leg_roll - step.index_roll - turned).deg == Approx(0).margin(1e-9));
    }
}

namespace {

/// 100, a bend, 100, a square bend in the same plane, 100 mm; held at A, so that bend 1 comes first.
Sheet past_a_bend_of(double angle_deg) {
    Line line = line_of({4, 4, 4}, {{angle_deg, 0}, {90, 0}});
    line.route.form = RouteForm::straights;
    line.bender.max_angle = {360};
    SheetChoice choice;
    choice.order = {{0, End::A}, {1, End::A}};
    return bend_sheet(line, choice);
}

}  // namespace

TEST_CASE("past a bend of more than 180 degrees the leg points to the other side") {
    // Heading along x and turning left. After 90 one heads along y, left is -x, and the leg back to A leads to -x: to the
    // swing. After 270 one heads along -y, left is +x, and the leg still leads to -x: away from the swing.
    CHECK(past_a_bend_of(90).steps[1].neighbour->leg_roll == Angle{0});
    CHECK(past_a_bend_of(170).steps[1].neighbour->leg_roll == Angle{0});
    CHECK(past_a_bend_of(190).steps[1].neighbour->leg_roll == Angle{180});
    CHECK(past_a_bend_of(270).steps[1].neighbour->leg_roll == Angle{180});
    CHECK(past_a_bend_of(350).steps[1].neighbour->leg_roll == Angle{180});
    for (const double angle : {90.0, 190.0, 270.0}) CHECK(past_a_bend_of(angle).steps[1].index_roll == Angle{0});
}

TEST_CASE("the leg past a U-turn has no side: the top line is turned instead") {
    for (const double angle : {178.5, 180.0, 181.5}) CHECK_FALSE(past_a_bend_of(angle).steps[1].neighbour);
    CHECK(past_a_bend_of(177).steps[1].neighbour);
    CHECK(past_a_bend_of(183).steps[1].neighbour);
}

TEST_CASE("beside a U-turn the leg on the other side is turned against") {
    Line line = line_of({4, 4, 4, 4}, {{180, 0}, {60, 90}, {45, 30}});
    line.route.form = RouteForm::straights;
    SheetChoice choice;
    choice.order = {{0, End::A}, {2, End::A}, {1, End::A}};
    const Sheet sheet = bend_sheet(line, choice);
    REQUIRE(sheet.steps[2].neighbour);
    CHECK(sheet.steps[2].neighbour->bend == 2);
    CHECK(sheet.steps[2].neighbour->leg_roll == Angle{30});
}

TEST_CASE("a corner too sharp to lay out gives no steps") {
    const Sheet sheet = bend_sheet(line_of({5, 5}, {{175, 0}}));
    CHECK_FALSE(sheet.layout);
    CHECK(sheet.steps.empty());
    CHECK(stopped(sheet));
}
