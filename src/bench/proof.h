#pragma once
// Proving a measured route before tube is cut: which distances to tape on the wire, and what the readings say.

#include "bench/slips.h"
#include "bench/taken.h"

namespace tubewright {

/// How finely a person measures: standard deviations, independent of one another. 1/16 in for a tape is a standard
/// deviation here, not a bound: two readings in three are within it. A protractor on a wire is good to about a degree
/// and a turn seen along a leg to a degree and a half. Common practice, no source.
struct Measuring {
    Length tape_sd{25.4 / 16};  ///< of a reading
    Length leg_sd{25.4 / 16};   ///< of an entered leg
    Angle angle_sd{1.0};
    Angle rotation_sd{1.5};
    bool operator==(const Measuring&) const = default;
};

/// What was entered, and how.
struct ProofEntry {
    Wire wire;
    Unit unit = Unit::inch;
    Measuring measuring;
};

/// A distance to tape, straight through the air. Corners are touched on the edge that the legs were taped to.
struct TapeTask {
    Span span;
    Length expected;  ///< if the entry is right
    Length sd;        ///< of what a right entry would read: the measuring of the entry, and the tape
};

/// One slip that may stand in the entry, or several that come to the same shape.
struct Explanation {
    Slip slip;                      ///< the likeliest
    std::vector<Slip> same_shape;   ///< others; the remedy is the same
    double probability;             ///< of them together, among everything that was thought of
    std::vector<Length> would_read; ///< for each reading taken
    bool fits;                      ///< the readings are nothing unusual under it
};

/// One length, angle or rotation that, set to another value, would bring the readings nearest.
struct Suspect {
    enum class What { leg, angle, rotation } what;
    std::size_t place;   ///< leg or bend, from 0
    double value;        ///< mm or degrees
    double misfit;       ///< sum of squares in standard deviations that stays
};

enum class ProofVerdict {
    consistent,  ///< nothing speaks against the entry
    slip,        ///< explanations name it
    unexplained  ///< something is wrong, and no slip that was thought of fits
};

struct Proof {
    ProofVerdict verdict;
    double sure;                            ///< probability that the entry is right
    std::vector<TapeTask> expected;         ///< for each reading taken
    std::vector<double> off;                ///< read - expected, in standard deviations
    std::vector<Explanation> explanations;  ///< likeliest first
    std::vector<std::size_t> alone;         ///< readings which, left out, leave no doubt: tape these once more before anything is changed
    std::vector<Suspect> suspects;          ///< nearest first; only where something is wrong
    std::vector<Explanation> not_exposed;   ///< slips that these readings could not have shown, likeliest first
};

/// The distance that tells most, after what has been taken; none where no two points can be taped. Pure sensitivity:
/// the one whose outcome is least foreseeable beyond its own noise, over all slips by their probabilities so far.
/// Not a leg that was entered itself, unless something is already known to be wrong.
std::optional<TapeTask> next_task(const ProofEntry& entry, const Taken& taken);

/// `count` distances to take in one go: each the one that tells most when those before it come out as expected.
std::vector<TapeTask> tasks_to_take(const ProofEntry& entry, std::size_t count = 3);

/// About the bend where a mirror image is clearest; none where the line is flat or nearly so, and is its own mirror image.
std::optional<HandQuestion> hand_question(const Wire& wire);

/// What the readings say. Bayes' rule over no slip, every plausible slip and a slip not thought of.
Proof prove(const ProofEntry& entry, const Taken& taken);

}  // namespace tubewright
