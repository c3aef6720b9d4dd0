#pragma once
// The route of a line in a job file, in its four forms. Only for use inside store; throws Refusal.

#include <string>
#include <vector>

#include "store/node.h"
#include "tube/route.h"

namespace tubewright {

/// A route, and what the person wrote beside each bend.
struct RouteGiven {
    Route route;
    std::vector<std::string> bend_notes;  ///< one for each bend
};

/// The route at `node`, whose lengths are in `unit`: legs, straights, points or moves, each brought to runs
/// and bends. Points and moves become legs to the centre, as in tube/route.h.
RouteGiven route_from(const Node& node, Unit unit);

}  // namespace tubewright
