#pragma once
// How far off the ends of a saved tube may be because its made bends are not known better.

#include "bench/rescue_model.h"

namespace tubewright {

/// A standard deviation each, to first order in the errors of the made bends. `x`: the way, as in RescueModel::plan_at().
/// `pulled_again`: the last bend, which then comes out as the hand makes any.
EndsOff doubt_of(const RescueQuestion& question, const RescueModel& model, const Eigen::VectorXd& x, bool pulled_again);

}  // namespace tubewright
