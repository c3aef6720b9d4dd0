#include "tube/corners.h"

#include "base/tolerance.h"

namespace tubewright {

std::optional<std::vector<Eigen::Vector3d>> corners(const Part& part, const Frame& start) {
    std::vector<Eigen::Vector3d> places{start.at};
    for (const Stretch& stretch : centreline(part, start)) {
        if (stretch.bend < 0) continue;
        if (stretch.angle > tolerance::sharpest_corner) return std::nullopt;
        places.push_back(gone_straight(stretch.start, setback(stretch.radius, stretch.angle)).at);
    }
    places.push_back(far_end(part, start).at);
    return places;
}

}  // namespace tubewright
