#pragma once
// A straight line that is believed, with its doubt, and learns from readings. No shop in it: bench/springback_log has that.

#include <vector>

namespace tubewright {

/// y = slope x + level, and the variances of the two.
struct BeliefLine {
    struct { double slope, level; } at;
    struct { double slope, both, level; } spread;
};

struct LineReading {
    double x, y;
    double share;  ///< of a full reading's weight
};

/// Where the scatter about the line comes from: as it is believed; or from the readings too, their misses weighed as the
/// line weighs them, or cut off at 3 scatters. See learn_springback().
enum class ScatterFrom { belief, weighed, clipped };

/// As many readings the scatter believed before stands for.
inline constexpr double scatter_readings = 6;

struct LineHow {
    double scatter;    ///< standard deviation of y about the line
    bool robust;       ///< Student's distribution of 4 degrees of freedom instead of a normal one
    bool never_surer;  ///< no reading weighs more than one of a normal distribution
    ScatterFrom from;
};

struct LearnedLine {
    BeliefLine line;
    std::vector<double> weight;  ///< of each reading, its share counted in
    double scatter;
};

/// See learn_springback().
LearnedLine learn_line(const BeliefLine& before, const std::vector<LineReading>& readings, const LineHow& how);

/// Of the line's y at x; a reading's own scatter is not in it.
double variance_at(const BeliefLine& line, double x);

/// `own` was `common` with a part of its own added, and has become `learned`: what that says of `common`. The backward step
/// of Rauch, Tung and Striebel, AIAA J. 3 (1965) 1445, from memory: with G = V_common V_own^-1,
///   common + G (learned - own),   V_common + G (V_learned - V_own) G'
BeliefLine brought_back(const BeliefLine& common, const BeliefLine& own, const BeliefLine& learned);

}  // namespace tubewright
