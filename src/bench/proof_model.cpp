#include "bench/proof_model.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// Of one entered number: legs, then angles, then rotations, as growth_of counts them.
VectorXd entry_sds(const WireShape& shape, const Measuring& measuring) {
    const auto legs = static_cast<Index>(shape.along.size()), bends = static_cast<Index>(shape.normal.size());
    VectorXd sds(legs + 2 * bends);
    sds << VectorXd::Constant(legs, measuring.leg_sd.mm), VectorXd::Constant(bends, measuring.angle_sd.rad()),
        VectorXd::Constant(bends, measuring.rotation_sd.rad());
    return sds;
}

/// One row for each span: what one standard deviation of each entered number does to it.
MatrixXd rows_of(const WireShape& shape, const std::vector<Span>& spans, const VectorXd& sds) {
    MatrixXd rows(static_cast<Index>(spans.size()), sds.size());
    for (std::size_t i = 0; i < spans.size(); ++i)
        rows.row(static_cast<Index>(i)) = growth_of(shape, spans[i]).cwiseProduct(sds).transpose();
    return rows;
}

VectorXd means_of(const WireShape& shape, const std::vector<Span>& spans) {
    VectorXd means(static_cast<Index>(spans.size()));
    for (std::size_t i = 0; i < spans.size(); ++i) means[static_cast<Index>(i)] = apart(shape, spans[i]).mm;
    return means;
}

/// Whether one is the mirror image of the other, when their distances are the same.
bool same_hand(const WireShape& one, const WireShape& other) {
    double sum = 0;
    for (std::size_t bend = 1; bend < one.normal.size(); ++bend) sum += handedness(one, bend - 1, bend) * handedness(other, bend - 1, bend);
    return sum >= -tolerance::arithmetic;
}

bool is_same(const WireShape& one, const WireShape& other) {
    for (std::size_t i = 0; i < one.points.size(); ++i)
        for (std::size_t k = one.points.size() - 1; k > i; --k)
            if (std::abs(apart(one, {i, k}).mm - apart(other, {i, k}).mm) > same_shape.mm) return false;
    return same_hand(one, other);
}

/// A slip that nobody thought of: anything from half an inch to a foot off, one spread as likely as the next.
constexpr double unknown_spreads_inch[]{0.5, 2, 8};

double log_density_unknown(Foreseen foreseen, const VectorXd& read) {
    double sum = 0;
    for (const double spread : unknown_spreads_inch) {
        Foreseen wide = foreseen;
        wide.covariance.diagonal().array() += spread * spread * 25.4 * 25.4;
        sum += std::exp(log_density(wide, read)) / std::size(unknown_spreads_inch);
    }
    return std::log(sum);
}

/// How seldom a plain question is answered wrongly. Our estimate.
constexpr double wrong_answer = 0.02;

double chance_of(const HandAnswer& answer, const WireShape& shape) {
    constexpr double too_flat_to_see = 0.05;
    const double hand = handedness(shape, answer.before, answer.bend);
    if (std::abs(hand) < too_flat_to_see) return 0.5;
    return (hand > 0) == answer.left ? 1 - wrong_answer : wrong_answer;
}

/// Which way the first bend goes is nobody's number: the same tube is better told by the turn of the bend past it.
bool is_told_last(const Slip& slip) { return slip.kind == SlipKind::bend_other_way && slip.bend == std::size_t{0}; }

}  // namespace

double handedness(const WireShape& shape, std::size_t before, std::size_t bend) {
    return shape.along[before].dot(shape.along[bend].cross(shape.along[bend + 1]));
}

std::vector<Possibility> possibilities(const ProofEntry& entry) {
    const Wire& wire = entry.wire;
    std::vector<Possibility> possible{{{}, wire.route, shape_of(wire, wire.route.measured_to), 1}};
    std::vector<Slip> slips = plausible_slips(wire, entry.unit);
    std::stable_sort(slips.begin(), slips.end(), [](const Slip& a, const Slip& b) { return a.weight > b.weight; });
    for (const Slip& slip : slips) {
        const WireShape shape = shape_of({slip.meant, wire.od, wire.radius}, wire.route.measured_to);
        const auto known = std::find_if(possible.begin(), possible.end(), [&](const Possibility& p) { return is_same(p.shape, shape); });
        if (known == possible.begin()) continue;
        if (known == possible.end()) possible.push_back({{slip}, slip.meant, shape, slip.weight / 1000});
        else {
            known->slips.push_back(slip);
            known->prior += slip.weight / 1000;
        }
    }
    for (Possibility& possibility : possible)
        std::stable_sort(possibility.slips.begin(), possibility.slips.end(), [](const Slip& a, const Slip& b) { return a.weight != b.weight ? a.weight > b.weight : is_told_last(a) < is_told_last(b); });
    double sum = unknown_odds;
    for (const Possibility& possibility : possible) sum += possibility.prior;
    for (Possibility& possibility : possible) possibility.prior /= sum;
    return possible;
}

Foreseen foreseen(const Possibility& possibility, const std::vector<Span>& spans, const Measuring& measuring) {
    const MatrixXd rows = rows_of(possibility.shape, spans, entry_sds(possibility.shape, measuring));
    Foreseen result{means_of(possibility.shape, spans), rows * rows.transpose()};
    result.covariance.diagonal().array() += measuring.tape_sd.mm * measuring.tape_sd.mm;
    return result;
}

std::vector<NextReading> foreseen_after(const Possibility& possibility, const std::vector<TapeReading>& taken, const std::vector<Span>& spans, const Measuring& measuring) {
    const VectorXd sds = entry_sds(possibility.shape, measuring), means = means_of(possibility.shape, spans);
    const MatrixXd rows = rows_of(possibility.shape, spans, sds);
    const double tape_variance = measuring.tape_sd.mm * measuring.tape_sd.mm;
    std::vector<NextReading> next;
    if (taken.empty()) {
        for (Index i = 0; i < means.size(); ++i) next.push_back({means[i], rows.row(i).squaredNorm() + tape_variance});
        return next;
    }
    const std::vector<Span> before = spans_of(taken);
    const Foreseen first = foreseen(possibility, before, measuring);
    const Eigen::LLT<MatrixXd> factor(first.covariance);
    const MatrixXd shared = rows_of(possibility.shape, before, sds) * rows.transpose();
    const MatrixXd solved = factor.solve(shared);
    const VectorXd off = values_of(taken) - first.mean;
    for (Index i = 0; i < means.size(); ++i)
        next.push_back({means[i] + solved.col(i).dot(off), rows.row(i).squaredNorm() + tape_variance - solved.col(i).dot(shared.col(i))});
    return next;
}

double misfit(const Foreseen& foreseen, const VectorXd& read) {
    const Eigen::LLT<MatrixXd> factor(foreseen.covariance);
    return factor.matrixL().solve(read - foreseen.mean).squaredNorm();
}

double log_density(const Foreseen& foreseen, const VectorXd& read) {
    const Eigen::LLT<MatrixXd> factor(foreseen.covariance);
    const double half_log_det = factor.matrixLLT().diagonal().array().log().sum();
    return -factor.matrixL().solve(read - foreseen.mean).squaredNorm() / 2 - half_log_det -
           static_cast<double>(read.size()) / 2 * std::log(2 * std::numbers::pi);
}

std::vector<double> probabilities(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring) {
    const std::vector<Span> spans = spans_of(taken.readings);
    const VectorXd read = values_of(taken.readings);
    std::vector<double> logs;
    for (const Possibility& possibility : possible) {
        double log = std::log(possibility.prior);
        if (!spans.empty()) log += log_density(foreseen(possibility, spans, measuring), read);
        if (taken.hand) log += std::log(chance_of(*taken.hand, possibility.shape));
        logs.push_back(log);
    }
    logs.push_back(std::log(unknown_odds * possible.front().prior) + (spans.empty() ? 0 : log_density_unknown(foreseen(possible.front(), spans, measuring), read)) + (taken.hand ? std::log(0.5) : 0));
    const double most = *std::max_element(logs.begin(), logs.end());
    double sum = 0;
    for (double& log : logs) sum += log = std::exp(log - most);
    for (double& probability : logs) probability /= sum;
    return logs;
}

double grown_odds(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring) {
    Taken ideal = taken;
    for (TapeReading& reading : ideal.readings) reading.read = apart(possible.front().shape, reading.span);
    if (ideal.hand) ideal.hand->left = handedness(possible.front().shape, ideal.hand->before, ideal.hand->bend) > 0;
    const double left = probabilities(possible, ideal, measuring).front(), now = probabilities(possible, taken, measuring).front();
    return (1 - now) / now - (1 - left) / left;
}

bool doubted(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring) {
    return grown_odds(possible, taken, measuring) > doubt_from;
}

std::vector<Span> spans_of(const std::vector<TapeReading>& readings) {
    std::vector<Span> spans;
    for (const TapeReading& reading : readings) spans.push_back(reading.span);
    return spans;
}

VectorXd values_of(const std::vector<TapeReading>& readings) {
    VectorXd values(static_cast<Index>(readings.size()));
    for (std::size_t i = 0; i < readings.size(); ++i) values[static_cast<Index>(i)] = readings[i].read.mm;
    return values;
}

}  // namespace tubewright
