#include "bench/proof.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "bench/wire_world.h"
#include "bench/wires.h"

using namespace tubewright;

TEST_CASE("If bend 2 turned the other way this would read 5, and you read 5") {
    // Entered as a Z of 6, 4 and 3 in: end to end sqrt(9^2 + 4^2) = 9.8489. The wire is a U: sqrt(3^2 + 4^2) = 5.
    const ProofEntry entry = entry_of({6, 4, 3}, {{90, 0}, {90, 180}});
    const Proof proof = prove(entry, {{{{0, 3}, {5 * 25.4}}}, std::nullopt});
    CHECK(proof.verdict == ProofVerdict::slip);
    REQUIRE(proof.expected.size() == 1);
    CHECK(proof.expected[0].expected.inch() == Approx(9.8489).margin(0.00005));
    const Explanation& first = proof.explanations.at(0);
    CHECK((first.slip.kind == SlipKind::rest_other_way || first.slip.kind == SlipKind::bend_other_way));
    CHECK(first.would_read.at(0).inch() == Approx(5));
    CHECK(first.fits);
    CHECK(first.probability > 0.5);
    // What would read something else does not fit. Unusual is 3.29 standard deviations, of which the tape alone has 1/16: 0.2 in.
    const auto other = std::find_if(proof.explanations.begin(), proof.explanations.end(), [](const Explanation& e) { return !e.fits; });
    REQUIRE(other != proof.explanations.end());
    CHECK(std::abs(other->would_read.at(0).inch() - 5) > 0.2);
    // The remedy: the same legs, and a C in place of the Z.
    CHECK(first.slip.meant.runs == entry.wire.route.runs);
    CHECK(first.slip.meant.bends[1].rotation.deg == Approx(0).margin(1e-9));
    // Bend 1 the other way gives the same tube, so it is said in the same breath.
    CHECK(first.same_shape.size() == 1);
}

TEST_CASE("what the readings would be as entered leaves no doubt") {
    for (const ProofEntry& entry : {entry_of({6, 4, 3}, {{90, 0}, {90, 180}}), entry_of({12, 8, 5, 20}, {{90, 0}, {45, 90}, {45, 180}}), entry_of({3, 30, 3, 8, 6}, {{90, 0}, {90, -90}, {30, 0}, {60, 45}})}) {
        const Proof proof = prove(entry, taken_of(entry, entry));
        CHECK(proof.verdict == ProofVerdict::consistent);
        CHECK(proof.sure > 0.85);
        CHECK(proof.suspects.empty());
        for (const double off : proof.off) CHECK(off == Approx(0).margin(1e-9));
    }
}

TEST_CASE("with nothing taken nothing is doubted, and every slip is still to be shown") {
    const ProofEntry entry = entry_of({6, 4, 3}, {{90, 0}, {90, 180}});
    const Proof proof = prove(entry, {});
    CHECK(proof.verdict == ProofVerdict::consistent);
    CHECK(proof.sure < prove(entry, taken_of(entry, entry)).sure);
    CHECK(proof.not_exposed.size() > 20);
}

TEST_CASE("the spread of an expected reading follows from tape, legs and bends") {
    // A square corner of 10 and 10 in: 14.1421 across. Each leg gives cos 45 of its 1/16: together 1/16. The angle: the leg's end
    // moves 10 in times one degree square to itself, cos 45 of it along: 10 x 0.0174533 x 0.707107 = 0.123413. The tape: 1/16.
    // sqrt(0.0625^2 + 0.123413^2 + 0.0625^2) = 0.151800
    const ProofEntry entry = entry_of({10, 10}, {{90, 0}});
    const std::optional<TapeTask> task = next_task(entry, {});
    REQUIRE(task);
    CHECK(task->span == Span{0, 2});
    CHECK(task->expected.inch() == Approx(14.1421).margin(0.00005));
    CHECK(task->sd.inch() == Approx(0.151800).margin(0.000005));
}

TEST_CASE("tasks keep to what a tape can do") {
    std::mt19937 dice(20260303);
    for (int i = 0; i < 100; ++i) {
        const ProofEntry entry = wire_world::random_world(dice, {}).right;
        INFO("wire " << i);
        const std::vector<TapeTask> tasks = tasks_to_take(entry);
        CHECK(tasks.size() <= 3);
        CHECK_FALSE(tasks.empty());
        for (std::size_t k = 0; k < tasks.size(); ++k) {
            CHECK(tasks[k].expected.inch() >= 2);
            CHECK(tasks[k].expected.inch() <= 72);
            CHECK(can_be_touched(entry.wire.route, tasks[k].span.from));
            CHECK(can_be_touched(entry.wire.route, tasks[k].span.to));
            CHECK(tasks[k].span.to > tasks[k].span.from + 1);  // no leg that was entered itself
            CHECK(tasks[k].sd > entry.measuring.tape_sd);
            for (std::size_t m = 0; m < k; ++m) CHECK(tasks[m].span != tasks[k].span);
        }
    }
}

TEST_CASE("no reading without two points: a straight tube, and corners that can't be touched") {
    CHECK_FALSE(next_task(entry_of({6}, {}), {}));
    CHECK(tasks_to_take(entry_of({6}, {})).empty());
    CHECK(prove(entry_of({6}, {}), {}).verdict == ProofVerdict::consistent);
    // One sharp bend: only end to end is left.
    const std::vector<TapeTask> tasks = tasks_to_take(entry_of({20, 10}, {{150, 0}}));
    REQUIRE(tasks.size() == 1);
    CHECK(tasks[0].span == Span{0, 2});
}

TEST_CASE("a flat line has no hand, a quarter turn has, and the clock says where the leg goes") {
    CHECK_FALSE(hand_question(entry_of({6, 4, 3}, {{90, 0}, {90, 180}}).wire));
    // Along x, then y, then z (rotation 90). Look along y with the first leg, which lies towards -x, hanging down. Up is x,
    // to the right is y cross x = -z, so z is to the left: nine o'clock, 90 degrees clockwise from down.
    const auto left = hand_question(entry_of({6, 4, 3}, {{90, 0}, {90, 90}}).wire);
    REQUIRE(left);
    CHECK(left->before == 0);
    CHECK(left->bend == 1);
    CHECK(left->left);
    CHECK(left->clock.deg == 90);
    CHECK(left->clearness == Approx(1));
    CHECK_FALSE(hand_question(entry_of({6, 4, 3}, {{90, 0}, {90, -90}}).wire)->left);
    // The clearest of three: bend 3, sin 90 sin 90 sin 60, not bend 2, sin 30 sin 90 sin 90, nor bend 4, sin 90 sin 20 sin 90.
    CHECK(hand_question(entry_of({6, 4, 3, 5, 5}, {{30, 0}, {90, 90}, {90, 60}, {20, 90}}).wire)->bend == 2);
    // Past a corner of no degrees the leg looked along is as straight.
    const auto past = hand_question(entry_of({6, 4, 3, 5}, {{90, 0}, {0, 0}, {90, -70}}).wire);
    CHECK(past->before == 0);
    CHECK(past->bend == 2);
    CHECK(past->clearness == Approx(std::sin(70 * 3.14159265358979 / 180)));
}

TEST_CASE("readings never show a mirror image; the question does") {
    const ProofEntry entry = entry_of({6, 9, 7, 8}, {{90, 0}, {90, 90}, {60, 45}});
    ProofEntry mirror = entry;
    for (Bend& bend : mirror.wire.route.bends) bend.rotation = -bend.rotation;
    Taken taken = taken_of(entry, mirror);
    const Proof blind = prove(entry, taken);
    CHECK(blind.verdict == ProofVerdict::consistent);
    const auto of_mirror = [](const Explanation& e) { return e.slip.kind == SlipKind::mirrored; };
    CHECK(std::any_of(blind.not_exposed.begin(), blind.not_exposed.end(), of_mirror));
    const HandQuestion question = *hand_question(entry.wire);
    taken.hand = HandAnswer{question.before, question.bend, !question.left};
    const Proof seen = prove(entry, taken);
    CHECK(seen.verdict == ProofVerdict::slip);
    CHECK(seen.explanations.at(0).slip.meant == mirror.wire.route);
    taken.hand->left = question.left;
    const Proof sure = prove(entry, taken);
    CHECK(sure.verdict == ProofVerdict::consistent);
    CHECK_FALSE(std::any_of(sure.not_exposed.begin(), sure.not_exposed.end(), of_mirror));
}

TEST_CASE("a wire lying any other way reads the same") {
    // The world's points are worked out apart from the program's and lie elsewhere in space.
    std::mt19937 dice(20260304);
    for (int i = 0; i < 100; ++i) {
        const wire_world::World world = wire_world::random_world(dice, {});
        const Route& route = world.right.wire.route;
        INFO("wire " << i);
        const auto points = wire_world::touched(route, world.od_inch, route.measured_to);
        for (std::size_t a = 0; a < points.size(); ++a)
            for (std::size_t b = a + 1; b < points.size(); ++b) CHECK(distance(world.right, {a, b}).inch() == Approx((points[b] - points[a]).norm()));
        if (const auto question = hand_question(world.right.wire)) CHECK(wire_world::seen(world, *question).left == question->left);
    }
}

TEST_CASE("something that nobody thought of is said to be unexplained, with what could be wrong") {
    // Bend 2 is really 72 degrees where 90 was entered, and leg 3 as entered: no slip of the list comes to that.
    const ProofEntry entry = entry_of({10, 12, 14}, {{90, 0}, {90, 30}});
    const ProofEntry truth = entry_of({10, 12, 14}, {{90, 0}, {72, 30}});
    Taken taken;
    for (const Span span : {Span{0, 3}, Span{1, 3}, Span{0, 2}}) taken.readings.push_back(exact(truth, span));
    const Proof proof = prove(entry, taken);
    CHECK(proof.verdict == ProofVerdict::unexplained);
    REQUIRE_FALSE(proof.suspects.empty());
    CHECK(proof.suspects[0].what == Suspect::What::angle);
    CHECK(proof.suspects[0].place == 1);
    CHECK(proof.suspects[0].value == Approx(72).margin(2));
    CHECK(std::is_sorted(proof.suspects.begin(), proof.suspects.end(), [](const Suspect& a, const Suspect& b) { return a.misfit < b.misfit; }));
}

TEST_CASE("one reading that stands alone is named, to be taped once more") {
    // Three readings of an entry that is right, one of them read an inch and a half too long.
    const ProofEntry entry = entry_of({8, 6, 7, 9}, {{90, 0}, {90, 180}, {90, 90}});
    Taken taken;
    for (const Span span : {Span{0, 2}, Span{1, 3}, Span{2, 4}}) taken.readings.push_back(exact(entry, span));
    taken.readings[1].read.mm += 1.5 * 25.4;
    const Proof proof = prove(entry, taken);
    CHECK(proof.verdict != ProofVerdict::consistent);
    CHECK(proof.alone == std::vector<std::size_t>{1});
    // With a wire that really is another, several speak.
    const ProofEntry truth = entry_of({8, 6, 7, 9}, {{90, 0}, {90, 0}, {90, 90}});
    Taken both;
    for (const Span span : {Span{0, 3}, Span{0, 4}}) both.readings.push_back(exact(truth, span));
    CHECK(prove(entry, both).alone.empty());
}

TEST_CASE("when two slips remain the next reading tells them apart") {
    // A staircase of 5 in steps, one leg an inch shorter than entered. End to end alone says that some leg is wrong, not which.
    const ProofEntry entry = entry_of({5, 5, 5, 5, 5}, {{90, 0}, {90, 180}, {90, 180}, {90, 180}});
    const ProofEntry truth = entry_of({5, 5, 4, 5, 5}, {{90, 0}, {90, 180}, {90, 180}, {90, 180}});
    Taken taken{{exact(truth, {0, 5})}, std::nullopt};
    const Proof first = prove(entry, taken);
    const std::optional<TapeTask> next = next_task(entry, taken);
    REQUIRE(next);
    for (int i = 0; i < 2; ++i) taken.readings.push_back(exact(truth, next_task(entry, taken)->span));
    const Proof then = prove(entry, taken);
    CHECK(then.verdict == ProofVerdict::slip);
    CHECK(then.explanations.at(0).slip.leg == 2u);
    CHECK(then.explanations.at(0).slip.meant == truth.wire.route);
    CHECK(then.explanations.at(0).probability > first.explanations.at(0).probability);
}

TEST_CASE("of 160 lines with a slip most are found, and few of those without are doubted") {
    // The measurement over 5,000 lines is proof_bench. Bounds leave three standard deviations of 160 tries.
    std::mt19937 dice(20260305);
    const wire_world::Settings settings;
    int lines = 0, found = 0, named = 0, doubted = 0;
    while (lines < 160) {
        const wire_world::World world = wire_world::random_world(dice, settings);
        const auto slipped = wire_world::slip(world, dice);
        if (!slipped || !wire_world::counts(world, slipped->entered, dice, settings)) continue;
        ++lines;
        ProofEntry entry = world.right;
        const auto proof_of = [&] { return prove(entry, wire_world::taken(world, entry, dice, settings)); };
        doubted += proof_of().verdict != ProofVerdict::consistent;
        entry.wire.route = slipped->entered;
        const Proof proof = proof_of();
        found += proof.verdict != ProofVerdict::consistent;
        named += wire_world::names_it(proof, world);
    }
    CHECK(found >= 146);
    CHECK(named >= 122);
    CHECK(doubted <= 7);
}
