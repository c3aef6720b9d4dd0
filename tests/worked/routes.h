#pragma once
// Random job files and where their lines have to go, worked out from the words of the job file format
// with rotation matrices, apart from the program.

#include <Eigen/Geometry>
#include <nlohmann/json.hpp>
#include <random>
#include <vector>

namespace bench_world {

/// One job of one line, and its truth.
struct Wanted {
    nlohmann::json job;
    std::vector<Eigen::Vector3d> corners_mm;  ///< ends and corners; empty for a route of straights
    Eigen::Vector3d ink;                      ///< across the first leg, where bend 1 turns
    std::vector<double> straights_mm, angles_deg, rotations_deg;  ///< for a route of straights
};

/// 1 to 12 bends; form, unit, tape edge, tube, radius, marks, stretch, wastes by chance.
Wanted random_job(std::mt19937& dice);

/// Ends and corners of legs to the centre, from each corner on in a direction turned by its angle in a plane
/// turned by its rotation; `ink` becomes the side to which bend 1 turns.
std::vector<Eigen::Vector3d> corners(const std::vector<double>& legs_mm, const std::vector<double>& angles_deg, const std::vector<double>& rotations_deg, Eigen::Vector3d& ink);

/// Straight pieces of the wanted line as pairs of ends, bends on this radius; for a route of straights.
std::vector<std::pair<Eigen::Vector3d, Eigen::Vector3d>> walked(const Wanted& wanted, double finished_radius_mm);

}  // namespace bench_world
