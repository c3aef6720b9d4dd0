#include "stock/plan_steps.h"

#include <catch2/catch.hpp>

using namespace tubewright;

TEST_CASE("a way has its share of the patience, and of that what is allowed") {
    // From a fifth to the half of 1000 steps are 300, and a third of those is 100.
    const PlanProgress nobody;
    PlanSteps steps(1000, nobody, 0.2, 0.5);
    steps.allow(1.0 / 3);
    steps.take(99);
    CHECK_FALSE(steps.stopped());
    steps.take(1);
    CHECK(steps.stopped());
    CHECK_FALSE(steps.used_up());
    steps.allow(1);
    CHECK_FALSE(steps.stopped());
    steps.take(200);
    CHECK(steps.stopped());
    CHECK(steps.used_up());
}

TEST_CASE("progress is told within the way's share, and whoever hears it can stop") {
    double told = -1;
    bool go_on = true;
    const PlanProgress hear = [&](double share) {
        told = share;
        return go_on;
    };
    PlanSteps steps(1'000'000, hear, 0.2, 0.6);
    CHECK_FALSE(steps.stopped());
    CHECK(told == Approx(0.2));
    go_on = false;
    steps.take(200'000);  // half of its own
    CHECK(steps.stopped());
    CHECK(told == Approx(0.4));
    CHECK(steps.cancelled());
}
