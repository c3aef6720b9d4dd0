// The tube is cut, its order settled: what stands in its way once the bender is stood another way.

#include <catch2/catch.hpp>
#include <algorithm>

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

}  // namespace

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
