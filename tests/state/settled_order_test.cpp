// The tube is cut, its order settled: what stands in its way once the bender is stood another way.

#include <catch2/catch.hpp>
#include <algorithm>
#include <stdexcept>

#include "state/sample_state.h"

namespace tubewright {
namespace {

/// The sample job over a bench 40 mm below the tube: swung down, its lever takes every line into the bench.
State open_over_a_bench() {
    Job job = sample_job();
    for (Line& line : job.lines) line.bender.body = {{"bench", Stands::bench, HalfSpace{{0, 0, -40}, {0, 0, -1}}}};
    return touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}});
}

State at_first_bend_over_a_bench() {
    State state = touched(open_over_a_bench(), {OpenLine{"axle crossover"}, NewStick{inches(240)}, Next{}});
    return touched(all_ticked(state), {Next{}, Next{}});
}

std::vector<std::size_t> told(const State& state) {
    std::vector<std::size_t> bends;
    for (const Finding& finding : sheet_in_hand(state)->findings)
        if (finding.code == "hits-as-it-stands") bends.push_back(*finding.bend);
    return bends;
}

std::vector<std::size_t> bends_of(const State& state) {
    std::vector<std::size_t> bends;
    for (const Step& step : sheet_in_hand(state)->steps) bends.push_back(step.bend + 1);
    return bends;
}

const HitsAsItStands& hit(const State& state) {
    for (const Finding& finding : sheet_in_hand(state)->findings)
        if (const auto* fact = std::get_if<HitsAsItStands>(&finding.fact)) return *fact;
    throw std::runtime_error("nothing is hit");
}

}  // namespace

TEST_CASE("a wall that is put on the card after three bends: bend 1 is made before bend 2, and no ink mark moves") {
    const State settled = tank_with_made(3);
    REQUIRE(bends_of(settled) == std::vector<std::size_t>{4, 5, 3, 6, 2, 1});
    const State state = with_wall(settled, -280);
    CHECK(told(state) == std::vector<std::size_t>{1, 0});
    CHECK(bar_to_start(state) == Bar::stopped);
    const OtherRest* other = other_rest(state);
    REQUIRE(other);
    CHECK(other->is == OtherRest::Is::found);
    CHECK(other->now == std::vector<Placing>{{5, End::A}, {1, End::A}, {0, End::A}});
    CHECK(other->then == std::vector<Placing>{{5, End::A}, {0, End::A}, {1, End::A}});
    CHECK(other->ink == std::vector<InkMove>{{0, {}}, {1, {}}, {5, {}}});

    const State after = touched(state, {GoTo{Screen::order}, ReorderRest{}});
    CHECK(bends_of(after) == std::vector<std::size_t>{4, 5, 3, 6, 1, 2});
    CHECK(told(after).empty());
    CHECK(misfit(*sheet_in_hand(after), work_in_hand(after)) == Misfit::none);
    CHECK(after.looks.screen == Screen::bench);
    REQUIRE(step_in_hand(after));
    CHECK(step_in_hand(after)->bend == 5);  // as it was to be
    CHECK(work_in_hand(after).made == work_in_hand(settled).made);

    // Undo brings the old order back with what speaks against it, without looking anew; redo the other one.
    const StateStep back = apply(after, Undo{});
    CHECK(bends_of(back.state) == bends_of(settled));
    CHECK(std::none_of(back.requests.begin(), back.requests.end(), [](const Request& r) { return std::holds_alternative<FindOrder>(r); }));
    CHECK(other_rest(back.state)->is == OtherRest::Is::found);
    CHECK(bends_of(touched(back.state, {Redo{}})) == bends_of(after));

    // Made to the end there is nothing in the way on the way there.
    State on = after;
    for (int i = 0; i < 3; ++i) on = touched(at_check(on), {PassCheck{}});
    CHECK(work_in_hand(on).stage == Stage::finish);
    CHECK(misfit(*sheet_in_hand(on), work_in_hand(on)) == Misfit::none);
}

TEST_CASE("with the other end on the hook the marks move by what each bend takes, and are inked again where the tube is") {
    const State state = with_wall(tank_with_made(3), 280);
    const OtherRest* other = other_rest(state);
    REQUIRE(other);
    REQUIRE(other->is == OtherRest::Is::found);
    CHECK(other->then == std::vector<Placing>{{5, End::A}, {0, End::B}, {1, End::B}});
    // Line 0 stands where a bend begins: with B on the hook that is its other end, so much further towards B.
    const auto taken = [&](std::size_t bend) { return sheet_in_hand(state)->layout->spans[bend].end - sheet_in_hand(state)->layout->spans[bend].start; };
    REQUIRE(other->ink.size() == 3);
    CHECK(other->ink[0].by.mm == Approx(taken(0).mm).margin(0.011));
    CHECK(other->ink[1].by.mm == Approx(taken(1).mm).margin(0.011));
    CHECK(other->ink[2] == InkMove{5, {}});

    State after = touched(state, {GoTo{Screen::order}, ReorderRest{}});
    CHECK(misfit(*sheet_in_hand(after), work_in_hand(after)) == Misfit::ink);
    CHECK_FALSE(step_in_hand(after));
    after = touched(after, {Next{}});  // inked again
    CHECK(work_in_hand(after).stage == Stage::bending);
    REQUIRE(step_in_hand(after));
    CHECK(step_in_hand(after)->bend == 5);
    CHECK(work_in_hand(after).made.size() == 3);
    const State undone = touched(after, {Undo{}, Undo{}});
    CHECK(work_in_hand(undone) == work_in_hand(state));
    CHECK(undone.looks.notice.rfind("Undo moves no ink:", 0) == 0);
    CHECK(touched(undone, {Dismiss{}, Redo{}}).looks.notice.empty());  // only the order came back
    CHECK(touched(undone, {Dismiss{}, Redo{}, Redo{}}).looks.notice.rfind("Redo moves no ink:", 0) == 0);
}

TEST_CASE("a bend whose lever was pulled keeps its turn; one that only waits for it may be another") {
    const State marked = with_wall(touched(tank_with_made(4), {Next{}}), -280);  // bend 2 laid in
    REQUIRE(other_rest(marked));
    CHECK(other_rest(marked)->then.front() == Placing{0, End::A});
    const State after = touched(marked, {GoTo{Screen::order}, ReorderRest{}});
    REQUIRE(step_in_hand(after));
    CHECK(step_in_hand(after)->bend == 0);
    CHECK(work_in_hand(after).move == Move::mark);

    const State pulled = with_wall(at_check(tank_with_made(4)), -280);
    CHECK(told(pulled) == std::vector<std::size_t>{1, 0});
    CHECK_FALSE(other_rest(pulled));  // it is the one in the way, and the last but one
    // Gone back from, it is bent all the same.
    const State back = with_wall(touched(at_check(tank_with_made(4)), {Back{}, Back{}, Back{}}), -280);
    CHECK(work_in_hand(back).move == Move::mark);
    CHECK_FALSE(other_rest(back));
}

TEST_CASE("a first bend that is pulled and not yet read stays pulled when the order of the rest changes, and no tape is laid along it") {
    State state = with_wall(at_check(tank_with_made(0)), 490);
    REQUIRE(work_in_hand(state).made.empty());
    REQUIRE(other_rest(state));
    REQUIRE(other_rest(state)->is == OtherRest::Is::found);
    state = touched(state, {GoTo{Screen::order}, ReorderRest{}});
    REQUIRE(misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::ink);
    const LineWork before = work_in_hand(state);
    state = touched(state, {Next{}});  // inked again
    CHECK(work_in_hand(state).stage == Stage::bending);
    CHECK(work_in_hand(state).move == Move::check);
    CHECK(work_in_hand(state).pulls == 1);
    CHECK(work_in_hand(state).pulled_with == before.pulled_with);
    REQUIRE(step_in_hand(state));
    CHECK(step_in_hand(state)->bend == 3);
}

TEST_CASE("the lever has moved when another order is offered: the bend in hand comes first all the same, and the bench goes on") {
    const State waiting = with_wall(touched(tank_with_made(4), {Next{}, Next{}}), -280);  // bend 2 waits for the lever
    REQUIRE(work_in_hand(waiting).move == Move::pull);
    REQUIRE(lever_decides(waiting));
    CHECK(bar_to_start(waiting) == Bar::stopped);
    CHECK(touched(waiting, {LeverHasMoved{}}).work == waiting.work);  // only where all of it is said
    const State moved = touched(waiting, {GoTo{Screen::order}, LeverHasMoved{}});
    CHECK(bends_of(moved) == bends_of(waiting));
    CHECK(moved.looks.screen == Screen::bench);
    REQUIRE(step_in_hand(moved));
    CHECK(step_in_hand(moved)->bend == 1);
    CHECK(work_in_hand(moved).move == Move::pull);
    CHECK_FALSE(lever_decides(moved));
    CHECK(steps_begun(*sheet_in_hand(moved), work_in_hand(moved)) == 5);
    CHECK(bends_of(touched(moved, {GoTo{Screen::order}, ReorderRest{}})) == bends_of(waiting));
    CHECK(work_in_hand(touched(moved, {Next{}})).pulls == 1);
    CHECK(lever_decides(touched(moved, {Undo{}})));
}

TEST_CASE("a bend that is pulled and not read yet keeps its check when those after it come in another order") {
    const State pulled = with_wall(at_check(tank_with_made(3)), -280);
    REQUIRE(other_rest(pulled));
    REQUIRE(other_rest(pulled)->is == OtherRest::Is::found);
    CHECK(other_rest(pulled)->now == std::vector<Placing>{{1, End::A}, {0, End::A}});
    CHECK(other_rest(pulled)->then == std::vector<Placing>{{0, End::A}, {1, End::A}});
    CHECK_FALSE(lever_decides(pulled));
    const State after = touched(pulled, {GoTo{Screen::order}, ReorderRest{}});
    CHECK(bends_of(after) == std::vector<std::size_t>{4, 5, 3, 6, 1, 2});
    CHECK(work_in_hand(after).move == Move::check);
    CHECK(work_in_hand(after).pulls == 1);
    // Pulled on after it read under: it is the lever for a bend that is begun, and decides nothing.
    const State on = with_wall(touched(reading(at_check(tank_with_made(3)), "43"), {PullAgain{true}}), -280);
    REQUIRE(work_in_hand(on).move == Move::pull);
    CHECK_FALSE(lever_decides(on));
    CHECK(work_in_hand(touched(on, {GoTo{Screen::order}, ReorderRest{}})).move == Move::pull);
}

TEST_CASE("what comes into the way while ways to save the tube are shown takes them off the screen, and none can be taken") {
    const State waiting = at_check(tank_with_made(3));
    Job job = *waiting.job;
    job.lines[0].bender.body = {{"wall", Stands::bench, HalfSpace{{-280, 0, 0}, {-1, 0, 0}}}};
    State state = apply(waiting, CardKept{job.lines[0].bender, true, job}).state;  // nobody has answered yet
    REQUIRE(state.orders[0].rest.looking);
    for (const Action& action : std::vector<Action>{Key{"4"}, Key{"7"}, Next{}, LookAtRescue{}}) state = apply(state, action).state;
    REQUIRE(state.looks.screen == Screen::rescue);
    REQUIRE(state.rescue);
    const auto found = with_wall(waiting, -280).orders[0].rest.verdict;
    REQUIRE(found);
    const State told = apply(state, OrderIs{state.orders[0].rest.question, found, nullptr}).state;
    CHECK(bar_to_start(told) == Bar::stopped);
    CHECK_FALSE(told.rescue);
    CHECK(told.looks.screen != Screen::rescue);
    CHECK(apply(told, TakeRescue{0}).state.work == state.work);
}

TEST_CASE("an order that was found holds for one springback: half a degree more of it is asked about anew") {
    const State state = with_wall(tank_with_made(3), -280);
    REQUIRE(other_rest(state)->is == OtherRest::Is::found);
    // Bend 6 on another tube, opened a degree further than was foreseen; believed in part.
    const State read_short = touched(reading(at_check(tank_with_made(3)), "44"), {KeepBend{true}});
    REQUIRE(read_short.work.bends.size() == 1);
    LoggedBend elsewhere = read_short.work.bends[0];
    elsewhere.of.job = "another job";
    const StateStep learned = apply(state, BendsRead{"bends.json", {elsewhere}});
    const Springback was = sheet_in_hand(state)->springback, is = sheet_in_hand(learned.state)->springback;
    REQUIRE(!(was == is));
    REQUIRE(is_much_the_same(was, is));
    const RestOrder& rest = learned.state.orders[0].rest;
    CHECK(rest.looking);
    CHECK(std::count(learned.requests.begin(), learned.requests.end(), Request{FindOrder{rest.question, 0, false, true}}) == 1);
    CHECK(other_rest(learned.state)->is == OtherRest::Is::looking);
    CHECK(bar_to_start(learned.state) == Bar::none);  // until it is known, it is a caution
}

TEST_CASE("where no order of the rest goes as the bender stands, another stance is told in which one does") {
    State state = with_wall(tank_with_made(3), -240);
    const OtherRest* other = other_rest(state);
    REQUIRE(other);
    CHECK(other->is == OtherRest::Is::none);
    CHECK_FALSE(hit(state).free);  // the settled order goes in no stance
    REQUIRE(other->stance);
    CHECK(bar_to_start(state) == Bar::stopped);
    CHECK(bends_of(touched(state, {GoTo{Screen::order}, ReorderRest{}})) == bends_of(state));
    state = touched(state, {ChooseSetUp{*other->stance}});
    REQUIRE(other_rest(state));
    REQUIRE(other_rest(state)->is == OtherRest::Is::found);
    state = touched(state, {GoTo{Screen::order}, ReorderRest{}});
    CHECK(told(state).empty());
}

TEST_CASE("hemmed in so that neither order nor stance helps it is a caution, as it is while nobody knows yet") {
    const std::vector<Solid> all_round{{"bench", Stands::bench, HalfSpace{{0, 0, -30}, {0, 0, -1}}}, {"shelf", Stands::bench, HalfSpace{{0, 0, 30}, {0, 0, 1}}},
                                       {"rail", Stands::bench, HalfSpace{{0, 30, 0}, {0, 1, 0}}}, {"post", Stands::bench, HalfSpace{{0, -30, 0}, {0, -1, 0}}}};
    const State state = with_wall(tank_with_made(3), -280, all_round);
    REQUIRE(other_rest(state));
    CHECK(other_rest(state)->is == OtherRest::Is::none);
    CHECK_FALSE(other_rest(state)->stance);
    CHECK(bar_to_start(state) == Bar::none);
    CHECK(step_in_hand(state));
}

TEST_CASE("looking for another order of the rest is stopped, begun again, and an answer that comes too late is dropped") {
    const State settled = tank_with_made(3);
    Job job = *settled.job;
    job.lines[0].bender.body = {{"wall", Stands::bench, HalfSpace{{-280, 0, 0}, {-1, 0, 0}}}};
    const StateStep asked = apply(settled, CardKept{job.lines[0].bender, true, job});
    const RestOrder& rest = asked.state.orders[0].rest;
    REQUIRE(rest.looking);
    CHECK(std::count(asked.requests.begin(), asked.requests.end(), Request{FindOrder{rest.question, 0, false, true}}) == 1);
    CHECK(rest.begun == std::vector<Placing>{{3, End::A}, {4, End::A}, {2, End::A}});
    CHECK(other_rest(asked.state)->is == OtherRest::Is::looking);
    CHECK(apply(asked.state, OrderShare{rest.question, 0.4}).state.orders[0].rest.share == 0.4);

    const StateStep stopped = apply(asked.state, StopLooking{});
    CHECK(stopped.requests == std::vector<Request>{StopFinding{rest.question}});
    CHECK(other_rest(stopped.state)->is == OtherRest::Is::stopped);
    const auto verdict = std::make_shared<const OrderVerdict>(look_for_order(asked.state.sheets[0], {{}, {}, rest.begun}).verdict);
    CHECK(other_rest(apply(stopped.state, OrderIs{rest.question, verdict}).state)->is == OtherRest::Is::stopped);
    const StateStep again = apply(stopped.state, LookAgain{});
    CHECK(again.state.orders[0].rest.looking);
    CHECK(again.state.orders[0].rest.question != rest.question);
    CHECK(other_rest(orders_found(again).state)->is == OtherRest::Is::found);

    // The wall goes from the card again: nobody waits any more.
    const StateStep gone = apply(asked.state, CardKept{settled.job->lines[0].bender, true, settled.job});
    CHECK(std::count(gone.requests.begin(), gone.requests.end(), Request{StopFinding{rest.question}}) == 1);
    CHECK_FALSE(gone.state.orders[0].rest.looking);
    // One more bend is made, freely: who stopped the looking is left alone until they ask.
    const State one_more = touched(at_check(touched(asked.state, {StopLooking{}})), {PassCheck{}});
    REQUIRE(work_in_hand(one_more).made.size() == 4);
    CHECK(other_rest(one_more)->is == OtherRest::Is::stopped);
    const State asked_again = touched(one_more, {LookAgain{}});
    CHECK(asked_again.orders[0].rest.begun.size() == 4);
    CHECK(other_rest(asked_again)->is == OtherRest::Is::found);
}

TEST_CASE("after the cut, a bender stood so that the tube hits the bench stops the work, until it is stood so that it does not") {
    State state = at_first_bend_over_a_bench();
    REQUIRE(step_in_hand(state));
    CHECK(told(state).empty());
    state = touched(state, {ChooseSetUp{{HookHand::left, Swing::down}}});
    CHECK_FALSE(told(state).empty());
    CHECK(bar_to_start(state) == Bar::stopped);
    CHECK_FALSE(step_in_hand(state));
    CHECK(bar_to_start(touched(state, {Undo{}})) == Bar::none);
    state = touched(state, {ChooseSetUp{{HookHand::left, Swing::away}}});
    CHECK(told(state).empty());
    CHECK(bar_to_start(state) == Bar::none);
}

TEST_CASE("bends that are made are told of no more") {
    State state = at_first_bend_over_a_bench();
    const std::size_t first = step_in_hand(state)->bend;
    state = touched(at_check(state), {PassCheck{}});
    REQUIRE(work_in_hand(state).step == 1);
    state = touched(state, {ChooseSetUp{{HookHand::left, Swing::down}}});
    const std::vector<std::size_t> bends = told(state);
    CHECK(std::find(bends.begin(), bends.end(), first) == bends.end());
}

}  // namespace tubewright
