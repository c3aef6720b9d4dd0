#pragma once
// An operator, a bender and a tube, made apart from the program. It knows the frames and signs of the
// bender and the machine form of the sheet, and nothing else: it puts the ink mark on the reference mark,
// turns the index line to the roll it reads, pulls to the set angle, and lets go.

#include <Eigen/Geometry>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace bench_world {

/// Where a section of the tube is, which way A to B runs there, and where its index line faces. mm.
struct Pose {
    Eigen::Vector3d at, along, ink;
};

/// What the metal does: the bender's true behaviour.
struct Metal {
    double growth, zero_deg;
};

/// One straight of the finished tube, from its first section to its last.
struct Straight {
    Pose from, to;
};

struct Finished {
    std::string trouble;             ///< empty: all went as read
    bool unseen_ink = false;         ///< an ink mark lay on a bend already made, beyond one, or off the tube
    std::vector<Straight> straights; ///< from the measured end A to the measured end B
    std::vector<double> angles_deg;  ///< of the bends between them
};

/// Carries out every step of one line's sheet, reading its JSON.
Finished make(const nlohmann::json& sheet, const Metal& metal);

}  // namespace bench_world
