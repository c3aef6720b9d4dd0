#pragma once
// What would free a line that has no order of bends, in a sentence each.

#include <string>

#include "bench/way_out.h"
#include "present/text.h"

namespace tubewright {

/// "Make the straight after bend 1 longer by 1/8"."
std::string way_out_words(const WayOut& way, const Tape& tape);

}  // namespace tubewright
