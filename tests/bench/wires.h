#pragma once
// Entries for tests, in inches and degrees, legs to the centre.

#include "bench/proof.h"

namespace tubewright {

inline ProofEntry entry_of(std::vector<double> legs, std::vector<std::pair<double, double>> bends, double od = 0.25) {
    ProofEntry entry;
    for (const double leg : legs) entry.wire.route.runs.push_back({leg * 25.4});
    for (const auto& [angle, rotation] : bends) entry.wire.route.bends.push_back({{angle}, {rotation}});
    entry.wire.od = {od * 25.4};
    entry.wire.radius = {0.75 * 25.4};
    return entry;
}

inline Length distance(const ProofEntry& entry, Span span) { return apart(shape_of(entry.wire, entry.wire.route.measured_to), span); }

/// What a tape without fault reads on the wire that `truth` describes.
inline TapeReading exact(const ProofEntry& truth, Span span) { return {span, distance(truth, span)}; }

/// Up to three readings, each chosen after those before.
inline Taken taken_of(const ProofEntry& entry, const ProofEntry& truth) {
    Taken taken;
    while (taken.readings.size() < 3) {
        const auto task = next_task(entry, taken);
        if (!task) break;
        taken.readings.push_back(exact(truth, task->span));
    }
    return taken;
}

}  // namespace tubewright
