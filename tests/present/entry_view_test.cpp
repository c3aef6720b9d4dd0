// The sides of a turn as the clock shows them, against real geometry, and whole screens of a line being entered.

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "present/expect_text.h"
#include "present/screen_view.h"
#include "present/touchables.h"
#include "present/view_text.h"
#include "state/sample_state.h"
#include "tube/centreline.h"
#include "tube/measured.h"
#include "tube/part.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

Offers offers() {
    Offers all;
    all.tubes = {{"3/16 in", {4.7625}, {0.7112}}, {"3/8 in", {9.525}, {0.889}}};
    all.materials = {{"stainless-304", "304 stainless steel, annealed"}, {"steel-low-carbon", "low-carbon steel, annealed"}};
    all.fittings = {{"flare-37-single", "37° single flare"}, {"none", "no fitting"}};
    all.benders = {{"hand-3/16", "3/16 hand bender", {4.7625}}};
    return all;
}

State at_route(const std::string& form = "legs-centre") {
    return touched(State{}, {BookRead{}, DayIs{"2026-11-25"}, OffersAre{offers()}, NewJob{}, Answer{"brake"}, Answer{"0"}, Answer{"stainless-304"}, Answer{"flare-37-single"}, Answer{form}});
}

State at_turn() { return touched(at_route(), {Key{"6"}, Next{}, GiveAngle{{90}}, Key{"6"}, Next{}, GiveAngle{{90}}}); }

/// As if the thing with this id were touched.
State pressed(const State& state, const std::string& id) {
    for (const ButtonView& button : touchables(screen_view(state)))
        if (button.id == id && button.enabled && button.press) return touched(state, {*button.press});
    throw std::runtime_error("nothing to touch is called " + id);
}

/// Where the third leg goes on, as seen from end A along the second: degrees clockwise from the side on which
/// the first leg lies.
double seen_clockwise(const MeasuredRoute& measured) {
    const Part part = part_from(route_from(measured).value(), Length{14}, Length{4.7625});
    const std::vector<Stretch> stretches = centreline(part);
    const Vector3d look = stretches[2].start.along;
    const Vector3d before = -stretches[0].start.along, after = stretches[4].start.along;
    const Vector3d right = look.cross(before);  // to who looks along `look` with `before` up
    const double deg = std::atan2(after.dot(right), after.dot(before)) * 180 / std::numbers::pi;
    return std::round(deg < -0.5 ? deg + 360 : deg);
}

}  // namespace

TEST_CASE("each side of the clock is where the leg goes, seen from end A along the leg with the leg before at the top") {
    for (int clock = 0; clock < 360; clock += 30) {
        const State turned = touched(pressed(at_turn(), "turn-" + std::to_string(clock)), {Key{"5"}, Next{}});
        INFO("turn-" << clock);
        CHECK(seen_clockwise(turned.entry->line().route) == clock);
    }
    // The same by hand: looking along +x with +z up, the right hand is -y. The leg before comes down from +z.
    const auto by_hand = [](double y, double z) { return route_through({{0, 0, 10}, {0, 0, 0}, {10, 0, 0}, {10, y, z}}, RouteForm::points).bends[1].rotation.deg; };
    CHECK(by_hand(0, 10) == Approx(0).margin(1e-9));
    CHECK(by_hand(-10, 0) == Approx(90));
    CHECK(by_hand(10, 0) == Approx(-90));
    CHECK(std::abs(by_hand(0, -10)) == Approx(180));
}

TEST_CASE("what a turn is called says the side that the clock shows") {
    const auto side = [](const std::string& id) {
        const State state = pressed(at_turn(), id);
        return state.entry->line().route.bends[1].rotation;
    };
    CHECK(side("turn-90") == Angle{90});
    CHECK(side("turn-270") == Angle{-90});
    CHECK(side("turn-0") == Angle{0});
    CHECK(side("turn-180") == Angle{180});
}

TEST_CASE("what the finger shows on the clock is where the leg goes once it is taken") {
    for (int clock = 0; clock < 360; clock += 15) {
        const State shown = touched(at_turn(), {TurnTo{{static_cast<double>(clock)}}});
        CHECK(std::get<RouteBody>(screen_view(shown).body).leads == Angle{static_cast<double>(clock)});
        INFO(clock);
        CHECK(seen_clockwise(touched(pressed(shown, "next"), {Key{"5"}, Next{}}).entry->line().route) == clock);
    }
    CHECK(screen_view(touched(at_turn(), {TurnTo{{315}}})).footer.buttons.back().label == "Take 45° left");
}

TEST_CASE("after another tube or bender the line's page says what moves, until something else is changed") {
    // Legs of 10 and 10 round a corner of 90, to the centre. From setback and arc a bend on radius r makes the tube
    // shorter than its legs by (2 - pi/2) r: 20 - 0.4292 * 0.5625 = 19.76 and, on a radius of 1, 19.57; springback moves
    // both by less than 1/64. On a tape of sixteenths 19 3/4 and 19 9/16.
    const Line narrow = line_of({10, 10}, {{90, 0}});
    Line wide = narrow;
    wide.bender.radius = Length{25.4};
    State state = touched(at_route(), {Key{"1"}, Key{"0"}, Next{}, GiveAngle{{90}}, Key{"1"}, Key{"0"}, Next{}, FinishLine{}, DraftKept{"jobs/new-job.json", "", narrow, ""}});
    const auto heading = [](const State& shown) { return std::get<TilesBody>(screen_view(shown).body).heading; };
    CHECK(heading(state).empty());
    state.offers.benders.push_back({"wide", "wide 3/16", {4.7625}});
    state = touched(state, {AskFor{Ask::bender}, Answer{"wide"}, DraftKept{"jobs/new-job.json", "", wide, ""}});
    CHECK(heading(state).rfind("Cut length 19 9/16\", it was 19 3/4\", 1 mark moves by ", 0) == 0);
    CHECK(heading(touched(state, {Undo{}, Back{}, DraftKept{"jobs/new-job.json", "", narrow, ""}})).empty());
    CHECK(heading(touched(state, {TakeBendOut{0}, DraftKept{"jobs/new-job.json", "", wide, ""}})).empty());
}

TEST_CASE("screens of a line being entered") {
    const auto expect_screen = [](const std::string& name, const State& state) { expect_text(name, as_text(screen_view(state))); };
    const State fresh = touched(State{}, {BookRead{}, DayIs{"2026-11-25"}, OffersAre{offers()}, NewJob{}});
    expect_screen("entry-service", fresh);
    expect_screen("entry-tube", touched(fresh, {Answer{"brake"}}));
    expect_screen("entry-form", touched(at_route(), {AskFor{Ask::form}}));
    expect_screen("entry-leg", touched(at_route(), {Key{"6"}, Key{"5/8"}, Key{"+1/16"}}));
    expect_screen("entry-angle", touched(at_route(), {Key{"6"}, Next{}}));
    expect_screen("entry-turn", at_turn());
    expect_screen("entry-turn-flat", touched(at_route(), {AskFor{Ask::form}, Answer{"flat"}, Answer{"legs-inside"}, PickCell{{Cell::What::run, 0}}, Key{"6"}, Next{}, GiveAngle{{90}}, Key{"4"}, Next{}, GiveAngle{{90}}}));
    expect_screen("entry-moves", touched(at_route("moves"), {Key{"1"}, Key{"8"}, GiveWay{MoveWay::forward}, Next{}, Key{"3"}}));
    const State whole = touched(at_route(), {Key{"6"}, Next{}, GiveAngle{{90}}, Key{"4"}, Next{}, FinishLine{}, DraftKept{"jobs/new-job.json", "", std::nullopt, ""}});
    expect_screen("entry-draft", whole);
    expect_screen("entry-job-lines", touched(whole, {TurnPage{1}}));
    expect_screen("entry-about", touched(whole, {AskFor{Ask::about}}));
    expect_screen("entry-word", touched(whole, {AskWord{WordOf::line_name}}));
    expect_screen("entry-word-figures", touched(whole, {AskWord{WordOf::job_note}, TurnPage{1}}));
    expect_screen("entry-points", touched(at_route("points"), {Key{"sign"}, Key{"6"}, Next{}, Key{"4"}, Next{}, Key{"1/2"}}));
    const State files = touched(whole, {AskFor{Ask::points_file}, PointFilesAre{"/home/me/points", {{"frame-run.csv", Unit::mm, ""}, {"old wire.csv", std::nullopt, ""}, {"list.csv", std::nullopt, "list.csv, line 1 has no column x."}}}});
    expect_screen("entry-points-file", files);
    expect_screen("entry-points-unit", touched(files, {Answer{"file-frame-run.csv"}}));
    expect_screen("entry-points-read", touched(files, {Answer{"file-old wire.csv"}, PointsRead{"old wire.csv", Unit::inch, {{Length{0}, Length{0}, Length{0}}, {Length{254}, Length{0}, Length{0}}, {Length{254}, Length{-76.2}, Length{12.7}}}}}));
    expect_screen("entry-remedy", touched(whole, {PickCell{{Cell::What::run, 1}}, DraftKept{"jobs/new-job.json", "", line_of({6, 1.6, 6}, {{90, 0}, {90, 180}}), ""}}));
}

TEST_CASE("a number that the bend can't have is not taken, and the button says why") {
    const State typed = touched(at_route(), {Key{"6"}, Next{}, Key{"keypad"}, Key{"1"}, Key{"8"}, Key{"1"}});
    const auto main = [](const State& state) { return screen_view(state).footer.buttons.back(); };
    CHECK_FALSE(main(typed).enabled);
    CHECK(main(touched(typed, {Key{"back"}})).enabled);
    CHECK(touched(typed, {Next{}}).entry->line().route.bends.empty());
    CHECK_FALSE(main(touched(at_route(), {Key{"0"}})).enabled);
}

}  // namespace tubewright
