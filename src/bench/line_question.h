#pragma once
// A line on its sheet as a question about its order. For bench/ordered and bench/line_ways.

#include "bench/handling.h"
#include "bench/order_search.h"
#include "bench/sheet.h"

namespace tubewright {

/// Whether something stops the line that no order of bends can do away with.
bool stopped_in_any_order(const Sheet& sheet);

/// Whether it is a line that an order can be looked for at all: it has bends, at most 64, and nothing stops it in any order.
bool has_question(const Sheet& sheet);

OrderQuestion question_of(const Sheet& sheet, const OrderWish& wish);
Handling handling_of(const OrderQuestion& question, Length od);
CanBend geometry_of(const OrderQuestion& question, Length od);

}  // namespace tubewright
