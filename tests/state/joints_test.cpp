#include "state/joints.h"

#include <catch2/catch.hpp>

#include "state/cut_plan.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

constexpr Joint tee{JointKind::tee, 1}, coupling{JointKind::union_piece, 1};
// Lines of the sample: 0 axle crossover, two pieces, nuts at both ends; 1 left rear, 2 too tight, 3 straight.
constexpr EndOfSheet crossover_a{0, End::A}, crossover_b{0, End::B}, rear_a{1, End::A}, rear_b{1, End::B}, straight_a{3, End::A};

/// Nuts at the ends of all lines but the third.
Job with_nuts() {
    Job job = sample_job();
    for (const std::size_t line : {1u, 3u}) job.lines[line].a.fitting = job.lines[line].b.fitting = flare();
    return job;
}
State at_joints(const State& state, const Job& job) { return touched(state, {JobRead{"trailer", "jobs/trailer.json", job}, GoTo{Screen::plan}, GoTo{Screen::buy}, GoTo{Screen::joints}}); }
State nuts_on() { return at_joints(job_open(), with_nuts()); }

State sent(const State& state, const EndOfSheet& of, std::optional<Joint> joint) { return touched(state, {AskJoint{key_of(state, of)}, GoesInto{joint}}); }

bool takes(const State& state, const Joint& joint, std::size_t taken, std::size_t there) {
    const JointPlaces places = places_of(state, joint);
    return places.taken == taken && places.there == there;
}

}  // namespace

TEST_CASE("three ends fill a tee, and the next one is the second") {
    Job job = with_nuts();
    job.lines[0].quantity = 1;
    State state = at_joints(job_open(), job);
    CHECK(joints_in_use(state).empty());
    CHECK(new_joint(state, JointKind::tee) == tee);
    state = sent(state, crossover_b, tee);
    CHECK(state.looks.screen == Screen::joints);
    state = sent(state, rear_a, tee);
    CHECK(takes(state, tee, 2, 3));
    CHECK(ends_in(state, tee) == std::vector{crossover_b, rear_a});
    CHECK(joint_of(state, rear_b) == std::nullopt);
    // Its own other end is not for it: a line does not run into itself.
    CHECK(bar_to_joint(state, rear_b, tee) == JointBar::other_end);
    CHECK(sent(state, rear_b, tee).work.joints == state.work.joints);
    state = sent(state, straight_a, tee);
    CHECK(takes(state, tee, 3, 3));
    CHECK(bar_to_joint(state, straight_a, tee) == JointBar::none);  // where it is
    CHECK(new_joint(state, JointKind::tee) == Joint{JointKind::tee, 2});
    CHECK(sent(state, rear_b, Joint{JointKind::tee, 7}).work.joints == state.work.joints);  // none that anybody was offered
    // Undo takes one touch back; back into a port frees the place.
    CHECK(touched(state, {Undo{}}).work.joints.size() == 2);
    CHECK(takes(sent(state, crossover_b, std::nullopt), tee, 2, 3));
}

TEST_CASE("a union holds two ends, and an end without a nut goes nowhere") {
    Job job = with_nuts();
    job.lines[0].quantity = 1;
    State state = at_joints(job_open(), job);
    state = sent(sent(state, rear_b, coupling), crossover_a, coupling);
    CHECK(bar_to_joint(state, straight_a, coupling) == JointBar::full);
    CHECK(bar_to_joint(state, {2, End::A}, coupling) == JointBar::no_nut);
    CHECK(touched(state, {AskJoint{key_of(state, {2, End::A})}}).looks.screen == Screen::joints);
    CHECK(touched(state, {AskJoint{{"trailer/no such line", End::A}}}).looks.screen == Screen::joints);
}

TEST_CASE("lines that are made twice have two tees alike, if need be") {
    // Two crossovers take two places of three, or of six in two tees; with one rear they may still be three ends of one.
    State state = nuts_on();
    state = sent(state, crossover_b, tee);
    CHECK(takes(state, tee, 2, 6));
    state = sent(sent(state, rear_a, tee), straight_a, tee);
    CHECK(takes(state, tee, 4, 6));
    // Made once after all, the three lines have one tee and fill it; another line's end was told meanwhile, and is one too many.
    Job job = with_nuts();
    job.lines[0].quantity = 1;
    CHECK(takes(at_joints(state, job), tee, 3, 3));
    job.lines[2].a.fitting = flare();
    state.work.joints[{"trailer/too tight", End::A}] = tee;
    CHECK(takes(at_joints(state, job), tee, 4, 3));
}

TEST_CASE("the number of a joint whose line is out of sight is not given to another") {
    State state = sent(nuts_on(), rear_a, tee);
    Job job = with_nuts();
    job.lines[1].a.fitting.slide_on.clear();
    state = at_joints(state, job);
    CHECK(joints_in_use(state).empty());
    CHECK(new_joint(state, JointKind::tee) == Joint{JointKind::tee, 2});
    state = sent(state, crossover_b, Joint{JointKind::tee, 2});
    // With its nut again it is where it was, alone.
    state = at_joints(state, with_nuts());
    CHECK(ends_in(state, tee) == std::vector{rear_a});
    CHECK(ends_in(state, {JointKind::tee, 2}) == std::vector{crossover_b});
}

TEST_CASE("undo at the bench says that it took back what was said of a tee; without its end the question is left") {
    State state = sent(nuts_on(), rear_a, tee);
    CHECK(touched(state, {OpenLine{"left rear"}, Undo{}}).looks.notice == "Undone: what was last said of tees and unions.");
    CHECK(touched(state, {Undo{}}).looks.notice.empty());  // seen where it happens
    state = touched(state, {AskJoint{key_of(state, rear_b)}});
    state.sheets.pop_back(), state.sheets.erase(state.sheets.begin() + 1);
    CHECK(apply(state, TurnPage{1}).state.looks.screen == Screen::joints);
}

TEST_CASE("two kinds of flare in one tee are seen") {
    State state = sent(sent(nuts_on(), crossover_b, tee), rear_a, tee);
    CHECK_FALSE(is_of_two_flares(state, tee));
    Job job = *state.job;
    job.lines[1].a.fitting.id = "flare-45-double";
    CHECK(is_of_two_flares(touched(state, {JobRead{"trailer", "jobs/trailer.json", job}}), tee));
}

TEST_CASE("the tee comes on the list to buy once, with what its ends are, and the clips of its lines stand closer") {
    State state = nuts_on();
    const auto to_buy = [](State asked) {
        asked = touched(asked, {GoTo{Screen::plan}});
        asked.plan.found = std::make_shared<const std::vector<TubeCut>>();
        return list_to_buy(asked).value();
    };
    const auto clips = [](const BuyList& list) {
        int count = 0;
        for (const auto& [item, n] : list) count += item.kind == BuyKind::clip ? n : 0;
        return count;
    };
    const BuyList before = to_buy(state);
    state = sent(sent(state, crossover_b, tee), rear_a, tee);
    const BuyList list = to_buy(state);
    const JointEnd end{exact(state.sheets[0].line.tube.od), flare().name};
    CHECK(list.at({BuyKind::tee, {}, {}, {}, {end, end, end}}) == 1);
    CHECK(before.count({BuyKind::tee, {}, {}, {}, {end, end, end}}) == 0);
    // 14 in between clips become 11.2. Each crossover, 22 3/4 in: two stretches become three; the rear, 13 in: one becomes two.
    CHECK(clips(list) == clips(before) + 3);
    // Its price stays while its ends are being told, and is not that of one with another end.
    const JointEnd wide{exact(Length{6}), flare().name};
    CHECK(buy_key({BuyKind::tee, {}, {}, {}, {end, end, end}}) == buy_key({BuyKind::tee, {}, {}, {}, {end, end}}));
    CHECK(buy_key({BuyKind::tee, {}, {}, {}, {end, end, end}}) != buy_key({BuyKind::tee, {}, {}, {}, {end, end, wide}}));
}

TEST_CASE("Back out of a question leads to the page that it was asked from") {
    State state = touched(nuts_on(), {TurnPage{1}});
    REQUIRE(state.looks.page == 1);
    state = touched(state, {AskJoint{key_of(state, rear_a)}});
    CHECK(state.looks.page == 0);
    CHECK(touched(state, {Back{}}).looks.page == 1);
    CHECK(touched(state, {GoesInto{tee}}).looks.page == 1);
}

}  // namespace tubewright
