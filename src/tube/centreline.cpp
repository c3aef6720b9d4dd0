#include "tube/centreline.h"

#include <Eigen/Geometry>
#include <cmath>

namespace tubewright {

Eigen::Vector3d side(const Frame& frame, Angle turned) {
    // along and aside are at right angles, so Rodrigues' formula has two terms only
    return std::cos(turned.rad()) * frame.aside + std::sin(turned.rad()) * frame.along.cross(frame.aside);
}

Frame gone_straight(const Frame& frame, Length length) {
    Frame there = frame;
    there.at += length.mm * frame.along;
    return there;
}

Frame gone_round(const Frame& frame, Length radius, Angle angle, Angle direction) {
    const Eigen::Vector3d centre = side(frame, direction);
    const double sine = std::sin(angle.rad()), cosine = std::cos(angle.rad());
    Frame there;
    there.at = frame.at + radius.mm * (sine * frame.along + (1 - cosine) * centre);
    there.along = (cosine * frame.along + sine * centre).normalized();
    // Untwisted: the part of `aside` in the bend's plane turns with it, the part across stays.
    const double in_plane = frame.aside.dot(centre);
    const Eigen::Vector3d across = frame.aside - in_plane * centre;
    there.aside = in_plane * (cosine * centre - sine * frame.along) + across;
    there.aside = (there.aside - there.aside.dot(there.along) * there.along).normalized();
    return there;
}

std::vector<Stretch> centreline(const Part& part, const Frame& start) {
    std::vector<Stretch> stretches;
    stretches.reserve(2 * part.bends.size() + 1);
    Frame at = start;
    Angle direction;
    for (std::size_t i = 0; i < part.straights.size(); ++i) {
        Stretch straight;
        straight.start = at;
        straight.length = part.straights[i];
        stretches.push_back(straight);
        at = gone_straight(at, straight.length);
        if (i == part.bends.size()) break;
        if (i > 0) direction = wrapped(direction + part.bends[i].rotation);
        const Angle angle = part.bends[i].angle;
        stretches.push_back({at, arc_length(part.radius, angle), angle, direction, part.radius, static_cast<int>(i)});
        at = gone_round(at, part.radius, angle, direction);
    }
    return stretches;
}

Frame frame_in(const Stretch& stretch, Length length) {
    if (stretch.bend < 0) return gone_straight(stretch.start, length);
    const double share = stretch.length.mm > 0 ? length / stretch.length : 0;
    return gone_round(stretch.start, stretch.radius, share * stretch.angle, stretch.direction);
}

Frame far_end(const Part& part, const Frame& start) {
    const Stretch last = centreline(part, start).back();
    return frame_in(last, last.length);
}

}  // namespace tubewright
