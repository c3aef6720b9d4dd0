#include <catch2/catch.hpp>

#include <array>
#include <cmath>

#include "state/cut_plan.h"
#include "state/rack.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

State with_offers() {
    Offers offers;
    offers.tubes = {{"3/16 in", {4.7625}, {0.7112}}, {"3/8 in", {9.525}, {0.889}}};
    offers.materials = {{"steel-low-carbon", "low-carbon steel"}, {"stainless-304", "304 stainless"}};
    return touched(job_open(), {OffersAre{offers}});
}

std::vector<Action> typed(const std::string& keys) {
    std::vector<Action> actions;
    for (const char key : keys) actions.emplace_back(Key{std::string(1, key)});
    actions.emplace_back(Next{});
    return actions;
}

const StockTube fuel{{9525}, {889}, "steel-low-carbon"};

/// A 20 ft stick of it, its own page open.
State stick_came_in() {
    const State asked = touched(with_offers(), {GoTo{Screen::rack}, AskRack{RackAsk::size}, AnswerRack{"1"}, AnswerRack{"steel-low-carbon"}, AskRack{RackAsk::kind}, AnswerRack{"stick"}});
    return touched(asked, typed("240"));
}

const StockPiece& piece(const State& state, int number) { return state.work.rack->pieces.at({number}); }

}  // namespace

TEST_CASE("3/16 in is one tube, whether a job gives it in inches or the shop's list in millimetres") {
    CHECK(0.1875 * 25.4 != 4.7625);  // to the last bit
    CHECK(stock_tube({{0.1875 * 25.4}, {0.028 * 25.4}, "steel"}) == stock_tube({{4.7625}, {0.7112}, "steel"}));
}

TEST_CASE("the ledger's days are those of the calendar") {
    CHECK(day_number("1970-01-01") == 0);
    CHECK(day_number("2000-03-01") == 11017);  // 30 years of 365 days, 7 leap days, and 31 + 29 days: 10950 + 7 + 60
    CHECK(day_number("2026-11-25") == 20782);  // as SQLite's julianday() has it
    for (const int day : {0, 11016, 11017, 20782}) CHECK(day_number(day_of(day)) == day);
    for (const char* odd : {"", "today", "2026-02-30", "2026-13-01", "2026/11/25", "2026-11-2x"}) CHECK(day_number(odd) == 0);
}

TEST_CASE("a stick comes in by eight touches and its digits, and has a place, a price and one more like it") {
    State state = stick_came_in();
    CHECK(state.looks.screen == Screen::rack_piece);
    REQUIRE(state.work.rack->entries.size() == 1);
    CHECK(piece(state, 1) == StockPiece{PieceKind::stick, Whereabouts::rack, fuel, {6'096'000}, "", "", {}, ""});
    state = touched(touched(state, {AskRack{RackAsk::place}}), typed("left"));
    state = touched(touched(state, {AskRack{RackAsk::price}}), typed("30"));
    state = touched(touched(state, {AskRack{RackAsk::lot}}), typed("b7"));
    CHECK(state.looks.screen == Screen::rack_piece);
    state = touched(state, {OneMoreLike{{1}}});
    CHECK(piece(state, 2) == StockPiece{PieceKind::stick, Whereabouts::rack, fuel, {6'096'000}, "left", "b7", {{3000}, {6'096'000}}, ""});
    CHECK(touched(state, {Undo{}}).work.rack->pieces.size() == 1);
    // Asked again, the place is there to be changed; wiped it is none.
    CHECK(touched(state, {AskRack{RackAsk::place}}).looks.typed == "left");
    CHECK(piece(touched(state, {AskRack{RackAsk::place}, Key{"clear"}, Next{}}), 1).place.empty());
    // Back leads through the tube's page to the rack.
    CHECK(touched(state, {Back{}}).looks.screen == Screen::rack_tube);
    CHECK(touched(state, {Back{}, Back{}}).looks.screen == Screen::rack);
}

TEST_CASE("what can't be typed for the rack is not taken") {
    const State asked = touched(with_offers(), {GoTo{Screen::rack}, AskRack{RackAsk::size}, AnswerRack{"1"}, AnswerRack{"steel-low-carbon"}, AskRack{RackAsk::kind}, AnswerRack{"offcut"}});
    for (const char* keys : {"", "0", "99999"}) CHECK(touched(asked, typed(keys)).work.rack->entries.empty());
    CHECK(touched(with_offers(), {GoTo{Screen::rack}, AskRack{RackAsk::size}, AnswerRack{"7"}}).looks.rack_ask == RackAsk::size);
    CHECK(touched(stick_came_in(), {AskRack{RackAsk::price}, Key{"9"}, Key{"9"}, Key{"9"}, Key{"9"}, Key{"9"}, Key{"9"}, Key{"9"}, Next{}}).work.rack->entries.size() == 1);
    CHECK_FALSE(touched(stick_came_in(), {AskRack{RackAsk::straighten}, Key{"9"}, Next{}}).work.rack->pieces.contains({2}));  // it is no coil
}

TEST_CASE("a length is straightened off a coil, with what the ends cost") {
    State state = touched(with_offers(), {GoTo{Screen::rack}, AskRack{RackAsk::size}, AnswerRack{"0"}, AnswerRack{"stainless-304"}, AskRack{RackAsk::kind}, AnswerRack{"coil"}});
    state = touched(state, typed("300"));  // 25 ft: 7620 mm
    state = touched(touched(state, {AskRack{RackAsk::straighten}}), typed("60"));
    CHECK(state.looks.piece == PieceNumber{2});
    CHECK(piece(state, 2).kind == PieceKind::stick);
    CHECK(piece(state, 2).length.um == 1'524'000);
    CHECK(piece(state, 1).length.um == 7'620'000 - 1'524'000 - 50'000);  // 50 mm, as the shop's rules have it at first
    // All of what is left: there is nothing more to lose.
    state = touched(state, {Back{}, ShowPiece{{1}}, AskRack{RackAsk::straighten}, SetUnit{Unit::mm}});
    state = touched(state, typed("6046"));
    CHECK(piece(state, 1).where == Whereabouts::gone);
    CHECK(balances(*state.work.rack.ledger).begin()->second.holds());
    CHECK(touched(touched(state, {Back{}}), {}).looks.screen == Screen::rack_tube);
}

TEST_CASE("to the bin, not there, short ends, and the last entry taken back") {
    State state = stick_came_in();
    const State binned = touched(state, {BinPiece{{1}, false}});
    CHECK(binned.looks.screen == Screen::rack_tube);
    CHECK(scrap_records(*binned.work.rack.ledger).at(0).reason == "off the rack");
    CHECK(scrap_records(*touched(state, {BinPiece{{1}, true}}).work.rack.ledger).at(0).reason == "not there");
    // Undone while the page of the piece is open: it closes.
    CHECK(touched(state, {Undo{}}).looks.screen == Screen::rack_tube);
    CHECK(touched(state, {TakeEntryBack{0}}).work.rack->pieces.empty());
    state.work.rules.keep = inches(10);
    state.work.rack = rack_of({{9.525}, {0.889}, "steel-low-carbon"}, {inches(9), inches(10), inches(2)});
    state.looks.screen = Screen::rack_tube;
    CHECK(short_ends(state.work, fuel) == std::vector<PieceNumber>{{1}, {3}});
    state = touched(state, {BinShortEnds{}});
    CHECK(beside_in_use(state.work) == std::vector<Length>{to_the_micrometre(inches(10))});
    CHECK(touched(state, {Undo{}}).work.rack->pieces.at({3}).where == Whereabouts::rack);
}

TEST_CASE("what the bench wrote into the ledger is not taken back on the rack's pages: there undo is for it") {
    const State cut = at_first_bend();
    const PieceNumber stick = cut.work.in_use.begin()->second;
    const State page = touched(cut, {GoTo{Screen::rack}, ShowTube{cut.work.rack->pieces.at(stick).tube}, ShowPiece{stick}});
    REQUIRE(page.looks.screen == Screen::rack_piece);
    CHECK_FALSE(last_entry_of(*page.work.rack.ledger, stick));
    for (std::size_t entry = 0; entry < 3; ++entry) CHECK(touched(page, {TakeEntryBack{entry}}).work == page.work);
    // Nor what is left of a spoiled piece.
    const State kept = touched(at_check(at_first_bend()), {WentWrong{}, ChooseReason{Reason::kinked}, ChooseKept{"both"}, ConfirmScrap{}});
    for (const auto& [number, piece] : kept.work.rack->pieces)
        if (piece.where == Whereabouts::rack) CHECK_FALSE(last_entry_of(*kept.work.rack.ledger, number));
}

TEST_CASE("undo on the rack's pages takes back nothing of the bench, and on the bench says that it was the rack's") {
    const State bent = touched(at_check(at_first_bend()), {PassCheck{}});
    const State rack = touched(bent, {GoTo{Screen::rack}});
    CHECK(undo_is_of_bench(rack));
    CHECK(touched(rack, {Undo{}}).work == bent.work);
    const State came = touched(bent, {NewStick{inches(50)}});
    const State back = touched(came, {Undo{}});
    CHECK(back.work == bent.work);
    CHECK_FALSE(back.looks.notice.empty());
}

TEST_CASE("what was cut off a length, or off which something was cut, is no more like one that came in") {
    State state = touched(stick_came_in(), {AskRack{RackAsk::practice}});
    state = touched(state, typed("16"));
    CHECK(touched(state, {OneMoreLike{{1}}}).work == state.work);
}

TEST_CASE("a short stick on the rack goes before a whole one to buy") {
    State state = touched(job_open(), {OpenLine{"axle crossover"}});
    const StockTube tube = stock_tube(sheet_in_hand(state)->line.tube);
    REQUIRE_FALSE(write_stock(state.work, "2026-11-25", {Received{{1}, PieceKind::stick, tube, exact(inches(60)), "", "", {}}, Received{{2}, PieceKind::stick, tube, exact(inches(60)), "", "", {}}}));
    const auto plan = std::get<PlanFound>(best_plan(tubes_to_cut(state).at(0).question));
    CHECK(plan.cost.bought == 0);
    CHECK(plan.cost.sticks == 0);
}

TEST_CASE("a piece cut for a line that is gone goes on the rack again, one at the bench does not") {
    State state = at_first_bend();
    const PieceNumber piece = pieces_in_hand(*state.work.rack.ledger, stock_tube(sheet_in_hand(state)->line.tube)).at(0);
    const StockTube tube = state.work.rack->pieces.at(piece).tube;
    CHECK(touched(state, {GoTo{Screen::rack}, ShowTube{tube}, PutOnRack{piece}}).work == state.work);
    state.work.lines.erase("trailer/axle crossover");
    state = touched(state, {GoTo{Screen::rack}, ShowTube{tube}, PutOnRack{piece}});
    CHECK(state.work.rack->pieces.at(piece).where == Whereabouts::rack);
    CHECK(balances(*state.work.rack.ledger).at(tube).holds());
}

TEST_CASE("a piece to practise on comes off the stick and is in the balance") {
    State state = touched(stick_came_in(), {AskRack{RackAsk::practice}});
    state = touched(state, typed("16"));
    CHECK(state.looks.screen == Screen::rack_piece);
    CHECK(piece(state, 1).length.um == 6'096'000 - 406'400);
    CHECK(scrap_records(*state.work.rack.ledger).at(0).reason == "practice");
    CHECK(touched(touched(state, {AskRack{RackAsk::practice}}), typed("999")).work == state.work);  // more than there is
    CHECK(touched(state, {Undo{}}).work.rack->pieces.at({1}).length.um == 6'096'000);
}

TEST_CASE("the piece to practise on that was planned is planned no longer once it is cut") {
    State state = touched(job_open(), {OpenLine{"left rear"}, NewStick{inches(240)}, GoTo{Screen::shop_rules}, SwitchPractice{}, GoTo{Screen::rack}});
    state = touched(state, {ShowTube{tubes_on_rack(*state.work.rack.ledger).front()}, ShowPiece{{1}}, AskRack{RackAsk::practice}});
    CHECK(touched(state, typed("15")).work.rules.practice);  // that one is longer: 400 mm are 15 3/4 in
    CHECK_FALSE(touched(state, typed("16")).work.rules.practice);
    // Of another tube than what is planned it is another piece.
    State other = stick_came_in();
    other.work.rules.practice = true;
    CHECK(touched(touched(other, {AskRack{RackAsk::practice}}), typed("16")).work.rules.practice);
}

TEST_CASE("a length kept to the micrometre fits the line that it was cut for") {
    State state = touched(job_open(), {OpenLine{"axle crossover"}});
    const Length needed = stick_standing(state).needed;
    CHECK(measured(exact(needed)) != needed);  // it was rounded
    CHECK_FALSE(too_short_by(state, measured(exact(needed))));
    CHECK(too_short_by(state, needed - Length{0.01}));
}

TEST_CASE("a piece cut, made and trimmed is in the line to the micrometre") {
    const State state = piece_made();
    const auto all = balances(*state.work.rack.ledger);
    REQUIRE(all.size() == 1);
    const Balance& balance = all.begin()->second;
    const ExactLength cut = exact(work_in_hand(state).cut_length);
    CHECK(balance.scrapped == exact(inches(0.5)));  // the trim at B
    CHECK(balance.in_lines == cut - exact(inches(0.5)));
    CHECK(balance.on_rack == balance.received - cut);
    CHECK(balance.in_hand == ExactLength{});
    CHECK(scrap_records(*state.work.rack.ledger).at(0).line == "trailer/axle crossover");
}

TEST_CASE("the saw's width comes off the stick, and not where nothing is left to take it from") {
    State state = touched(job_open(), {OpenLine{"straight"}, GoTo{Screen::shop_rules}, AskRack{RackAsk::saw}, Key{"1/4"}, Next{}});
    CHECK(state.work.rules.saw.inch() == Approx(0.25));
    const auto left = [&](double stick) { return left_in_use(touched(all_ticked(touched(state, {OpenLine{"straight"}, NewStick{inches(stick)}, Next{}})), {Next{}}).work); };
    CHECK(left(20).inch() == Approx(9.75));
    CHECK(left(10.125).mm == 0);
}

TEST_CASE("how often a line goes wrong, from what the shop made and spoiled") {
    // Nothing made yet: one of four lines of four bends. Of two bends 1 - sqrt(3/4) = 0.134.
    CHECK(odds_of_spoiling(0, 0, 4) == Approx(0.25));
    CHECK(odds_of_spoiling(0, 0, 2) == Approx(1 - std::sqrt(0.75)));
    CHECK(odds_of_spoiling(16, 0, 4) == Approx(0.05));  // (0 + 1) / (16 + 0 + 4)
    CHECK(odds_of_spoiling(3, 3, 4) == Approx(0.4));
    CHECK(odds_of_spoiling(3, 3, 0) == 0);
}

TEST_CASE("what is still to be cut is asked for, tube by tube, and asked again when it changes") {
    State state = touched(job_open(), {OpenLine{"axle crossover"}, GoTo{Screen::plan}});
    REQUIRE(state.plan.looking);
    REQUIRE(state.plan.asked.size() == 1);
    const CuttingQuestion& asked = state.plan.asked[0].question;
    REQUIRE(asked.wanted.size() == 3);
    CHECK(asked.wanted[0].length == exact(state.sheets[0].layout->cut_length));
    CHECK(asked.wanted[2].length == exact(inches(10)));
    CHECK(lines_left_out(state) == 1);  // "too tight" can't be made
    CHECK(asked.wanted[0].line == "trailer/axle crossover");
    CHECK(asked.for_sale == std::vector<ExactLength>{exact(inches(240))});
    CHECK(asked.rack.empty());
    const std::int64_t question = state.plan.question;
    // Nothing changed: not asked again. A late answer to another question is nobody's.
    CHECK(touched(state, {Back{}, GoTo{Screen::plan}}).plan.question == question);
    CHECK(touched(state, {PlanIs{question + 1, std::make_shared<const std::vector<TubeCut>>()}}).plan.looking);
    // A length comes in, a line is cut: both change the plan.
    const State more = touched(state, {Back{}, NewStick{inches(100)}, GoTo{Screen::plan}});
    CHECK(more.plan.question != question);
    CHECK(more.plan.asked[0].question.rack.size() == 1);
    const State cut = touched(at_first_bend(), {GoTo{Screen::plan}});
    CHECK(asked.wanted[0].count == 2);
    CHECK(cut.plan.asked[0].question.wanted.at(0).count == 1);
}

TEST_CASE("the plan's own length is the one to cut the line in hand from, and what to buy follows from it") {
    State state = touched(job_open(), {OpenLine{"straight"}, NewStick{inches(12)}, NewStick{inches(240)}, GoTo{Screen::plan}});
    CHECK_FALSE(planned_piece(state));
    CHECK_FALSE(list_to_buy(state));
    std::vector<TubeCut> found;
    for (const TubeToCut& tube : state.plan.asked) found.push_back({tube, best_plan(tube.question)});
    state = touched(state, {PlanIs{state.plan.question, std::make_shared<const std::vector<TubeCut>>(found)}});
    // The straight line takes 10 in: the stick of 12 and the one of 240 are both whole, and one is enough for all four lines.
    REQUIRE(planned_piece(state));
    CHECK(piece(state, planned_piece(state)->n).length == exact(inches(240)));
    const BuyList list = list_to_buy(state).value();
    int nuts = 0, sticks = 0;
    for (const auto& [item, count] : list) {
        if (item.kind == BuyKind::nut) nuts += count;
        if (item.kind == BuyKind::stick) sticks += count;
    }
    CHECK(sticks == 0);
    CHECK(nuts == 4);  // two flares of each of two crossovers; the other lines have plain ends
    const BuyItem nut = list.begin()->first;
    CHECK(cost_to_buy(state, list).unpriced.size() == list.size());
    state = touched(touched(state, {GoTo{Screen::buy}, AskPriceOf{buy_key(nut)}}), typed("1.25"));
    CHECK(cost_to_buy(state, {{nut, 2}}).known == Money{250});
}

TEST_CASE("a spare is planned of the line that goes wrong most, and a piece to practise on") {
    const State state = touched(job_open(), {GoTo{Screen::shop_rules}, SwitchPractice{}, SwitchSpare{}, GoTo{Screen::plan}});
    const CuttingQuestion& asked = state.plan.asked.at(0).question;
    int crossover = 0, practice = 0;
    for (const LengthWanted& wanted : asked.wanted) {
        if (wanted.line == "trailer/axle crossover") crossover += wanted.count;
        if (wanted.line.empty()) practice += wanted.count;
    }
    // Two bends go wrong with 1 - sqrt(3/4) = 0.134, one of two such lines with 1 - 3/4: just often enough for a spare.
    CHECK(crossover == 3);
    CHECK(practice == 1);
    State good = state, bad = state;
    Ledger made, ledger;
    REQUIRE(write(made, {1, Received{{1}, PieceKind::stick, fuel, {6'000'000}, "", "", {}}}).ok());
    for (int i = 2; i < 7; ++i) {  // five made: 1 of 9, of two crossovers 1 - 8/9
        REQUIRE(write(made, {1, Cut{{1}, {i}, {500'000}, {}, "a/b"}}).ok());
        REQUIRE(write(made, {1, Used{{i}, {}, {}}}).ok());
    }
    good.work.rack.ledger = std::make_shared<const Ledger>(made);
    CHECK(tubes_to_cut(good).at(0).question.wanted.at(0).count == 2);
    REQUIRE(write(ledger, {1, Received{{1}, PieceKind::stick, fuel, {6'000'000}, "", "", {}}}).ok());
    for (int i = 2; i < 6; ++i) {  // four spoiled, none made: 5 of 8
        REQUIRE(write(ledger, {1, Cut{{1}, {i}, {500'000}, {}, "a/b"}}).ok());
        REQUIRE(write(ledger, {1, Scrapped{{i}, {500'000}, "kinked"}}).ok());
    }
    bad.work.rack.ledger = std::make_shared<const Ledger>(ledger);
    CHECK(tubes_to_cut(bad).at(0).question.wanted.at(0).count == 3);
}

TEST_CASE("another job is cut with the open one, and taken out again") {
    State state = touched(job_open(), {GoTo{Screen::plan}, GoTo{Screen::plan_jobs}});
    Job other = sample_job();
    other.name = "The other";
    other.lines.resize(2);
    CHECK(apply(state, TakeIntoPlan{"jobs/other.json"}).requests == std::vector<Request>{ReadPlanJob{"jobs/other.json"}});
    state = touched(state, {PlanJobRead{{"other", "jobs/other.json", other}}, GoTo{Screen::plan}});
    CHECK(state.plan.asked.at(0).question.wanted.size() == 5);  // two lines of the other
    state = touched(state, {GoTo{Screen::plan_jobs}, TakeIntoPlan{"jobs/other.json"}, GoTo{Screen::plan}});
    CHECK(state.plan.asked.at(0).question.wanted.size() == 3);
}

TEST_CASE("how the bends of a tube came out, by a pocket calculator") {
    // Pulled to 93 and 47, read 90 and 45, wanted 90 and 46: 3/90 and 2/45 are 0.0333 and 0.0444, their mean times 90 is 3.5; off by 0 and 1.
    Work work;
    LoggedBend bend;
    bend.check.with = {"hand", {{9.525}, {0.889}, "steel-low-carbon"}};
    for (const auto& [set, measured, target] : {std::array{93.0, 90.0, 90.0}, std::array{47.0, 45.0, 46.0}}) {
        bend.check.set = {set}, bend.check.measured = {measured}, bend.check.target = Angle{target};
        work.bends.push_back(bend);
    }
    bend.check.record.left_out = true;
    work.bends.push_back(bend);
    const CameOut came = bends_by_tube(work).at(fuel);
    CHECK(came.bends == 2);
    CHECK(came.opens_at_90.deg == Approx(3.5));
    CHECK(came.off.deg == Approx(std::sqrt(0.5)));
}

TEST_CASE("a backup that is not there is not gone back to") {
    const State state = touched(job_open(), {GoTo{Screen::settings}, GoTo{Screen::keep_safe}, BackupsAre{"/home", {{"a.backup", "2026-11-25"}}}});
    CHECK(apply(state, RestoreBackup{"b.backup"}).requests.empty());
    CHECK(apply(state, RestoreBackup{"a.backup"}).requests == std::vector<Request>{ReadBackup{"a.backup"}});
}

}  // namespace tubewright
