#include "stock/shop_figures.h"

#include <catch2/catch.hpp>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

const StockTube thin{exact(4.75_mm), exact(0.71_mm), "steel"};
const StockTube thick{exact(8_mm), exact(1_mm), "steel"};

/// Two weeks of a shop, day 0 a Monday. Tube at a dollar a foot, the thick at three.
///   day 1  kinked           24 in thin    2.00   rear
///   day 2  trimmed           6 in thin    0.50   rear
///   day 6  wrong way        12 in thick   3.00   feed
///   day 7  kinked           18 in thin    1.50   crossover
///   day 9  kinked           12 in thick   3.00   feed
std::vector<ScrapRecord> two_weeks() {
    return {{1, "kinked", thin, exact(24_in), {200}, "rear"},
            {2, reason_trimmed, thin, exact(6_in), {50}, "rear"},
            {6, "wrong way", thick, exact(12_in), {300}, "feed"},
            {7, "kinked", thin, exact(18_in), {150}, "crossover"},
            {9, "kinked", thick, exact(12_in), {300}, "feed"}};
}

}  // namespace

TEST_CASE("two weeks of scrap, added up each way") {
    const auto records = two_weeks();
    CHECK(scrap_in_all(records) == ScrapSum{5, exact(72_in), {1000}});
    CHECK(scrap_by_reason(records) == std::map<std::string, ScrapSum>{{"kinked", {3, exact(54_in), {650}}}, {"trimmed", {1, exact(6_in), {50}}}, {"wrong way", {1, exact(12_in), {300}}}});
    CHECK(scrap_by_line(records) == std::map<std::string, ScrapSum>{{"crossover", {1, exact(18_in), {150}}}, {"feed", {2, exact(24_in), {600}}}, {"rear", {2, exact(30_in), {250}}}});
    CHECK(scrap_by_tube(records) == std::map<StockTube, ScrapSum>{{thin, {3, exact(48_in), {400}}}, {thick, {2, exact(24_in), {600}}}});
    CHECK(scrap_by_week(records, 0) == std::map<int, ScrapSum>{{0, {3, exact(42_in), {550}}}, {1, {2, exact(30_in), {450}}}});
}

TEST_CASE("a week has seven days, before the first day too") {
    CHECK(week_of(6, 0) == 0);
    CHECK(week_of(7, 0) == 1);
    CHECK(week_of(-1, 0) == -1);
    CHECK(week_of(-7, 0) == -1);
    CHECK(week_of(-8, 0) == -2);
    CHECK(week_of(9, 3) == 0);
    CHECK(week_of(10, 3) == 1);
}

TEST_CASE("what one reason costs most, trims not counted") {
    // Mistakes cost 9.50; kinks 6.50 of it, 68 %.
    const auto most = costliest_reason(two_weeks());
    REQUIRE(most);
    CHECK(most->reason == "kinked");
    CHECK(most->sum.cost.cents == 650);
    CHECK(most->share == Approx(650.0 / 950));
    CHECK_FALSE(costliest_reason({two_weeks()[1]}));
    // Money counts, not length: a foot of the thick is dearer than two of the thin.
    CHECK(costliest_reason({two_weeks()[0], two_weeks()[2]})->reason == "wrong way");
}

TEST_CASE("of four lines built in, one was the second try: three of four right the first time") {
    Ledger ledger;
    const auto must = [&](StockEvent event) { REQUIRE(write(ledger, {1, std::move(event)}).ok()); };
    CHECK_FALSE(first_time_right(ledger).rate());
    must(Received{{1}, PieceKind::stick, thin, exact(240_in), "", "", {}});
    must(Cut{{1}, {2}, exact(20_in), {}, "left"});
    must(Used{{2}, {}, {}});
    must(Cut{{1}, {3}, exact(20_in), {}, "right"});
    must(Scrapped{{3}, exact(20_in), "kinked"});
    must(Cut{{1}, {4}, exact(20_in), {}, "right"});
    must(Used{{4}, {}, {}});  // the second try
    must(Cut{{1}, {5}, exact(20_in), {}, "rear"});
    must(Scrapped{{5}, exact(20_in), "touched the wrong button"});
    must(TakenBack{ledger.entries.size() - 1});
    must(Used{{5}, {}, {}});
    must(Cut{{1}, {6}, exact(20_in), {}, "right"});
    must(Used{{6}, {}, {}});  // another of the same, right at once
    const FirstTimeRight right = first_time_right(ledger);
    CHECK(right.made == 4);
    CHECK(right.first_time == 3);
    CHECK(right.rate() == 0.75);
}
