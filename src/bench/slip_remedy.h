#pragma once
// The entry without a slip: what the person would have written.

#include <optional>

#include "bench/slips.h"
#include "tube/measured.h"

namespace tubewright {

/// The measured route with this slip of its own taken back, notes and kept keys where they stood; its route is
/// slip.meant. None where that can't be said in the form it was entered in: a leg that several moves make up, or the
/// length of a move that goes two ways at once.
std::optional<MeasuredRoute> without_slip(const MeasuredRoute& entered, const Slip& slip);

}  // namespace tubewright
