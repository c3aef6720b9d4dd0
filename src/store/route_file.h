#pragma once
// The route of a line in a job file, in its four forms. Only for use inside store; throws Refusal.

#include <string>

#include "store/json_raw.h"
#include "store/node.h"
#include "tube/measured.h"

namespace tubewright {

/// Whether all of a thing has to be there, or only what is there has to be right.
enum class Entered { to_the_end, so_far };

/// The route at `node`, whose lengths are in `unit`, as it was measured. Entered to the end, it makes a route.
MeasuredRoute measured_from(const Node& node, Unit unit, const RawText& raw, Entered entered);

/// Why a measured route makes no route, said of the route at `place` in `file`.
Refusal refusal_of(const RouteTrouble& trouble, const MeasuredRoute& route, Unit unit, const std::string& file, const std::string& place);

/// "forward", as in the file.
const char* name_of(MoveWay way);
const char* name_of(RouteForm form);
const char* name_of(TapeEdge edge);

}  // namespace tubewright
