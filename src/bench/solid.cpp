#include "bench/solid.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "tube/clearance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// A straight line from `at` (share 0) to `at + way` (share 1) in a solid's own frame.
struct Run {
    Vector3d at, way;
    Vector3d place(double share) const { return at + share * way; }
};

/// Where between 0 and 1 a convex function is least, given its rising slope. Between neighbouring `breaks`
/// the slope is smooth.
template <class Slope, std::size_t N>
double least_place(const Slope& slope, const std::array<double, N>& breaks) {
    double low = 0, high = 1, slope_low = slope(0.0), slope_high = slope(1.0);
    if (slope_low >= 0) return 0;
    if (slope_high <= 0) return 1;
    for (const double place : breaks) {
        if (!(place > low && place < high)) continue;
        const double here = slope(place);
        (here >= 0 ? high : low) = place;
        (here >= 0 ? slope_high : slope_low) = here;
    }
    // Regula falsi, halving the weight of an end that stays (Illinois); at once exact where the slope is straight.
    int stayed = 0;
    double place = low;
    for (int i = 0; i < 60 && high - low > 1e-12; ++i) {
        place = (low * slope_high - high * slope_low) / (slope_high - slope_low);
        const double here = slope(place);
        if (std::abs(here) <= 1e-9 * (std::abs(slope_low) + std::abs(slope_high))) break;
        if (here > 0) {
            high = place, slope_high = here;
            if (stayed == 1) slope_low /= 2;
            stayed = 1;
        } else {
            low = place, slope_low = here;
            if (stayed == -1) slope_high /= 2;
            stayed = -1;
        }
    }
    return place;
}

/// The largest value of a concave function between 0 and 1; only for lines that run through a solid.
template <class Value>
double largest(const Value& value) {
    double low = 0, high = 1;
    for (int i = 0; i < 60; ++i) {
        const double first = low + (high - low) / 3, second = high - (high - low) / 3;
        (value(first) < value(second) ? low : high) = value(first) < value(second) ? first : second;
    }
    return value((low + high) / 2);
}

double beyond(double value, double half) { return value - std::clamp(value, -half, half); }

double box_gap(const Run& run, const Vector3d& half, bool depth) {
    std::array<double, 6> breaks{};
    for (int i = 0; i < 3; ++i) {
        const double way = run.way[i] == 0 ? 1e-300 : run.way[i];
        breaks[static_cast<std::size_t>(2 * i)] = (half[i] - run.at[i]) / way;
        breaks[static_cast<std::size_t>(2 * i + 1)] = (-half[i] - run.at[i]) / way;
    }
    const auto outside = [&](double share) {
        const Vector3d p = run.place(share);
        return Vector3d(beyond(p.x(), half.x()), beyond(p.y(), half.y()), beyond(p.z(), half.z()));
    };
    const bool ball = run.way.isZero(0);
    const double nearest = ball ? 0 : least_place([&](double share) { return outside(share).dot(run.way); }, breaks);
    const double apart = outside(nearest).norm();
    if (apart > 0 || !depth) return apart;
    return -largest([&](double share) { return (half - run.place(share).cwiseAbs()).minCoeff(); });
}

/// Where the line crosses the round side of an endless cylinder: |at + share way| = radius, across z.
std::array<double, 2> crossings(const Run& run, double radius) {
    const double a = run.way.head<2>().squaredNorm(), b = run.at.head<2>().dot(run.way.head<2>());
    const double c = run.at.head<2>().squaredNorm() - radius * radius, root = b * b - a * c;
    if (a <= 0 || root < 0) return {-1, -1};
    return {(-b - std::sqrt(root)) / a, (-b + std::sqrt(root)) / a};
}

double cylinder_gap(const Run& run, double radius, double half, bool depth) {
    const double way = run.way.z() == 0 ? 1e-300 : run.way.z();
    const std::array<double, 2> round = crossings(run, radius);
    const std::array<double, 4> breaks{(half - run.at.z()) / way, (-half - run.at.z()) / way, round[0], round[1]};
    const double nearest = run.way.isZero(0) ? 0 : least_place(
        [&](double share) {
            const Vector3d p = run.place(share);
            const double out = p.head<2>().norm(), along = beyond(p.z(), half) * run.way.z();
            return out <= radius ? along : along + (1 - radius / out) * p.head<2>().dot(run.way.head<2>());
        },
        breaks);
    const Vector3d p = run.place(nearest);
    const double apart = std::hypot(std::max(p.head<2>().norm() - radius, 0.0), beyond(p.z(), half));
    if (apart > 0 || !depth) return apart;
    return -largest([&](double share) {
        const Vector3d q = run.place(share);
        return std::min(radius - q.head<2>().norm(), half - std::abs(q.z()));
    });
}

/// Rows are the axes of a frame whose z runs along `z`.
Eigen::Matrix3d frame_along(const Vector3d& z) {
    const Vector3d x = z.unitOrthogonal();
    Eigen::Matrix3d rows;
    rows.row(0) = x;
    rows.row(1) = z.cross(x);
    rows.row(2) = z;
    return rows;
}

}  // namespace

PlacedSolid::PlacedSolid(const Shape& shape, const Eigen::Matrix3d& turn) {
    if (const auto* box = std::get_if<Block>(&shape)) {
        kind_ = Kind::box;
        to_local_ = turn.transpose();
        middle_ = turn * (box->from + box->to) / 2;
        half_ = (box->to - box->from).cwiseAbs() / 2;
        reach_ = half_.norm();
        extent_ = middle_.norm() + reach_;
        const double up = half_.dot(to_local_.col(2).cwiseAbs());
        lowest_ = middle_.z() - up, highest_ = middle_.z() + up;
    } else if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        kind_ = Kind::cylinder;
        to_local_ = frame_along((cylinder->to - cylinder->from).normalized()) * turn.transpose();
        middle_ = turn * (cylinder->from + cylinder->to) / 2;
        const double radius = cylinder->radius.mm;
        half_ = {radius, radius, (cylinder->to - cylinder->from).norm() / 2};
        reach_ = std::hypot(radius, half_.z());
        extent_ = middle_.norm() + reach_;
        const double steep = std::min(std::abs(to_local_(2, 2)), 1.0), up = half_.z() * steep + radius * std::sqrt(1 - steep * steep);
        lowest_ = middle_.z() - up, highest_ = middle_.z() + up;
    } else {
        const auto& space = std::get<HalfSpace>(shape);
        kind_ = Kind::half_space;
        to_local_ = frame_along(-space.into.normalized()) * turn.transpose();
        middle_ = turn * space.at;
        half_.setZero();
        extent_ = middle_.norm();
        reach_ = std::numeric_limits<double>::infinity();
        // Bounded only where it lies level.
        const double out = to_local_(2, 2);
        lowest_ = out > 1 - 1e-12 || std::abs(out) < 1 - 1e-12 ? -reach_ : middle_.z();
        highest_ = out < -1 + 1e-12 || std::abs(out) < 1 - 1e-12 ? reach_ : middle_.z();
    }
}

double PlacedSolid::line_gap(const Capsule& capsule, bool depth) const {
    const Run run{to_local_ * (capsule.a - middle_), to_local_ * (capsule.b - capsule.a)};
    switch (kind_) {
        case Kind::box: return box_gap(run, half_, depth);
        case Kind::cylinder: return cylinder_gap(run, half_.x(), half_.z(), depth);
        case Kind::half_space: return std::min(run.at.z(), run.at.z() + run.way.z());
    }
    return 0;
}

double PlacedSolid::gap(const Capsule& capsule) const { return line_gap(capsule, true) - capsule.radius; }
double PlacedSolid::clearance(const Capsule& capsule) const { return line_gap(capsule, false) - capsule.radius; }

double gap(const Capsule& one, const Capsule& other) { return segment_distance(one.a, one.b, other.a, other.b) - one.radius - other.radius; }

}  // namespace tubewright
