#include "bench/laid_over.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "tube/centreline.h"

namespace tubewright {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Angle between(const Vector3d& difference) {
    // Two unit vectors d apart: d = 2 sin(angle / 2).
    return {2 * std::asin(std::min(1.0, difference.norm() / 2)) * 180 / std::numbers::pi};
}

/// The rotation R for which the trace of R' sum is greatest.
Matrix3d turned_onto(const Matrix3d& sum) {
    const Matrix3d s = sum.transpose();  // s(i, k): made i with wanted k
    Eigen::Matrix4d n;
    n << s.trace(), s(1, 2) - s(2, 1), s(2, 0) - s(0, 2), s(0, 1) - s(1, 0),
        s(1, 2) - s(2, 1), s(0, 0) - s(1, 1) - s(2, 2), s(0, 1) + s(1, 0), s(2, 0) + s(0, 2),
        s(2, 0) - s(0, 2), s(0, 1) + s(1, 0), s(1, 1) - s(0, 0) - s(2, 2), s(1, 2) + s(2, 1),
        s(0, 1) - s(1, 0), s(2, 0) + s(0, 2), s(1, 2) + s(2, 1), s(2, 2) - s(0, 0) - s(1, 1);
    const Eigen::Vector4d q = Eigen::SelfAdjointEigenSolver<Eigen::Matrix4d>(n).eigenvectors().col(3);
    return Eigen::Quaterniond(q[0], q[1], q[2], q[3]).normalized().toRotationMatrix();
}

}  // namespace

KeyPlaces key_places(const Part& part) {
    KeyPlaces places;
    Frame at;
    places.a = at.at, places.along_a = at.along;
    Angle direction;
    for (std::size_t i = 0; i < part.bends.size(); ++i) {
        at = gone_straight(at, part.straights[i]);
        if (i > 0) direction = direction + part.bends[i].rotation;
        // Only the place, not the whole frame: this is asked for thousands of times in a rescue.
        const double half = 0.5 * part.bends[i].angle.rad();
        places.middles.push_back(at.at + part.radius.mm * (std::sin(half) * at.along + (1 - std::cos(half)) * side(at, direction)));
        at = gone_round(at, part.radius, part.bends[i].angle, direction);
    }
    at = gone_straight(at, part.straights.back());
    places.b = at.at, places.along_b = at.along;
    return places;
}

LaidOver laid_over(const KeyPlaces& wanted, const KeyPlaces& made, const EndTolerance& tolerance) {
    assert(wanted.middles.size() == made.middles.size());
    const double end = 1 / (tolerance.place.mm * tolerance.place.mm), way = 1 / (tolerance.direction.rad() * tolerance.direction.rad());
    const double middle = 0.01 / (tolerance.aside.mm * tolerance.aside.mm);
    double weights = 2 * end;
    Vector3d from = end * (made.a + made.b), to = end * (wanted.a + wanted.b);
    for (std::size_t i = 0; i < made.middles.size(); ++i) from += middle * made.middles[i], to += middle * wanted.middles[i], weights += middle;
    from /= weights, to /= weights;
    Matrix3d sum = end * ((wanted.a - to) * (made.a - from).transpose() + (wanted.b - to) * (made.b - from).transpose());
    sum += way * (wanted.along_a * made.along_a.transpose() + wanted.along_b * made.along_b.transpose());
    for (std::size_t i = 0; i < made.middles.size(); ++i) sum += middle * (wanted.middles[i] - to) * (made.middles[i] - from).transpose();
    LaidOver laid;
    laid.placed = Eigen::Isometry3d::Identity();
    laid.placed.linear() = turned_onto(sum);
    laid.placed.translation() = to - laid.placed.linear() * from;
    laid.a = laid.placed * made.a - wanted.a;
    laid.b = laid.placed * made.b - wanted.b;
    laid.along_a = laid.placed.linear() * made.along_a - wanted.along_a;
    laid.along_b = laid.placed.linear() * made.along_b - wanted.along_b;
    for (std::size_t i = 0; i < made.middles.size(); ++i) laid.middles.push_back(laid.placed * made.middles[i] - wanted.middles[i]);
    return laid;
}

EndsOff ends_off(const LaidOver& laid) {
    EndsOff off{{{laid.a.norm()}, between(laid.along_a)}, {{laid.b.norm()}, between(laid.along_b)}, {}};
    for (const Vector3d& middle : laid.middles) off.aside = std::max(off.aside, Length{middle.norm()});
    return off;
}

double worst_share(const EndsOff& off, const EndTolerance& tolerance) {
    return std::max({off.a.place / tolerance.place, off.b.place / tolerance.place, off.a.direction.deg / tolerance.direction.deg,
                     off.b.direction.deg / tolerance.direction.deg, off.aside / tolerance.aside});
}

}  // namespace tubewright
