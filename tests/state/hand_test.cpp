// Legs and turns of a bent tube as they were measured, and the hand that is learned from them.

#include <catch2/catch.hpp>
#include <cmath>

#include "state/doing.h"
#include "state/sample_state.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

/// Both bends made, and read as they were wanted or not measured; three legs, all of them at most a square corner.
State at_finish(bool measured = true) {
    State state = at_first_bend();
    while (work_in_hand(state).stage == Stage::bending) {
        state = at_check(std::move(state));
        const std::string target = std::to_string(step_in_hand(state)->target.deg).substr(0, 4);
        state = measured ? reading(std::move(state), target) : touched(std::move(state), {PassCheck{}});
        if (work_in_hand(state).stage == Stage::bending && work_in_hand(state).move == Move::check) state = touched(std::move(state), {Next{}});
    }
    return state;
}

State taped(State state, std::size_t leg, double inches_more) {
    state = touched(std::move(state), {GoTo{Screen::legs}, AskLeg{leg}});
    const std::string reading = std::to_string(legs_here(state).at(leg).leg.outside.inch() + inches_more);
    for (const char c : reading.substr(0, 8)) state = touched(std::move(state), {Key{std::string(1, c)}});
    return touched(std::move(state), {Next{}});
}

}  // namespace

TEST_CASE("a leg is taped at the finish, stands beside what was expected, and moves what is believed of the marks") {
    State state = at_finish();
    REQUIRE(legs_here(state).size() == 3);
    CHECK_FALSE(legs_here(state)[0].check);
    state = taped(std::move(state), 0, 1.0 / 16);
    CHECK(state.looks.screen == Screen::legs);
    REQUIRE(state.work.leg_log.size() == 1);
    const LoggedLeg& logged = state.work.leg_log[0];
    CHECK(logged.check.marked_bends == 1);  // from the cut end to one corner
    CHECK((logged.check.read - logged.check.expected).inch() == Approx(1.0 / 16).margin(0.0005));
    CHECK(logged.check.record.day == state.day);
    CHECK(logged.of == BendOfTube{"trailer", "axle crossover", 1, 1, 0});
    CHECK_FALSE(logged.after);
    CHECK(legs_here(state)[0].check == logged.check);
    // A sixteenth, 1.6 mm, at one mark where half a millimetre was believed: with the weight of one reading against six, more.
    CHECK(state.hand.mark_sd > Hand{}.mark_sd);
    CHECK(state.hand.turn_sd == Hand{}.turn_sd);
    CHECK(state.sheets[0].hand == state.hand);  // what order and rescue go by
    state = taped(std::move(state), 1, 0);
    REQUIRE(state.work.leg_log.size() == 2);
    CHECK(state.work.leg_log[1].check.marked_bends == 2);
    CHECK(state.work.leg_log[1].after == 0u);
    const State undone = touched(state, {Back{}, Undo{}, Undo{}});
    CHECK(undone.work.leg_log.empty());
    CHECK(undone.hand.mark_sd == Hand{}.mark_sd);
}

TEST_CASE("a leg taped again takes the place of the reading before; one so far off that no hand does it is no spread of a hand, however often it is taped") {
    State state = taped(at_finish(), 2, 0.5);
    REQUIRE(state.work.leg_log.size() == 1);
    CHECK(standing_legs(state.work).empty());
    CHECK(state.hand.mark_sd == Hand{}.mark_sd);
    const std::int64_t id = state.work.leg_log[0].check.record.id;
    const State same = taped(touched(state, {Back{}}), 2, 0.5);
    REQUIRE(same.work.leg_log.size() == 1);
    CHECK(standing_legs(same.work).empty());
    CHECK(legs_here(same)[2].check);  // it stands on the page all the same
    const State right = taped(touched(state, {Back{}}), 2, 0.03);
    REQUIRE(right.work.leg_log.size() == 1);
    CHECK(standing_legs(right.work).size() == 1);
    CHECK(right.work.leg_log[0].check.record.id == id);
}

TEST_CASE("legs between bends that nobody measured say nothing of marks, and an end that is trimmed is expected as trimmed") {
    const State passed = taped(at_finish(false), 1, 1.0 / 16);
    REQUIRE(passed.work.leg_log.size() == 1);
    CHECK(passed.work.leg_log[0].check.record.left_out);
    CHECK(passed.hand == Hand{});
    State state = at_finish();
    const Length trim = sheet_in_hand(state)->line.b.trim;
    REQUIRE(trim > Length{});
    const Length before = legs_here(state)[2].leg.outside;
    state = touched(std::move(state), {Tick{"trim-B"}});
    CHECK((before - legs_here(state)[2].leg.outside).mm == Approx(trim.mm));
}

TEST_CASE("what was measured of the hand is looked at, left out and put back") {
    State state = taped(at_finish(), 0, 1.0 / 16);
    const Hand learned = state.hand;
    const std::int64_t id = state.work.leg_log[0].check.record.id;
    state = touched(std::move(state), {GoTo{Screen::hand}, LeaveOutOfHand{id}});
    CHECK(state.work.leg_log[0].check.record.left_out);
    CHECK(state.hand.mark_sd == Hand{}.mark_sd);
    CHECK(touched(state, {LeaveOutOfHand{id}}).hand == learned);
    CHECK(touched(state, {LeaveOutOfHand{id + 1}}).work == state.work);
    CHECK(touched(state, {Undo{}}).hand == learned);
}

TEST_CASE("no leg is asked for before all bends are made, and what is no length is not taken") {
    CHECK(legs_here(at_first_bend()).empty());
    CHECK(touched(at_first_bend(), {GoTo{Screen::legs}}).looks.screen == Screen::bench);
    const State asked = touched(at_finish(), {GoTo{Screen::legs}, AskLeg{0}});
    for (const char* nothing : {"", "0", "."}) CHECK(touched(asked, {Key{nothing}, Next{}}).work == asked.work);
    CHECK(touched(asked, {Back{}}).looks.screen == Screen::legs);
    CHECK(touched(asked, {Back{}, AskLeg{3}}).looks.screen == Screen::legs);
}

TEST_CASE("a bend that is taken in hand again takes its legs out of what is learned") {
    const State state = taped(at_finish(), 0, 1.0 / 16);
    State back = touched(state, {Back{}});
    while (work_in_hand(back).stage != Stage::bending) back = touched(std::move(back), {Back{}});
    // The last bend made is in hand again; the leg to the first made bend stands if that is not it.
    const std::size_t in_hand = step_in_hand(back)->bend;
    CHECK(standing_legs(back.work).size() == (in_hand == 0 ? 0 : 1));
    while (!work_in_hand(back).made.empty()) back = touched(std::move(back), {Back{}});
    CHECK(standing_legs(back.work).empty());
    CHECK(back.hand == Hand{});
}

TEST_CASE("a turn that was measured is logged by what it was turned against") {
    const State state = at_finish();
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const std::size_t later = sheet.steps[1].bend, first = sheet.steps[0].bend;
    REQUIRE(sheet.steps[1].neighbour);  // the second bend was turned against the first
    Work next = state.work;
    const TubePlan plan = plan_on_tube(sheet);
    const Angle wanted = wrapped(plan.bends[later].direction - plan.bends[first].direction);
    log_turn(state, next, work, later, first, wanted + 2_deg);
    REQUIRE(next.turn_log.size() == 1);
    CHECK(next.turn_log[0].check.turned_by == TurnedBy::neighbour);
    CHECK(next.turn_log[0].check.wanted == wanted);
    CHECK(next.turn_log[0].check.measured.deg == Approx(wanted.deg + 2));
    CHECK(standing_turns(next).size() == 1);
    log_turn(state, next, work, later, first, wanted + 1_deg);  // read anew
    CHECK(next.turn_log.size() == 1);
    log_turn(state, next, work, later, first, wanted + 30_deg);  // no hand turns so far off
    CHECK(next.turn_log.size() == 1);
    CHECK(standing_turns(next).empty());
    log_turn(state, next, work, later, first, std::nullopt);
    CHECK(next.turn_log.empty());
}
