#include "scene/surfaces.h"

#include <Eigen/Geometry>
#include <array>
#include <cmath>
#include <map>

namespace tubewright {
namespace {

using Place = std::array<long, 3>;

Place place_of(const Mesh& mesh, std::size_t corner) {
    const Eigen::Vector3f& at = mesh.vertices[mesh.triangles[corner]].at;
    return {std::lround(at.x() * 1000), std::lround(at.y() * 1000), std::lround(at.z() * 1000)};
}

}  // namespace

std::string not_closed(const Mesh& mesh) {
    std::map<std::pair<Place, Place>, int> used;
    for (std::size_t i = 0; i < mesh.triangles.size(); i += 3)
        for (std::size_t side = 0; side < 3; ++side) {
            const Place from = place_of(mesh, i + side), to = place_of(mesh, i + (side + 1) % 3);
            if (from == to) return "a triangle has an edge of no length";
            ++used[{from, to}];
        }
    for (const auto& [edge, times] : used) {
        if (times != 1) return "an edge is used twice the same way";
        const auto back = used.find({edge.second, edge.first});
        if (back == used.end()) return "an edge has one triangle only";
    }
    return mesh.triangles.empty() ? "there is no triangle" : "";
}

std::string not_outward(const Mesh& mesh) {
    for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) {
        const Vertex &a = mesh.vertices[mesh.triangles[i]], &b = mesh.vertices[mesh.triangles[i + 1]], &c = mesh.vertices[mesh.triangles[i + 2]];
        const Eigen::Vector3f facing = (b.at - a.at).cross(c.at - a.at);
        for (const Vertex* vertex : {&a, &b, &c})
            if (facing.dot(vertex->normal) <= 0) return "triangle " + std::to_string(i / 3) + " faces away from its normal";
    }
    return "";
}

double volume(const Mesh& mesh) {
    double six = 0;
    for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) {
        const auto at = [&](std::size_t corner) { return mesh.vertices[mesh.triangles[i + corner]].at.cast<double>().eval(); };
        six += at(0).dot(at(1).cross(at(2)));
    }
    return six / 6;
}

}  // namespace tubewright
