// How far a proof is: what is asked next, what is kept, and of which wire.

#include "bench/proving.h"

#include <catch2/catch.hpp>

#include "bench/wires.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

using Stage = Proving::Stage;

Proving after(const ProofEntry& entry, const LineProof& kept) { return proving(entry.wire, entry.unit, kept); }

/// What is asked for is taped on this wire.
LineProof taped(const ProofEntry& entry, LineProof kept, const ProofEntry& truth) {
    const Proving now = after(entry, kept);
    kept.wire = wire_mark(entry.wire);
    kept.taken.readings.push_back(exact(truth, now.task.value().span));
    return kept;
}

const ProofEntry staircase = entry_of({6, 4, 3, 5}, {{90, 0}, {90, 90}, {90, 180}});

}  // namespace

TEST_CASE("three readings that agree, then left or right, then the verdict") {
    LineProof kept;
    CHECK(proof_standing(staircase.wire, Unit::inch, std::nullopt) == ProofStanding::none);
    for (int i = 0; i < 3; ++i) {
        const Proving now = after(staircase, kept);
        CHECK(now.stage == Stage::reading);
        kept = taped(staircase, now.kept, staircase);
        if (i < 2) CHECK(proof_standing(staircase.wire, Unit::inch, kept) == ProofStanding::begun);
    }
    const Proving asked = after(staircase, kept);
    CHECK(asked.stage == Stage::hand);
    kept.taken.hand = HandAnswer{asked.hand->before, asked.hand->bend, asked.hand->left};
    CHECK(after(staircase, kept).stage == Stage::verdict);
    CHECK(after(staircase, kept).enough);
    CHECK(proof_standing(staircase.wire, Unit::inch, kept) == ProofStanding::agrees);
    kept.taken.hand->left = !asked.hand->left;
    CHECK(proof_standing(staircase.wire, Unit::inch, kept) == ProofStanding::speaks_against);
    kept.taken.hand.reset();
    kept.hand_passed = true;
    CHECK(after(staircase, kept).stage == Stage::verdict);
}

TEST_CASE("two readings that name a slip beyond doubt are enough, unless one more is wanted") {
    // Bend 3 is 60 degrees and was entered as 30. From the corner of bend 2 to end B it is then sqrt(13^2 + 8^2 + 2 13 8 cos 60) = 18.36 and not 20.33;
    // from end A it is off too, which no slip of legs 3 or 4 alone brings about.
    const ProofEntry flat = entry_of({6, 4, 13, 8}, {{90, 0}, {90, 90}, {30, 180}}), steep = entry_of({6, 4, 13, 8}, {{90, 0}, {90, 90}, {60, 180}});
    LineProof kept{wire_mark(flat.wire), {{exact(steep, {0, 4}), exact(steep, {2, 4})}}};
    CHECK(kept.taken.readings[1].read.inch() == Approx(18.36).margin(0.005));
    const Proving now = after(flat, kept);
    REQUIRE(now.proof.verdict == ProofVerdict::slip);
    REQUIRE(now.proof.alone.empty());
    REQUIRE(now.proof.explanations.front().probability >= beyond_doubt);
    CHECK(now.stage == Stage::verdict);
    kept.wanted = 3;
    CHECK(after(flat, kept).stage == Stage::reading);
}

TEST_CASE("two slips that are each other's mirror image are told apart by left or right") {
    // A Z of 6, 4 and 3 in that is a U, with 8 in square to it at its end: bend 2 alone the other way, or all from there on.
    const ProofEntry z = entry_of({6, 4, 3, 8}, {{90, 0}, {90, 180}, {90, 90}}), u = entry_of({6, 4, 3, 8}, {{90, 0}, {90, 0}, {90, 90}});
    LineProof kept;
    while (after(z, kept).stage == Stage::reading) kept = taped(z, kept, u);
    const Proving asked = after(z, kept);
    REQUIRE(asked.proof.verdict == ProofVerdict::slip);
    CHECK(asked.proof.explanations[0].probability < beyond_doubt);
    REQUIRE(asked.stage == Stage::hand);
    kept.taken.hand = HandAnswer{asked.hand->before, asked.hand->bend, asked.hand->left};
    const Route right = after(z, kept).proof.explanations[0].slip.meant;
    kept.taken.hand->left = !asked.hand->left;
    CHECK(after(z, kept).proof.explanations[0].slip.meant != right);
    CHECK(after(z, kept).stage == Stage::verdict);
}

TEST_CASE("a place out of reach is not asked for again, and with none left too little is known") {
    const ProofEntry line = entry_of({6, 4, 3}, {{90, 0}, {90, 180}});
    LineProof kept;
    for (int i = 0; i < 3; ++i) {
        const Proving now = after(line, kept);
        REQUIRE(now.stage == Stage::reading);
        for (const Span& out : kept.taken.out_of_reach) CHECK(now.task->span != out);
        kept = now.kept;
        kept.taken.out_of_reach.push_back(now.task->span);
    }
    const Proving now = after(line, kept);
    CHECK(now.stage == Stage::verdict);
    CHECK_FALSE(now.enough);
    // One bend has one distance, and that is enough there.
    const ProofEntry one = entry_of({6, 4}, {{90, 0}});
    CHECK(after(one, taped(one, {}, one)).enough);
}

TEST_CASE("what was taped of another wire proves nothing") {
    LineProof kept = taped(staircase, {}, staircase);
    CHECK(after(staircase, kept).readings() == 1);
    ProofEntry longer = staircase;
    longer.wire.route.runs[2] += Length{0.02};
    CHECK(wire_mark(longer.wire) != wire_mark(staircase.wire));
    CHECK(after(longer, kept).readings() == 0);
    CHECK(proof_standing(longer.wire, Unit::inch, kept) == ProofStanding::stale);
    ProofEntry turned = staircase;
    turned.wire.route.bends[1].rotation = Angle{-90};
    CHECK(proof_standing(turned.wire, Unit::inch, kept) == ProofStanding::stale);
    // 270 is -90, said otherwise.
    ProofEntry same = turned;
    same.wire.route.bends[1].rotation = Angle{270};
    CHECK(wire_mark(same.wire) == wire_mark(turned.wire));
    // The bender's radius moves the corners of straights only.
    ProofEntry wider = staircase;
    wider.wire.radius = 40_mm;
    CHECK(wire_mark(wider.wire) == wire_mark(staircase.wire));
    wider.wire.route.form = RouteForm::straights;
    ProofEntry narrower = wider;
    narrower.wire.radius = 20_mm;
    CHECK(wire_mark(wider.wire) != wire_mark(narrower.wire));
    // A file may name points that the wire does not have.
    kept.taken.readings[0].span = {0, 9};
    CHECK(after(staircase, kept).readings() == 0);
}
