#include "bench/findings.h"

#include <catch2/catch.hpp>
#include <algorithm>
#include <cmath>
#include <random>

#include "bench/remedy.h"
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

namespace {

Shop shop() { return {{}, {0.71_mm, 0.89_mm}, {"flare-45-double", "flare-45-single"}, Length{25.4 / 16}}; }

std::optional<Remedy> remedy_for(const Sheet& sheet, const std::string& code, const Shop& from = shop()) {
    const auto all = remedies(sheet, from);
    REQUIRE(all.size() == sheet.findings.size());
    for (std::size_t i = 0; i < all.size(); ++i)
        if (sheet.findings[i].code == code) return all[i];
    FAIL("no finding " << code);
    return std::nullopt;
}

}  // namespace

TEST_CASE("a straight that lacks something is made longer by that, up to the next sixteenth") {
    // 0.444 straight (as above), the hook wants 0.75: 0.306 is missing, and 5/16 is 0.3125. The lever wants 0.9: then
    // 0.456 would be, and 1/2. Whichever it is in the order of work, no less does.
    const Sheet sheet = bend_sheet(line_of({6, 1.6, 6}, {{90, 0}, {90, 180}}));
    const auto remedy = remedy_for(sheet, "short-straight");
    REQUIRE(remedy);
    const auto& longer = std::get<LongerStraight>(*remedy);
    CHECK(longer.straight == 1);
    const auto& fact = std::get<NoRoomInBender>(find(sheet, "short-straight")->fact);
    CHECK(longer.by.inch() == Approx(fact.needed.inch() == Approx(0.75) ? 5.0 / 16 : 1.0 / 2));
    Line mended = sheet.line;
    mended.route.runs[1] += longer.by;
    CHECK_FALSE(stopped(bend_sheet(mended)));
    mended.route.runs[1] -= Length{25.4 / 16};
    CHECK(stopped(bend_sheet(mended)));
}

TEST_CASE("one longer leg makes up for fitting and bender both, and is the same for either finding") {
    // Corners that overlap leave no room for the bender either.
    const Sheet sheet = bend_sheet(line_of({6, 1, 6}, {{90, 0}, {90, 180}}));
    const auto overlap = remedy_for(sheet, "corners-overlap"), room = remedy_for(sheet, "short-straight");
    REQUIRE(overlap);
    CHECK(overlap == room);
    Line mended = sheet.line;
    mended.route.runs[1] += std::get<LongerStraight>(*overlap).by;
    CHECK_FALSE(stopped(bend_sheet(mended)));
}

TEST_CASE("of random lines each straight that is offered longer takes its finding away, and leaves fewer stops") {
    std::mt19937 dice(20261128);
    std::uniform_real_distribution<double> leg(0.6, 4), angle(20, 150), turn(-170, 180);
    int offered = 0;
    for (int i = 0; i < 150; ++i) {
        Line line = line_of({leg(dice), leg(dice), leg(dice), leg(dice)}, {{angle(dice), 0}, {angle(dice), turn(dice)}, {angle(dice), turn(dice)}});
        line.a.fitting = flared();
        const Sheet sheet = bend_sheet(line);
        const auto all = remedies(sheet, shop());
        for (std::size_t f = 0; f < all.size(); ++f) {
            const auto* longer = all[f] ? std::get_if<LongerStraight>(&*all[f]) : nullptr;
            if (!longer) continue;
            ++offered;
            Line then = line;
            then.route.runs[longer->straight] += longer->by;
            const Sheet after = bend_sheet(then);
            const auto stops = [](const Sheet& one) { return std::count_if(one.findings.begin(), one.findings.end(), [](const Finding& x) { return x.severity == Severity::stop; }); };
            INFO("line " << i << ", " << sheet.findings[f].code);
            CHECK(stops(after) < stops(sheet));
            CHECK(std::none_of(after.findings.begin(), after.findings.end(), [&](const Finding& x) { return x.code == sheet.findings[f].code && x.bend == sheet.findings[f].bend; }));
            CHECK(std::abs(longer->by.inch() * 16 - std::round(longer->by.inch() * 16)) < 1e-6);
        }
    }
    CHECK(offered > 100);
}

TEST_CASE("a bend beyond the lever, or too tight, is offered the first bender that can do it, and none that can't") {
    Line line = line_of({6, 6}, {{120, 0}});
    line.bender.max_angle = {90};
    Shop from = shop();
    Bender further = small_bender(), wide = small_bender();
    further.id = "further";
    further.name = "3/16 long lever";
    wide.id = "wide";
    wide.tube_od = 1_in;  // no groove for this tube
    from.benders = {line.bender, wide, further};
    CHECK(remedy_for(bend_sheet(line), "angle-beyond-bender", from) == Remedy{OtherBender{2, "3/16 long lever"}});
    from.benders.pop_back();
    CHECK_FALSE(remedy_for(bend_sheet(line), "angle-beyond-bender", from));
}

TEST_CASE("each has its one touch: a wall too heavy for the flare, a single flare on brake line, a corner that is none") {
    Line line = good();
    line.a.fitting = flared();
    line.tube.wall = 0.89_mm;
    CHECK(remedy_for(bend_sheet(line), "wall-too-heavy") == Remedy{OtherWall{0.71_mm}});
    Line single = good();
    single.service = Service::brake;
    single.b.fitting.id = "flare-45-single";
    CHECK(remedy_for(bend_sheet(single), "single-flare-on-brake") == Remedy{OtherFitting{End::B, "flare-45-double"}});
    CHECK(remedy_for(bend_sheet(line_of({6, 5, 6}, {{90, 0}, {0, 0}})), "degenerate-corner") == Remedy{BendOut{1}});
    CHECK_FALSE(remedy_for(bend_sheet(line_of({6, 5, 6}, {{90, 0}, {175, 0}})), "degenerate-corner"));
}
