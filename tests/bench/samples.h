#pragma once
// A tube, a bender and lines for tests. Invented, with figures that are easy to follow.

#include "bench/sheet.h"

namespace tubewright {

/// Annealed 304; the two flow curves are those of tests/bench/springback_test.cpp, where their sources stand.
inline Material stainless() {
    return {"stainless-304", "304 stainless", 193000, "from memory", {{1400, 0.44, "see springback_test"}, {1275, 0.45, "see springback_test"}}, 2.0, 3.0, "", {}};
}

inline Bender small_bender() {
    Bender bender;
    bender.id = "hand-3/16";
    bender.tube_od = Length{0.1875 * 25.4};
    bender.radius = Length{0.5625 * 25.4};
    bender.max_angle = {180};
    bender.marks = {{"0", {}}, {"L", Length{0.5625 * 25.4}}, {"R", Length{0.3211 * 25.4}}};
    bender.hook_straight = Length{0.75 * 25.4};
    bender.lever_straight = Length{0.9 * 25.4};
    return bender;
}

/// Inches and degrees in, as one would say it.
inline Line line_of(std::vector<double> legs_in, std::vector<std::pair<double, double>> bends_deg) {
    Line line;
    line.name = "sample";
    line.tube = {Length{0.1875 * 25.4}, Length{0.028 * 25.4}, "stainless-304"};
    line.material = stainless();
    line.bender = small_bender();
    for (const double leg : legs_in) line.route.runs.push_back(Length{leg * 25.4});
    for (const auto& [angle, rotation] : bends_deg) line.route.bends.push_back({{angle}, {rotation}});
    return line;
}

}  // namespace tubewright
