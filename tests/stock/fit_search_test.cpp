#include "stock/fit_search.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "stock/lengths.h"

using namespace tubewright;

namespace {

using Verdict = FitSearch::Verdict;

Verdict verdict(const CuttingQuestion& shop, const PlanCost& limit, std::int64_t patience = 1'000'000) {
    const PlanProgress nobody;
    const PlanSearch search(shop);
    FitList list(search);
    REQUIRE(list.list(limit.waste.um));
    PlanSteps steps(patience, nobody, 0, 1);
    FitSearch fits(list, limit, steps);
    const Verdict found = fits.run();
    if (found == Verdict::found) CHECK(fits.cost <= limit);
    return found;
}

}  // namespace

TEST_CASE("a plan is found where there is one that costs no more, and not where it would cost more") {
    // 60, 40 and 50 of sticks of 100: 60 + 40 come out even, and of the other stick 50 are left.
    const CuttingQuestion shop{{{mm(60), 1, {}}, {mm(50), 1, {}}, {mm(40), 1, {}}}, {}, {mm(100)}, {}, mm(25), {}};
    CHECK(verdict(shop, {2, {}, 2, 0}) == Verdict::impossible);
    CHECK(verdict(shop, {2, {}, 2, 1}) == Verdict::found);
    CHECK(verdict(shop, {2, {}, 1, 1}) == Verdict::impossible);
    CHECK(verdict(shop, {2, {}, 2, 1}, 1) == Verdict::unknown);
}

TEST_CASE("something is kept of an offcut where the sticks have no room for the cut") {
    // 60 + 40 fill the only stick; 30 of an offcut of 58 leave 28.
    const CuttingQuestion shop{{{mm(60), 1, {}}, {mm(40), 1, {}}, {mm(30), 1, {}}}, {{{1}, mm(58), false}, {{2}, mm(100), true}}, {}, {}, mm(25), {}};
    CHECK(verdict(shop, {1, {}, 0, 0}) == Verdict::impossible);
    CHECK(verdict(shop, {1, {}, 0, 1}) == Verdict::found);
}

TEST_CASE("that cuts can't be shared out over lengths of which something is kept is found out though their sum would do") {
    // Three of 40 and 30 of each stick of 100 to be kept: of 70 only one 40 each. 120 are less than twice 70.
    const CuttingQuestion shop{{{mm(40), 3, {}}}, {}, {mm(100)}, {}, mm(30), {}};
    CHECK(verdict(shop, {2, {}, 2, 2}) == Verdict::impossible);
    CHECK(verdict(shop, {2, mm(20), 2, 1}) == Verdict::found);
}

TEST_CASE("what is remembered of a failure is true in whatever order the kinds are gone through") {
    // Found by a reader: 886 + 112, 886, 886 with cuts beside them; with some orders a pool that failed was taken for another.
    const CuttingQuestion shop{{{mm(112), 3, {}}, {mm(114), 2, {}}, {mm(223), 1, {}}, {mm(772), 1, {}}, {mm(886), 3, {}}}, {{{1}, mm(183), false}, {{2}, mm(192), false}}, {mm(1000)}, {}, mm(58), {}};
    const PlanCost limit{4, mm(8), 4, 2};
    const PlanProgress nobody;
    const PlanSearch search(shop);
    FitList list(search);
    REQUIRE(list.list(limit.waste.um));
    std::vector<std::size_t> order{0, 1, 2, 3, 4};
    do {
        PlanSteps steps(1'000'000, nobody, 0, 1);
        FitSearch fits(list, limit, steps, order);
        CHECK(fits.run() == Verdict::found);
    } while (std::next_permutation(order.begin(), order.end()));
}
