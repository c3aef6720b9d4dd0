// The rack, the cutting plan, what to buy, the figures and the backups, as a reader sees them.

#include "present/expect_screen.h"
#include "present/stock_tables.h"
#include "state/cut_plan.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

const StockTube brake{{4763}, {711}, "stainless-304"};

/// The rack of a small shop: two sticks, one with a place, lot and price; a coil; offcuts, one of them too short to keep.
State shop() {
    State state = touched(job_open(), {OpenLine{"axle crossover"}});
    state.material_names = {{"stainless-304", "304 stainless"}};
    const std::string day = "2026-11-25";
    REQUIRE_FALSE(write_stock(state.work, day, {
             Received{{1}, PieceKind::stick, brake, {6'096'000}, "left rack", "B7", {{2400}, {6'096'000}}}, Received{{2}, PieceKind::stick, brake, {6'096'000}, "", "", {}},
             Received{{3}, PieceKind::coil, brake, {7'620'000}, "wall", "", {}}, Received{{4}, PieceKind::offcut, brake, {1'047'000}, "bin 2", "", {}},
             Received{{5}, PieceKind::offcut, brake, {60'000}, "", "", {}}, Cut{{1}, {6}, {590'000}, {}, "trailer/left rear"}, Scrapped{{6}, {400'000}, "wrong way"}}));
    return state;
}

State planned(State state) {
    state = touched(state, {GoTo{Screen::plan}});
    if (!state.plan.looking) return state;
    std::vector<TubeCut> found;
    for (const TubeToCut& tube : state.plan.asked) found.push_back({tube, best_plan(tube.question)});
    return touched(state, {PlanIs{state.plan.question, std::make_shared<const std::vector<TubeCut>>(found)}});
}

}  // namespace

TEST_CASE("the rack, one tube of it, one length") {
    expect_screen("rack-empty", touched(State{}, {GoTo{Screen::rack}}));
    const State rack = touched(shop(), {GoTo{Screen::rack}});
    expect_screen("rack-shop", rack);
    const State tube = touched(rack, {ShowTube{brake}});
    expect_screen("rack-tube", tube);
    expect_screen("rack-tube-later", touched(tube, {TurnPage{1}}));
    expect_screen("rack-piece", touched(tube, {ShowPiece{{1}}}));
    expect_screen("rack-coil", touched(tube, {ShowPiece{{3}}}));
    expect_screen("rack-kind", touched(tube, {AskRack{RackAsk::kind}}));
    expect_screen("rack-length", touched(tube, {AskRack{RackAsk::kind}, AnswerRack{"stick"}, Key{"2"}, Key{"4"}, Key{"0"}}));
    expect_screen("rack-straighten", touched(tube, {ShowPiece{{3}}, AskRack{RackAsk::straighten}, Key{"9"}, Key{"9"}, Key{"9"}}));
    expect_screen("rack-place", touched(tube, {ShowPiece{{1}}, AskRack{RackAsk::place}}));
    expect_screen("rack-price", touched(tube, {ShowPiece{{1}}, AskRack{RackAsk::price}, Key{"2"}, Key{"5"}}));
    expect_screen("shop-rules", touched(rack, {GoTo{Screen::plan}, GoTo{Screen::shop_rules}}));
    expect_screen("stock-planned", touched(planned(shop()), {GoTo{Screen::stock}}));
}

TEST_CASE("a ledger that does not add up is said on the tube's page") {
    State state = touched(shop(), {GoTo{Screen::rack}, ShowTube{brake}});
    Ledger ledger = *state.work.rack.ledger;
    ledger.pieces.at({4}).length.um -= 1;
    state.work.rack.ledger = std::make_shared<const Ledger>(ledger);
    const auto body = std::get<ListBody>(screen_view(state).body);
    CHECK(body.notes.at(0).tone == Tone::stop);
}

TEST_CASE("the cutting plan, its jobs, and what to buy") {
    expect_screen("plan-none", touched(State{}, {GoTo{Screen::plan}}));
    expect_screen("plan-looking", touched(shop(), {GoTo{Screen::plan}}));
    const State plan = planned(shop());
    expect_screen("plan", plan);
    expect_screen("plan-to-buy", planned(touched(job_open(), {OpenLine{"axle crossover"}})));
    expect_screen("plan-jobs", touched(plan, {ShelfRead{{{"trailer", "jobs/trailer.json", "Utility trailer brake lines", {"axle crossover", "left rear"}, ""}, {"sprayer", "jobs/sprayer.json", "Farm sprayer", {"boom"}, ""}}}, GoTo{Screen::plan_jobs}}));
    const State buy = touched(planned(touched(job_open(), {OpenLine{"axle crossover"}})), {GoTo{Screen::buy}});
    expect_screen("buy", buy);
    expect_screen("buy-price", touched(buy, {AskPriceOf{buy_key(list_to_buy(buy)->begin()->first)}, Key{"2"}, Key{"4"}, Key{"."}, Key{"5"}}));
}

TEST_CASE("which ends share a tee, where one goes, and the tee to buy") {
    Job job = sample_job();
    job.lines[1].a.fitting = job.lines[1].b.fitting = flare();
    State state = planned(touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}}));
    state = touched(state, {GoTo{Screen::buy}, GoTo{Screen::joints}});
    expect_screen("joints-none", state);
    const auto sent = [](const State& from, const char* line, End end, JointKind kind) { return touched(from, {AskJoint{{line_key("trailer", line), end}}, GoesInto{Joint{kind, 1}}}); };
    state = sent(sent(state, "axle crossover", End::B, JointKind::tee), "left rear", End::B, JointKind::union_piece);
    expect_screen("joint", touched(state, {AskJoint{{"trailer/left rear", End::A}}}));
    state = sent(state, "left rear", End::A, JointKind::tee);
    expect_screen("joints-tee", state);
    expect_screen("joint-full", touched(state, {AskJoint{{"trailer/axle crossover", End::A}}}));
    expect_screen("buy-tee", touched(planned(state), {GoTo{Screen::buy}, TurnPage{1}}));
    job.lines[1].a.fitting.id = "flare-45-double";
    job.lines[1].a.fitting.name = "45° double flare";
    expect_screen("joints-two-flares", touched(state, {JobRead{"trailer", "jobs/trailer.json", job}, GoTo{Screen::buy}, GoTo{Screen::joints}}));
    for (const std::size_t line : {2u, 3u}) {
        job.lines[line].a.fitting = flare();
        state.work.joints[{line_key("trailer", job.lines[line].name), End::A}] = {JointKind::tee, 1};
    }
    job.lines[0].quantity = 1;
    expect_screen("joints-too-many", touched(state, {JobRead{"trailer", "jobs/trailer.json", job}, GoTo{Screen::buy}, GoTo{Screen::joints}}));
}

TEST_CASE("a line longer than any stick, and tube that nobody sells, are said in the plan") {
    State state = touched(job_open(), {OpenLine{"axle crossover"}});
    for (const bool sold : {true, false}) {
        Job job = sample_job();
        job.lines.resize(1);
        job.lines[0].stick = sold ? std::optional(inches(12)) : std::nullopt;
        state = planned(touched(state, {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}}));
        // What is longer than a stick is stopped on its own screen, and left out of the plan.
        CHECK(std::get<ListBody>(screen_view(state).body).notes.at(0).tone == (sold ? Tone::caution : Tone::stop));
    }
}

TEST_CASE("tables for a spreadsheet are of the ledger, to the micrometre") {
    const std::vector<WordTable> tables = shop_tables(piece_made());
    REQUIRE(tables.size() == 3);
    CHECK(tables[0].title == "scrap-2026-11-25");
    CHECK(tables[0].rows == std::vector<std::vector<std::string>>{{"stainless-304", "4.763", "0.711", "2026-11-25", "trimmed", "12.700", "0.00", "trailer/axle crossover"}});
    for (const WordTable& table : tables)
        for (const auto& row : table.rows) CHECK(row.size() == table.columns.size());
    const auto& rack = tables[1].rows;
    CHECK(rack.at(0).at(4) == "offcut");
    CHECK(shop_tables(shop())[1].rows.at(0) == std::vector<std::string>{"stainless-304", "4.763", "0.711", "1", "offcut", "5506.000", "left rack", "B7", "21.68"});  // 5506 of 6096 mm at 24.00
}

TEST_CASE("what the scrap book says, each way, and the backups") {
    State state = touched(piece_made(), {});
    state.work.rack = shop().work.rack;
    state = touched(state, {GoTo{Screen::scrap}, GoTo{Screen::figures}});
    expect_screen("figures-reason", state);
    expect_screen("figures-week", touched(state, {ShowFigures{FiguresBy::week}}));
    expect_screen("figures-tube", touched(state, {ShowFigures{FiguresBy::tube}}));
    expect_screen("figures-line", touched(state, {ShowFigures{FiguresBy::line}}));
    expect_screen("figures-bends", touched(state, {ShowFigures{FiguresBy::bends}}));
    expect_screen("figures-none", touched(State{}, {GoTo{Screen::figures}}));
    const State safe = touched(job_open(), {GoTo{Screen::settings}, GoTo{Screen::keep_safe}});
    expect_screen("keep-safe-none", safe);
    expect_screen("keep-safe", touched(safe, {BackupsAre{"/home/shop/backups", {{"tubewright-2026-11-25-2.backup", "2026-11-25", 2}, {"before-restore-2026-11-25.backup", "2026-11-25"}, {"tubewright-2026-11-25.backup", "2026-11-25"}}}, FilesTold{"The tables are in /home/shop/tables, lengths in mm.", true}}));
}

}  // namespace tubewright
