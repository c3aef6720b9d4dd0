#pragma once
// What must be true of every solid.

#include <string>

#include "scene/mesh.h"

namespace tubewright {

/// Empty when each edge is used exactly twice, once each way (places closer than a micrometre are one);
/// else what is wrong.
std::string not_closed(const Mesh& mesh);

/// Empty when every triangle faces the way its normals say.
std::string not_outward(const Mesh& mesh);

/// By the divergence theorem, mm^3; positive when the triangles face outward.
double volume(const Mesh& mesh);

}  // namespace tubewright
