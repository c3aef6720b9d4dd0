#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {

TEST_CASE("before the tube is cut there is nothing to scrap") {
    const State state = touched(at_prepare(), {WentWrong{}});
    CHECK(state.looks.screen == Screen::wrong);
    CHECK(kept_offers(state).empty());
    CHECK(touched(state, {ChooseReason{Reason::kinked}, ChooseKept{"none"}, ConfirmScrap{}}).work == state.work);
    CHECK(touched(state, {Cancel{}}).looks.screen == Screen::bench);
}

TEST_CASE("a cut tube that is not bent yet can be kept whole") {
    const State state = touched(at_first_bend(), {WentWrong{}});
    REQUIRE(kept_offers(state).size() == 2);
    CHECK(kept_offers(state)[0].id == "whole");
    CHECK(kept_offers(state)[1].id == "none");
}

TEST_CASE("after a pull, the straight ends up to the bend are offered, the longest first") {
    State state = at_check(at_first_bend());
    const Sheet& sheet = *sheet_in_hand(state);
    const BendSpan span = sheet.layout->spans[step_in_hand(state)->bend];
    const std::vector<KeptOffer> offers = kept_offers(touched(state, {WentWrong{}}));
    REQUIRE(offers.size() == 4);
    const Length a = span.start, b = sheet.layout->cut_length - span.end;
    CHECK(offers[0].id == "both");
    CHECK(offers[0].pieces == std::vector<Length>{std::max(a, b), std::min(a, b)});
    CHECK(offers[1].kept() >= offers[2].kept());
    for (const KeptOffer& offer : offers) {
        if (offer.id == "end-a") CHECK(offer.pieces == std::vector<Length>{a});
        if (offer.id == "end-b") CHECK(offer.pieces == std::vector<Length>{b});
    }
    CHECK(offers[3].id == "none");
    CHECK(offers[3].pieces.empty());
}

TEST_CASE("scrapping writes the whole piece down, keeps the offcut, and begins again at the cut") {
    State state = at_check(at_first_bend());
    const std::size_t bend = step_in_hand(state)->bend;
    const Length cut = work_in_hand(state).cut_length;
    state = touched(state, {WentWrong{}, ChooseReason{Reason::over_bent}, ChooseKept{"end-b"}});
    const Length kept = state.sheets[*state.line].layout->cut_length - state.sheets[*state.line].layout->spans[bend].end;
    CHECK(state.work.scrap.empty());  // nothing yet
    state = touched(state, {ConfirmScrap{}});
    REQUIRE(state.work.scrap.size() == 1);
    const Scrap& scrap = state.work.scrap[0];
    CHECK(scrap.reason == Reason::over_bent);
    CHECK(scrap.day == "2026-11-25");
    CHECK(scrap.line == "axle crossover");
    CHECK(scrap.bend == bend);
    CHECK(scrap.kept.mm == Approx(kept.mm));
    CHECK((scrap.scrapped + scrap.kept).mm == Approx(cut.mm));
    REQUIRE(beside_in_use(state.work).size() == 1);
    CHECK(beside_in_use(state.work)[0].mm == Approx(scrap.kept.mm).margin(0.001));
    CHECK(scrap_records(*state.work.rack.ledger).at(0).reason == "over-bent");
    CHECK(scrap_records(*state.work.rack.ledger).at(0).line == "trailer/axle crossover");
    CHECK(work_in_hand(state).stage == Stage::prepare);
    CHECK(work_in_hand(state).attempt == 2);
    CHECK(state.looks.screen == Screen::bench);
}

TEST_CASE("both straight ends can be kept: two offcuts, and with the scrap they are the whole piece") {
    State state = at_check(at_first_bend());
    const Length cut = work_in_hand(state).cut_length;
    const BendSpan span = sheet_in_hand(state)->layout->spans[step_in_hand(state)->bend];
    state = touched(state, {WentWrong{}, ChooseReason{Reason::kinked}, ChooseKept{"both"}, ConfirmScrap{}});
    REQUIRE(state.work.scrap.size() == 1);
    const std::vector<Length> kept = beside_in_use(state.work);
    REQUIRE(kept.size() == 2);
    CHECK((kept[0] + kept[1]).mm == Approx(state.work.scrap[0].kept.mm).margin(0.002));
    CHECK(state.work.scrap[0].second.mm == Approx(kept[1].mm).margin(0.001));
    CHECK(state.work.scrap[0].scrapped.mm == Approx((span.end - span.start).mm));  // only the bend itself
    CHECK((state.work.scrap[0].scrapped + state.work.scrap[0].kept).mm == Approx(cut.mm));
}

TEST_CASE("an end that is too short to be worth keeping is not offered") {
    // "left rear": legs of 5 and 8 in. around 60 degrees. The setback takes 0.56 tan 30 = 0.33 in of each, no
    // fitting adds any: 4.67 in is 118.7 mm and kept. With a leg of 4 in it is 3.67 in, 93.3 mm: under 100.
    const auto ids = [](double leg) {
        Job job = sample_job();
        job.lines[1].route.runs[0] = inches(leg);
        State state = touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"left rear"}, NewStick{inches(240)}, Next{}});
        state = at_check(touched(all_ticked(state), {Next{}, Next{}}));
        std::vector<std::string> found;
        for (const KeptOffer& offer : kept_offers(state)) found.push_back(offer.id);
        return found;
    };
    CHECK(ids(5) == std::vector<std::string>{"both", "end-b", "end-a", "none"});
    CHECK(ids(4) == std::vector<std::string>{"end-b", "none"});
}

TEST_CASE("of several bends the person says which was the wrong one, where it is one bend's fault") {
    State state = at_check(touched(at_check(at_first_bend()), {PassCheck{}}));
    const std::vector<Step>& steps = sheet_in_hand(state)->steps;
    const std::size_t first = steps[0].bend, second = steps[1].bend;
    CHECK(formed_bends(state) == std::vector<std::size_t>{first, second});
    const auto written = [&](const std::vector<Action>& actions) {
        return touched(touched(touched(state, {WentWrong{}}), actions), {ChooseKept{"none"}, ConfirmScrap{}}).work.scrap.back().bend;
    };
    CHECK(written({ChooseReason{Reason::wrong_way}}) == second);  // the one in hand
    CHECK(written({ChooseReason{Reason::wrong_way}, ChooseBend{first}}) == first);
    CHECK(written({ChooseReason{Reason::wrong_way}, ChooseBend{first}, ChooseBend{second}}) == second);
    CHECK(written({ChooseReason{Reason::wrong_way}, ChooseBend{7}}) == second);  // there is none
    CHECK(written({ChooseReason{Reason::damaged}, ChooseBend{first}}) == second);  // not asked
    // Another reason begins anew.
    CHECK(written({ChooseReason{Reason::wrong_way}, ChooseBend{first}, Back{}, ChooseReason{Reason::over_bent}}) == second);
}

TEST_CASE("a bend that has not been pulled yet can't be the wrong one") {
    const State second_marked = touched(at_check(at_first_bend()), {PassCheck{}});
    const std::size_t first = sheet_in_hand(second_marked)->steps[0].bend;
    const State asked = touched(second_marked, {WentWrong{}, ChooseReason{Reason::wrong_place}});
    CHECK_FALSE(asks_which_bend(asked));  // only one is made
    CHECK(touched(asked, {ChooseKept{"none"}, ConfirmScrap{}}).work.scrap.back().bend == first);
    // All made: the last one, unless another is chosen.
    State made = touched(at_check(second_marked), {PassCheck{}, WentWrong{}, ChooseReason{Reason::wrong_place}});
    CHECK(asks_which_bend(made));
    CHECK(wrong_bend(made) == sheet_in_hand(made)->steps[1].bend);
    CHECK(wrong_bend(touched(made, {ChooseBend{first}})) == first);
}

TEST_CASE("with the pull on the screen its bend counts as pulled: the lever may have moved") {
    const State marked = touched(at_check(at_first_bend()), {PassCheck{}});
    const State pulling = touched(marked, {Next{}, Next{}});
    REQUIRE(work_in_hand(pulling).move == Move::pull);
    const std::size_t second = sheet_in_hand(pulling)->steps[1].bend;
    CHECK(bend_being_pulled(pulling) == second);
    CHECK_FALSE(bend_being_pulled(marked));
    const State asked = touched(pulling, {WentWrong{}, ChooseReason{Reason::wrong_way}});
    CHECK(asks_which_bend(asked));
    CHECK(wrong_bend(asked) == second);
    // What is straight ends at that bend now.
    const auto most_at = [](const State& state, const char* id) {
        for (const KeptOffer& offer : kept_offers(state))
            if (offer.id == id) return offer.kept();
        return Length{};
    };
    const auto& spans = sheet_in_hand(pulling)->layout->spans;
    const bool towards_b = spans[second].end > spans[sheet_in_hand(pulling)->steps[0].bend].end;
    const char* side = towards_b ? "end-b" : "end-a";
    CHECK(most_at(asked, side) < most_at(marked, side));
}

TEST_CASE("a reason alone confirms nothing, and back out of the question leaves all as it was") {
    const State before = at_check(at_first_bend());
    const State asked = touched(before, {WentWrong{}, ChooseReason{Reason::damaged}});
    CHECK(touched(asked, {ConfirmScrap{}}).work == before.work);
    CHECK(touched(asked, {Back{}}).looks.screen == Screen::wrong);
    const State out = touched(asked, {Back{}, Back{}});
    CHECK(out.looks == before.looks);
    CHECK(out.work == before.work);
}

TEST_CASE("a job file that has grown is noticed, and the old piece is accounted for before a fresh start") {
    State state = touched(at_check(at_first_bend()), {PassCheck{}});
    Job longer = sample_job();
    longer.lines[0].route.runs[2] = inches(14);
    const Work work = state.work;
    state = touched(state, {JobRead{"trailer", "jobs/trailer.json", longer}, OpenLine{"axle crossover"}, Next{}});
    CHECK(misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::cut_length);
    CHECK(touched(state, {Next{}, PassCheck{}, Tick{"prepare-deburr"}}).work == work);
    // What is straight is not known of a piece made to another sheet.
    REQUIRE(kept_offers(state).size() == 1);
    state = touched(state, {WentWrong{}, ChooseReason{Reason::does_not_fit}, ChooseKept{"none"}, ConfirmScrap{}});
    CHECK(state.work.scrap.size() == 1);
    CHECK(misfit(*sheet_in_hand(state), work_in_hand(state)) == Misfit::none);
    CHECK(work_in_hand(state).stage == Stage::prepare);
}

TEST_CASE("a record that points past the sheet breaks nothing and starts afresh when it is confirmed") {
    Work work;
    LineWork odd;
    odd.stage = Stage::bending;
    odd.step = 40;
    odd.finished = 1;
    work.lines["trailer/axle crossover"] = odd;
    State state = touched(job_open(), {BookRead{work, {}}, OpenLine{"axle crossover"}, Next{}});
    CHECK(step_in_hand(state) == nullptr);
    CHECK(touched(state, {Next{}, PullAgain{}, KeepBend{}}).work == work);
    state = touched(state, {ConfirmScrap{}});
    CHECK(work_in_hand(state).stage == Stage::prepare);
    CHECK(work_in_hand(state).finished == 1);
    CHECK(state.work.scrap.empty());
}

TEST_CASE("a cut piece whose line has a stop against it now can still be given up") {
    State state = at_first_bend();
    Job stopped_job = sample_job();
    stopped_job.lines[0].tube.od = stopped_job.lines[0].bender.tube_od + inches(0.1);
    state = touched(state, {JobRead{"trailer", "jobs/trailer.json", stopped_job}, OpenLine{"axle crossover"}});
    REQUIRE(bar_to_start(state) == Bar::stopped);
    state = touched(state, {WentWrong{}, ChooseReason{Reason::practice}, ChooseKept{"whole"}, ConfirmScrap{}});
    CHECK(state.work.scrap.size() == 1);
    CHECK(state.looks.screen == Screen::line);
}

}  // namespace tubewright
