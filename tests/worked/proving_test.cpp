// Routes entered with a slip, and what two readings of a tape say of them. The figures can be followed with a pocket
// calculator; nothing is taken from the program.
#include <algorithm>
#include <catch2/catch.hpp>

#include "bench/wires.h"

using namespace tubewright;

namespace {

Taken readings(std::vector<std::pair<Span, double>> inches) {
    Taken taken;
    for (const auto& [span, read] : inches) taken.readings.push_back({span, {read * 25.4}});
    return taken;
}

}  // namespace

TEST_CASE("an offset entered as a step, bent as a hook: If bend 2 turned the other way this would read 45 1/4") {
    // Legs 20, 16 31/32 and 20 in, 45 degrees each. As entered the travel goes 12 along and 12 aside: ends 52 and 12 apart, 53.37.
    // With bend 2 the same way as bend 1 the last leg stands square to the first: 32 and 32, 45.25.
    const ProofEntry entry = entry_of({20, 16.96875, 20}, {{45, 0}, {45, 180}});
    const Proof proof = prove(entry, readings({{{0, 3}, 45.25}}));
    CHECK(proof.expected[0].expected.inch() == Approx(53.3667).margin(0.003));
    CHECK(proof.verdict == ProofVerdict::slip);
    CHECK(proof.explanations[0].would_read[0].inch() == Approx(45.2548).margin(0.003));
    CHECK(proof.explanations[0].slip.meant.bends[1].rotation.deg == Approx(0).margin(1e-9));
}

TEST_CASE("60 degrees entered for 30 at the first bend of an offset") {
    // Legs 10, 20, 10. Wire: 30 and back 30: 10 + 17.3205 + 10 along and 10 aside, ends 38.637; A to corner 2: 27.3205 and 10, 29.093.
    // Entered with 60 at bend 1: 10 + 10 + 8.6603 along, 17.3205 + 5 aside, 36.326; A to corner 2: 20 and 17.3205, 26.458.
    const ProofEntry entry = entry_of({10, 20, 10}, {{60, 0}, {30, 180}});
    const Proof proof = prove(entry, readings({{{0, 3}, 38.625}, {{0, 2}, 29.125}}));
    CHECK(proof.expected[0].expected.inch() == Approx(36.326).margin(0.001));
    CHECK(proof.expected[1].expected.inch() == Approx(26.458).margin(0.001));
    CHECK(proof.verdict == ProofVerdict::slip);
    CHECK(proof.explanations[0].slip.kind == SlipKind::complement);
    CHECK(proof.explanations[0].slip.bend == 0u);
    CHECK(proof.explanations[0].would_read[0].inch() == Approx(38.637).margin(0.001));
    CHECK(proof.explanations[0].would_read[1].inch() == Approx(29.093).margin(0.001));
}

TEST_CASE("legs taped outside and entered as taped to the centre") {
    // 3/8 tube, a staircase of six legs of 8 in. At a square corner outside reads half the tube more: end legs are 3/16 shorter to
    // the centre, the others 3/8. Three legs each way: 7 13/16 + 7 5/8 + 7 5/8 = 23 1/16; 23.0625 x 1.41421 = 32.615. As entered
    // 24 x 1.41421 = 33.941. From A to corner 4: two legs each way, 15 7/16 and 15 1/4, 21.700; as entered 22.627.
    const ProofEntry entry = entry_of({8, 8, 8, 8, 8, 8}, {{90, 0}, {90, 180}, {90, 180}, {90, 180}, {90, 180}}, 0.375);
    const Proof proof = prove(entry, readings({{{0, 6}, 32.625}, {{0, 4}, 21.6875}}));
    CHECK(proof.expected[0].expected.inch() == Approx(33.941).margin(0.001));
    CHECK(proof.expected[1].expected.inch() == Approx(22.627).margin(0.001));
    CHECK(proof.verdict == ProofVerdict::slip);
    CHECK(proof.explanations[0].slip.kind == SlipKind::wrong_edge);
    CHECK(proof.explanations[0].slip.meant.measured_to == TapeEdge::outside);
    CHECK(proof.explanations[0].would_read[0].inch() == Approx(32.615).margin(0.001));
    CHECK(proof.explanations[0].would_read[1].inch() == Approx(21.700).margin(0.001));
}

TEST_CASE("two legs of a U the wrong way round, and 21 for 12") {
    // Entered 9, 4, 6 for 9, 6, 4: ends of the wire 9 - 4 = 5 and 6 apart, 7.810; A to corner 2: 9 and 6, 10.817.
    const Proof swapped = prove(entry_of({9, 4, 6}, {{90, 0}, {90, 0}}), readings({{{0, 3}, 7.8125}, {{0, 2}, 10.8125}}));
    CHECK(swapped.verdict == ProofVerdict::slip);
    CHECK(swapped.explanations[0].slip.kind == SlipKind::legs_swapped);
    CHECK(swapped.explanations[0].slip.leg == 1u);
    CHECK(swapped.explanations[0].would_read[0].inch() == Approx(7.810).margin(0.001));
    // 9, 21, 6 for 9, 12, 6: the ends 3 and 12 apart, 12.369; A to corner 2: 9 and 12, 15 exactly.
    const Proof digits = prove(entry_of({9, 21, 6}, {{90, 0}, {90, 0}}), readings({{{0, 3}, 12.375}, {{0, 2}, 15}}));
    CHECK(digits.verdict == ProofVerdict::slip);
    CHECK(digits.explanations[0].slip.digits == DigitSlip::transposed);
    CHECK(digits.explanations[0].slip.leg == 1u);
    CHECK(digits.explanations[0].would_read[1].inch() == Approx(15));
}
