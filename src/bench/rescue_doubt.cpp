#include "bench/rescue_doubt.h"

#include <Eigen/Cholesky>
#include <cmath>
#include <numbers>

namespace tubewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// What is believed of the made bends, and by how much each may be otherwise: the columns of the covariance's root.
struct Believed {
    std::vector<MadeError> errors;
    MatrixXd root;
};

Believed believed(const RescueQuestion& question, bool pulled_again) {
    Believed result{question.made.errors, question.made.covariance};
    if (pulled_again) {
        const auto last = static_cast<Index>(3 * (question.steps_done - 1));
        result.errors.back().over_bent_rad = 0;
        result.root.row(last).setZero(), result.root.col(last).setZero();
        result.root(last, last) = std::pow(question.sheet.hand.angle_sd.rad(), 2);
    }
    result.root = MatrixXd(result.root.llt().matrixL());
    return result;
}

}  // namespace

EndsOff doubt_of(const RescueQuestion& question, const RescueModel& model, const VectorXd& x, bool pulled_again) {
    const Believed known = believed(question, pulled_again);
    const LaidOver here = model.laid_at(model.plan_at(x));
    double a = 0, b = 0, along_a = 0, along_b = 0;
    VectorXd middles = VectorXd::Zero(static_cast<Index>(here.middles.size()));
    for (Index c = 0; c < known.root.cols(); ++c) {
        std::vector<MadeError> errors = known.errors;
        for (std::size_t i = 0; i < errors.size(); ++i) {
            const auto row = static_cast<Index>(3 * i);
            errors[i].over_bent_rad += known.root(row, c), errors[i].turned_rad += known.root(row + 1, c), errors[i].off_mark_mm += known.root(row + 2, c);
        }
        const LaidOver there = model.laid_at(model.changed(plan_with(question.sheet, errors), x));
        a += (there.a - here.a).squaredNorm(), b += (there.b - here.b).squaredNorm();
        along_a += (there.along_a - here.along_a).squaredNorm(), along_b += (there.along_b - here.along_b).squaredNorm();
        for (Index i = 0; i < middles.size(); ++i) middles[i] += (there.middles[static_cast<std::size_t>(i)] - here.middles[static_cast<std::size_t>(i)]).squaredNorm();
    }
    const auto degrees = [](double square) { return Angle{std::sqrt(square) * 180 / std::numbers::pi}; };
    return {{{std::sqrt(a)}, degrees(along_a)}, {{std::sqrt(b)}, degrees(along_b)}, {middles.size() ? std::sqrt(middles.maxCoeff()) : 0}};
}

}  // namespace tubewright
