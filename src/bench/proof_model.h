#pragma once
// Every shape that the wire may have after an entry, right or with one slip, and what a tape would read on each.

#include <Eigen/Core>

#include "bench/proof.h"

namespace tubewright {

/// One shape; `slips` are those that come to it, the likeliest first, and none for the entry as it stands.
struct Possibility {
    std::vector<Slip> slips;
    Route route;
    Shape shape;
    double prior;  ///< of all possibilities and the slip not thought of together: 1
};

/// Slips whose shapes differ nowhere by more than this are one, and one that differs so little from the entry is none:
/// no point of the line is further off than honest taping puts it. Our choice.
inline constexpr Length same_shape{25.4 / 8};

/// Chances that an entry is right, and that it has a slip which is not in plausible_slips. Our choice; the first sets how
/// seldom a right entry is doubted (proof_bench).
inline constexpr double right_prior = 0.85, unknown_prior = 0.01;

/// How much the odds of a slip have to grow before the entry is doubted: so that less than two right entries in a hundred are
/// (proof_bench). Slips that the readings could not show leave the odds as they were and raise no doubt.
inline constexpr double doubt_from = 0.11;

/// The entry as it stands, then every plausible slip.
std::vector<Possibility> possibilities(const Entry& entry);

/// What readings come to: means and covariance in mm.
struct Foreseen {
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;
};

/// Covariance: J X J' of the entered numbers' errors, and the tape's own on the diagonal.
Foreseen foreseen(const Possibility& possibility, const std::vector<Span>& spans, const Measuring& measuring);

/// One reading that follows others: mean and variance when those came out as `off` from their means.
struct Next {
    double mean, variance;
};

/// For each of `spans`, after `taken`.
std::vector<Next> foreseen_after(const Possibility& possibility, const std::vector<TapeReading>& taken, const std::vector<Span>& spans, const Measuring& measuring);

/// Log of the density of the readings.
double log_density(const Foreseen& foreseen, const Eigen::VectorXd& read);

/// Sum of squares of read - mean in standard deviations.
double misfit(const Foreseen& foreseen, const Eigen::VectorXd& read);

/// Probabilities after what was taken: one for each possibility and, last, one for the slip not thought of.
std::vector<double> probabilities(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring);

/// Whether what was taken speaks against the entry: it makes the odds of a slip greater by `doubt_from` than the same readings
/// and answer would leave them, had they come out as expected.
bool doubted(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring);

/// -1 to 1: how clearly, and to which side, the legs at these two bends are handed; above 0 is left in HandQuestion.
//   along before . (along between x along past) = sin(angle) sin(angle) sin(rotation)
double handedness(const Shape& shape, std::size_t before, std::size_t bend);

std::vector<Span> spans_of(const std::vector<TapeReading>& readings);
Eigen::VectorXd values_of(const std::vector<TapeReading>& readings);

}  // namespace tubewright
