#pragma once
// Closed surfaces of triangles, each drawn in one ink.

#include <Eigen/Core>
#include <cstdint>
#include <vector>

namespace tubewright {

/// What a surface stands for; the theme says how that looks.
enum class Ink {
    tube, tube_done, tube_now,  ///< plain tube; a bend that is made; the stretch that the lever bends now
    after_pull, wrong_way,      ///< where the tube goes; where it must not lie
    form, hook, lever, grip, post, bench_top,
    ink_mark, reference_mark, index_line,
    stands, swings, on_bench, picked,  ///< solids of a card: of the bender, of its lever, of the bench; the one pointed out
    gauge                       ///< where a number is measured; seen through everything
};

/// mm in the operator's frame: x right, y away, z up. The normal points out of the solid.
struct Vertex {
    Eigen::Vector3f at, normal;
};

/// Triangles run anticlockwise seen from outside. Sharp edges have a vertex for each side.
struct Mesh {
    std::vector<Vertex> vertices;
    std::vector<std::uint32_t> triangles;
    Ink ink = Ink::tube;
};

/// The smallest upright box around things.
struct Bounds {
    Eigen::Vector3d low = Eigen::Vector3d::Constant(1e300), high = Eigen::Vector3d::Constant(-1e300);
    bool empty() const { return low.x() > high.x(); }
    void take_in(const Eigen::Vector3d& point);
    void take_in(const Mesh& mesh);
    std::vector<Eigen::Vector3d> corners() const;
    double size() const { return empty() ? 0 : (high - low).norm(); }
};

}  // namespace tubewright
