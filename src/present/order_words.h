#pragma once
// Why bends are made in this order, in sentences.

#include <string>
#include <vector>

#include "bench/ordered.h"
#include "present/text.h"

namespace tubewright {

/// "Start at bend 4: the ends land within 1/8". Started from A, ..." for an order that was found and explained.
std::string why_this_order(const OrderVerdict& verdict, const Tape& tape);
/// What stops one bend: "bend 6 would hit the bench top".
std::string stop_words(const StoppedBend& stop, const Tape& tape);
/// Where none is possible: what is left, what it hits and how far, for each bend that is left.
std::vector<std::string> why_none(const OrderVerdict& verdict, const Tape& tape);
/// What would free it, one sentence each.
std::vector<std::string> ways_out_words(const OrderVerdict& verdict, const Tape& tape);
/// The next the tape shows at or above.
Length up_on_tape(Length length, const Tape& tape);

}  // namespace tubewright
