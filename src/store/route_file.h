#pragma once
// The route of a line in a job file, in its four forms. Only for use inside store; throws Refusal.

#include <string>
#include <vector>

#include "store/node.h"
#include "tube/route.h"

namespace tubewright {

struct RouteGiven {
    Route route;
    std::vector<std::string> bend_notes;  ///< one for each bend
};
RouteGiven route_from(const Node& node, Unit unit);

}  // namespace tubewright
