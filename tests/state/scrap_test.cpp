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
    REQUIRE(offers.size() == 3);
    CHECK(offers[0].kept >= offers[1].kept);
    for (const KeptOffer& offer : offers) {
        if (offer.id == "end-a") CHECK(offer.kept == span.start);
        if (offer.id == "end-b") CHECK(offer.kept == sheet.layout->cut_length - span.end);
    }
    CHECK(offers[2].id == "none");
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
    REQUIRE(state.work.offcuts.size() == 1);
    CHECK(state.work.offcuts[0].length == scrap.kept);
    CHECK(state.work.offcuts[0].id != scrap.id);
    CHECK(work_in_hand(state).stage == Stage::prepare);
    CHECK(work_in_hand(state).attempt == 2);
    CHECK(state.looks.screen == Screen::bench);
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
