#include "bench/settled_order.h"

#include <catch2/catch.hpp>
#include <algorithm>

#include "bench/ordered.h"
#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;
using Eigen::Vector3d;

namespace {

Solid slab(const char* name, const Vector3d& at, const Vector3d& into) { return {name, Stands::bench, HalfSpace{at, into}}; }

/// One bend of 60 with 8 in (203 mm) after it, over a bench 40 mm below the tube. Swung down, the far end goes
/// 203 sin 60 = 176 mm below; swung up, away or toward it never comes nearer to the bench than it lies.
Sheet over_the_bench(const SetUp& set_up) {
    Line line = line_of({5, 8}, {{60, 0}});
    line.bender.body = {slab("bench", {0, 0, -40}, {0, 0, -1})};
    line.bender.set_up = {HookHand::left, Swing::away};
    SheetChoice choice;
    choice.set_up = set_up;
    return bend_sheet(line, choice);
}

}  // namespace

TEST_CASE("stood so that the lever swings into the bench, the settled order stops, and is told a stance that is free") {
    const std::vector<Finding> findings = settled_findings(over_the_bench({HookHand::left, Swing::down}), 0);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].severity == Severity::stop);
    CHECK(findings[0].code == "hits-as-it-stands");
    CHECK(findings[0].bend == 0u);
    const auto& fact = std::get<HitsAsItStands>(findings[0].fact);
    CHECK(fact.solid == "bench");
    CHECK(fact.obstacle.when == Obstacle::When::swept);
    CHECK(fact.free == SetUp{HookHand::left, Swing::away});
}

TEST_CASE("swung up, away or toward there is nothing in the way") {
    for (const HookHand hand : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::up, Swing::away, Swing::toward}) CHECK(settled_findings(over_the_bench({hand, swing}), 0).empty());
}

TEST_CASE("bends that are made already are in nobody's way") {
    CHECK(settled_findings(over_the_bench({HookHand::left, Swing::down}), 1).empty());
}

TEST_CASE("hemmed in on all sides it is a caution: there is no stance to ask for") {
    Line line = line_of({5, 8}, {{60, 0}});
    line.bender.body = {slab("bench", {0, 0, -40}, {0, 0, -1}), slab("shelf", {0, 0, 40}, {0, 0, 1}), slab("wall", {0, 40, 0}, {0, 1, 0}), slab("rail", {0, -40, 0}, {0, -1, 0})};
    const std::vector<Finding> findings = settled_findings(bend_sheet(line), 0);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].severity == Severity::caution);
    CHECK_FALSE(std::get<HitsAsItStands>(findings[0].fact).free);
}

TEST_CASE("a line of more bends than are looked at says so, one of as many does not") {
    const auto zigzag = [](std::size_t bends) {
        std::vector<std::pair<double, double>> turns(bends, {20, 180});
        turns.front().second = 0;
        return bend_sheet(line_of(std::vector<double>(bends + 1, 5), turns));
    };
    const auto said = [](const Sheet& sheet) {
        return std::count_if(sheet.findings.begin(), sheet.findings.end(), [](const Finding& f) { return f.code == "order-not-looked" && f.severity == Severity::caution; });
    };
    const Sheet sheet = zigzag(65);
    CHECK(said(sheet) == 1);
    CHECK_FALSE(stopped(sheet));
    CHECK(said(ordered_sheet(sheet.line)) == 1);
    CHECK(said(zigzag(64)) == 0);
}

TEST_CASE("where the looking was stopped, the sheet says that nobody has looked") {
    OrderVerdict verdict;
    verdict.outcome = OrderVerdict::Outcome::cancelled;
    const Sheet sheet = in_order(line_of({5, 8}, {{60, 0}}), {}, verdict);
    REQUIRE(sheet.findings.size() == 1);
    CHECK(sheet.findings[0].code == "order-not-looked");
    CHECK(std::get<OrderNotLooked>(sheet.findings[0].fact).stopped);
}

TEST_CASE("a finding that is added stands behind those as heavy and before the lighter ones") {
    Sheet sheet = bend_sheet(line_of({5, 8}, {{10, 0}}));  // a small angle: a note
    REQUIRE(sheet.findings.size() == 1);
    add_finding(sheet, {Severity::caution, "one", std::nullopt, NoBend{}});
    add_finding(sheet, {Severity::stop, "two", std::nullopt, NoBend{}});
    add_finding(sheet, {Severity::caution, "three", std::nullopt, NoBend{}});
    CHECK(sheet.findings[0].code == "two");
    CHECK(sheet.findings[1].code == "one");
    CHECK(sheet.findings[2].code == "three");
    CHECK(sheet.findings[3].severity == Severity::note);
}
