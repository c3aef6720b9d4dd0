#include "stock/fit_list.h"

#include <catch2/catch.hpp>

#include "stock/lengths.h"

using namespace tubewright;

TEST_CASE("the fits are the cuts that leave no more than may be wasted, closest first") {
    // Of 100: 60 + 40, 40 + 30 + 30 come out even; 60 + 30 leaves 10, 40 + 40 leaves 20, and 40 + 30, 60 and less leave what is kept.
    // Of an offcut of 45: 40 leaves 5, 30 leaves 15.
    const CuttingQuestion shop{{{mm(60), 1, {}}, {mm(40), 2, {}}, {mm(30), 2, {}}}, {{{1}, mm(45), false}}, {mm(100)}, {}, mm(25), {}};
    const PlanSearch search(shop);
    FitList list(search);
    REQUIRE(list.list(0));
    CHECK(list.fits.size() == 2);
    REQUIRE(list.list(mm(10).um));
    REQUIRE(list.fits.size() == 4);
    CHECK(list.fits[2].waste == mm(5).um);
    CHECK(list.count(1, list.fits[2].pieces) == 1);
    CHECK_FALSE(list.openables[list.fits[2].of].stick);
    CHECK(list.fits[3].waste == mm(10).um);
    REQUIRE(list.list(mm(100).um));
    CHECK(list.fits.size() == 6);
}

TEST_CASE("what is left behind a last cut and narrower than the saw is no waste") {
    // 49 + 48 and the saw's 2 between them leave 1 of 100, less than its width; 49 + 46 leave 3 and the saw takes 2 of that.
    const CuttingQuestion shop{{{mm(49), 1, {}}, {mm(48), 1, {}}, {mm(46), 1, {}}}, {}, {mm(100)}, mm(2), mm(25), {}};
    const PlanSearch search(shop);
    FitList list(search);
    REQUIRE(list.list(mm(1).um));
    REQUIRE(list.fits.size() == 2);
    CHECK(list.fits[0].waste == 0);
    CHECK(list.fits[1].waste == mm(1).um);
}

TEST_CASE("counts are compared kind by kind, also where they take two words") {
    // 24 kinds of up to 4 have fields of 4 bits each: more than one word holds.
    CuttingQuestion shop{{}, {}, {mm(1000)}, {}, mm(25), {}};
    for (int i = 0; i < 24; ++i) shop.wanted.push_back({mm(400 + i), 4, {}});
    const PlanSearch search(shop);
    const FitList list(search);
    REQUIRE(list.fields_suffice);
    for (std::size_t kind = 0; kind < 24; ++kind) {
        CHECK(list.count(kind, list.all) == 4);
        const Counts one = list.fields[kind].times(1);
        CHECK(list.enough(list.all, one));
        CHECK_FALSE(list.enough(list.all - list.fields[kind].times(4), one));
    }
    // 40 kinds of 4 are too many for two.
    for (int i = 24; i < 40; ++i) shop.wanted.push_back({mm(400 + i), 4, {}});
    CHECK_FALSE(FitList(PlanSearch(shop)).fields_suffice);
}
