// Springback that gets better with each bend: what a reading at the bench does to the pulls, the marks and the log.

#include <catch2/catch.hpp>

#include "state/sample_state.h"

namespace tubewright {
namespace {

/// Three bends of 90 on one line, and a second line of the same tube.
State two_lines() {
    Job job = sample_job();
    Line first = line_of({6, 5, 6, 7}, {{90, 0}, {90, 90}, {90, 90}}), second = line_of({8, 8}, {{90, 0}});
    first.name = "first";
    second.name = "second";
    for (Line* line : {&first, &second}) line->bend_notes.resize(line->route.bends.size());
    job.lines = {first, second};
    return touched(job_open(), {JobRead{"two", "jobs/two.json", job}});
}

State bending(const std::string& line) {
    State state = touched(two_lines(), {OpenLine{line}, NewStick{inches(240)}, Next{}});
    return touched(all_ticked(state), {Next{}, Next{}});
}

double next_pull(const State& state) { return set_in_force(*step_in_hand(state), work_in_hand(state)).deg; }

/// The bend in hand read, and kept whatever it is.
State kept(State state, const std::string& keys, bool lever_was_there = true) {
    state = reading(at_check(std::move(state)), keys);
    return work_in_hand(state).last_reading ? touched(std::move(state), {KeepBend{lever_was_there}}) : state;
}

const LoggedBend& last_bend(const State& state) { return state.work.bends.back(); }

/// A log of right bends, so that little is believed of a reading far off.
State after_right_bends(State state) {
    for (int i = 0; i < 2; ++i) state = kept(std::move(state), "90");
    return state;
}

}  // namespace

TEST_CASE("before any bend the pulls are those of the physics") {
    // 3/16 x 0.028 of 304 on 9/16: with 0.02284 for the beam and 0.02691 with all that comes to it (both worked out apart from this
    // program, see tests/bench/springback_test.cpp) growth is 0.02691 / (1 - 0.02691) = 0.02765, and the legs' share 0.02284 / 0.90 * 1.5 * 3/16 / (9/16)
    // = 0.01269 rad = 0.727 degrees. For 90: 1.02765 * 90 + 0.727 = 93.216.
    const State state = bending("first");
    CHECK(next_pull(state) == Approx(93.216).margin(0.002));
    CHECK(state.springbacks[0]->learned_from == 0);
    CHECK(sheet_in_hand(state)->springback == physics_of(sheet_in_hand(state)->line));
}

TEST_CASE("a bend read 87 where 90 was wanted moves the next pull by what the log makes of it") {
    // The lever stopped at the half degree below 93.216: 93. Opened 93 - 87 = 6, foreseen 0.02765 * 87 + 0.727 = 3.133. Believed before: growth
    // 0.02765 +- 35 %, zero 0.727 +- 1, scatter 0.5. The Student weight w and the line that it gives, in turn until both stand
    // still (section 5.4, weights no larger than 1; worked out apart from this program in a page of Python, which gives section 5.8's
    // hand check for N = 1): w = 0.8895, growth 0.03940, zero 2.1676; for 90: 1.03940 * 90 + 2.1676 = 95.713.
    const State state = kept(bending("first"), "87");
    REQUIRE(state.work.bends.size() == 1);
    const LoggedBend& logged = last_bend(state);
    CHECK(logged.check.set.deg == 93);
    CHECK(logged.check.measured.deg == Approx(87));
    CHECK(logged.check.target->deg == 90);
    CHECK(logged.check.record.day == "2026-11-25");
    CHECK(logged.check.record.standing == RecordStanding::counted);
    CHECK(logged.of == BendOfTube{"two", "first", 1, 1, work_in_hand(state).made[0].bend});
    CHECK(next_pull(state) == Approx(95.713).margin(0.002));
    // And a right one: 93 - 90 = 3 opened; the same way 0.02675, 0.6195 and 93.027.
    CHECK(next_pull(kept(bending("first"), "90")) == Approx(93.027).margin(0.002));
}

TEST_CASE("a tube that is cut keeps its marks, and one that is not is laid out with what is known") {
    const State before = bending("first");
    const State after = kept(before, "87");
    const Sheet &was = before.sheets[0], &is = after.sheets[0];
    CHECK(is.layout->cut_length == was.layout->cut_length);
    CHECK(inking_of(is) == inking_of(was));
    CHECK(misfit(is, work_in_hand(after)) == Misfit::none);
    // A leg's setback is R * tan 45 and the arc R * pi/2: a corner of 90 takes R * (pi/2 - 2) less than its legs. R grows from 1.02765 to
    // 1.03940 times 14.2875 mm, by 0.1678: the second line gets shorter by 0.4292 * 0.1678 = 0.0720 mm, and its mark moves by 0.1678 towards A.
    CHECK((after.sheets[1].layout->cut_length - before.sheets[1].layout->cut_length).mm == Approx(-0.0720).margin(0.001));
    CHECK((after.sheets[1].layout->spans[0].start - before.sheets[1].layout->spans[0].start).mm == Approx(-0.1678).margin(0.001));
    CHECK(after.sheets[1].steps[0].set.deg == Approx(95.713).margin(0.002));
    // Cut with that, it keeps it, whatever is learned or forgotten later.
    State second = touched(after, {OpenLine{"second"}, Next{}});
    second = touched(all_ticked(second), {Next{}});
    REQUIRE(work_in_hand(second).cut);
    const State forgotten = touched(second, {GoTo{Screen::bends_more}, ForgetBends{}});
    CHECK(forgotten.work.bends.empty());
    CHECK(forgotten.sheets[1].layout->cut_length == second.sheets[1].layout->cut_length);
    CHECK(misfit(forgotten.sheets[1], work_in_hand(forgotten)) == Misfit::none);
    CHECK(forgotten.sheets[1].steps[0].set.deg == Approx(93.216).margin(0.002));
}

TEST_CASE("undo takes a reading out of the log with the touch that brought it, and back is a reading again") {
    const State before = reading(at_check(bending("first")), "87");
    const State after = touched(before, {KeepBend{true}});
    const State undone = touched(after, {Undo{}});
    CHECK(undone.work == before.work);
    CHECK(undone.sheets[0].springback == before.sheets[0].springback);
    CHECK(touched(undone, {Redo{}}).work == after.work);
    // Taken back into hand, the bend says nothing for the while; left as it was, all is as it was.
    const State back = touched(after, {Back{}});
    CHECK(work_in_hand(back).last_reading->deg == Approx(87));
    CHECK(sheet_in_hand(back)->springback == before.sheets[0].springback);
    CHECK_FALSE(work_in_hand(back).pull_again);
    CHECK(touched(back, {KeepBend{true}}).work == after.work);
    // Read anew, there is one record of it, not two; passed over, there is none.
    const State read_anew = reading(touched(back, {Back{}}), "90");
    REQUIRE(read_anew.work.bends.size() == 1);
    CHECK(last_bend(read_anew).check.measured.deg == 90);
    CHECK(last_bend(read_anew).check.record.id == last_bend(after).check.record.id);
    CHECK(touched(touched(back, {Back{}}), {PassCheck{}}).work.bends.empty());
}

TEST_CASE("what the lever was pulled with stays in force until its bend is made") {
    State state = kept(bending("first"), "87");
    const double pulled = next_pull(state);
    state = at_check(state);
    const State left_out = touched(state, {GoTo{Screen::bends}, PickRecord{last_bend(state).check.record.id}, LeaveRecordOut{last_bend(state).check.record.id}, GoTo{Screen::bench}});
    CHECK(next_pull(left_out) == pulled);
    CHECK(next_pull(touched(left_out, {PassCheck{}})) == Approx(93.216).margin(0.002));
}

TEST_CASE("a reading that can hardly be is asked about, kept without being learned from, and counts when it was measured again") {
    // Two bends of 90 that read right leave 90 sure to 0.35 degrees or so, and the next reading to about 0.6: 87 would open three
    // degrees more than foreseen, five times that.
    const State sure = after_right_bends(bending("first"));
    const double pull = next_pull(sure);
    const State asked = reading(at_check(sure), "87");
    CHECK(is_doubted(asked, work_in_hand(asked), Angle{87}));
    CHECK_FALSE(is_doubted(asked, work_in_hand(asked), Angle{90}));
    CHECK(expected_reading(asked, work_in_hand(asked)).deg == Approx(90).margin(0.5));
    const State not_again = touched(asked, {KeepBend{true}});
    REQUIRE(not_again.work.bends.size() == 3);
    CHECK(last_bend(not_again).check.record.standing == RecordStanding::asked);
    CHECK(set_angle(not_again.sheets[0].springback, Angle{90}).deg == Approx(pull));
    // Measured again and the same: the person has looked twice.
    const State twice = touched(reading(touched(asked, {Back{}}), "87"), {KeepBend{true}});
    CHECK(last_bend(twice).check.record.standing == RecordStanding::confirmed);
    CHECK(set_angle(twice.sheets[0].springback, Angle{90}).deg > pull + 0.1);
    // Something else the second time: that is what is in doubt, or not.
    const State otherwise = reading(touched(asked, {Back{}}), "90");
    CHECK(last_bend(otherwise).check.record.standing == RecordStanding::counted);
    // Later, on the page.
    const std::int64_t id = last_bend(not_again).check.record.id;
    const State on_page = touched(not_again, {GoTo{Screen::line}, GoTo{Screen::bends}, PickRecord{id}, RecordIsRight{id}});
    CHECK(last_bend(on_page).check.record.standing == RecordStanding::confirmed);
    CHECK(touched(on_page, {Undo{}}).work == not_again.work);
}

TEST_CASE("where the lever may have stopped short only the person's word counts, however often it is measured") {
    const State asked = reading(at_check(bending("first")), "87");
    REQUIRE(belief(*sheet_in_hand(asked), *step_in_hand(asked), work_in_hand(asked), Angle{87}) == Belief::opened_more);
    CHECK(last_bend(touched(asked, {KeepBend{}})).check.record.standing == RecordStanding::asked);
    CHECK(last_bend(touched(asked, {KeepBend{true}})).check.record.standing == RecordStanding::counted);
    const State twice = reading(touched(asked, {Back{}}), "87");
    CHECK(last_bend(touched(twice, {KeepBend{}})).check.record.standing == RecordStanding::asked);
}

TEST_CASE("where the log would ask after a first pull that ends under its target, the lever is asked after before anything is pulled on") {
    // 93 opens to 89.78, give or take twice the root of (3.22 / 3)^2 + 1^2, 2.9: the lever alone is believed down to 86.9. The log asks sooner.
    const State first = at_check(bending("first"));
    double least = 0;
    for (double deg = 89; deg > 86 && least == 0; deg -= 0.25) {
        const LineWork work = work_in_hand(first);
        if (is_doubted(first, work, Angle{deg})) least = deg;
    }
    REQUIRE(least > 0);
    CHECK(belief_in_hand(first, work_in_hand(first), Angle{least}) == Belief::opened_more);
    CHECK(belief_in_hand(first, work_in_hand(first), Angle{least + 0.25}) == Belief::sound);
    LineWork twice = work_in_hand(first);
    twice.doubted = Angle{least};
    CHECK(belief_in_hand(first, twice, Angle{least}) == Belief::opened_more);  // the protractor knows nothing of the lever
    const State measured_twice = touched(reading(first, "87"), {Back{}});
    REQUIRE(least >= 87);
    CHECK(last_bend(touched(reading(measured_twice, "87"), {KeepBend{}})).check.record.standing == RecordStanding::asked);
    LineWork pulled_on = work_in_hand(first);
    pulled_on.pull_again = Angle{94};
    CHECK(belief_in_hand(first, pulled_on, Angle{89}) == Belief::sound);  // reckoned from a reading, to end at 90
}

TEST_CASE("a right bend that took a pull nobody would believe is asked about too, and goes on") {
    // Read 86 of 93, pulled on by 4 * 1.02765 to 97.1 and then right: it opened 7 degrees, where 3.22 were foreseen.
    State state = touched(reading(at_check(bending("first")), "86"), {PullAgain{true}});
    state = reading(touched(state, {Next{}}), "90");
    REQUIRE(work_in_hand(state).last_reading);
    CHECK(work_in_hand(state).made.empty());
    CHECK(is_doubted(state, work_in_hand(state), Angle{90}));
    state = touched(state, {Next{}});
    CHECK(work_in_hand(state).made.size() == 1);
    CHECK(last_bend(state).check.record.standing == RecordStanding::asked);
}

TEST_CASE("tube of another delivery begins with what the last one taught, and more doubt") {
    const State state = kept(bending("first"), "87");
    const State other = touched(state, {GoTo{Screen::line}, GoTo{Screen::bends}, GoTo{Screen::bends_more}, NewTube{}});
    CHECK(lot_in_use(other.work, sheet_in_hand(other)->line.tube) == "2026-11-25");
    CHECK(other.springbacks[0]->learned_from == 0);
    CHECK(other.springbacks[0]->others == 1);
    CHECK(other.springbacks[0]->belief.line == state.springbacks[0]->belief.line);
    CHECK(other.springbacks[0]->belief.zero_variance == Approx(state.springbacks[0]->belief.zero_variance + 0.3 * 0.3));
    CHECK(other.looks.screen == Screen::bends);
    CHECK(touched(other, {Undo{}}).work == state.work);
    const State third = touched(other, {GoTo{Screen::bends_more}, NewTube{}});
    CHECK(lot_in_use(third.work, sheet_in_hand(third)->line.tube) == "2026-11-25 2");
}

TEST_CASE("bends brought in from a file are added once, with ids of the book's own") {
    const State state = kept(bending("first"), "87");
    std::vector<LoggedBend> bends = state.work.bends;
    bends[0].check.record = {0, "2026-11-25", RecordStanding::counted, true};  // left out elsewhere: the same bend all the same
    bends.push_back(bends[0]);
    bends[1].check.record = {0, "2026-11-20", RecordStanding::counted, false};
    const State brought = touched(state, {BendsRead{"bends.json", bends}});
    REQUIRE(brought.work.bends.size() == 2);
    CHECK_FALSE(brought.work.bends[0].check.record.left_out);
    CHECK(brought.work.bends[1].check.record.id > brought.work.bends[0].check.record.id);
    CHECK(brought.looks.notice == "1 bend brought in from bends.json; 1 was in the log already.");
    CHECK(brought.springbacks[0]->learned_from == 2);
    CHECK(touched(brought, {Undo{}}).work == state.work);
}

TEST_CASE("a piece of another book comes in as a bend of nobody's, once; one's own comes back to no second record") {
    State state = kept(bending("first"), "87");
    LoggedBend piece = state.work.bends[0];
    piece.check.target.reset();
    piece.check.record.id = state.work.next_id++;
    piece.of = {"", "", 12, 0, 0};
    state.work.bends.push_back(piece);
    CHECK(touched(state, {BendsRead{"bends.json", {piece}}}).work.bends == state.work.bends);
    LoggedBend other = piece;
    other.check.measured = Angle{86};
    const State brought = touched(state, {BendsRead{"bends.json", {other}}});
    REQUIRE(brought.work.bends.size() == 3);
    CHECK(record_of_piece(brought.work, 12)->check.measured == piece.check.measured);
    CHECK_FALSE(is_of_a_piece(brought.work.bends[2]));
    CHECK(touched(brought, {BendsRead{"bends.json", {other}}}).work.bends.size() == 3);
}

TEST_CASE("the order is looked for with the shop's own hand, and again where the springback has moved by more than a lever's stop") {
    const State before = bending("first");
    CHECK(before.hand == Hand{});
    CHECK(before.sheets[1].hand == Hand{});
    const std::int64_t asked = before.orders[1].question;
    const State far = kept(before, "87");  // 93.216 to 95.713
    CHECK(far.orders[1].question > asked);
    CHECK(kept(before, "90").orders[1].question == asked);
    // angle_sd^2 = 0.35^2 + (6 * (0.5^2 - 0.35^2) + (87 - 90)^2) / 7 = 0.1225 + 9.765 / 7 = 1.5175 (bench/hand_log)
    CHECK(far.hand.angle_sd.deg == Approx(1.2319).margin(0.0001));
    CHECK(far.sheets[1].hand == far.hand);
    CHECK(far.hand.turn_sd == Hand{}.turn_sd);
}

}  // namespace tubewright
