#include "state/joints.h"

#include <catch2/catch.hpp>

#include "state/cut_plan.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

constexpr Joint tee{JointKind::tee, 1}, coupling{JointKind::union_piece, 1};
// Lines of the sample: 0 axle crossover, two pieces, nuts at both ends; 1 left rear, 2 too tight, 3 straight.
constexpr EndOfSheet crossover_a{0, End::A}, crossover_b{0, End::B}, rear_a{1, End::A}, rear_b{1, End::B};

/// Nuts at the ends of the first two lines; the others' are as they come, without.
State nuts_on() {
    Job job = sample_job();
    job.lines[1].a.fitting = job.lines[1].b.fitting = flare();
    return touched(job_open(), {JobRead{"trailer", "jobs/trailer.json", job}, GoTo{Screen::plan}, GoTo{Screen::buy}, GoTo{Screen::joints}});
}

State sent(const State& state, const EndOfSheet& of, std::optional<Joint> joint) { return touched(state, {AskJoint{key_of(state, of)}, GoesInto{joint}}); }

}  // namespace

TEST_CASE("the ends of two lines go into one tee: two pieces of one and one of the other fill it") {
    State state = nuts_on();
    CHECK(joints_in_use(state).empty());
    CHECK(new_joint(state, JointKind::tee) == tee);
    state = sent(state, crossover_b, tee);
    CHECK(state.looks.screen == Screen::joints);
    CHECK(places_taken(state, tee) == 2);
    state = sent(state, rear_a, tee);
    CHECK(places_taken(state, tee) == 3);
    CHECK(ends_in(state, tee) == std::vector{crossover_b, rear_a});
    CHECK(joint_of(state, rear_a) == tee);
    CHECK(joint_of(state, rear_b) == std::nullopt);
    // Neither its own other end nor any more: both leave the end where it was. The next tee is the second.
    CHECK(bar_to_joint(state, rear_b, tee) == JointBar::other_end);
    CHECK(sent(state, rear_b, tee).work.joints == state.work.joints);
    CHECK(bar_to_joint(state, rear_b, {JointKind::tee, 2}) == JointBar::none);
    CHECK(new_joint(state, JointKind::tee) == Joint{JointKind::tee, 2});
    CHECK(sent(state, rear_b, Joint{JointKind::tee, 7}).work.joints == state.work.joints);  // none that nobody was offered
    // Undo takes one touch back; back into a port frees the place, and the number with the last of them.
    CHECK(touched(state, {Undo{}}).work.joints.size() == 1);
    state = sent(state, crossover_b, std::nullopt);
    CHECK(places_taken(state, tee) == 1);
    CHECK(joints_in_use(sent(state, rear_a, std::nullopt)).empty());
}

TEST_CASE("a union holds two ends, an end without a nut goes nowhere, and a line with two pieces fills a union") {
    State state = nuts_on();
    state = sent(state, rear_b, coupling);
    CHECK(bar_to_joint(state, crossover_a, coupling) == JointBar::full);  // two pieces, one place
    CHECK(bar_to_joint(state, rear_b, coupling) == JointBar::none);       // where it is
    CHECK(bar_to_joint(state, {3, End::A}, coupling) == JointBar::no_nut);
    CHECK(touched(state, {AskJoint{key_of(state, {3, End::A})}}).looks.screen == Screen::joints);
    CHECK(touched(state, {AskJoint{{"trailer/no such line", End::A}}}).looks.screen == Screen::joints);
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
    CHECK(buy_key(list.begin()->first) != buy_key({BuyKind::tee, {}, {}, {}, {end, end}}));
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
