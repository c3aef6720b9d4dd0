#pragma once
// Why bends are made in this order, in sentences.

#include <optional>
#include <string>
#include <vector>

#include "bench/hand_order.h"
#include "present/text.h"
#include "present/views.h"

namespace tubewright {

/// "Start at bend 4: both ends should land within 1/8"; started from end A, ..." for an order that was found and
/// explained. `ends`: of that very order.
std::string why_this_order(const OrderVerdict& verdict, const EndsWithin& ends, const Tape& tape);
/// The same as it is shown: a caution where the person wants an order whose ends land worse than the best one's.
std::optional<TextView> why_found(const OrderVerdict& verdict, const EndsWithin& ends, const std::optional<EndsWithin>& best, const Tape& tape);
/// What stops one bend: "bend 6 would hit the bench top".
std::string stop_words(const StoppedBend& stop, const Tape& tape);
/// The same of an order by hand, as a sentence.
std::string break_words(const StoppedBend& stop, const Tape& tape);
/// "3/8 in of straight on the hook side and needs 3/4 in": finer than the tape where both would read alike.
std::string too_short_words(Length has, Length needed, bool hook_side, const Tape& tape);
/// "hit the vise by 1/4 in"; of what only comes too near, "come nearer than 1/16 in to the vise": that near counts as hitting.
std::string hit_words(Length depth, const std::string& what, const Tape& tape);
/// How far the ends of an order by hand would be off, against the best order's where that is known.
TextView cost_of_hand_order(const HandFacts& facts, const std::optional<EndsWithin>& best, const Tape& tape);
/// How the rest of a cut tube goes in another order: "Make bend 5 before bend 3".
std::string other_order_words(const OtherRest& other);
/// "On the way: swapped end for end once, no turn over 90° between bends, every bend turned against a made one."
std::string on_the_way_words(const OnTheWay& way);
/// Where none is possible: what is left, what it hits and how far, for each bend that is left.
std::vector<std::string> why_none(const OrderVerdict& verdict, const Tape& tape);
/// What would free it, one sentence each.
std::vector<std::string> ways_out_words(const OrderVerdict& verdict, const Tape& tape);
/// The next the tape shows at or above.
Length up_on_tape(Length length, const Tape& tape);

}  // namespace tubewright
