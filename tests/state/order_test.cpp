// The order of bends: looked for, changed by hand, settled when the tube is cut.

#include <algorithm>
#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {
namespace {

State tank_open() { return touched(job_open(), {JobRead{"tank", "jobs/tank.json", tank_job()}, OpenLine{"round the tank"}}); }

std::vector<std::size_t> bends_in_order(const State& state) {
    std::vector<std::size_t> bends;
    for (const Step& step : sheet_in_hand(state)->steps) bends.push_back(step.bend);
    return bends;
}

State cut(State state) {
    state = touched(std::move(state), {NewStick{inches(240)}, GoTo{Screen::line}, Next{}});
    return touched(all_ticked(std::move(state)), {Next{}});
}

}  // namespace

TEST_CASE("each line's order is asked for once, and the sheet takes the answer") {
    const StateStep opened = apply(job_open(), JobRead{"tank", "jobs/tank.json", tank_job()});
    REQUIRE(opened.requests == std::vector<Request>{FindOrder{opened.state.orders[0].question, 0}});
    State state = touched(opened.state, {OpenLine{"round the tank"}});
    CHECK(bar_to_start(state) == Bar::looking);
    CHECK(touched(state, {Next{}}).looks.screen == Screen::line);  // not begun before the order is known
    OrderVerdict verdict;
    verdict.outcome = OrderVerdict::Outcome::found;
    for (const std::size_t bend : {2, 1, 0, 3, 4, 5}) verdict.order.push_back({bend, End::B});
    const auto told = std::make_shared<const OrderVerdict>(verdict);
    CHECK(bends_in_order(touched(state, {OrderIs{opened.state.orders[0].question + 7, told}})) != std::vector<std::size_t>{2, 1, 0, 3, 4, 5});  // not this question's
    state = touched(state, {OrderIs{opened.state.orders[0].question, told}});
    CHECK(bends_in_order(state) == std::vector<std::size_t>{2, 1, 0, 3, 4, 5});
    CHECK(sheet_in_hand(state)->steps[0].hook == End::B);
    CHECK(bar_to_start(state) == Bar::none);
}

TEST_CASE("looking that is stopped takes the plain order, and a late answer is dropped") {
    const StateStep opened = apply(job_open(), JobRead{"tank", "jobs/tank.json", tank_job()});
    const std::int64_t question = opened.state.orders[0].question;
    const StateStep stopped = apply(touched(opened.state, {OpenLine{"round the tank"}}), StopLooking{});
    CHECK(stopped.requests == std::vector<Request>{StopFinding{question}});
    CHECK(bar_to_start(stopped.state) == Bar::none);
    OrderVerdict verdict;
    verdict.outcome = OrderVerdict::Outcome::found;
    for (const std::size_t bend : {5, 4, 3, 2, 1, 0}) verdict.order.push_back({bend, End::B});
    const State late = apply(stopped.state, OrderIs{question, std::make_shared<const OrderVerdict>(verdict)}).state;
    CHECK(bends_in_order(late) == bends_in_order(stopped.state));
}

TEST_CASE("a bend is made the first, and the rest follows as is best") {
    State state = touched(tank_open(), {GoTo{Screen::order}, PinFirst{5}});
    CHECK(bends_in_order(state).front() == 5);
    CHECK(bends_in_order(state).size() == 6);
    state = touched(state, {PinFirst{5}});
    CHECK(work_in_hand(state).opening.empty());
    CHECK(bends_in_order(state) == bends_in_order(tank_open()));
}

TEST_CASE("a bend is moved earlier or later by hand; undo and the best order bring the others back") {
    const State before = touched(tank_open(), {GoTo{Screen::order}});
    const std::vector<std::size_t> best = bends_in_order(before);
    State state = touched(before, {MoveBend{best[1], -1}});
    std::vector<std::size_t> swapped = best;
    std::swap(swapped[0], swapped[1]);
    CHECK(bends_in_order(state) == swapped);
    CHECK(bends_in_order(touched(state, {Undo{}})) == best);
    CHECK(bends_in_order(touched(state, {GoTo{Screen::order}, FreeOrder{}})) == best);
    CHECK(bends_in_order(touched(before, {MoveBend{best[0], -1}})) == best);  // the first can't go earlier
    CHECK(bends_in_order(touched(before, {MoveBend{best[5], 1}})) == best);
}

TEST_CASE("a bend carried over several places is one touch: undone as one, and the order screen stays") {
    const State before = touched(tank_open(), {GoTo{Screen::order}});
    const std::vector<std::size_t> best = bends_in_order(before);
    const State state = touched(before, {MoveBend{best[1], 3}});
    CHECK(bends_in_order(state) == std::vector<std::size_t>{best[0], best[2], best[3], best[4], best[1], best[5]});
    CHECK(state.looks.picked_bend == best[1]);
    CHECK(bends_in_order(touched(state, {MoveBend{best[1], -4}})) == std::vector<std::size_t>{best[1], best[0], best[2], best[3], best[4], best[5]});
    const State undone = touched(state, {Undo{}});
    CHECK(bends_in_order(undone) == best);
    CHECK(undone.looks.screen == Screen::order);
    CHECK(bends_in_order(touched(undone, {Redo{}})) == bends_in_order(state));
    for (const int too_far : {5, 100, -2, 0}) CHECK(touched(before, {MoveBend{best[1], too_far}}).work == before.work);
}

TEST_CASE("an order by hand stands on the screen before it is looked at, and then says what it breaks and costs") {
    const State before = touched(tank_open(), {GoTo{Screen::order}});
    const std::vector<std::size_t> best = bends_in_order(before);
    REQUIRE(before.orders[0].best_ends);
    const StateStep asked = apply(before, MoveBend{best[0], 5});
    REQUIRE(asked.state.orders[0].looking);
    const std::vector<std::size_t> moved{best[1], best[2], best[3], best[4], best[5], best[0]};
    CHECK(bends_in_order(asked.state) == moved);
    const State told = orders_found(asked).state;
    CHECK(bends_in_order(told) == moved);
    REQUIRE(told.orders[0].by_hand);
    CHECK(told.orders[0].by_hand->ends.worse() >= told.orders[0].best_ends->worse());
    CHECK(told.orders[0].best_ends == before.orders[0].best_ends);
    CHECK_FALSE(touched(told, {FreeOrder{}}).orders[0].by_hand);
}

TEST_CASE("switched on again with an order by hand, it is told against the best one as before") {
    const State before = touched(tank_open(), {GoTo{Screen::order}, MoveBend{bends_in_order(tank_open())[0], 5}});
    REQUIRE(before.orders[0].by_hand);
    REQUIRE(before.orders[0].best_ends);
    State fresh = job_open();
    fresh = touched(fresh, {BookRead{before.work, before.settings, {}}});
    const StateStep opened = apply(fresh, JobRead{"tank", "jobs/tank.json", tank_job()});
    const LineOrder& asked = opened.state.orders[0];
    REQUIRE(opened.requests == std::vector<Request>{FindOrder{asked.question, 0}, FindOrder{asked.best_question, 0, true}});
    CHECK_FALSE(asked.best_ends);
    const State told = orders_found(opened).state;
    REQUIRE(told.orders[0].best_ends);
    CHECK(told.orders[0].best_ends == before.orders[0].best_ends);
    CHECK(told.orders[0].by_hand->ends == before.orders[0].by_hand->ends);
    CHECK(bends_in_order(touched(told, {OpenLine{"round the tank"}})) == bends_in_order(before));  // the best one is told of, not taken
    // Another order by hand comes first: what is asked for the comparison alone is asked anew behind it.
    const StateStep again = apply(touched(opened.state, {OpenLine{"round the tank"}, GoTo{Screen::order}}), MoveBend{bends_in_order(before)[0], 1});
    const std::vector<Request>& requests = again.requests;
    CHECK(std::count(requests.begin(), requests.end(), Request{StopFinding{asked.best_question}}) == 1);
    const LineOrder& now = again.state.orders[0];
    CHECK(std::find(requests.begin(), requests.end(), Request{FindOrder{now.best_question, 0, true}}) > std::find(requests.begin(), requests.end(), Request{FindOrder{now.question, 0}}));
    const auto late = std::make_shared<const OrderVerdict>(find_order(again.state.sheets[0]));
    CHECK_FALSE(apply(again.state, OrderIs{asked.best_question, late}).state.orders[0].best_ends);
}

TEST_CASE("after the looking was stopped it can be begun again") {
    const StateStep opened = apply(job_open(), JobRead{"tank", "jobs/tank.json", tank_job()});
    const State stopped = touched(opened.state, {OpenLine{"round the tank"}, GoTo{Screen::order}, StopLooking{}});
    REQUIRE(stopped.orders[0].verdict->outcome == OrderVerdict::Outcome::cancelled);
    const StateStep again = apply(stopped, LookAgain{});
    CHECK(again.state.orders[0].looking);
    CHECK(again.state.work == stopped.work);
    CHECK(bends_in_order(orders_found(again).state) == bends_in_order(tank_open()));
    CHECK(apply(tank_open(), LookAgain{}).requests.empty());  // nothing was stopped
}

TEST_CASE("a bend is picked for the arrows, and let go of with the screen") {
    const State state = touched(tank_open(), {GoTo{Screen::order}, PickBend{4}});
    CHECK(state.looks.picked_bend == 4);
    CHECK(touched(state, {PickBend{77}}).looks.picked_bend == 4);
    CHECK_FALSE(touched(state, {Back{}}).looks.picked_bend);
    CHECK_FALSE(touched(tank_open(), {PickBend{4}}).looks.picked_bend);
}

TEST_CASE("an order by hand that can't be made is shown, and stops the line") {
    // Two bends an inch and a half apart, then a long leg: whichever comes second must find its straight on
    // the hook side.
    State state = touched(tank_open(), {GoTo{Screen::order}});
    OrderVerdict verdict;
    verdict.outcome = OrderVerdict::Outcome::none;
    for (const std::size_t bend : {0, 5, 1, 4, 2, 3}) verdict.order.push_back({bend, End::A});
    verdict.furthest = {{0, End::A}};
    verdict.stops = {{{1, {5, End::A}, InTheWay{}}, Obstacle{Obstacle::When::swept, 0, std::nullopt, 0, {40}, Length{12}}, "bench top"}};
    const StateStep asked = apply(state, MoveBend{bends_in_order(state)[0], 1});
    REQUIRE(std::holds_alternative<FindOrder>(asked.requests.at(0)));
    state = apply(asked.state, OrderIs{asked.state.orders[0].question, std::make_shared<const OrderVerdict>(verdict)}).state;
    CHECK(bends_in_order(state) == std::vector<std::size_t>{0, 5, 1, 4, 2, 3});
    CHECK(bar_to_start(state) == Bar::stopped);
    CHECK(sheet_in_hand(state)->findings.front().code == "no-order");
}

TEST_CASE("once the tube is cut its order stays, whatever is chosen for the bender; the next piece is free again") {
    State state = cut(tank_open());
    REQUIRE(work_in_hand(state).cut);
    const std::vector<std::size_t> settled = bends_in_order(state);
    state = touched(state, {GoTo{Screen::order}, PinFirst{5}, MoveBend{settled[0], 1}});
    CHECK(bends_in_order(state) == settled);
    const StateStep turned = apply(touched(state, {GoTo{Screen::stance}}), ChooseSetUp{{HookHand::right, Swing::down}});
    CHECK(bends_in_order(turned.state) == settled);
    CHECK(misfit(*sheet_in_hand(turned.state), work_in_hand(turned.state)) == Misfit::none);
    state = touched(turned.state, {GoTo{Screen::bench}, WentWrong{}, ChooseReason{Reason::damaged}, ChooseKept{"none"}, ConfirmScrap{}});
    CHECK_FALSE(work_in_hand(state).cut);
    CHECK(work_in_hand(state).order.empty());
}

TEST_CASE("the order asked for by hand is kept for the next piece") {
    State state = touched(tank_open(), {GoTo{Screen::order}, PinFirst{4}});
    state = cut(std::move(state));
    state = touched(state, {WentWrong{}, ChooseReason{Reason::damaged}, ChooseKept{"none"}, ConfirmScrap{}});
    CHECK(work_in_hand(state).opening == std::vector<std::size_t>{4});
    CHECK(bends_in_order(state).front() == 4);
}

}  // namespace tubewright
