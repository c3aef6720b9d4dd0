#include "bench/proving.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// FNV-1a with 64 bits (Fowler, Noll and Vo; its two numbers are from memory). Only equality counts, and only in our own files.
std::string hashed(const std::string& text) {
    std::uint64_t hash = 14695981039346656037ULL;
    for (const char letter : text) {
        hash ^= static_cast<unsigned char>(letter);
        hash *= 1099511628211ULL;
    }
    std::string digits;
    for (int shift = 60; shift >= 0; shift -= 4) digits += "0123456789abcdef"[(hash >> shift) & 15];
    return digits;
}

std::string hundredths(double value) { return std::to_string(std::llround(value * 100)) + " "; }

bool fits(const LineProof& kept, const Wire& wire) {
    const std::size_t points = wire.route.bends.size() + 2;
    const auto outside = [&](const Span& span) { return span.from >= span.to || span.to >= points; };
    if (kept.wire != wire_mark(wire)) return false;
    const bool corners = wire.route.form != RouteForm::straights;
    if (corners && std::any_of(wire.route.bends.begin(), wire.route.bends.end(), [](const Bend& bend) { return bend.angle > tolerance::sharpest_corner; })) return false;
    if (std::any_of(kept.taken.readings.begin(), kept.taken.readings.end(), [&](const TapeReading& reading) { return outside(reading.span); })) return false;
    const auto& hand = kept.taken.hand;
    return !hand || (hand->before < hand->bend && hand->bend < wire.route.bends.size());
}

/// Two readings, or one where the wire has no more to tape.
bool enough_for(const Proving& now) {
    if (now.readings() >= 2) return true;
    if (now.readings() == 0 || now.task) return false;
    return now.kept.taken.out_of_reach.empty() || !next_task(now.entry, {now.kept.taken.readings});
}

bool names_a_slip(const Proof& proof) {
    return proof.verdict == ProofVerdict::slip && proof.alone.empty() && proof.explanations.front().probability >= beyond_doubt;
}

std::size_t wanted(const Proving& now) {
    if (now.kept.wanted > 0) return now.kept.wanted;
    return now.readings() >= 2 && names_a_slip(now.proof) ? 2 : 3;
}

Proving::Stage stage_of(const Proving& now) {
    if (now.task && now.readings() < wanted(now)) return Proving::Stage::reading;
    // Two slips can be each other's mirror image: the answer tells them apart, too.
    const bool tells = now.proof.verdict == ProofVerdict::consistent || (now.proof.verdict == ProofVerdict::slip && !names_a_slip(now.proof));
    return now.hand && !now.kept.hand_passed && tells && now.enough ? Proving::Stage::hand : Proving::Stage::verdict;
}

}  // namespace

std::string wire_mark(const Wire& wire) {
    const bool straights = wire.route.form == RouteForm::straights;
    std::string text = std::to_string(static_cast<int>(wire.route.form)) + " " + std::to_string(static_cast<int>(wire.route.measured_to)) + " " + hundredths(wire.od.mm);
    if (straights) text += hundredths(wire.radius.mm);
    for (const Length run : wire.route.runs) text += hundredths(run.mm);
    for (const Bend& bend : wire.route.bends) text += hundredths(bend.angle.deg) + hundredths(wrapped(bend.rotation).deg);
    return hashed(text);
}

Wire wire_of(const Line& line) { return {line.route, line.tube.od, line.bender.radius}; }

Proving proving(const Wire& wire, Unit unit, const std::optional<LineProof>& kept) {
    Proving now{{wire, unit, {}}, {}, Proving::Stage::reading, {}, {}, false, {}};
    if (kept && fits(*kept, wire)) now.kept = *kept;
    else now.kept.wire = wire_mark(wire);
    now.task = next_task(now.entry, now.kept.taken);
    if (!now.kept.taken.hand) now.hand = hand_question(wire);
    now.enough = enough_for(now);
    now.proof = prove(now.entry, now.kept.taken);
    now.stage = stage_of(now);
    return now;
}

ProofStanding proof_standing(const Wire& wire, Unit unit, const std::optional<LineProof>& kept) {
    if (!kept || (kept->taken.readings.empty() && !kept->taken.hand)) return ProofStanding::none;
    if (!fits(*kept, wire)) return ProofStanding::stale;
    return standing_of(proving(wire, unit, kept));
}

ProofStanding standing_of(const Proving& now) {
    if (now.readings() == 0 && !now.kept.taken.hand) return ProofStanding::none;
    if (now.proof.verdict != ProofVerdict::consistent) return ProofStanding::speaks_against;
    return now.enough && now.stage == Proving::Stage::verdict ? ProofStanding::agrees : ProofStanding::begun;
}

}  // namespace tubewright
