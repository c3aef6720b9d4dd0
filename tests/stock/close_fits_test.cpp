#include "stock/close_fits.h"

#include <catch2/catch.hpp>

#include "stock/glpk_plan.h"
#include "stock/lengths.h"
#include "stock/random_shop.h"

using namespace tubewright;

namespace {

/// By close fits alone, from what is found at the first glance.
PlanSearch by_close_fits(const CuttingQuestion& shop, std::int64_t patience = plan_patience) {
    const PlanProgress nobody;
    PlanSearch search(shop);
    PlanSteps glance(1, nobody, 0, 1), steps(patience, nobody, 0, 1);
    search.run(glance);
    REQUIRE(search.found);
    if (search.cost != search.bound) CHECK(improve_by_close_fits(search, steps));
    return search;
}

/// Sticks of 100 mm to buy, and a saw that takes nothing, so that sums are easily followed.
CuttingQuestion small_shop(ExactLength keep) { return {{}, {}, {mm(100)}, {}, keep, {}}; }

}  // namespace

TEST_CASE("cuts that come out even are put together though the longest would be taken first") {
    // The longest first: 45 + 40, 35 + 30 + 30, and the 20 needs a third stick. But 45 + 35 + 20 and 40 + 30 + 30 are 100 each.
    CuttingQuestion shop = small_shop(mm(10));
    for (const int length : {45, 40, 35, 30, 30, 20}) shop.wanted.push_back({mm(length), 1, {}});
    const PlanSearch search = by_close_fits(shop);
    CHECK(search.cost == PlanCost{2, {}, 2, 0});
    CHECK(search.bound == search.cost);
}

TEST_CASE("where no cuts come out even, that each length leaves something is proven") {
    // 40 + 40, 40 + 30 and 30 alone leave 20, 30 and more, and three are too long; so both sticks leave something.
    CuttingQuestion shop = small_shop(mm(10));
    shop.wanted = {{mm(40), 3, "a"}, {mm(30), 1, "b"}};
    const PlanSearch search = by_close_fits(shop);
    CHECK(search.cost == PlanCost{2, {}, 2, 2});
    CHECK(search.bound == search.cost);
}

TEST_CASE("that waste can't be helped is proven") {
    // 60 + 38 of a stick leave 2, too little to keep. So does the 38 of an offcut of 40, with another 40 left of the stick.
    CuttingQuestion shop = small_shop(mm(30));
    shop.wanted = {{mm(60), 1, "a"}, {mm(38), 1, "b"}};
    shop.rack = {{{1}, mm(40), false}};
    const PlanSearch search = by_close_fits(shop);
    CHECK(search.cost == PlanCost{1, mm(2), 1, 0});
    CHECK(search.bound == search.cost);
}

TEST_CASE("something is kept of each length rather than cutting the longest together") {
    // Of a stick 48 + 48 leave 4, and so do 32 + 32 + 32: too little to keep, where 48 + 32 leave 20. That both sticks give, and the
    // last 32 comes from an offcut of 52, of which it leaves 20 as well. A 48 from the offcut would leave 4.
    CuttingQuestion shop = small_shop(mm(20));
    shop.wanted = {{mm(48), 2, "a"}, {mm(32), 3, "b"}};
    shop.rack = {{{1}, mm(52), false}};
    const PlanSearch search = by_close_fits(shop);
    CHECK(search.cost == PlanCost{2, {}, 2, 3});
    CHECK(search.bound == search.cost);
}

TEST_CASE("a search among close fits that is stopped says so, and its bound holds where patience runs out") {
    std::mt19937 dice(7);
    for (int i = 0; i < 10; ++i) {
        const CuttingQuestion small = random_shop(dice, {14, 6, 400, 1500});
        const auto solver = glpk_plan(small, 3000, 2'000);
        if (!solver) continue;
        for (const std::int64_t patience : {1, 300, 10'000, 100'000}) CHECK(by_close_fits(small, patience).bound <= solver->cost);
    }
    const CuttingQuestion shop = random_shop(dice, {40, 12, 300, 1500, true});
    PlanSearch search(shop);
    const PlanProgress nobody, stop = [](double) { return false; };
    PlanSteps glance(1, nobody, 0, 1), steps(plan_patience, stop, 0, 1);
    search.run(glance);
    (void)improve_by_close_fits(search, steps);
    CHECK(search.cancelled);
}

TEST_CASE("most shops with many short cuts of many kinds have a plan that is proven") {
    std::mt19937 dice(7);
    int proven = 0;
    for (int i = 0; i < 10; ++i) {
        const CuttingQuestion shop = random_shop(dice, {40, 12, 300, 1500, true});
        const PlanFound plan = std::get<PlanFound>(best_plan(shop));
        CHECK(counted_anew(shop, plan) == plan.cost);
        proven += plan.proven;
    }
    CHECK(proven >= 8);
}

TEST_CASE("close fits alone come to a general solver's best") {
    std::mt19937 dice(20261130);
    int compared = 0;
    for (int i = 0; i < 60; ++i) {
        const CuttingQuestion shop = random_shop(dice, {14, 6, i % 2 ? 400 : 700, i % 2 ? 1500 : 2500});
        const auto solver = glpk_plan(shop, 3000, 2'000);
        if (!solver) continue;
        const PlanSearch search = by_close_fits(shop);
        INFO("shop " << i);
        CHECK(search.bound <= solver->cost);
        CHECK(solver->cost <= search.cost);
        CHECK(search.cost.sticks == solver->cost.sticks);
        CHECK(search.cost.waste.um == solver->cost.waste.um);
        CHECK(search.cost.bought == solver->cost.bought);
        CHECK(search.cost.leftovers == solver->cost.leftovers);
        CHECK(search.bound == search.cost);
        ++compared;
    }
    CHECK(compared > 40);
}
