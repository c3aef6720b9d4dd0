#include "scene/mesh.h"

namespace tubewright {

void Bounds::take_in(const Eigen::Vector3d& point) {
    low = low.cwiseMin(point);
    high = high.cwiseMax(point);
}

void Bounds::take_in(const Mesh& mesh) {
    for (const Vertex& vertex : mesh.vertices) take_in(vertex.at.cast<double>());
}

std::vector<Eigen::Vector3d> Bounds::corners() const {
    std::vector<Eigen::Vector3d> all;
    if (empty()) return all;
    for (int i = 0; i < 8; ++i)
        all.emplace_back((i & 1) ? high.x() : low.x(), (i & 2) ? high.y() : low.y(), (i & 4) ? high.z() : low.z());
    return all;
}

}  // namespace tubewright
