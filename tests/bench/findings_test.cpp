#include "bench/findings.h"

#include <catch2/catch.hpp>
#include <algorithm>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

const Finding* find(const Sheet& sheet, const std::string& code) {
    for (const Finding& finding : sheet.findings)
        if (finding.code == code) return &finding;
    return nullptr;
}

Line good() { return line_of({6, 5, 6}, {{90, 0}, {90, 180}}); }

Fitting flared() {
    Fitting fitting;
    fitting.id = "flare-45-double";
    fitting.flared = true;
    fitting.straight_needed = 1_in;
    fitting.heaviest_wall = 0.71_mm;  // SAE J533 (2024) excerpt, 45 degree double, 3/16 in
    fitting.slide_on = {{"nut", "tube nut", "threads to the end"}};
    return fitting;
}

}  // namespace

TEST_CASE("a line with room everywhere has nothing against it") {
    const Sheet sheet = bend_sheet(good());
    CHECK(sheet.findings.empty());
    CHECK_FALSE(stopped(sheet));
}

TEST_CASE("bends too near each other leave no straight for hook or lever") {
    // Finished radius 0.578: a middle leg of 1.6 leaves 1.6 - 2 * 0.578 = 0.444, the hook needs 0.75.
    const Sheet sheet = bend_sheet(line_of({6, 1.6, 6}, {{90, 0}, {90, 180}}));
    const Finding* finding = find(sheet, "short-straight");
    REQUIRE(finding);
    CHECK(finding->severity == Severity::stop);
    const auto& fact = std::get<NoRoomInBender>(finding->fact);
    CHECK(fact.straight.inch() == Approx(0.444).margin(0.001));
    CHECK(fact.made_neighbour);
    CHECK_FALSE(fact.at_end);
}

TEST_CASE("the pieces slid on need straight beside what the bender holds, with or without a search for the order") {
    // 2 - 0.578 = 1.422 at A: enough for the hook's 0.75 or the lever's 0.9, not with an inch of nut besides.
    Line line = line_of({2, 6}, {{90, 0}});
    CHECK_FALSE(find(bend_sheet(line), "short-straight"));
    line.a.fitting.slide_on = {{"nut", "tube nut", "threads to the end", 1_in}};
    const Sheet sheet = bend_sheet(line);
    const Finding* finding = find(sheet, "short-straight");
    REQUIRE(finding);
    const auto& fact = std::get<NoRoomInBender>(finding->fact);
    CHECK(fact.at_end == End::A);
    CHECK(fact.with_pieces);
    CHECK(fact.needed.inch() == Approx(fact.hook_side ? 1.75 : 1.9));
}

TEST_CASE("a bend too near the tube's end leaves no straight there") {
    // 1 - 0.578 = 0.422 at A, whichever side is put there.
    const Sheet sheet = bend_sheet(line_of({1, 6}, {{90, 0}}));
    const Finding* finding = find(sheet, "short-straight");
    REQUIRE(finding);
    const auto& fact = std::get<NoRoomInBender>(finding->fact);
    CHECK(fact.at_end == End::A);
    CHECK(fact.straight.inch() == Approx(0.422).margin(0.001));
}

TEST_CASE("corners nearer than their bends overlap") {
    // 1.0 - 2 * 0.578 = -0.156
    const Sheet sheet = bend_sheet(line_of({6, 1, 6}, {{90, 0}, {90, 180}}));
    const Finding* finding = find(sheet, "corners-overlap");
    REQUIRE(finding);
    const auto& fact = std::get<CornersOverlap>(finding->fact);
    CHECK(fact.first == 0);
    CHECK(fact.second == 1u);
    CHECK(fact.missing.inch() == Approx(0.156).margin(0.001));
    CHECK_FALSE(find(sheet, "hits-itself"));
}

TEST_CASE("an end needs its straight for flare, nut and sleeve") {
    // 1.5 - 0.578 = 0.922 of straight; 1 in is needed.
    Line line = line_of({1.5, 5, 6}, {{90, 0}, {90, 180}});
    line.a.fitting = flared();
    const Sheet sheet = bend_sheet(line);
    const Finding* finding = find(sheet, "end-too-short");
    REQUIRE(finding);
    CHECK(finding->bend == 0u);
    const auto& fact = std::get<EndTooShort>(finding->fact);
    CHECK(fact.end == End::A);
    CHECK(fact.straight.inch() == Approx(0.922).margin(0.001));
}

TEST_CASE("an end's straight that is too short for fitting and bender is said once, by what lacks more") {
    // 1 - 0.578 = 0.422 of straight at A. The fitting needs 1 in and lacks 0.578; the hook needs 0.75, the lever 0.9.
    Line line = line_of({1, 6}, {{90, 0}});
    line.a.fitting = flared();
    Sheet sheet = bend_sheet(line);
    CHECK(find(sheet, "end-too-short"));
    CHECK_FALSE(find(sheet, "short-straight"));
    // The fitting needs 0.6 in and lacks 0.178: the bender lacks more.
    line.a.fitting.straight_needed = 0.6_in;
    sheet = bend_sheet(line);
    CHECK_FALSE(find(sheet, "end-too-short"));
    REQUIRE(find(sheet, "short-straight"));
    CHECK(stopped(sheet));
    // 1 in left on to be cut off makes room for the bender, none for the fitting.
    line.a.trim = 1_in;
    sheet = bend_sheet(line);
    CHECK(find(sheet, "end-too-short"));
    CHECK_FALSE(find(sheet, "short-straight"));
}

TEST_CASE("too little straight at one end for the fitting, and elsewhere for the bender, is said of both") {
    // 1.5 - 0.578 = 0.922 at A, the fitting needs 1 in; 1.6 - 2 * 0.578 = 0.444 between the bends for the bender.
    Line line = line_of({1.5, 1.6, 6}, {{90, 0}, {90, 180}});
    line.a.fitting = flared();
    const Sheet sheet = bend_sheet(line);
    CHECK(find(sheet, "end-too-short"));
    CHECK(find(sheet, "short-straight"));
}

TEST_CASE("what must be slid on is said, with the bend that traps it") {
    Line line = good();
    line.b.fitting = flared();
    line.b.fitting.slide_on.push_back({"sleeve", "sleeve", "wide end to the flare"});
    const Sheet sheet = bend_sheet(line);
    const Finding* finding = find(sheet, "slide-on");
    REQUIRE(finding);
    CHECK(finding->severity == Severity::note);
    CHECK(finding->bend == 1u);
    CHECK(std::get<TrappedPieces>(finding->fact).pieces == std::vector<std::string>{"tube nut", "sleeve"});
}

TEST_CASE("an angle that the lever cannot be pulled to is beyond the bender, springback counted") {
    Line line = good();
    line.bender.max_angle = 92_deg;  // 90 needs 93.2
    const Sheet sheet = bend_sheet(line);
    const Finding* finding = find(sheet, "angle-beyond-bender");
    REQUIRE(finding);
    CHECK(std::get<AngleBeyondBender>(finding->fact).target == 90_deg);
    line.bender.max_angle = 94_deg;
    CHECK_FALSE(find(bend_sheet(line), "angle-beyond-bender"));
}

TEST_CASE("a radius under the material's least stops, one under the usual warns") {
    Line line = good();
    line.bender.radius = 1.9 * line.tube.od;
    REQUIRE(find(bend_sheet(line), "radius-too-tight"));
    CHECK(find(bend_sheet(line), "radius-too-tight")->severity == Severity::stop);
    line.bender.radius = 2.5 * line.tube.od;
    REQUIRE(find(bend_sheet(line), "radius-too-tight"));
    CHECK(find(bend_sheet(line), "radius-too-tight")->severity == Severity::caution);
    line.bender.radius = 3 * line.tube.od;
    CHECK_FALSE(find(bend_sheet(line), "radius-too-tight"));
}

TEST_CASE("a wall of 0.035 in is too heavy for a double flare on 3/16, 0.028 in is not") {
    // 0.71 mm is 0.02795 in: the printed limit is the rounded 0.028.
    Line line = good();
    line.a.fitting = flared();
    CHECK_FALSE(find(bend_sheet(line), "wall-too-heavy"));
    line.tube.wall = 0.035_in;
    REQUIRE(find(bend_sheet(line), "wall-too-heavy"));
    CHECK(std::get<WallTooHeavy>(find(bend_sheet(line), "wall-too-heavy")->fact).end == End::A);
}

TEST_CASE("a 45 degree single flare is cautioned against on a brake line, and only there") {
    // SAE J512 (1990), scope note: seats in steel are predicated on the double flare; single: the maker's advice.
    Line line = good();
    line.service = Service::brake;
    line.b.fitting = flared();
    CHECK_FALSE(find(bend_sheet(line), "single-flare-on-brake"));
    line.b.fitting.id = "flare-45-single";
    const Sheet sheet = bend_sheet(line);
    const Finding* finding = find(sheet, "single-flare-on-brake");
    REQUIRE(finding);
    CHECK(finding->severity == Severity::caution);
    CHECK(std::get<SingleFlareOnBrake>(finding->fact).end == End::B);
    line.service = Service::fuel;
    CHECK_FALSE(find(bend_sheet(line), "single-flare-on-brake"));
}

TEST_CASE("a tube that comes back through itself is stopped") {
    // A closed square with a leg too many.
    const Sheet sheet = bend_sheet(line_of({4, 5, 5, 5, 4}, {{90, 0}, {90, 0}, {90, 0}, {90, 0}}));
    const Finding* finding = find(sheet, "hits-itself");
    REQUIRE(finding);
    CHECK(finding->severity == Severity::stop);
}

TEST_CASE("a line longer than a stick, where the stick is known") {
    Line line = good();
    CHECK_FALSE(find(bend_sheet(line), "longer-than-stick"));
    line.stick = 12_in;
    REQUIRE(find(bend_sheet(line), "longer-than-stick"));
    CHECK(std::get<LongerThanStick>(find(bend_sheet(line), "longer-than-stick")->fact).stick == 12_in);
}

TEST_CASE("corners of 0 and of more than 170 degrees are degenerate in a corner form, not between straights") {
    REQUIRE(find(bend_sheet(line_of({6, 5, 6}, {{0, 0}, {90, 0}})), "degenerate-corner"));
    REQUIRE(find(bend_sheet(line_of({6, 6}, {{171, 0}})), "degenerate-corner"));
    CHECK_FALSE(find(bend_sheet(line_of({60, 60}, {{170, 0}})), "degenerate-corner"));
    Line straights = line_of({6, 6}, {{175, 0}});
    straights.route.form = RouteForm::straights;
    CHECK_FALSE(find(bend_sheet(straights), "degenerate-corner"));
}

TEST_CASE("a bender of another size is stopped, 4.75 mm tube in a 3/16 groove is not") {
    Line line = good();
    line.tube.od = 4.75_mm;
    CHECK_FALSE(find(bend_sheet(line), "wrong-groove"));
    line.tube.od = 0.25_in;
    CHECK(find(bend_sheet(line), "wrong-groove"));
}

TEST_CASE("a dead straight line and a slight bend are said") {
    CHECK(find(bend_sheet(line_of({12}, {})), "no-bend"));
    CHECK(find(bend_sheet(line_of({6, 6}, {{10, 0}})), "small-angle"));
    CHECK_FALSE(find(bend_sheet(line_of({6, 6}, {{15, 0}})), "small-angle"));
}

TEST_CASE("stops come first") {
    Line line = line_of({1, 6}, {{10, 0}});
    line.a.fitting = flared();
    const Sheet sheet = bend_sheet(line);
    CHECK(std::is_sorted(sheet.findings.begin(), sheet.findings.end(), [](const Finding& a, const Finding& b) { return a.severity < b.severity; }));
    CHECK(sheet.findings.front().severity == Severity::stop);
    CHECK(sheet.findings.back().severity == Severity::note);
}
