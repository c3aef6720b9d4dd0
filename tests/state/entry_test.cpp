// A line entered finger by finger: what is asked, where each number goes, and what is asked of the disk.

#include <catch2/catch.hpp>
#include <algorithm>

#include "bench/samples.h"
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
struct Entering {
    State state;
    std::vector<KeepDraft> kept;
    std::vector<Request> asked;

    Entering() { act(OffersAre{offers()}); }
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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
    Entering shop;
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

namespace {

/// A line of three legs, as far as the desk could work it out.
Entering with_wire(Line line = line_of({6, 1.6, 6}, {{90, 0}, {90, 180}})) {
    Entering shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    for (std::size_t i = 0; i < line.route.runs.size(); ++i) {
        shop.state.looks.typed = std::to_string(line.route.runs[i].inch());
        shop.act(Next{});
        if (i == line.route.bends.size()) break;
        shop.act(GiveAngle{line.route.bends[i].angle});
        if (i > 0) shop.act(GiveAngle{line.route.bends[i].rotation});
    }
    shop.act(FinishLine{});
    shop.act(DraftKept{"/jobs/new-job.json", "", line, ""});
    return shop;
}

}  // namespace

TEST_CASE("a remedy is one touch, one undo, and none but the one that is offered") {
    Entering shop = with_wire();
    const auto& offered = shop.state.entry_remedies;
    const auto found = std::find_if(offered.begin(), offered.end(), [](const auto& one) { return one.has_value(); });
    REQUIRE(found != offered.end());
    const Remedy remedy = **found;
    const LongerStraight longer = std::get<LongerStraight>(remedy);
    const MeasuredRoute before = shop.route();
    shop.act(TakeRemedy{LongerStraight{longer.straight, longer.by + Length{1}}});
    CHECK(shop.route() == before);
    shop.act(TakeRemedy{remedy});
    CHECK(shop.route().runs[longer.straight] == before.runs[longer.straight] + longer.by);
    CHECK_FALSE(shop.state.entry->line().unfinished);  // a whole line stays whole
    shop.act(Undo{});
    CHECK(shop.route() == before);
}

TEST_CASE("another bender by one touch is for this line alone where the job has several") {
    Line line = line_of({6, 6}, {{120, 0}});
    line.bender.max_angle = {90};
    Entering shop = with_wire(line);
    Bender further = small_bender();
    further.id = "further";
    shop.state.offers.cards = {further};
    shop.act(CopyLine{false});
    shop.act(DraftKept{"/jobs/new-job.json", "", line, ""});
    shop.act(TakeRemedy{OtherBender{0, further.name}});
    CHECK(shop.state.entry->page.job.bender == DraftBender{"hand-3/16"});
    CHECK(shop.state.entry->line().bender == DraftBender{"further"});
    CHECK_FALSE(shop.state.entry->page.job.lines[0].bender);
}

TEST_CASE("the turn that the finger shows is looked at first and taken by a touch") {
    Entering shop;
    shop.act(NewJob{});
    shop.answers(brake_set);
    shop.leg("6");
    shop.act(GiveAngle{{90}});
    shop.leg("4");
    shop.act(GiveAngle{{45}});
    shop.act(DraftKept{"/jobs/new-job.json", "", line_of({6, 4}, {{90, 0}}), ""});
    shop.act(TurnTo{{225}});
    CHECK(shop.state.looks.typed == "225");
    CHECK_FALSE(shop.route().bends[1].rotation);
    REQUIRE(shop.state.entry_try);
    CHECK(shop.state.entry_try->line.route.bends[1] == Bend{{45}, {-135}});
    shop.act(Next{});
    CHECK(shop.route().bends[1].rotation == Angle{-135});
    CHECK_FALSE(shop.state.entry_try);
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::run, 2});
}

TEST_CASE("the picture is turned by the finger, stays so from number to number, and is put back by a touch") {
    Entering shop = with_wire();
    shop.act(TurnPicture{{10}, {-170}});
    shop.act(TurnPicture{{1000}, {-30}});
    REQUIRE(shop.state.entry->orbit);
    CHECK(shop.state.entry->orbit->over.deg < 90);
    CHECK(shop.state.entry->orbit->round == Angle{160});
    shop.act(PickCell{{Cell::What::run, 1}});
    CHECK(shop.state.entry->orbit);
    const std::size_t past = shop.state.entry->past.size();
    shop.act(EnlargePicture{});
    CHECK(shop.state.looks.large_picture);
    shop.act(Back{});  // to the numbers, not out of them
    CHECK_FALSE(shop.state.looks.large_picture);
    CHECK(shop.state.looks.screen == Screen::route);
    shop.act(StraightOn{});
    CHECK_FALSE(shop.state.entry->orbit);
    CHECK(shop.state.entry->past.size() == past);  // no change of the line
}

TEST_CASE("names and notes in letters: a line's name is no other line's, and stays once it is begun") {
    Entering shop = with_wire();
    shop.act(CopyLine{false});
    shop.act(AskFor{Ask::about});
    shop.act(AskWord{WordOf::line_name});
    CHECK(shop.state.looks.typed == "line 2");
    shop.act(Key{"back"});
    shop.act(Key{"1"});
    CHECK(bar_to_word(shop.state) == WordBar::taken);
    shop.act(Next{});
    CHECK(shop.state.looks.screen == Screen::word);
    shop.act(Key{"clear"});
    CHECK(bar_to_word(shop.state) == WordBar::empty);
    for (const char* letter : {"l", "e", "f", "t", " ", "r", "e", "a", "r", " "}) shop.act(Key{letter});
    shop.act(Next{});
    CHECK(shop.state.entry->line().name == "left rear");  // without the blank at its end
    CHECK(shop.state.looks.screen == Screen::ask);
    CHECK(shop.state.entry->page.ask == Ask::about);
    shop.act(AskWord{WordOf::job_note});
    CHECK(shop.state.looks.page == 1);  // an empty one begins with a capital
    shop.act(Key{"A"});
    CHECK(shop.state.looks.page == 0);
    for (int i = 0; i < 300; ++i) shop.act(Key{"a"});
    shop.act(Next{});
    CHECK(shop.kept.back().job.note.size() == longest_word(WordOf::job_note));
    shop.act(Undo{});
    CHECK(shop.state.entry->page.job.note.empty());
    shop.state.work.lines[line_key("/jobs/new-job.json", "left rear")] = {};
    CHECK(is_begun(shop.state, shop.state.entry->line()));
    shop.act(AskWord{WordOf::line_name});
    shop.act(Key{"x"});
    CHECK(bar_to_word(shop.state) == WordBar::begun);
    shop.state.work.lines.clear();
    CHECK_FALSE(is_begun(shop.state, shop.state.entry->line()));
    shop.state.work.joints[{line_key("/jobs/new-job.json", "left rear"), End::B}] = {JointKind::tee, 1};  // else the tee would lose an end
    CHECK(is_begun(shop.state, shop.state.entry->line()));
}

TEST_CASE("rubbing out takes a whole letter, also one of two bytes") {
    Entering shop = with_wire();
    shop.act(AskWord{WordOf::line_note});
    shop.act(Key{"4"});
    shop.act(Key{"°"});
    shop.act(Key{"back"});
    CHECK(shop.state.looks.typed == "4");
}

TEST_CASE("pieces, and tube of a size that is in no list") {
    Entering shop = with_wire();
    shop.act(PickCell{{Cell::What::pieces, 0}});
    shop.act(Key{"1/2"});
    shop.act(Next{});
    CHECK(shop.state.entry->line().quantity == 1);  // no half pieces
    shop.act(Key{"clear"});
    shop.leg("12");
    CHECK(shop.state.entry->line().quantity == 12);
    CHECK(shop.state.entry->page.ask == Ask::about);
    shop.act(PickCell{{Cell::What::od, 0}});
    shop.act(Key{"."});
    shop.leg("21");
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::wall, 0});
    CHECK_FALSE(shop.kept.back().job.tube);  // no file has a tube without a wall
    CHECK(open_question_of(shop.state.entry->page.job, shop.state.entry->line()) == Ask::tube);
    shop.act(Key{"."});
    shop.leg("2");  // thicker than the tube
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::wall, 0});
    shop.act(Key{"clear"});
    shop.act(Key{"."});
    shop.leg("028");
    REQUIRE(shop.kept.back().job.tube);
    CHECK(shop.kept.back().job.tube->tube == Tube{{0.21 * 25.4}, {0.028 * 25.4}, "stainless-304"});
    shop.act(Undo{});
    shop.act(Undo{});
    CHECK(shop.state.entry->page.job.tube->tube.od == Length{4.7625});
}

TEST_CASE("one line may have a tube and a bender of its own; the others keep theirs") {
    Entering shop = with_wire();
    shop.act(CopyLine{false});
    shop.act(AskFor{Ask::tube});
    shop.act(Answer{"own"});
    CHECK(shop.state.looks.screen == Screen::ask);
    shop.act(Answer{"1"});
    const Draft& job = shop.state.entry->page.job;
    CHECK(job.tube->tube.od == Length{4.7625});
    CHECK(job.bender == DraftBender{"hand-3/16"});
    CHECK(job.lines[1].tube->tube.od == Length{9.525});
    CHECK(job.lines[1].bender == DraftBender{"hand-3/8"});  // the first that takes it
    CHECK_FALSE(job.lines[0].tube);
    shop.act(AskFor{Ask::bender});
    shop.act(Answer{"other-3/8"});
    CHECK(job.lines[1].bender == DraftBender{"other-3/8"});
    CHECK(job.bender == DraftBender{"hand-3/16"});
    shop.act(AskFor{Ask::tube});
    shop.act(Answer{"shared"});
    CHECK_FALSE(job.lines[1].tube);
    CHECK(benders_for(shop.state.offers, job, job.lines[1]).size() == 1);
}

TEST_CASE("that a line lies flat stands in its file, and is there again when it is opened") {
    Entering shop;
    shop.act(NewJob{});
    shop.answers({"brake", "0", "stainless-304", "flare-37-single", "flat"});
    CHECK(shop.kept.back().job.lines[0].kept == KeptKeys{{"\"x-lies-flat\"", "true"}});
    const Draft kept = shop.kept.back().job;
    Entering next;
    next.act(DraftRead{"/jobs/new-job.json", kept});
    CHECK(next.state.entry->page.flat);
    next.act(AskFor{Ask::form});
    next.act(Answer{"not-flat"});
    CHECK(next.kept.back().job.lines[0].kept.empty());
    next.act(Undo{});
    CHECK(next.state.entry->page.flat);
}

TEST_CASE("corner points by keypad: x, y, z, one after the other, with a sign, and back again by undo") {
    Entering shop;
    shop.act(NewJob{});
    shop.answers({"fuel", "0", "stainless-304", "none", "points"});
    const auto number = [&](const std::string& digits, bool minus = false) {
        if (minus) shop.act(Key{"sign"});
        shop.leg(digits);
    };
    number("0"), number("0"), number("0");
    CHECK(shop.route().points.size() == 1);
    number("0"), number("0");
    CHECK(shop.route().points.size() == 1);  // not whole yet
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::z, 1});
    number("0");  // where the first one is
    CHECK(shop.route().points.size() == 1);
    shop.act(Key{"clear"});
    shop.act(Undo{});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::y, 1});
    shop.act(Undo{});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::x, 1});
    number("10"), number("0"), number("0");
    number("10"), number("4", true), number("2");
    REQUIRE(shop.route().points.size() == 3);
    CHECK(shop.route().points[2] == MeasuredPoint{Length{254}, Length{-4 * 25.4}, Length{50.8}});
    CHECK(can_finish(shop.state));
    shop.act(PickCell{{Cell::What::y, 2}});
    number("6", true);
    CHECK(shop.route().points[2][1] == Length{-6 * 25.4});
    CHECK(shop.state.entry->page.cell == Cell{Cell::What::z, 2});
    shop.act(PickCell{{Cell::What::x, 1}});
    shop.act(PutPointIn{});
    CHECK(shop.route().points.size() == 4);
    CHECK(shop.route().points[2] == MeasuredPoint{Length{254}, Length{-3 * 25.4}, Length{25.4}});
    shop.act(TakeCellOut{});
    CHECK(shop.route().points.size() == 3);
}

TEST_CASE("a move is taken out of the middle") {
    Entering shop;
    shop.act(NewJob{});
    shop.answers({"fuel", "0", "stainless-304", "none", "moves"});
    for (const MoveWay way : {MoveWay::forward, MoveWay::up, MoveWay::left}) {
        shop.type("4");
        shop.act(GiveWay{way});
        shop.act(Next{});
    }
    shop.act(PickCell{{Cell::What::move, 1}});
    shop.act(TakeCellOut{});
    REQUIRE(shop.route().moves.size() == 2);
    CHECK(shop.route().moves[1].along.contains(MoveWay::left));
}

TEST_CASE("points come in from a table only after their unit was given and they were looked at, and over no route") {
    Entering shop = with_wire();
    const MeasuredRoute before = shop.route();
    shop.act(AskFor{Ask::points_file});
    CHECK(shop.asked.back() == Request{ReadPointFiles{}});
    shop.act(PointFilesAre{"/home/points", {{"a.csv", std::nullopt, ""}, {"bad.csv", std::nullopt, "bad.csv is no table."}}});
    shop.act(Answer{"file-bad.csv"});
    CHECK(shop.state.entry->page.ask == Ask::points_file);
    shop.act(Answer{"file-a.csv"});
    CHECK(shop.state.entry->page.ask == Ask::points_unit);
    shop.act(Answer{"mm"});
    CHECK(shop.asked.back() == Request{ReadPoints{"a.csv", Unit::mm}});
    const std::vector<MeasuredPoint> points{{Length{0}, Length{0}, Length{0}}, {Length{100}, Length{0}, Length{0}}, {Length{100}, Length{50}, Length{0}}};
    shop.act(PointsRead{"a.csv", Unit::mm, points});
    CHECK(shop.state.entry->page.ask == Ask::points_read);
    CHECK(shop.state.entry->page.job.lines.size() == 1);
    shop.act(Next{});
    REQUIRE(shop.state.entry->page.job.lines.size() == 2);
    CHECK(shop.state.entry->page.job.lines[0].route == before);
    CHECK(shop.route().form == RouteForm::points);
    CHECK(shop.route().points == points);
    CHECK(shop.state.entry->line().unfinished);
    CHECK(shop.state.looks.screen == Screen::draft);
    shop.act(Undo{});
    CHECK(shop.state.entry->page.job.lines.size() == 1);
}

TEST_CASE("a line's corner points are handed out to be written, of half a wire none") {
    Entering shop = with_wire(line_of({6, 4}, {{90, 0}}));
    shop.act(WritePoints{});
    REQUIRE(std::holds_alternative<WritePointsFile>(shop.asked.back()));
    const auto& asked = std::get<WritePointsFile>(shop.asked.back());
    CHECK(asked.unit == Unit::inch);
    // Six inches along x to the corner, then four along y.
    REQUIRE(asked.points.size() == 3);
    const double wanted[3][3] = {{0, 0, 0}, {6, 0, 0}, {6, 4, 0}};
    for (int i = 0; i < 3; ++i)
        for (int axis = 0; axis < 3; ++axis) CHECK(asked.points[static_cast<std::size_t>(i)][static_cast<std::size_t>(axis)].inch() == Approx(wanted[i][axis]).margin(1e-6));
    shop.act(PickCell{{Cell::What::angle, 1}});
    shop.act(GiveAngle{{30}});
    CHECK_FALSE(has_corners(shop.state));
}
