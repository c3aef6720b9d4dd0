#pragma once
// Why bends are made in this order, in sentences.

#include <string>
#include <vector>

#include "bench/hand_order.h"
#include "present/text.h"
#include "present/views.h"

namespace tubewright {

/// "Start at bend 4: both ends should land within 1/8"; started from end A, ..." for an order that was found and
/// explained. `ends`: of that very order.
std::string why_this_order(const OrderVerdict& verdict, const EndsWithin& ends, const Tape& tape);
/// What stops one bend: "bend 6 would hit the bench top".
std::string stop_words(const StoppedBend& stop, const Tape& tape);
/// The same of an order by hand, as a sentence.
std::string break_words(const StoppedBend& stop, const Tape& tape);
/// How far the ends of an order by hand would be off, against the best order's where that is known.
TextView cost_of_hand_order(const HandFacts& facts, const std::optional<EndsWithin>& best, const Tape& tape);
/// Where none is possible: what is left, what it hits and how far, for each bend that is left.
std::vector<std::string> why_none(const OrderVerdict& verdict, const Tape& tape);
/// What would free it, one sentence each.
std::vector<std::string> ways_out_words(const OrderVerdict& verdict, const Tape& tape);
/// The next the tape shows at or above.
Length up_on_tape(Length length, const Tape& tape);

}  // namespace tubewright
