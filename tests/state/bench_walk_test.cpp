#include <Eigen/Core>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include <cmath>

#include "state/sample_state.h"

namespace tubewright {
using namespace literals;

namespace {

Length cut_length(const State& state) { return sheet_in_hand(state)->layout->cut_length; }
Length on_stick(const State& state) { return left_in_use(state.work); }

}  // namespace

TEST_CASE("a job on the shelf opens, and its first line comes to the bench") {
    State state = job_open();
    const StateStep step = apply(state, OpenJob{"jobs/trailer.json"});
    REQUIRE(step.requests.size() == 1);
    CHECK(std::get<ReadJob>(step.requests[0]).path == "jobs/trailer.json");
    CHECK(apply(state, OpenJob{"jobs/other.json"}).requests.empty());
    CHECK(state.looks.screen == Screen::lines);
    CHECK(state.sheets.size() == 4);

    state = touched(state, {OpenLine{"axle crossover"}});
    CHECK(state.looks.screen == Screen::line);
    state = touched(state, {Next{}});
    CHECK(state.looks.screen == Screen::bench);
    CHECK(work_in_hand(state).stage == Stage::prepare);
}

TEST_CASE("preparing is passed only with every tick, and cuts the tube off the stick") {
    State state = at_prepare();
    // square, deburr, and a nut and a sleeve for each end; the fuel sentence is not for brakes.
    REQUIRE(tick_items(state, TickList::prepare).size() == 6);
    CHECK(tick_items(state, TickList::prepare)[2].id == "slide-A-nut");
    CHECK(touched(state, {Next{}}).work == state.work);

    State missing_one = all_ticked(state);
    missing_one = touched(missing_one, {Tick{"prepare-deburr"}});  // a second touch takes it off
    CHECK(ticks_missing(missing_one, TickList::prepare) == 1);
    CHECK(work_in_hand(touched(missing_one, {Next{}})).stage == Stage::prepare);

    state = touched(all_ticked(state), {Next{}});
    CHECK(work_in_hand(state).stage == Stage::mark_out);
    CHECK(work_in_hand(state).cut);
    CHECK(work_in_hand(state).cut_length == cut_length(state));
    CHECK((on_stick(state) + cut_length(state)).mm == Approx(6096).margin(0.001));
}

TEST_CASE("a stick that is unknown or too short cuts nothing") {
    State none = all_ticked(touched(job_open(), {OpenLine{"axle crossover"}, Next{}}));
    CHECK(work_in_hand(touched(none, {Next{}})).stage == Stage::prepare);
    State shorter = all_ticked(at_prepare("axle crossover", 12));
    CHECK(work_in_hand(touched(shorter, {Next{}})).stage == Stage::prepare);
    CHECK_FALSE(stick_standing(shorter).enough);

    // The 12 inches are kept when a new stick is taken.
    State longer = touched(shorter, {NewStick{inches(100)}});
    CHECK(beside_in_use(longer.work) == std::vector<Length>{to_the_micrometre(inches(12))});
    CHECK(work_in_hand(touched(longer, {Next{}})).stage == Stage::mark_out);
}

TEST_CASE("a fitting offcut becomes the stick, and the old stick becomes an offcut") {
    State state = touched(at_prepare("axle crossover", 12), {NewStick{inches(60)}, NewStick{inches(10)}});
    // 12 and 60 lie on the rack now, 10 is in use; only 60 is long enough for the 23-odd inches.
    REQUIRE(fitting_offcuts(state).size() == 1);
    CHECK(measured(fitting_offcuts(state)[0].length).inch() == Approx(60));
    state = touched(state, {TakeOffcut{fitting_offcuts(state)[0].piece}});
    CHECK(on_stick(state).inch() == Approx(60));
    CHECK(beside_in_use(state.work) == std::vector<Length>{to_the_micrometre(inches(12)), to_the_micrometre(inches(10))});
}

TEST_CASE("each bend goes through mark, turn, pull and check, and a good reading makes it") {
    State state = at_first_bend();
    CHECK(work_in_hand(state).move == Move::mark);
    state = touched(state, {Next{}});
    CHECK(work_in_hand(state).move == Move::turn);
    state = touched(state, {Next{}});
    CHECK(work_in_hand(state).move == Move::pull);
    state = touched(state, {Next{}});
    CHECK(work_in_hand(state).move == Move::check);
    CHECK(work_in_hand(state).pulls == 1);
    CHECK(touched(state, {Next{}}).work == state.work);  // nothing typed yet

    const Angle target = step_in_hand(state)->target;
    const std::size_t bend = step_in_hand(state)->bend;
    state = reading(state, std::to_string(static_cast<int>(target.deg)));
    REQUIRE(work_in_hand(state).made.size() == 1);
    CHECK(work_in_hand(state).made[0].bend == bend);
    CHECK(work_in_hand(state).made[0].measured == target);
    CHECK(work_in_hand(state).step == 1);
    CHECK(work_in_hand(state).move == Move::mark);
}

TEST_CASE("half a degree off is right, a whole one is not") {
    CHECK(verdict(90_deg, 90.5_deg) == Verdict::right);
    CHECK(verdict(90_deg, 89.5_deg) == Verdict::right);
    CHECK(verdict(90_deg, 91_deg) == Verdict::over);
    CHECK(verdict(90_deg, 89_deg) == Verdict::under);
}

TEST_CASE("an under-bent bend is pulled again, by what is missing and its springback") {
    State state = at_check(at_first_bend());
    const Step step = *step_in_hand(state);
    const double growth = sheet_in_hand(state)->springback.growth;
    state = reading(state, std::to_string(static_cast<int>(step.target.deg) - 2));
    CHECK(work_in_hand(state).made.empty());
    CHECK(work_in_hand(state).last_reading->deg == Approx(step.target.deg - 2));

    state = touched(state, {PullAgain{}});
    CHECK(work_in_hand(state).move == Move::pull);
    // The lever was said to stop at the half degree below the set: set again = that + 2 * (1 + growth)
    CHECK(work_in_hand(state).pull_again->deg == Approx(std::floor(step.set.deg * 2) / 2 + 2 * (1 + growth)));

    // Back shows the reading that asked for it; nothing measured is lost.
    const State back = touched(state, {Back{}});
    CHECK(work_in_hand(back).move == Move::check);
    CHECK(work_in_hand(back).last_reading->deg == Approx(step.target.deg - 2));
    CHECK_FALSE(work_in_hand(back).pull_again);

    state = reading(touched(state, {Next{}}), std::to_string(static_cast<int>(step.target.deg)));
    REQUIRE(work_in_hand(state).made.size() == 1);
    CHECK(work_in_hand(state).made[0].pulls == 2);
    CHECK(work_in_hand(state).made[0].set.deg == Approx(std::floor(step.set.deg * 2) / 2 + 2 * (1 + growth)));
}

TEST_CASE("an over-bent bend is kept knowingly or given up, never pulled") {
    State state = at_check(at_first_bend());
    const double target = step_in_hand(state)->target.deg;
    state = reading(state, std::to_string(static_cast<int>(target) + 2));
    CHECK(work_in_hand(state).made.empty());
    CHECK(touched(state, {PullAgain{}}).work == state.work);
    CHECK(touched(state, {PassCheck{}}).work == state.work);
    CHECK(touched(state, {Next{}}).work == state.work);
    const State kept = touched(state, {KeepBend{}});
    REQUIRE(work_in_hand(kept).made.size() == 1);
    CHECK(work_in_hand(kept).made[0].kept_over);
    CHECK(work_in_hand(kept).made[0].measured->deg == Approx(target + 2));
    CHECK_FALSE(work_in_hand(touched(state, {Back{}})).last_reading);  // measure again
}

TEST_CASE("going back from a mark takes the last bend into hand again with all that was measured") {
    State state = at_check(at_first_bend());
    const double target = step_in_hand(state)->target.deg;
    const State made = reading(state, std::to_string(static_cast<int>(target)));
    const State back = touched(made, {Back{}});
    CHECK(work_in_hand(back).made.empty());
    CHECK(work_in_hand(back).step == 0);
    CHECK(work_in_hand(back).move == Move::check);
    CHECK(work_in_hand(back).last_reading->deg == Approx(target));
    CHECK(touched(back, {Next{}}).work == made.work);
    CHECK(touched(back, {Undo{}}).work == made.work);
}

TEST_CASE("a bend taken back from the finish list clears what was ticked of the finished part, and nothing else") {
    State state = at_first_bend("left rear");
    state = touched(at_check(state), {PassCheck{}});
    REQUIRE(work_in_hand(state).stage == Stage::finish);
    const std::size_t to_tick = tick_items(state, TickList::finish).size();
    REQUIRE(to_tick > 1);
    state = touched(all_ticked(state), {Next{}});
    state = all_ticked(state);  // the hand-over list too
    REQUIRE(ticks_missing(state, TickList::hand_over) == 0);
    state = touched(state, {Back{}, Back{}});
    REQUIRE(work_in_hand(state).stage == Stage::bending);
    CHECK(ticks_missing(state, TickList::finish) == to_tick);
    CHECK(ticks_missing(state, TickList::hand_over) == tick_items(state, TickList::hand_over).size());
    CHECK(ticks_missing(state, TickList::prepare) == 0);
    state = touched(state, {PassCheck{}});
    REQUIRE(current_list(work_in_hand(state)) == TickList::finish);
    CHECK(touched(state, {Next{}}).work == state.work);  // nothing passes unticked
}

namespace {

/// The hand-over list of a piece, nothing of it ticked.
State at_hand_over(State state) {
    while (work_in_hand(state).stage == Stage::bending) state = touched(at_check(std::move(state)), {PassCheck{}});
    return touched(all_ticked(std::move(state)), {Next{}});
}

}  // namespace

TEST_CASE("a tick that can only be made on the vehicle is left for the fitter, knowingly, and comes back to be ticked") {
    const std::string leak = "hand-over-leak";
    State state = at_hand_over(at_first_bend());
    REQUIRE(current_list(work_in_hand(state)) == TickList::hand_over);
    REQUIRE(ticks_missing(state, TickList::hand_over) > 0);
    CHECK(touched(state, {Next{}}).work == state.work);  // unanswered, it is a gate
    CHECK(touched(state, {LeaveForLater{"hand-over-no-such"}}).work == state.work);

    // One answer takes the other's place, and a second touch takes it back.
    const State left = touched(state, {LeaveForLater{leak}});
    CHECK(ticks_missing(left, TickList::hand_over) == ticks_missing(state, TickList::hand_over) - 1);
    CHECK_FALSE(work_in_hand(left).ticks.contains(leak));
    CHECK(is_left(work_in_hand(left), leak));
    CHECK(left_for_later(work_in_hand(left)) == 0);  // of pieces handed over: none is yet
    CHECK(touched(left, {LeaveForLater{leak}}).work == state.work);
    CHECK_FALSE(is_left(work_in_hand(touched(left, {Tick{leak}})), leak));
    CHECK(work_in_hand(touched(left, {Tick{leak}})).ticks.contains(leak));

    state = touched(all_ticked(left), {LeaveForLater{leak}, Next{}});
    REQUIRE(work_in_hand(state).stage == Stage::done);
    CHECK(left_for_later(work_in_hand(state)) == 1);
    CHECK_FALSE(work_in_hand(state).ticks.contains(leak));  // it was ticked before it was left

    // The second piece leaves the first one's alone, and its own goes with it when it is spoiled.
    State second = touched(touched(all_ticked(touched(state, {AnotherPiece{}})), {Next{}, Next{}}), {});
    REQUIRE(work_in_hand(second).stage == Stage::bending);
    second = touched(at_hand_over(second), {LeaveForLater{leak}});
    REQUIRE(work_in_hand(second).later.size() == 2);
    const State spoiled = touched(second, {WentWrong{}, ChooseReason{Reason::damaged}, ChooseKept{"none"}, ConfirmScrap{}});
    REQUIRE(spoiled.work.scrap.size() == 1);
    CHECK(work_in_hand(spoiled).later == work_in_hand(state).later);
    const State bent_back = touched(second, {Back{}, Back{}});
    REQUIRE(work_in_hand(bent_back).stage == Stage::bending);
    CHECK(work_in_hand(bent_back).later == work_in_hand(state).later);

    // Days later: from the line's screen, ticked, unticked, undone where it was done.
    const State later = touched(state, {GoTo{Screen::line}, GoTo{Screen::later}});
    REQUIRE(later.looks.screen == Screen::later);
    const State done = touched(later, {TickLater{{1, leak}}});
    CHECK(left_for_later(work_in_hand(done)) == 0);
    CHECK(work_in_hand(done).stage == Stage::done);
    CHECK(touched(done, {TickLater{{1, leak}}}).work == later.work);
    CHECK(touched(done, {Undo{}}).work == later.work);
    CHECK(touched(done, {Undo{}}).looks.screen == Screen::later);
    CHECK(touched(later, {TickLater{{2, leak}}}).work == later.work);  // no such piece
    CHECK(touched(state, {TickLater{{1, leak}}}).work == state.work);  // not on its screen
    CHECK(touched(at_first_bend(), {GoTo{Screen::later}}).looks.screen == Screen::bench);  // nothing was ever left
}

TEST_CASE("what must be done before the piece leaves the bench can't be left for later") {
    State state = at_prepare();
    for (const TickItem& item : tick_items(state, TickList::prepare)) CHECK(touched(state, {LeaveForLater{item.id}}).work == state.work);
    state = at_first_bend();
    while (work_in_hand(state).stage == Stage::bending) state = touched(at_check(std::move(state)), {PassCheck{}});
    for (const TickItem& item : tick_items(state, TickList::finish)) CHECK(touched(state, {LeaveForLater{item.id}}).work == state.work);
}

TEST_CASE("an over-bent bend takes its longer arc off the lever side, and lays the far end off by so much") {
    // The hook side ends where the bend starts, at the mark. Past it, over an arc of R and an angle of t, the end
    // lies at (R sin t + L cos t, R (1 - cos t) + L sin t). One degree more takes R times one degree off L.
    Line line = line_of({5, 10}, {{60, 0}});
    line.route.form = RouteForm::straights;
    Sheet sheet = bend_sheet(line);
    REQUIRE(sheet.steps[0].hook == End::A);
    const double radius = sheet.layout->part.radius.mm, degree = std::numbers::pi / 180;
    const auto end = [&](double deg, double straight) {
        const double t = deg * degree;
        return Eigen::Vector2d(radius * std::sin(t) + straight * std::cos(t), radius * (1 - std::cos(t)) + straight * std::sin(t));
    };
    const Eigen::Vector2d wanted = end(60, inches(10).mm);
    CHECK(far_end_off(sheet, {}, 0, 61_deg).mm == Approx((end(61, inches(10).mm - radius * degree) - wanted).norm()));
    CHECK(far_end_off(sheet, {}, 0, 60_deg).mm == Approx(0).margin(1e-9));
    // Held by B, the arc comes off A's side: seen from A the whole bend starts earlier by as much.
    sheet.steps[0].hook = End::B;
    CHECK(far_end_off(sheet, {}, 0, 61_deg).mm == Approx((end(61, inches(10).mm) - Eigen::Vector2d(radius * degree, 0) - wanted).norm()));
}

TEST_CASE("what was measured of the bends before counts in how far the end is off") {
    const Sheet sheet = bend_sheet(line_of({10, 10, 10}, {{90, 0}, {90, 180}}));
    LineWork work;
    work.made = {{0, 90_deg, 1, 92_deg, true}};
    const double both = far_end_off(sheet, work, 1, 90_deg).mm;
    CHECK(both == Approx(far_end_off(sheet, {}, 0, 92_deg).mm));
    CHECK(both > 5);
}

TEST_CASE("a finished piece counts as used, and the next one of two begins with the cut") {
    State state = piece_made();
    CHECK(work_in_hand(state).stage == Stage::done);
    CHECK(work_in_hand(state).finished == 1);
    CHECK(work_in_hand(state).made.size() == 2);
    CHECK(state.work.used.at("2026-11-25").at(tube_key(sheet_in_hand(state)->line.tube)) == cut_length(state));
    state = touched(state, {AnotherPiece{}});
    CHECK(work_in_hand(state).stage == Stage::prepare);
    CHECK(work_in_hand(state).finished == 1);
    CHECK_FALSE(work_in_hand(state).cut);
    CHECK(work_in_hand(state).ticks.empty());

    // A finished piece can be dropped on the floor: one more than the job asks can be made.
    const State more = touched(piece_made("left rear"), {AnotherPiece{}});
    CHECK(work_in_hand(more).stage == Stage::prepare);
    CHECK(work_in_hand(more).finished == 1);
}

TEST_CASE("a line with a stop against it can't be started; one without bends goes from marks to finish") {
    const State tight = touched(job_open(), {OpenLine{"too tight"}, Next{}});
    CHECK(tight.looks.screen == Screen::line);
    CHECK(bar_to_start(tight) == Bar::stopped);
    const State straight = at_first_bend("straight");
    CHECK(work_in_hand(straight).stage == Stage::finish);
}

}  // namespace tubewright
