#include "bench/spread.h"

#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

#include "tube/centreline.h"

namespace tubewright {
namespace {

using Six = Eigen::Matrix<double, 6, 1>;

struct Errors {
    std::vector<double> over_bent_rad, off_mark_mm, turned_rad;  ///< for each bend of the part
};

Eigen::Isometry3d pose(const Eigen::Vector3d& at, const Eigen::Vector3d& x, const Eigen::Vector3d& y) {
    Eigen::Isometry3d result = Eigen::Isometry3d::Identity();
    result.linear() << x, y, x.cross(y);
    result.translation() = at;
    return result;
}

struct Ends {
    Eigen::Isometry3d a, b;
};

Ends ends_from_datum(const Part& part, std::size_t datum) {
    const std::vector<Stretch> stretches = centreline(part);
    const Stretch& bend = stretches[2 * datum + 1];
    const Frame middle = frame_in(bend, bend.length / 2);
    const Frame& first = stretches.front().start;
    const Frame last = frame_in(stretches.back(), stretches.back().length);
    const Eigen::Isometry3d to_datum = pose(middle.at, middle.along, side(middle, bend.direction)).inverse();
    // Each end with the side of the tube that the first bend turns to: it is the datum's y, carried there untwisted.
    const auto end = [&](const Frame& frame) { return to_datum * pose(frame.at, frame.along, side(frame, bend.direction)); };
    return {end(first), end(last)};
}

Part made_with(const Part& part, const std::vector<Placing>& order, const Errors& errors, double stretch) {
    Part made = part;
    for (const Placing& placing : order) {
        const std::size_t i = placing.bend;
        made.bends[i].angle.deg += errors.over_bent_rad[i] * 180 / std::numbers::pi;
        made.straights[i].mm += errors.off_mark_mm[i];
        made.straights[i + 1].mm -= errors.off_mark_mm[i];
        made.straights[placing.hook == End::A ? i + 1 : i].mm -= (1 - stretch) * part.radius.mm * errors.over_bent_rad[i];
    }
    for (std::size_t i = 1; i < part.bends.size(); ++i)
        made.bends[i].rotation.deg += (errors.turned_rad[i] - errors.turned_rad[i - 1]) * 180 / std::numbers::pi;
    return made;
}

Six difference(const Eigen::Isometry3d& plus, const Eigen::Isometry3d& minus) {
    const Eigen::AngleAxisd turned(plus.linear() * minus.linear().transpose());
    Six result;
    result << plus.translation() - minus.translation(), turned.angle() * turned.axis();
    return result;
}

/// What single errors do to all bends: one error moves one bend's angle or mark, or turns a bend and
/// every bend that was turned against it.
struct Single {
    Errors unit;
    double sd;
};

std::vector<Single> single_errors(const Part& part, const std::vector<Placing>& order, const Hand& hand) {
    const std::vector<double> none(part.bends.size());
    const std::vector<std::optional<std::size_t>> against = turned_against(part, order);
    std::vector<Single> singles;
    for (std::size_t step = 0; step < order.size(); ++step) {
        const std::size_t bend = order[step].bend;
        Errors angle{none, none, none}, mark = angle, turn = angle;
        angle.over_bent_rad[bend] = mark.off_mark_mm[bend] = turn.turned_rad[bend] = 1;
        for (std::size_t later = step + 1; later < order.size(); ++later)
            if (against[later]) turn.turned_rad[order[later].bend] = turn.turned_rad[*against[later]];
        singles.push_back({std::move(angle), hand.angle_sd.rad()});
        singles.push_back({std::move(mark), hand.mark_sd.mm});
        singles.push_back({std::move(turn), (against[step] ? hand.turn_sd : hand.float_sd).rad()});
    }
    return singles;
}

Errors scaled(Errors errors, double factor) {
    for (auto* list : {&errors.over_bent_rad, &errors.off_mark_mm, &errors.turned_rad})
        for (double& value : *list) value *= factor;
    return errors;
}

/// Chance that a chi-distributed length of 3 degrees of freedom is at most this.
double chance_within(double length) {
    return std::erf(length / std::numbers::sqrt2) - std::sqrt(2 / std::numbers::pi) * length * std::exp(-length * length / 2);
}

/// Mean of chance_within over the directions of the unit sphere, one octant standing for all:
///   x = L z with z standard normal stays within r where |z| <= r / |L u|, u the direction of z.
double chance_within(const Eigen::Vector3d& variances, double radius) {
    constexpr int steps = 16;
    double sum = 0;
    for (int i = 0; i < steps; ++i) {
        const double height = (i + 0.5) / steps, ring = 1 - height * height;
        for (int k = 0; k < steps; ++k) {
            const double cosine = std::cos((k + 0.5) / steps * std::numbers::pi / 2);
            const double stretch = variances[2] * height * height + ring * (variances[1] * cosine * cosine + variances[0] * (1 - cosine * cosine));
            sum += stretch > 0 ? chance_within(radius / std::sqrt(stretch)) : 1;
        }
    }
    return sum / (steps * steps);
}

}  // namespace

std::vector<std::optional<std::size_t>> turned_against(const Part& part, const std::vector<Placing>& order) {
    std::vector<std::optional<std::size_t>> against(order.size());
    std::vector<bool> made(part.bends.size());
    for (std::size_t step = 0; step < order.size(); ++step) {
        against[step] = turned_against(part, made, order[step]);
        made[order[step].bend] = true;
    }
    return against;
}

EndSpread end_spread(const Part& part, const std::vector<Placing>& order, const Hand& hand, double stretch) {
    EndSpread spread{Spread::Zero(), Spread::Zero()};
    if (order.empty()) return spread;
    // Central differences: rounding stays near 1e-10, the cut-off third order near 1e-9 of the column.
    constexpr double step = 1e-4;
    for (const Single& single : single_errors(part, order, hand)) {
        const Ends plus = ends_from_datum(made_with(part, order, scaled(single.unit, step), stretch), order.front().bend);
        const Ends minus = ends_from_datum(made_with(part, order, scaled(single.unit, -step), stretch), order.front().bend);
        const Six a = single.sd / (2 * step) * difference(plus.a, minus.a), b = single.sd / (2 * step) * difference(plus.b, minus.b);
        spread.a += a * a.transpose();
        spread.b += b * b.transpose();
    }
    return spread;
}

Length within(const Spread& spread) {
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(spread.topLeftCorner<3, 3>());
    const Eigen::Vector3d variances = solver.eigenvalues().cwiseMax(0);  // rising
    // All of it lies between what the largest alone gives, 1.95996 deviations, and three equal ones, 2.79548.
    double low = 1.959 * std::sqrt(variances[2]), high = 2.797 * std::sqrt(variances[2]);
    for (int i = 0; i < 12; ++i) {
        const double middle = (low + high) / 2;
        (chance_within(variances, middle) < 0.95 ? low : high) = middle;
    }
    return {(low + high) / 2};
}

}  // namespace tubewright
