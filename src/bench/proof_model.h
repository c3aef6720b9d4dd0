#pragma once
// Every shape that the wire may have after an entry, right or with one slip, and what a tape would read on each.

#include <Eigen/Core>

#include "bench/proof.h"

namespace tubewright {

/// One shape; `slips` are those that come to it, the likeliest first, and none for the entry as it stands.
struct Possibility {
    std::vector<Slip> slips;
    Route route;
    WireShape shape;
    double prior;  ///< of all possibilities and the slip not thought of together: 1
};

/// Slips whose shapes differ nowhere by more than this are one, and one that differs so little from the entry is none:
/// no point of the line is further off than honest taping puts it. Our choice.
inline constexpr Length same_shape{25.4 / 8};

/// Odds of a slip that is not in plausible_slips, against a right entry. Our choice.
inline constexpr double unknown_odds = 0.012;

/// How much the odds of a slip have to grow before the entry is doubted: so that less than two right entries in a hundred are
/// (proof_bench). Slips that the readings could not show leave the odds as they were and raise no doubt.
inline constexpr double doubt_from = 0.14;

/// The entry as it stands, then every plausible slip, at odds of its weight to a thousand against a right entry.
std::vector<Possibility> possibilities(const ProofEntry& entry);

/// What readings come to: means and covariance in mm.
struct Foreseen {
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;
};

/// Covariance: J X J' of the entered numbers' errors, and the tape's own on the diagonal.
Foreseen foreseen(const Possibility& possibility, const std::vector<Span>& spans, const Measuring& measuring);

/// One reading that follows others: mean and variance when those came out as `off` from their means.
struct NextReading {
    double mean, variance;
};

/// For each of `spans`, after `taken`.
std::vector<NextReading> foreseen_after(const Possibility& possibility, const std::vector<TapeReading>& taken, const std::vector<Span>& spans, const Measuring& measuring);

/// Log of the density of the readings.
double log_density(const Foreseen& foreseen, const Eigen::VectorXd& read);

/// Sum of squares of read - mean in standard deviations.
double misfit(const Foreseen& foreseen, const Eigen::VectorXd& read);

/// Probabilities after what was taken: one for each possibility and, last, one for the slip not thought of.
std::vector<double> probabilities(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring);

/// By how much what was taken makes the odds of a slip greater than the same readings and answer would leave them, had they come
/// out as expected.
double grown_odds(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring);

/// Whether that is more than doubt_from: something speaks against the entry.
bool doubted(const std::vector<Possibility>& possible, const Taken& taken, const Measuring& measuring);

/// -1 to 1: how clearly, and to which side, the legs at these two bends are handed; above 0 is left in HandQuestion.
//   along before . (along between x along past) = sin(angle) sin(angle) sin(rotation)
double handedness(const WireShape& shape, std::size_t before, std::size_t bend);

std::vector<Span> spans_of(const std::vector<TapeReading>& readings);
Eigen::VectorXd values_of(const std::vector<TapeReading>& readings);

}  // namespace tubewright
