// A line entered finger by finger: what is asked, where each number goes, and what is asked of the disk.

#include <catch2/catch.hpp>

#include "state/rules.h"
#include "state/state.h"

using namespace tubewright;

namespace {

Offers offers() {
    Offers all;
    all.tubes = {{"3/16 in", {4.7625}, {0.7112}}, {"3/8 in", {9.525}, {0.889}}};
    all.materials = {{"stainless-304", "304 stainless steel"}, {"steel-low-carbon", "low-carbon steel"}};
    all.fittings = {{"flare-37-single", "37° single flare"}, {"none", "no fitting"}};
    all.benders = {{"hand-3/16", "3/16 hand bender", {4.7625}}, {"hand-3/8", "3/8 hand bender", {9.525}}, {"other-3/8", "another", {9.525}}};
    return all;
}

/// A state, and the drafts that it asked to keep.
struct Shop {
    State state;
    std::vector<KeepDraft> kept;
    std::vector<Request> asked;

    Shop() { act(OffersAre{offers()}); }
    void act(const Action& action) {
        StateStep step = apply(state, action);
        state = step.state;
        for (const Request& request : step.requests) {
            asked.push_back(request);
            if (const auto* keep = std::get_if<KeepDraft>(&request)) kept.push_back(*keep);
        }
    }
    void type(const std::string& keys) {
        for (const char key : keys) act(Key{std::string(1, key)});
    }
    void leg(const std::string& keys) {
        type(keys);
        act(Next{});
    }
    const MeasuredRoute& route() const { return state.entry->line().route; }
    void answers(std::initializer_list<const char*> ids) {
        for (const char* id : ids) act(Answer{id});
    }
};

const std::initializer_list<const char*> brake_set{"brake", "0", "stainless-304", "flare-37-single", "legs-outside"};

}  // namespace

TEST_CASE("a new job asks what it needs, one question after the other, and nothing that has one answer only") {
    Shop shop;
    shop.act(NewJob{});
    CHECK(shop.state.looks.screen == Screen::ask);
    CHECK(shop.state.entry->page.ask == Ask::service);
    shop.act(Answer{"brake"});
    CHECK(shop.state.entry->page.ask == Ask::tube);
    shop.act(Answer{"0"});
    CHECK(shop.state.entry->page.ask == Ask::material);
    CHECK_FALSE(shop.kept.back().job.tube);  // a tube of no material is not written down
    shop.act(Answer{"stainless-304"});
    CHECK(shop.state.entry->page.job.bender == DraftBender{"hand-3/16"});  // the only one that fits
    CHECK(shop.state.entry->page.ask == Ask::fittings);
    shop.act(Answer{"flare-37-single"});
    CHECK(shop.state.entry->page.ask == Ask::form);
    shop.act(Answer{"legs-outside"});
    CHECK(shop.state.looks.screen == Screen::route);
    const Draft& job = shop.kept.back().job;
    CHECK(job.service == Service::brake);
    CHECK(job.tube->tube == Tube{{4.7625}, {0.7112}, "stainless-304"});
    CHECK(job.lines[0].a.fitting == "flare-37-single");
    CHECK(job.lines[0].b.fitting == "flare-37-single");
    CHECK(job.lines[0].unfinished);
}

TEST_CASE("where two benders suit the tube the person says which, and a change of tube asks again") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers({"fuel", "1", "steel-low-carbon"});
    CHECK(shop.state.entry->page.ask == Ask::bender);
    shop.act(Answer{"hand-3/16"});  // is for another tube
    CHECK(shop.state.entry->page.ask == Ask::bender);
    shop.act(Answer{"other-3/8"});
    CHECK(shop.state.entry->page.job.bender == DraftBender{"other-3/8"});
    shop.act(AskFor{Ask::tube});
    shop.act(Answer{"0"});
    CHECK(shop.state.entry->page.job.bender == DraftBender{"hand-3/16"});
    CHECK(shop.state.entry->page.job.tube->tube.material == "steel-low-carbon");
}

TEST_CASE("two bends in two planes: 6 1/2, 90, 4, 45 a quarter round, 12") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.type("6");
    shop.act(Key{"1/2"});
    shop.act(Next{});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::angle, 0});
    shop.act(GiveAngle{{90}});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::run, 1});  // a first bend has nothing to be turned against
    shop.leg("4");
    shop.act(GiveAngle{{45}});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::turn, 1});
    CHECK_FALSE(can_finish(shop.state));
    shop.act(GiveAngle{{270}});
    shop.leg("12");
    CHECK(can_finish(shop.state));
    CHECK(shop.route().runs == std::vector<Length>{{6.5 * 25.4}, {4 * 25.4}, {12 * 25.4}});
    REQUIRE(shop.route().bends.size() == 2);
    CHECK(shop.route().bends[0] == MeasuredBend{{90}});
    CHECK(shop.route().bends[1] == MeasuredBend{{45}, Angle{-90}});
    shop.act(FinishLine{});
    CHECK(shop.state.looks.screen == Screen::draft);
    CHECK_FALSE(shop.kept.back().job.lines[0].unfinished);
    // What the disk answers is shown, and the bench can be opened.
    shop.act(DraftKept{"/jobs/new-job.json", "", std::nullopt, ""});
    shop.act(Next{});
    CHECK(shop.asked.back() == Request{ReadJob{"/jobs/new-job.json"}});
}

TEST_CASE("what can be seen of a wire grows with every number") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    CHECK_FALSE(shop.kept.back().shown);
    shop.leg("6");
    REQUIRE(shop.kept.back().shown);
    CHECK(shop.kept.back().shown->lines[0].route.runs.size() == 1);
    shop.act(GiveAngle{{90}});
    CHECK(shop.kept.back().shown->lines[0].route.runs.size() == 2);  // which way it goes on, before it is measured
    CHECK(shop.kept.back().job.lines[0].route.runs.size() == 1);
}

TEST_CASE("a number is put right where it stands, and the line is open again until the person says so") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.leg("6");
    shop.act(GiveAngle{{90}});
    shop.leg("4");
    shop.act(FinishLine{});
    shop.act(PickCell{{Cell::What::run, 0}});
    shop.leg("7");
    CHECK(shop.route().runs == std::vector<Length>{{7 * 25.4}, {4 * 25.4}});
    CHECK(shop.kept.back().job.lines[0].unfinished);
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::angle, 0});
    shop.act(GiveAngle{{181}});  // no corner turns so far
    shop.act(GiveAngle{{0}});    // and none turns not at all
    CHECK(shop.route().bends[0].angle == Angle{90});
}

TEST_CASE("a bend put into a leg, and a bend taken out") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.leg("6");
    shop.act(GiveAngle{{90}});
    shop.leg("9");
    shop.act(PickCell{{Cell::What::run, 1}});
    shop.type("9");
    shop.act(SplitLeg{});  // at its very end there is no leg left
    CHECK(shop.route().runs.size() == 2);
    shop.act(Key{"clear"});
    shop.type("4");
    shop.act(SplitLeg{});
    CHECK(shop.route().runs == std::vector<Length>{{6 * 25.4}, {4 * 25.4}, {9 * 25.4 - 4 * 25.4}});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::angle, 1});
    shop.act(TakeBendOut{1});
    CHECK(shop.route().runs.size() == 2);
    CHECK(shop.route().bends.size() == 1);
}

TEST_CASE("moves by direction: forward 12, then up 4 and left 4") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers({"fuel", "0", "stainless-304", "none", "moves"});
    shop.type("12");
    shop.act(GiveWay{MoveWay::forward});
    shop.act(Next{});
    shop.type("4");
    shop.act(GiveWay{MoveWay::up});
    shop.type("4");
    shop.act(GiveWay{MoveWay::left});
    REQUIRE(shop.route().moves.size() == 2);
    CHECK(shop.route().moves[0].along == std::map<MoveWay, Length>{{MoveWay::forward, {12 * 25.4}}});
    CHECK(shop.route().moves[1].along == std::map<MoveWay, Length>{{MoveWay::up, {4 * 25.4}}, {MoveWay::left, {4 * 25.4}}});
    shop.type("2");
    shop.act(GiveWay{MoveWay::right});  // and no longer left
    CHECK(shop.route().moves[1].along == std::map<MoveWay, Length>{{MoveWay::up, {4 * 25.4}}, {MoveWay::right, {2 * 25.4}}});
    CHECK(can_finish(shop.state));
}

TEST_CASE("undo goes back touch by touch to the first question, redo forward again, each kept on the disk") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.leg("6");
    shop.act(GiveAngle{{90}});
    shop.leg("4");
    const Draft whole = shop.state.entry->page.job;
    std::size_t back = 0;
    while (!shop.state.entry->past.empty()) {
        shop.act(Undo{});
        ++back;
    }
    CHECK(back == 7);  // four answers that changed the draft, three numbers; legs to the outside stood there already
    CHECK(shop.state.entry->page.ask == Ask::service);
    CHECK(shop.state.looks.screen == Screen::ask);
    for (std::size_t i = 0; i < back; ++i) shop.act(Redo{});
    CHECK(shop.state.entry->page.job == whole);
    CHECK(shop.kept.back().job == whole);
}

TEST_CASE("the second line of a job has the first one's tube and ends, and starts at its first leg") {
    Shop shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.leg("6");
    shop.act(AddLine{});
    CHECK(shop.state.looks.screen == Screen::route);
    CHECK(shop.state.entry->line().name == "line 2");
    CHECK(shop.state.entry->line().a.fitting == "flare-37-single");
    CHECK(shop.route().measured_to == TapeEdge::outside);
    CHECK(shop.route().runs.empty());
    shop.act(CopyLine{true});
    CHECK(shop.state.entry->page.job.lines.size() == 3);
    shop.act(TakeLineOut{});
    CHECK(shop.state.entry->page.job.lines.size() == 2);
}
