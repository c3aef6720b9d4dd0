#pragma once
// The solids of a bender card as surfaces, and where the card's numbers are measured.

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "bench/bender.h"
#include "bench/card_gauge.h"
#include "scene/mesh.h"

namespace tubewright {

/// Where a solid's own frame lies in the operator's.
struct CardPlacing {
    Eigen::Matrix3d turn;
    Eigen::Vector3d shift;
    Eigen::Vector3d operator()(const Eigen::Vector3d& place) const { return turn * place + shift; }
};
CardPlacing card_placing(Stands stands, const Bender& bender, const SetUp& set_up, Angle lever);

/// None where all of it lies out of `around`, to which what stands on the bench is cut. A half space is a plate
/// as thick as the tube.
std::optional<Mesh> card_solid(const Solid& solid, const CardPlacing& place, const Bounds& around, Length thick, Ink ink);

/// The stretch along which a number is measured, in the operator's frame, from where it is counted; `others` are
/// those of the same place. None where the number has no length to show.
struct GaugeLine {
    Eigen::Vector3d from, to;
    std::vector<std::pair<Eigen::Vector3d, Eigen::Vector3d>> others;
};
std::optional<GaugeLine> gauge_line(const Bender& bender, const SetUp& set_up, Angle lever, std::optional<std::size_t> solid, const CardGauge& gauge, double direction_length);

/// An arrow of that thickness, drawn through everything.
std::vector<Mesh> gauge_arrow(const Eigen::Vector3d& from, const Eigen::Vector3d& to, double thick);

}  // namespace tubewright
