#pragma once
// The shape that a tube really has when some of its bends are made and something was read of them.

#include <Eigen/Core>
#include <vector>

#include "bench/hand_log.h"
#include "bench/made_readings.h"
#include "bench/tube_plan.h"

namespace tubewright {

/// How one bend came out against what was asked for.
struct MadeError {
    double over_bent_rad = 0, turned_rad = 0;  ///< turned: against what it was turned against
    double off_mark_mm = 0;                    ///< towards B
};

struct AsMade {
    std::vector<std::size_t> bends;  ///< those made, in the order of work
    std::vector<MadeError> errors;   ///< of each, the likeliest
    Eigen::MatrixXd covariance;      ///< of them: three numbers for each bend, as they stand in MadeError
    double misfit = 0;               ///< of readings and hand, in squared standard deviations
    TubePlan plan;                   ///< the bends made as they are; the others as they come when the sheet is gone on with
};

/// With these errors in the steps done first. A bend that is turned against a made one turns with it; marks stay where they
/// are inked.
TubePlan plan_with(const Sheet& sheet, const std::vector<MadeError>& errors);

/// What each reading would be, in the order of the lists; degrees and mm. Bends not made are straight.
Eigen::VectorXd read_of(const Sheet& sheet, const std::vector<MadeError>& errors, const MadeReadings& which);
/// By how much each grows for each number of the errors, as they stand in MadeError.
Eigen::MatrixXd reading_slopes(const Sheet& sheet, const std::vector<MadeError>& errors, const MadeReadings& which);

/// Least squares over the readings, with the spread of sheet.hand for what is believed before. A tube is looked at because
/// something surprised: an error that a reading bears on, and that lies k > 1 standard deviations from what the hand
/// would do, is believed k times as loosely before.
//   Gauss and Newton: J'R^-1 (read - foreseen) - P^-1 e = (J'R^-1 J + P^-1) step;   covariance (J'R^-1 J + P^-1)^-1
AsMade as_made(const Sheet& sheet, std::size_t steps_done, const MadeReadings& readings, const CheckSd& sd = {});

}  // namespace tubewright
