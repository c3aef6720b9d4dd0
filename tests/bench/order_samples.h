#pragma once
// The plain question about a line's order, for tests: no springback, everything else as it is by default.

#include "bench/order_search.h"
#include "bench/samples.h"

namespace tubewright {

inline OrderQuestion question_for(const Line& line) {
    OrderQuestion question;
    question.layout = layout(line, {});
    question.bender = line.bender;
    return question;
}

}  // namespace tubewright
