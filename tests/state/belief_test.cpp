// Which readings are calculated with.

#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {
namespace {

/// At the check of a bend of 45 degrees that the sheet pulls to 47, on tube that grows by 3 %.
State pulled_to_47() {
    State state = at_check(touched(at_check(at_first_bend()), {Back{}, Back{}, Back{}}));
    Sheet& sheet = state.sheets[*state.line];
    sheet.springback.growth = 0.03;
    Step& step = sheet.steps[work_in_hand(state).step];
    step.target = Angle{45};
    step.set = Angle{47};
    return state;
}

}  // namespace

TEST_CASE("4.5 typed for 45 asks for no larger pull: only the sheet's own angle is offered") {
    // 47 - 4.5 = 42.5 of opening; believable would be 3 x 0.03 x 4.5 + 4 = 4.4.
    const State slip = reading(pulled_to_47(), "4.5");
    const Sheet& sheet = *sheet_in_hand(slip);
    const Step& step = *step_in_hand(slip);
    CHECK(belief(sheet, step, work_in_hand(slip), Angle{4.5}) == Belief::opened_too_far);
    CHECK(pull_again_to(sheet, step, work_in_hand(slip), Belief::opened_too_far).deg == 47);
    const State again = touched(slip, {PullAgain{}});
    CHECK(work_in_hand(again).move == Move::pull);
    CHECK(set_in_force(step, work_in_hand(again)).deg == 47);
    CHECK(touched(again, {Back{}}).work == slip.work);
    CHECK(touched(slip, {KeepBend{}}).work == slip.work);  // nor is it written down as measured
    CHECK(work_in_hand(touched(slip, {Back{}})).move == Move::check);  // measure again
}

TEST_CASE("the gate lies at three slopes and four degrees, and at a degree and a half past the set angle") {
    const State state = pulled_to_47();
    const auto believed = [&](double deg) { return belief(*sheet_in_hand(state), *step_in_hand(state), work_in_hand(state), Angle{deg}); };
    // r = 47 - 4 - 0.09 r where r = 43 / 1.09 = 39.45.
    CHECK(believed(39.4) == Belief::opened_too_far);
    CHECK(believed(39.5) == Belief::opened_more);
    CHECK(believed(48.5) == Belief::sound);
    CHECK(believed(48.6) == Belief::past_the_set);
}

TEST_CASE("a lever that may have stopped short is asked after before anything is pulled on from where it never was") {
    // 47 reached opens to 47 / 1.03 = 45.63 on tube without zero, give or take twice the root of (1.37 / 3)^2 + 1^2 = 1.0993: 43.43.
    State state = pulled_to_47();
    state.sheets[*state.line].springback.zero = Angle{0};
    const auto believed = [&](double deg) { return belief(*sheet_in_hand(state), *step_in_hand(state), work_in_hand(state), Angle{deg}); };
    CHECK(believed(43.5) == Belief::sound);
    CHECK(believed(43.4) == Belief::opened_more);
    const State short_of_it = reading(state, "42");
    const Step& step = *step_in_hand(short_of_it);
    CHECK(set_in_force(step, work_in_hand(touched(short_of_it, {PullAgain{}}))).deg == 47);           // the same again
    CHECK(work_in_hand(touched(short_of_it, {PullAgain{}})).move == Move::pull);
    CHECK(set_in_force(step, work_in_hand(touched(short_of_it, {PullAgain{true}}))).deg == Approx(47 + 3 * 1.03));
    // The further pull was reckoned to end at 45, and springs back as much again: 42.4 is no wonder. Below
    // (50.09 - 4) / 1.09 = 42.28 the gate stands before it.
    const State pulled_on = touched(short_of_it, {PullAgain{true}, Next{}});
    const auto then = [&](double deg) { return belief(*sheet_in_hand(pulled_on), step, work_in_hand(pulled_on), Angle{deg}); };
    CHECK(then(42.4) == Belief::sound);
    CHECK(then(42.2) == Belief::opened_too_far);
}

TEST_CASE("135 typed for a bend of 45 is what the protractor's other scale says") {
    const State state = pulled_to_47();
    const Step& step = *step_in_hand(state);
    CHECK(is_other_scale(step, Angle{135}));
    CHECK(is_other_scale(step, Angle{137}));
    CHECK_FALSE(is_other_scale(step, Angle{45}));
    CHECK_FALSE(is_other_scale(step, Angle{60}));
    Step square = step;
    square.target = Angle{90};
    CHECK_FALSE(is_other_scale(square, Angle{91}));  // there both scales say the same
}

TEST_CASE("a sound reading is still pulled on by what is missing and its share of growth") {
    // 47 + (45 - 43) x 1.03 = 49.06.
    State pulled = pulled_to_47();
    pulled.sheets[*pulled.line].springback.zero = Angle{1};  // a reading of 43 is what this tube may well open to
    const State under = reading(pulled, "43");
    CHECK(set_in_force(*step_in_hand(under), work_in_hand(touched(under, {PullAgain{}}))).deg == Approx(49.06));
    // After that pull the gate is measured from 49.06: a slip of the decimal point is no better believed.
    const State slip = reading(touched(under, {PullAgain{}, Next{}}), "4.4");
    const State back_to_sheet = touched(slip, {PullAgain{}});
    CHECK(set_in_force(*step_in_hand(slip), work_in_hand(back_to_sheet)).deg == 47);
}

}  // namespace tubewright
