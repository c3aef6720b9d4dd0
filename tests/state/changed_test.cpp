// A piece on the bench, and a sheet or an ink mark that is no longer its own.

#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {
namespace {

State one_bend_made() { return touched(at_check(at_first_bend()), {PassCheck{}}); }

State with_job(const State& state, const Job& job) {
    return touched(state, {JobRead{"trailer", "jobs/trailer.json", job}, OpenLine{"axle crossover"}, Next{}});
}

Misfit misfit_now(const State& state) { return misfit(*sheet_in_hand(state), work_in_hand(state)); }

bool offered(const State& state, const std::string& id) {
    for (const KeptOffer& offer : kept_offers(state))
        if (offer.id == id) return true;
    return false;
}

}  // namespace

TEST_CASE("half an inch moved from one leg to another keeps the cut, and is noticed all the same") {
    const State before = one_bend_made();
    Job moved = sample_job();
    moved.lines[0].route.runs = {inches(7), inches(4.25), inches(11.5)};  // from 6.5, 4.25, 12
    const State state = with_job(before, moved);
    CHECK(sheet_in_hand(state)->layout->cut_length.mm == Approx(work_in_hand(state).cut_length.mm));
    CHECK(misfit_now(state) == Misfit::plan);
    CHECK(touched(state, {Next{}, PassCheck{}}).work == before.work);
    REQUIRE(kept_offers(state).size() == 1);  // where it is straight the new sheet does not know
    CHECK(misfit_now(with_job(state, sample_job())) == Misfit::none);  // the old file is back
}

TEST_CASE("a bend turned the other way, another angle or another tube is noticed; the job's name is not") {
    const State before = one_bend_made();
    Job turned = sample_job();
    turned.lines[0].route.bends[1].rotation = Angle{-90};
    CHECK(misfit_now(with_job(before, turned)) == Misfit::plan);
    Job heavier = sample_job();
    heavier.lines[0].tube.material = "another";
    CHECK(misfit_now(with_job(before, heavier)) == Misfit::plan);
    Job renamed = sample_job();
    renamed.name = "Another name";
    CHECK(misfit_now(with_job(before, renamed)) == Misfit::none);
}

TEST_CASE("a turn of -180 in the file is the same plan as one of 180") {
    Line line = line_of({5, 4, 5}, {{60, 0}, {60, 180}});
    const std::string plan = plan_of(bend_sheet(line));
    line.route.bends[1].rotation = Angle{-180};
    CHECK(plan_of(bend_sheet(line)) == plan);
    line.route.bends[1].rotation = Angle{180 + 1e-9};
    CHECK(plan_of(bend_sheet(line)) == plan);
}

TEST_CASE("another line of the bender after marking out: the bends stay made, and the marks are made again") {
    const State before = touched(one_bend_made(), {Next{}});
    const State chosen = touched(before, {GoTo{Screen::stance}, ChooseMark{"L"}, Back{}});
    REQUIRE(inking_of(*sheet_in_hand(chosen)) != inking_of(*sheet_in_hand(before)));
    CHECK(misfit_now(chosen) == Misfit::ink);
    CHECK(touched(chosen, {PassCheck{}, KeepBend{}, PullAgain{}}).work == chosen.work);
    CHECK(offered(chosen, "end-a"));
    CHECK_FALSE(offered(chosen, "whole"));
    // The mark that was used is chosen again: on where it was.
    const std::string usual = sheet_in_hand(before)->line.bender.marks[usual_mark(sheet_in_hand(before)->line.bender)].name;
    CHECK(work_in_hand(touched(chosen, {ChooseMark{usual}})) == work_in_hand(before));
    CHECK(misfit_now(touched(chosen, {ChooseMark{usual}})) == Misfit::none);

    // Each from its old mark, on the screen that says so: no tape lies along a tube that is bent.
    const State on = touched(chosen, {Next{}});
    CHECK(work_in_hand(on).made == work_in_hand(before).made);
    CHECK(misfit_now(on) == Misfit::none);
    CHECK(work_in_hand(on).stage == Stage::bending);
    CHECK(work_in_hand(on).step == 1);
    CHECK(work_in_hand(on).move == Move::mark);
}

TEST_CASE("a line of another job that is marked out asks for new marks too when it comes back") {
    State state = one_bend_made();
    Job other = sample_job();
    other.name = "Another job";
    state = touched(state, {JobRead{"other", "jobs/other.json", other}, OpenLine{"left rear"}, GoTo{Screen::stance}, ChooseMark{"L"}});
    CHECK(misfit_now(with_job(state, sample_job())) == Misfit::ink);
}

TEST_CASE("a tube that was pulled is never taken for straight again by going back") {
    const State pulled = at_check(at_first_bend());
    State back = touched(pulled, {Back{}, Back{}, Back{}, Back{}});
    REQUIRE(work_in_hand(back).stage == Stage::mark_out);
    CHECK_FALSE(offered(back, "whole"));
    CHECK(offered(back, "none"));
    back = touched(back, {Back{}});
    REQUIRE(work_in_hand(back).stage == Stage::prepare);
    CHECK_FALSE(offered(back, "whole"));
    CHECK_FALSE(offered(touched(back, {Next{}, Next{}}), "whole"));
    // The pull undone, the lever may still have moved; with its turn undone too it never happened.
    CHECK_FALSE(offered(touched(pulled, {Undo{}}), "whole"));
    CHECK(offered(touched(pulled, {Undo{}, Undo{}}), "whole"));
}

TEST_CASE("a bend that was pulled bounds what is straight after going back to the one before it") {
    const State pulled = at_check(one_bend_made());
    const std::vector<KeptOffer> offers = kept_offers(pulled);
    REQUIRE(offers.size() == 4);
    const State back = touched(pulled, {Back{}, Back{}, Back{}, Back{}});
    REQUIRE(work_in_hand(back).step == 0);
    const std::vector<KeptOffer> after = kept_offers(back);
    REQUIRE(after.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(after[i].id == offers[i].id);
        CHECK(after[i].kept() == offers[i].kept());
    }
}

}  // namespace tubewright
