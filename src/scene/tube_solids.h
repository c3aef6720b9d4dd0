#pragma once
// The drawn tube as solids, dashes and paths.

#include <vector>

#include "scene/loaded_tube.h"
#include "scene/mesh.h"
#include "scene/scene.h"

namespace tubewright {

/// The tube in its inks, from cut end to cut end.
std::vector<Mesh> tube_solids(const LoadedTube& tube, const Tube& size);

/// One closed surface along straights and arcs, with bored ends.
Mesh tube_solid(const std::vector<Stretch>& stretches, const Tube& size, Ink ink);

/// The thin line inked along the tube before the first bend.
std::vector<Mesh> index_line(const LoadedTube& tube, Length od);

/// A ring of ink around the tube here.
Mesh ink_ring(const Frame& at, Length od);

/// The middle line of these stretches, in the order given, nearest the bend in hand first.
std::vector<Eigen::Vector3d> path_outward(const LoadedTube& tube, const std::vector<std::size_t>& stretches, End towards);

std::vector<Eigen::Vector3d> path_of(const Stretch& stretch);

/// Each bend's middle line.
std::vector<DrawnBend> drawn_bends(const LoadedTube& tube);

}  // namespace tubewright
