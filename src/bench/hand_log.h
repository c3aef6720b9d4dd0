#pragma once
// The shop's own hand, learned from the log, in the form that bench/spread takes.

#include <vector>

#include "bench/bend_log.h"
#include "bench/spread.h"

namespace tubewright {

/// How finely the checks are read: standard deviations. A protractor read to half a degree; a rotation held up to two
/// protractors or a level; a tape read to a 32nd. Common practice, no source.
struct CheckSd {
    Angle protractor{0.35};
    Angle rotation{1.0};
    Length tape{.018 * 25.4};
    bool operator==(const CheckSd&) const = default;
};

/// How well one number of a hand is known.
struct SpreadKnown {
    int counted = 0;   ///< records behind it
    double share = 0;  ///< its own standard deviation, as a share of it: 1 / sqrt(2 (6 + n)), a record counting less the more of it is reading
    bool operator==(const SpreadKnown&) const = default;
};
/// As many readings the numbers of a Hand stand for before there is any. Our choice.
inline constexpr int hand_readings = 6;

struct HandLearned {
    Hand hand;
    SpreadKnown angle, turn, floating, mark;
    bool operator==(const HandLearned&) const = default;
};

/// Each number starts from `before` and moves with what is_learned_from(). Turns and marks: the likeliest spread under the
/// reading's own, which is taken off; a turn by the ink carries two errors, a leg between two bends two marks'. Angles:
/// bends are pulled on until they read right, so that the protractor's own error stays in the bend, and is added:
///   angle_sd^2 = protractor^2 + (6 (before^2 - protractor^2) + sum (measured - target)^2) / (6 + n)
HandLearned hand_of(const std::vector<BendCheck>& bends, const std::vector<TurnCheck>& turns, const std::vector<LegCheck>& legs, const Hand& before = {}, const CheckSd& sd = {});

/// Whether a check is so far off that it is measured again before it is learned from: more than 4 of its standard
/// deviations by this hand. Our choice. Bends are asked after by judge_bend().
bool asks_again(const TurnCheck& check, const Hand& hand, const CheckSd& sd = {});
bool asks_again(const LegCheck& check, const Hand& hand, const CheckSd& sd = {});

}  // namespace tubewright
