#include "bench/sweep.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// Fastest of all places of the capsule over the whole motion, in mm for each unit of t.
// velocity = turn * (normal x (q - centre)) - shift in the turning frame, with q = p - t shift. It is linear
// in q, so its length is greatest at an end of the line at one end of the motion.
double fastest(const Motion& motion, const Capsule& capsule) {
    double most = 0;
    for (const Vector3d& end : {capsule.a, capsule.b})
        for (const double t : {motion.from, motion.to}) {
            const Vector3d q = end - t * motion.shift;
            const Vector3d speed(-motion.turn * (q.y() - motion.centre_swing) - motion.shift.x(), motion.turn * q.x() - motion.shift.y(), motion.shift.z());
            most = std::max(most, speed.squaredNorm());
        }
    return std::sqrt(most);
}

/// From the place to the straight line from a to b.
double to_line(const Vector3d& place, const Vector3d& a, const Vector3d& b) {
    const Vector3d way = b - a;
    const double length = way.squaredNorm();
    return (place - a - (length > 0 ? std::clamp((place - a).dot(way) / length, 0.0, 1.0) : 0.0) * way).norm();
}

/// Whether two balls stay this far apart from middle to middle, whatever the angle about the centre.
bool middles_clear(const Vector3d& moving, const Vector3d& still, double apart, const Motion& motion) {
    const Vector3d first = moving - motion.from * motion.shift, last = moving - motion.to * motion.shift;
    if (motion.turn == 0) return to_line(still, first, last) > apart;
    const auto off = [&](const Vector3d& place) { return std::hypot(place.x(), place.y() - motion.centre_swing); };
    const double most = std::max(off(first), off(last));
    const Vector3d level(0, motion.centre_swing, first.z());
    const double least = to_line(level, first, last), here = off(still);
    return here - most > apart || least - here > apart;
}

template <class Gap>
std::optional<double> advance(const Capsule& moving, const Motion& motion, const Gap& gap) {
    const double room = tolerance::handling_room.mm, step = tolerance::handling_step.mm;
    // What lies off the line turns with it at other speeds, but the gap counts from the line: its speed is enough.
    const double fast = fastest(motion, moving);
    // Without a turn the gap between two convex bodies is a convex function of t: its slope only grows, and tells when none comes any more.
    const bool convex = motion.turn == 0 && std::isinf(motion.only_beyond);
    double last_t = 0, last = std::numeric_limits<double>::infinity();
    for (double t = motion.from;;) {
        const std::optional<Capsule> here = moved(motion, moving, t);
        if (!here) return std::nullopt;
        const double apart = gap(*here);
        if (apart < room) return t;
        if (t >= motion.to || fast <= 0) return std::nullopt;
        if (convex && std::isfinite(last) && apart + std::min(0.0, (apart - last) / (t - last_t)) * (motion.to - t) > room + tolerance::arithmetic) return std::nullopt;
        last_t = t, last = apart;
        t = std::min(motion.to, t + (apart - room + step) / fast);
    }
}

}  // namespace

bool surely_clear(const Capsule& ball, const PlacedSolid& still, const Motion& motion) {
    const double room = ball.radius + tolerance::handling_room.mm;
    if (motion.shift.z() == 0 && (ball.a.z() - room > still.highest() || ball.a.z() + room < still.lowest())) return true;
    return middles_clear(ball.a, still.middle(), room + still.reach(), motion);
}

bool surely_clear(const Capsule& ball, const Capsule& still, const Motion& motion) {
    const double room = ball.radius + still.radius + tolerance::handling_room.mm;
    return std::abs(ball.a.z() - still.a.z()) > room || middles_clear(ball.a, still.a, room, motion);
}

Vector3d moved(const Motion& motion, const Vector3d& place, double t) {
    const Vector3d q = place - t * motion.shift;
    if (motion.turn == 0) return q;
    const double sine = std::sin(motion.turn * t), cosine = std::cos(motion.turn * t), y = q.y() - motion.centre_swing;
    return {cosine * q.x() - sine * y, motion.centre_swing + sine * q.x() + cosine * y, q.z()};
}

std::optional<Capsule> moved(const Motion& motion, const Capsule& capsule, double t) {
    Vector3d a = capsule.a;
    const double least = motion.only_beyond + t * motion.shift.x();
    if (capsule.b.x() <= least) return std::nullopt;
    if (a.x() < least) a.x() = least;
    return Capsule{moved(motion, a, t), moved(motion, capsule.b, t), capsule.radius};
}

std::optional<double> first_contact(const Capsule& moving, const PlacedSolid& still, const Motion& motion) {
    return advance(moving, motion, [&](const Capsule& here) { return still.clearance(here); });
}

std::optional<double> first_contact(const Capsule& moving, const Capsule& still, const Motion& motion) {
    return advance(moving, motion, [&](const Capsule& here) { return gap(here, still); });
}

}  // namespace tubewright
