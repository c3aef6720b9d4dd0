// Whole screens as a reader sees them. The files are read in review as screens are looked at.

#include "present/expect_screen.h"
#include "present/screen_view.h"
#include "present/sheet_text.h"
#include "present/touchables.h"
#include "present/view_text.h"
#include "state/rescue_look.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

/// Eight bends, zigzag.
Job long_job() {
    Job job = sample_job();
    std::vector<std::pair<double, double>> bends(8, {30, 180});
    bends.front().second = 0;
    Line line = line_of(std::vector<double>(9, 4), bends);
    line.name = "many bends";
    line.bend_notes.resize(8);
    job.lines = {line};
    return job;
}

State second_bend() { return touched(at_check(at_first_bend()), {PassCheck{}}); }

}  // namespace

TEST_CASE("the shelf: empty, and with a job") {
    expect_screen("shelf-empty", State{});
    State state = touched(job_open(), {GoTo{Screen::shelf}});
    state = touched(state, {JobRefused{"jobs/none.json", "jobs/none.json is empty."}});
    expect_screen("shelf", state);
    // One of two pieces of the first line, and the one of the second: 2 of 3.
    State begun = touched(piece_made(), {OpenLine{"left rear"}});
    begun.work.lines["trailer/left rear"].finished = 2;
    expect_screen("shelf-pieces", touched(begun, {ShelfRead{{{"trailer", "jobs/trailer.json", "Utility trailer brake lines", {"axle crossover", "left rear"}, "", {2, 1}}}}, GoTo{Screen::shelf}}));
}

TEST_CASE("the lines of a job, and one line before work") {
    expect_screen("lines", job_open());
    expect_screen("line", touched(job_open(), {OpenLine{"axle crossover"}}));
    expect_screen("line-stopped", touched(job_open(), {OpenLine{"too tight"}}));
}

namespace {

/// 10 mm between the bends: less than the bender needs on either side, so only the first of them can be made.
State tight_order() {
    Job job = sample_job();
    Line line = line_of({}, {{60, 0}, {60, 90}, {60, 0}});
    line.name = "tight";
    line.route.form = RouteForm::straights;
    for (const double straight : {100.0, 10.0, 10.0, 100.0}) line.route.runs.push_back({straight});
    line.bend_notes.resize(3);
    job.lines = {line};
    return touched(job_open(), {JobRead{"tight", "jobs/tight.json", job}, OpenLine{"tight"}, GoTo{Screen::order}});
}

}  // namespace

TEST_CASE("the order of bends: found, being looked for, stopped, by hand, broken by hand, settled") {
    const std::vector<Action> there{OpenLine{"round the tank"}, GoTo{Screen::order}};
    const State found = touched(touched(job_open(), {JobRead{"tank", "jobs/tank.json", tank_job()}}), there);
    expect_screen("order", found);
    State looking = apply(job_open(), JobRead{"tank", "jobs/tank.json", tank_job()}).state;
    looking = touched(looking, {there[0], there[1], OrderShare{looking.orders[0].question, 0.37}});
    expect_screen("order-looking", looking);
    expect_screen("order-stopped", touched(looking, {StopLooking{}}));
    const std::size_t first = sheet_in_hand(found)->steps[0].bend;
    expect_screen("order-pinned", touched(found, {PinFirst{5}, PickBend{5}}));
    expect_screen("order-by-hand", touched(found, {MoveBend{first, 5}}));
    expect_screen("order-by-hand-metric", touched(found, {MoveBend{first, 5}, SetUnit{Unit::mm}}));
    expect_screen("order-none", tight_order());
    expect_screen("order-broken", touched(tight_order(), {MoveBend{sheet_in_hand(tight_order())->steps[0].bend, 1}}));
    State cut = touched(found, {Back{}, NewStick{inches(240)}, GoTo{Screen::line}, Next{}});
    cut = touched(all_ticked(cut), {Next{}, GoTo{Screen::order}});
    REQUIRE(work_in_hand(cut).cut);
    expect_screen("order-settled", cut);
}

TEST_CASE("what is left of a cut tube in another order: found, with its ink, looked for, stopped, none") {
    const State found = with_wall(tank_with_made(3), -280), other_end = with_wall(touched(tank_with_made(4), {Next{}, Next{}}), 280);
    expect_screen("line-rest", found);
    expect_screen("order-rest", touched(found, {GoTo{Screen::order}}));
    expect_screen("line-rest-ink", other_end);
    expect_screen("order-rest-ink-metric", touched(other_end, {GoTo{Screen::order}, SetUnit{Unit::mm}}));
    expect_screen("marks-again", touched(other_end, {GoTo{Screen::order}, ReorderRest{}}));
    expect_screen("line-rest-stance", with_wall(tank_with_made(3), -240));
    const std::vector<Solid> all_round{{"bench", Stands::bench, HalfSpace{{0, 0, -30}, {0, 0, -1}}}, {"shelf", Stands::bench, HalfSpace{{0, 0, 30}, {0, 0, 1}}},
                                       {"rail", Stands::bench, HalfSpace{{0, 30, 0}, {0, 1, 0}}}, {"post", Stands::bench, HalfSpace{{0, -30, 0}, {0, -1, 0}}}};
    const State hemmed = with_wall(tank_with_made(3), -280, all_round);
    expect_screen("order-rest-none", touched(hemmed, {GoTo{Screen::order}}));
    State looking = apply(tank_with_made(3), CardKept{hemmed.job->lines[0].bender, true, hemmed.job}).state;
    looking = touched(looking, {GoTo{Screen::order}, OrderShare{looking.orders[0].rest.question, 0.37}});
    expect_screen("order-rest-looking", looking);
    expect_screen("order-rest-stopped", touched(looking, {StopLooking{}}));
}

TEST_CASE("preparing: the stick first, then the ticks") {
    expect_screen("prepare-no-stick", touched(job_open(), {OpenLine{"axle crossover"}, Next{}}));
    expect_screen("stock", touched(at_prepare("axle crossover", 12), {NewStick{inches(20)}, GoTo{Screen::stock}}));
    expect_screen("stick-length", touched(at_prepare("axle crossover", 12), {GoTo{Screen::stick_length}, Key{"2"}, Key{"0"}, Key{"1/2"}}));
    expect_screen("prepare", touched(at_prepare(), {Tick{"prepare-square"}}));
    expect_screen("mark-out", touched(all_ticked(at_prepare()), {Next{}}));
    State many = touched(job_open(), {JobRead{"tank", "jobs/tank.json", long_job()}, OpenLine{"many bends"}, NewStick{inches(240)}, Next{}});
    many = touched(all_ticked(many), {Next{}});
    expect_screen("mark-out-many", many);
    expect_screen("mark-out-many-later", touched(many, {TurnPage{1}}));
}

TEST_CASE("the rack names a tube by its size and its material's name, and what is too short says by how much") {
    State state = touched(at_prepare("axle crossover", 12), {JobRead{"trailer", "jobs/trailer.json", sample_job()}, GoTo{Screen::stock}});
    state.material_names[sample_job().lines[0].tube.material] = "Stainless 304, annealed";
    expect_screen("rack", state);
    const auto typed = [](const std::vector<Action>& keys) { return touched(touched(job_open(), {OpenLine{"straight"}, GoTo{Screen::stick_length}}), keys); };
    expect_screen("stick-just-too-short", typed({Key{"9"}, Key{"."}, Key{"9"}, Key{"9"}}));  // of 10 in
    expect_screen("stick-long-enough", typed({Key{"1"}, Key{"0"}}));
}

TEST_CASE("what was undone at the check can be redone there, until something is typed") {
    const State undone = touched(at_check(second_bend()), {PassCheck{}, Undo{}});
    expect_screen("check-redo", undone);
    CHECK(touched(undone, {Redo{}}).work == touched(at_check(second_bend()), {PassCheck{}}).work);
    const ScreenView typing = screen_view(touched(undone, {Key{"9"}}));
    CHECK(typing.footer.main_id == "next");
    for (const ButtonView& button : typing.footer.buttons) CHECK(button.id != "redo");
}

TEST_CASE("the moves of a bend that has a made neighbour") {
    expect_screen("mark", second_bend());
    expect_screen("turn", touched(second_bend(), {Next{}}));
    expect_screen("turn-metric", touched(second_bend(), {Next{}, SetUnit{Unit::mm}, ChooseSetUp{{HookHand::right, Swing::up}}}));
    expect_screen("pull", touched(second_bend(), {Next{}, Next{}}));
    expect_screen("check", touched(at_check(second_bend()), {Key{"8"}, Key{"8"}, Key{"1/2"}}));
}

TEST_CASE("where the other end goes to the hook it is said first") {
    const State tank = with_wall(tank_with_made(3), 280);
    State swapped = touched(tank, {GoTo{Screen::order}, ReorderRest{}, Next{}, GoTo{Screen::bench}});
    swapped = touched(at_check(swapped), {PassCheck{}});
    REQUIRE(step_in_hand(swapped)->hook == End::B);
    const ScreenView view = screen_view(swapped);
    const auto& body = std::get<MoveBody>(view.body);
    CHECK(body.lines[0].text == "Swap the tube end for end: end B goes to the hook now.");
    CHECK(body.lines[0].tone == Tone::caution);
    CHECK(body.lines[1].text == "End B on the hook, on your left.");  // bends lie between: nobody tapes from there
    expect_screen("mark-swapped", swapped);
    const State next = touched(at_check(swapped), {PassCheck{}});
    REQUIRE(step_in_hand(next)->hook == End::B);
    CHECK(std::get<MoveBody>(screen_view(next).body).lines[0].text.rfind("End B on the hook", 0) == 0);  // it is there
}

TEST_CASE("from the hooked end the mark is told as on the list, where nothing bent lies between") {
    State first = at_first_bend();
    REQUIRE(step_in_hand(first)->bend == 1);
    first.sheets[*first.line].steps[0].hook = End::B;
    const ScreenView list = screen_view(touched(at_first_bend(), {Back{}}));
    const std::string from_b = std::get<MarkOutBody>(list.body).rows[1].from_b;
    CHECK(std::get<MoveBody>(screen_view(first).body).lines[0].text == "End B on the hook, on your left. From there " + from_b + " to the mark.");
    // Bend 2 is made then, and lies between end B and the mark of bend 1.
    REQUIRE(step_in_hand(second_bend())->hook == End::B);
    CHECK(std::get<MoveBody>(screen_view(second_bend()).body).lines[0].text == "End B on the hook, on your left.");
}

TEST_CASE("a reading under its target asks for another pull, one over it never does") {
    const State under = reading(at_check(second_bend()), "88");
    expect_screen("under", under);
    expect_screen("pull-again", touched(under, {PullAgain{}}));
    expect_screen("over", reading(at_check(second_bend()), "92"));
    expect_screen("slip", reading(at_check(second_bend()), "9"));
    expect_screen("past-the-set", reading(at_check(second_bend()), "98"));
    expect_screen("lever-asked-after", reading(at_check(second_bend()), "84"));
    // A bend of 45 read on the scale that says 135.
    const State first = at_check(at_first_bend());
    REQUIRE(step_in_hand(first)->target == Angle{45});
    expect_screen("other-scale", reading(first, "135"));
    expect_screen("wrong-while-pulling", touched(second_bend(), {Next{}, Next{}, WentWrong{}, ChooseReason{Reason::wrong_way}}));
}

TEST_CASE("what the shop's own bends say: on the pull, on their page, one of them, and what can be done with all") {
    const State none = touched(job_open(), {OpenLine{"axle crossover"}, GoTo{Screen::bends}});
    expect_screen("bends-none", none);
    // 45 wanted and read 45, then 90 wanted and read 88, kept.
    State state = reading(at_check(at_first_bend()), "45");
    expect_screen("pull-learned", touched(state, {Next{}, Next{}}));
    const State under = reading(at_check(state), "86");
    state = touched(reading(at_check(state), "88"), {KeepBend{true}});
    state = touched(state, {GoTo{Screen::line}, GoTo{Screen::bends}});
    expect_screen("bends", state);
    const std::int64_t id = state.work.bends.back().check.record.id;
    const State one = touched(state, {PickRecord{id}});
    expect_screen("bend", one);
    expect_screen("bend-left-out", touched(one, {LeaveRecordOut{id}}));
    expect_screen("bends-more", touched(state, {GoTo{Screen::bends_more}}));
    expect_screen("bends-new-tube", touched(state, {GoTo{Screen::bends_more}, NewTube{}}));
    expect_screen("bend-files", touched(state, {GoTo{Screen::bends_more}, GoTo{Screen::bend_files}, BendFilesAre{"/home/me/bends", {"bends-2026-11-25.json"}}}));
    expect_screen("bend-files-none", touched(state, {GoTo{Screen::bends_more}, GoTo{Screen::bend_files}, BendFilesAre{"/home/me/bends", {}}}));
    // Ten right ones leave little doubt: three degrees off is asked about, and stands on the page until it was measured again.
    State sure = at_first_bend();
    for (int i = 0; i < 10; ++i) {
        LoggedBend logged;
        logged.check.record = {sure.work.next_id++, "2026-11-24"};
        logged.check.with = {"hand-3/16", sheet_in_hand(sure)->line.tube};
        logged.check.target = logged.check.measured = Angle{i % 2 ? 45.0 : 90.0};
        logged.check.set = Angle{i % 2 ? 47.0 : 93.0};
        logged.of = {"trailer", "left rear", 1 + i, 1, 0};
        sure.work.bends.push_back(logged);
    }
    sure = touched(sure, {BookRead{sure.work, sure.settings}});
    sure = touched(sure, {OpenLine{"axle crossover"}, Next{}});
    const State doubted = reading(at_check(sure), "43");
    expect_screen("doubted", doubted);
    const State over = reading(at_check(sure), "48");
    expect_screen("doubted-over", over);
    const State asked = touched(doubted, {KeepBend{true}, GoTo{Screen::line}, GoTo{Screen::bends}});
    expect_screen("bends-asked", asked);
    expect_screen("bend-asked", touched(asked, {PickRecord{asked.work.bends.back().check.record.id}}));
    State right = touched(under, {PullAgain{true}});
    right = reading(touched(right, {Next{}}), "90");
    expect_screen("doubted-right", right);
}

TEST_CASE("went wrong: the reason, then what is kept") {
    const State asked = touched(at_check(second_bend()), {WentWrong{}});
    expect_screen("wrong", asked);
    expect_screen("wrong-kept", touched(asked, {ChooseReason{Reason::kinked}, ChooseKept{"end-a"}}));
    expect_screen("wrong-both", touched(asked, {ChooseReason{Reason::kinked}, ChooseKept{"both"}}));
    expect_screen("wrong-which-bend", touched(asked, {ChooseReason{Reason::over_bent}, ChooseKept{"end-b"}}));
    // A row of buttons holds nine bends; of eleven, all in one plane, the way goes from one to the next.
    std::vector<double> legs(12, 4);
    Job many = sample_job();
    many.lines[0].route = line_of(legs, std::vector<std::pair<double, double>>(11, {30, 0})).route;
    for (std::size_t i = 1; i < 11; i += 2) many.lines[0].route.bends[i].rotation = Angle{180};
    many.lines[0].bend_notes.resize(11);
    State bent = touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", many}, OpenLine{"axle crossover"}, NewStick{inches(240)}, Next{}});
    bent = touched(all_ticked(bent), {Next{}, Next{}});
    while (work_in_hand(bent).stage == Stage::bending) bent = touched(at_check(std::move(bent)), {PassCheck{}});
    bent = touched(bent, {WentWrong{}, ChooseReason{Reason::wrong_place}, ChooseKept{"none"}, ChooseBend{10}});
    expect_screen("wrong-many-bends", bent);
    expect_screen("wrong-uncut", touched(at_prepare(), {WentWrong{}}));
}

TEST_CASE("what the tape reads of the bent tube, leg by leg, and the hand that is learned from it") {
    State state = at_first_bend();
    for (const char* read : {"45", "90"}) state = touched(reading(at_check(std::move(state)), read), {Next{}});
    REQUIRE(work_in_hand(state).stage == Stage::finish);
    expect_screen("hand-none", touched(state, {GoTo{Screen::hand}}));
    state = touched(std::move(state), {GoTo{Screen::legs}});
    expect_screen("legs", state);
    expect_screen("leg", touched(state, {AskLeg{0}}));
    const auto taped = [](State at, std::size_t leg, double more) {
        const std::string reading = std::to_string(legs_here(at)[leg].leg.outside.inch() + more);
        at = touched(std::move(at), {AskLeg{leg}});
        for (const char c : reading.substr(0, 7)) at = touched(std::move(at), {Key{std::string(1, c)}});
        return at;
    };
    expect_screen("leg-typed-metric", touched(taped(state, 1, 0), {SetUnit{Unit::mm}}));
    state = touched(taped(touched(taped(state, 0, 0.03), {Next{}}), 1, -0.09), {Next{}});
    expect_screen("legs-read", state);
    expect_screen("legs-asked", touched(taped(state, 2, 0.75), {Next{}}));
    state = touched(std::move(state), {GoTo{Screen::hand}});
    expect_screen("hand", state);
    expect_screen("hand-left-out", touched(state, {LeaveOutOfHand{state.work.leg_log[0].check.record.id}}));
}

TEST_CASE("finish, hand over, done") {
    State state = second_bend();
    state = touched(at_check(state), {PassCheck{}});
    expect_screen("finish", state);
    expect_screen("hand-over", touched(all_ticked(state), {Next{}}));
    const State left = touched(all_ticked(touched(all_ticked(state), {Next{}})), {LeaveForLater{"hand-over-leak"}});
    expect_screen("hand-over-left", left);
    expect_screen("hand-over-label", touched(left, {TurnPage{2}}));
    // What the fitter can't see of it stands on the label too.
    State labelled = left;
    LineWork& work = labelled.work.lines.at("trailer/axle crossover");
    work.made.back().measured = Angle{47.5};
    work.made.back().kept_over = true;
    work.saved = SavedPlan{plan_with(labelled.sheets[0], {{}, {}}), 2};
    expect_screen("hand-over-label-kept", touched(labelled, {TurnPage{2}}));
    const State gone = touched(left, {Next{}});
    expect_screen("done-left", gone);
    expect_screen("lines-left", touched(gone, {GoTo{Screen::lines}}));
    expect_screen("line-left", touched(gone, {GoTo{Screen::line}}));
    expect_screen("later", touched(gone, {GoTo{Screen::line}, GoTo{Screen::later}}));
    expect_screen("later-done", touched(gone, {GoTo{Screen::line}, GoTo{Screen::later}, TickLater{{1, "hand-over-leak"}}}));
    expect_screen("done", piece_made());
    expect_screen("done-all", piece_made("left rear"));
    const State one_under = touched(reading(at_check(at_first_bend()), "43"), {KeepBend{}});  // 45 wanted
    State kept = touched(at_check(one_under), {PassCheck{}});
    kept = touched(all_ticked(touched(all_ticked(kept), {Next{}})), {Next{}});
    expect_screen("done-kept", kept);
    expect_screen("line-one-more", touched(piece_made("left rear"), {AnotherPiece{}, GoTo{Screen::line}}));
}

TEST_CASE("scrap log, settings, how the bender stands") {
    State state = touched(at_check(second_bend()), {WentWrong{}, ChooseReason{Reason::kinked}, ChooseKept{"none"}, ConfirmScrap{}, GoTo{Screen::scrap}});
    expect_screen("scrap", state);
    // Pieces of 23 1/4": one made on the 24th, on the 25th one made and two spoiled, on the 26th one spoiled.
    state = touched(piece_made(), {});
    state.work.used["2026-11-24"] = state.work.used["2026-11-25"];
    const Length cut = work_in_hand(state).cut_length;
    state.work.scrap = {{50, "2026-11-25", "trailer", "axle crossover", "", Reason::wrong_way, cut, {}, 1},
                        {51, "2026-11-25", "trailer", "left rear", "", Reason::practice, cut - inches(8), inches(8), std::nullopt, inches(3)},
                        {52, "2026-11-26", "trailer", "axle crossover", "", Reason::kinked, cut - inches(12), inches(12), 0}};
    expect_screen("scrap-days", touched(state, {GoTo{Screen::scrap}}));
    expect_screen("scrap-days-later", touched(state, {GoTo{Screen::scrap}, TurnPage{1}}));
    expect_screen("settings", touched(job_open(), {ScreenIs{5.87}, GoTo{Screen::settings}}));
    expect_screen("stance", touched(second_bend(), {GoTo{Screen::stance}}));
    Job job = sample_job();
    for (Line& line : job.lines)
        line.bender.body = {{"block", Stands::fixed, Block{{-1, 0, 2}, {25.4, 3, 4}}}, {"bench top", Stands::bench, HalfSpace{{0, 0, -127}, {0, 0, -1}}}};
    const State card = touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}, GoTo{Screen::card}});
    expect_screen("card", card);
    expect_screen("card-solid", touched(card, {PickSolid{0}, SwingCard{}}));
    expect_screen("card-figure", touched(card, {PickFigure{"hook"}, Key{"1"}, Key{"1/4"}}));
    expect_screen("card-refused", touched(card, {PickSolid{0}, PickFigure{"solid-0-3"}, Key{"sign"}, Key{"9"}, Key{"9"}, Key{"9"}, Key{"9"}}));
    expect_screen("card-changed", touched(card, {PickFigure{"hook"}, Key{"1"}, Key{"1/4"}, TakeFigure{}, TurnPage{2}}));
}

TEST_CASE("a book that is refused, and a job file that has changed") {
    expect_screen("refused-book", touched(job_open(), {BookRefused{"The shop book is from a newer version of this program."}}));
    const State without = touched(job_open(), {BookRefused{"The shop book is from a newer version of this program."}, GoOnWithoutBook{}});
    expect_screen("lines-without-book", touched(without, {GoTo{Screen::lines}}));
    expect_screen("line-without-book", touched(without, {OpenLine{"axle crossover"}}));
    Job longer = sample_job();
    longer.lines[0].route.runs[2] = inches(14);
    expect_screen("changed", touched(second_bend(), {JobRead{"trailer", "jobs/trailer.json", longer}, OpenLine{"axle crossover"}, Next{}}));
    Job moved = sample_job();
    moved.lines[0].route.runs = {inches(7), inches(4.25), inches(11.5)};
    expect_screen("changed-plan", touched(second_bend(), {JobRead{"trailer", "jobs/trailer.json", moved}, OpenLine{"axle crossover"}, Next{}}));
    expect_screen("marks-moved", touched(second_bend(), {GoTo{Screen::stance}, ChooseMark{"L"}, Back{}}));
}

TEST_CASE("the printed bend sheet, in inches and in millimetres") {
    const Job job = sample_job();
    expect_text("sheet", sheet_text(job, bend_sheet(job.lines[0]), sample_checklists(), {Unit::inch, 16}));
    expect_text("sheet-metric", sheet_text(job, bend_sheet(job.lines[0]), sample_checklists(), {Unit::mm, 16}));
    expect_text("sheet-stopped", sheet_text(job, bend_sheet(job.lines[2]), sample_checklists(), {Unit::inch, 16}));
}

TEST_CASE("no line of a stopped sheet's table can be taken for one to work by") {
    const Job job = sample_job();
    const Tape tape{Unit::inch, 16};
    const auto struck_out = [](const std::string& line) { return line.rfind("STOP", 0) == 0; };
    const auto lines_of = [](const std::string& text) {
        std::vector<std::string> lines;
        std::istringstream in(text);
        for (std::string line; std::getline(in, line);) lines.push_back(line);
        return lines;
    };
    const Sheet sheet = bend_sheet(job.lines[2]);
    REQUIRE(stopped(sheet));
    const std::vector<std::string> lines = lines_of(sheet_text(job, sheet, sample_checklists(), tape));
    for (const Step& step : sheet.steps) {
        const std::string mark = text(mark_from_a(step, sheet.layout->cut_length), tape);
        int said = 0;
        for (const std::string& line : lines) {
            if (line.find(" " + mark + " ") == std::string::npos && line.find("Finishes at") == std::string::npos) continue;
            INFO(line);
            CHECK(struck_out(line));
            ++said;
        }
        CHECK(said > 0);
    }
    const Sheet good = bend_sheet(job.lines[0]);
    REQUIRE_FALSE(stopped(good));
    for (const std::string& line : lines_of(sheet_text(job, good, sample_checklists(), tape))) CHECK_FALSE(struck_out(line));
}

namespace {

/// The first bend made of a hook reads that.
State hook_read(const std::string& keys) { return reading(at_check(at_hook()), keys); }

}  // namespace

TEST_CASE("can this tube be saved: ways, under, as it is, and not at all") {
    const State over = hook_read("92");
    expect_screen("rescue-asked", over);
    const State ways = touched(over, {LookAtRescue{}});
    expect_screen("rescue", ways);
    expect_screen("rescue-second", touched(ways, {PickWay{1}}));
    expect_screen("rescue-metric", touched(ways, {SetUnit{Unit::mm}}));
    expect_screen("rescue-under-asked", hook_read("88"));
    const State under = touched(hook_read("88"), {LookAtRescue{}});
    expect_screen("rescue-under", under);
    expect_screen("rescue-under-second", touched(under, {PickWay{1}}));
    State saved = touched(ways, {TakeRescue{0}});
    expect_screen("rescue-taken", saved);
    if (misfit(*sheet_in_hand(saved), work_in_hand(saved)) == Misfit::ink) saved = touched(saved, {Next{}});
    State made = touched(at_check(saved), {PassCheck{}});
    expect_screen("rescue-finish", made);
    made = touched(all_ticked(made), {Next{}});
    made = touched(all_ticked(made), {Next{}});
    expect_screen("rescue-done", made);
    // The second bend is the last.
    const State last = reading(at_check(hook_read("90")), "93");
    expect_screen("rescue-none", touched(last, {LookAtRescue{}}));
    expect_screen("rescue-none-wrong", touched(last, {LookAtRescue{}, WentWrong{}}));
    expect_screen("rescue-wrong", touched(hook_read("90"), {WentWrong{}}));
    expect_screen("rescue-back", touched(hook_read("92"), {LookAtRescue{}, TakeRescue{0}, Next{}, Back{}}));
    // Nothing was read that is off.
    expect_screen("rescue-fits", touched(at_check(at_first_bend()), {PassCheck{}, LookAtRescue{}}));
    // Four over in one of two planes.
    const State first = at_check(at_first_bend());
    const State planes = reading(first, std::to_string(static_cast<int>(step_in_hand(first)->target.deg) + 4));
    expect_screen("rescue-past-the-set", planes);
    expect_screen("rescue-planes", touched(planes, {LookAtRescue{}}));
}

namespace {

/// One touch of what the screen offers by that name.
State tapped(const State& state, const std::string& id) {
    for (const ButtonView& button : touchables(screen_view(state)))
        if (button.id == id && button.press) return touched(state, {*button.press});
    FAIL("no " << id << " on\n" << as_text(screen_view(state)));
    return state;
}

State all_pressed(State state, const std::vector<std::string>& ids) {
    for (const std::string& id : ids) state = tapped(state, id);
    return state;
}

}  // namespace

TEST_CASE("the way that is looked at is the one that the main button takes") {
    const State ways = touched(hook_read("92"), {LookAtRescue{}});
    const auto picture = [](const State& state) { return *std::get<CardBody>(screen_view(state).body).picture.laid_over; };
    REQUIRE(ways.rescue->found.ways.size() > 1);
    for (const std::size_t way : {0u, 1u}) {
        const State seen = tapped(ways, "way-" + std::to_string(way + 1));
        CHECK(seen.work == ways.work);
        CHECK(picture(seen).made == part_of(ways.rescue->found.ways[way].plan));
        CHECK(picture(seen).wanted == ways.rescue->wanted);
        CHECK(tapped(seen, "take-way").work == touched(ways, {TakeRescue{way}}).work);
    }
    CHECK(picture(ways).made == part_of(ways.rescue->found.ways[0].plan));
    // An under-bent one: pulling on comes first, and the ways after it.
    const State under = touched(hook_read("88"), {LookAtRescue{}});
    CHECK(picture(under).made == part_of(*under.rescue->pulled));
    CHECK(tapped(under, "pull-again").work == touched(under, {PullAgain{}}).work);
    CHECK(all_pressed(under, {"way-1", "take-way"}).work == touched(under, {TakeRescue{0}}).work);
}

TEST_CASE("measure more: a turn by the gauge, a tape, what is too far off, and what was read") {
    // Three bends in three planes; the second reads 4 over.
    State over = at_line(line_of({10, 8, 8, 10}, {{90, 0}, {90, 90}, {60, 90}}));
    for (const double off : {0, 4}) over = reading(at_check(over), std::to_string(step_in_hand(over)->target.deg + off).substr(0, 6));
    const State ways = touched(over, {LookAtRescue{}});
    expect_screen("rescue-before", ways);
    const State more = tapped(ways, "more");
    expect_screen("rescue-more", more);
    const State turn = tapped(more, "read-1");
    expect_screen("rescue-turn", turn);
    expect_screen("rescue-turn-typed", all_pressed(turn, {"key-8", "key-8", "key-1/2"}));
    expect_screen("rescue-turn-too-far", all_pressed(turn, {"key-4", "key-0"}));
    expect_screen("rescue-turn-no-turn", all_pressed(turn, {"key-2", "key-0", "key-0"}));
    const bool right = reading_asked(turn)->foreseen > 0;
    const State turned = all_pressed(turn, {"key-8", "key-8", right ? "right" : "left"});
    expect_screen("rescue-turned", turned);
    const State tape = all_pressed(turned, {"more", "read-1"});
    expect_screen("rescue-tape", tape);
    expect_screen("rescue-tape-too-far", all_pressed(tape, {"key-9", "key-9"}));
    expect_screen("rescue-tape-metric", touched(tape, {SetUnit{Unit::mm}}));
    const std::string whole = std::to_string(static_cast<int>(reading_asked(tape)->foreseen / 25.4 + 0.5));
    State typed = tape;
    for (const char digit : whole) typed = tapped(typed, std::string("key-") + digit);
    expect_screen("rescue-tape-typed", typed);
    const State taped = all_pressed(typed, {"next", "more"});
    expect_screen("rescue-more-read", taped);
    expect_screen("rescue-more-read-2", touched(taped, {TurnPage{1}}));
    const State back = tapped(taped, "drop-1");
    CHECK(work_in_hand(back).turns.empty());
    expect_screen("rescue-more-dropped", back);
}

}  // namespace tubewright
