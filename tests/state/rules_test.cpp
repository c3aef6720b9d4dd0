// Worked examples of what the bench allows.

#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {
namespace {

std::vector<std::string> ids_of(const std::vector<TickItem>& items) {
    std::vector<std::string> ids;
    for (const TickItem& item : items) ids.push_back(item.id);
    return ids;
}

/// "straight" is 10 in of tube without fittings: it takes 10 in of the stick.
State on_stick(double stick_in) { return at_prepare("straight", stick_in); }

}  // namespace

TEST_CASE("work begins only on a line in hand that nothing speaks against") {
    CHECK(bar_to_start(job_open()) == Bar::no_line);
    CHECK(bar_to_start(touched(job_open(), {OpenLine{"axle crossover"}})) == Bar::none);
    CHECK(bar_to_start(touched(job_open(), {OpenLine{"too tight"}})) == Bar::stopped);
    CHECK(sheet_in_hand(job_open()) == nullptr);
    CHECK(sheet_in_hand(touched(job_open(), {OpenLine{"left rear"}}))->line.name == "left rear");
}

TEST_CASE("a step is in hand while bending, and no earlier or later") {
    CHECK(step_in_hand(at_prepare()) == nullptr);
    CHECK(step_in_hand(touched(all_ticked(at_prepare()), {Next{}})) == nullptr);  // marking out
    const State bending = at_first_bend();
    REQUIRE(step_in_hand(bending));
    CHECK(step_in_hand(bending)->bend == sheet_in_hand(bending)->steps.front().bend);
    CHECK(step_in_hand(piece_made()) == nullptr);
}

TEST_CASE("a stick of 10 in is enough for 10 in, and one a sixteenth shorter is too short by a sixteenth") {
    CHECK(stick_standing(on_stick(10)).needed.inch() == Approx(10));
    CHECK(stick_standing(on_stick(10)).enough);
    CHECK(stick_standing(on_stick(10)).left->inch() == Approx(10));
    CHECK_FALSE(stick_standing(on_stick(9.9375)).enough);
    CHECK_FALSE(stick_standing(touched(job_open(), {OpenLine{"straight"}})).left);
    const State state = touched(job_open(), {OpenLine{"straight"}});
    CHECK_FALSE(too_short_by(state, inches(10)));
    CHECK_FALSE(too_short_by(state, inches(12)));
    REQUIRE(too_short_by(state, inches(9.9375)));
    CHECK(too_short_by(state, inches(9.9375))->inch() == Approx(0.0625));
}

TEST_CASE("what was cut already needs no stick, and without a line none is too short") {
    CHECK_FALSE(too_short_by(at_first_bend(), inches(1)));
    CHECK_FALSE(too_short_by(job_open(), inches(1)));
}

TEST_CASE("a stick that is too short is not taken by the main button or the foot switch, only knowingly") {
    const auto typed = [](const State& state) { return touched(state, {GoTo{Screen::stick_length}, Key{"9"}}); };
    const State short_stick = typed(touched(job_open(), {OpenLine{"straight"}, Next{}}));
    CHECK(touched(short_stick, {Next{}}).work == short_stick.work);
    CHECK(touched(short_stick, {Next{}}).looks == short_stick.looks);
    CHECK(touched(short_stick, {NewStick{inches(9)}}).work.in_use.size() == 1);
    CHECK(left_in_use(touched(short_stick, {NewStick{inches(9)}}).work).inch() == Approx(9));
    // 98 in is enough, and taken at once.
    CHECK(left_in_use(touched(short_stick, {Key{"8"}, Next{}}).work).inch() == Approx(98));
    // With the piece in hand already cut, a rest of 9 in may go on the rack.
    CHECK(left_in_use(touched(typed(at_first_bend()), {Next{}}).work).inch() == Approx(9));
}

TEST_CASE("of the offcuts those that are long enough are offered, the shortest of them first") {
    State state = touched(job_open(), {OpenLine{"straight"}});
    state.work.rack = rack_of(sheet_in_hand(state)->line.tube, {inches(30), inches(9.9), inches(10)});
    REQUIRE_FALSE(write_stock(state.work, "2026-11-25", {Received{{4}, PieceKind::offcut, {{4750}, {700}, "another"}, exact(inches(12)), "", "", {}}}));
    const std::vector<RackLength> fitting = fitting_offcuts(state), all = offcuts_of_tube(state);
    REQUIRE(fitting.size() == 2);
    CHECK(fitting[0].piece.n == 3);
    CHECK(fitting[1].piece.n == 1);
    REQUIRE(all.size() == 3);  // of this tube, the longest first
    CHECK(all[0].piece.n == 1);
    CHECK(all[2].piece.n == 2);
    state.line.reset();
    CHECK(offcuts_of_tube(state).empty());
    CHECK(fitting_offcuts(state).empty());
}

TEST_CASE("a reading within half a degree of its target is right") {
    // The protractor is read to half a degree; see tolerance.h.
    CHECK(verdict(Angle{90}, Angle{90}) == Verdict::right);
    CHECK(verdict(Angle{90}, Angle{89.5}) == Verdict::right);
    CHECK(verdict(Angle{90}, Angle{90.5}) == Verdict::right);
    CHECK(verdict(Angle{90}, Angle{89.25}) == Verdict::under);
    CHECK(verdict(Angle{90}, Angle{90.75}) == Verdict::over);
}

TEST_CASE("the lever goes to the sheet's angle, or where a pull before it said") {
    Step step;
    step.set = Angle{93};
    LineWork work;
    CHECK(set_in_force(step, work).deg == 93);
    work.pull_again = Angle{94.5};
    CHECK(set_in_force(step, work).deg == 94.5);
}

TEST_CASE("what is to be ticked is what concerns the service, the fittings and the material") {
    const State state = touched(job_open(), {OpenLine{"axle crossover"}});  // brake; a flare, a nut and a sleeve at each end
    CHECK(ids_of(tick_items(state, TickList::prepare)) ==
          std::vector<std::string>{"prepare-square", "prepare-deburr", "slide-A-nut", "slide-A-sleeve", "slide-B-nut", "slide-B-sleeve"});
    // Three legs fit one tick, then the straight way across; see lists.cpp.
    CHECK(ids_of(tick_items(state, TickList::finish)) == std::vector<std::string>{"tape-1", "tape-across", "finish-dry-fit", "trim-B", "finish-flare"});
    CHECK(ids_of(tick_items(state, TickList::hand_over)) == std::vector<std::string>{"hand-over-leak"});
    // A straight line without fittings: no loose piece, no leg to measure, no flare to look at.
    const State plain = touched(job_open(), {OpenLine{"straight"}});
    CHECK(ids_of(tick_items(plain, TickList::prepare)) == std::vector<std::string>{"prepare-square", "prepare-deburr"});
    CHECK(ids_of(tick_items(plain, TickList::finish)) == std::vector<std::string>{"finish-dry-fit"}  /* nothing is cut off: it has no trim */);
    CHECK(tick_items(job_open(), TickList::prepare).empty());
    REQUIRE(cautions_for(state).size() == 2);  // the cut edge, and brakes
    CHECK(cautions_for(state)[1].id == "brake");
}

TEST_CASE("the list in force follows the stage, and counts down as it is ticked") {
    LineWork work;
    CHECK(current_list(work) == TickList::prepare);
    for (const Stage stage : {Stage::mark_out, Stage::bending, Stage::done}) {
        work.stage = stage;
        CHECK_FALSE(current_list(work));
    }
    work.stage = Stage::finish;
    CHECK(current_list(work) == TickList::finish);
    work.ticks.insert(finish_list_passed);
    CHECK(current_list(work) == TickList::hand_over);

    const State state = at_prepare();
    CHECK(ticks_missing(state, TickList::prepare) == 6);
    CHECK(ticks_missing(touched(state, {Tick{"prepare-square"}, Tick{"slide-A-nut"}}), TickList::prepare) == 4);
    CHECK(ticks_missing(all_ticked(state), TickList::prepare) == 0);
}

TEST_CASE("a piece belongs to one plan, and its marks to one line of the bender") {
    const Sheet sheet = bend_sheet(sample_job().lines[0]);
    Line other_angle = sample_job().lines[0], other_turn = other_angle, again = other_angle;
    other_angle.route.bends[1].angle = Angle{46};
    other_turn.route.bends[1].rotation = Angle{-90};
    again.note = "tighten last";
    CHECK(plan_of(bend_sheet(again)) == plan_of(sheet));
    CHECK(plan_of(bend_sheet(other_angle)) != plan_of(sheet));
    CHECK(plan_of(bend_sheet(other_turn)) != plan_of(sheet));
    SheetChoice mark;
    mark.mark = "L";
    const Sheet marked = bend_sheet(sample_job().lines[0], mark);
    CHECK(plan_of(marked) == plan_of(sheet));
    CHECK(inking_of(marked) != inking_of(sheet));
}

TEST_CASE("a record that the sheet does not fit says in what") {
    const Sheet sheet = bend_sheet(sample_job().lines[0]);
    CHECK(misfit(sheet, LineWork{}) == Misfit::none);
    LineWork cut;
    cut.stage = Stage::mark_out;
    cut.cut = true;
    cut.cut_length = sheet.layout->cut_length;
    cut.plan = plan_of(sheet);
    CHECK(misfit(sheet, cut) == Misfit::none);
    LineWork longer = cut, other = cut, inked = cut;
    longer.cut_length = cut.cut_length + Length{1};
    CHECK(misfit(sheet, longer) == Misfit::cut_length);
    other.plan = "another";
    CHECK(misfit(sheet, other) == Misfit::plan);
    inked.stage = Stage::bending;
    inked.inked = "elsewhere";
    CHECK(misfit(sheet, inked) == Misfit::ink);
}

TEST_CASE("what is typed is a reading up to 180 degrees, and a stick up to a hundred metres in the reader's unit") {
    State state = touched(job_open(), {OpenLine{"straight"}});  // a job in inches
    state.looks.typed = "90 1/2";
    CHECK(typed_reading(state)->deg == 90.5);
    CHECK(typed_stick(state)->mm == Approx(90.5 * 25.4));
    state.looks.typed = "180.5";
    CHECK_FALSE(typed_reading(state));
    state.looks.typed = "0";
    CHECK(typed_reading(state)->deg == 0);
    CHECK_FALSE(typed_stick(state));
    state.settings.unit = Unit::mm;
    state.looks.typed = "100000";
    CHECK(typed_stick(state)->mm == 100000);
    state.looks.typed = "100001";
    CHECK_FALSE(typed_stick(state));
    state.looks.typed = "";
    CHECK_FALSE(typed_stick(state));
    CHECK_FALSE(typed_reading(state));
}

}  // namespace tubewright
