#include "tube/part.h"

#include <cassert>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

/// How much further the corner of the centre lines is than the corner that the tape touched.
Length to_centre(TapeEdge edge, Length od, Angle angle) {
    if (edge == TapeEdge::centre) return {};
    return edge == TapeEdge::outside ? -edge_shift(od, angle) : edge_shift(od, angle);
}

}  // namespace

Length setback(Length radius, Angle angle) {
    assert(angle.deg < 180);
    return {radius.mm * std::tan(angle.rad() / 2)};
}

Length edge_shift(Length od, Angle angle) { return setback(od / 2, angle); }

Part part_from(const Route& route, Length finished_radius, Length od) {
    assert(route.runs.size() == route.bends.size() + 1);
    Part part{route.runs, route.bends, finished_radius};
    if (route.form == RouteForm::straights) return part;
    // leg to the centre = leg as measured -/+ od/2 tan(angle/2) for each of its corners
    // straight          = leg to the centre - radius tan(angle/2) for each of its corners
    for (std::size_t i = 0; i < route.bends.size(); ++i) {
        const Angle angle = route.bends[i].angle;
        assert(angle <= tolerance::sharpest_corner);
        const Length change = to_centre(route.measured_to, od, angle) - setback(finished_radius, angle);
        part.straights[i] += change;
        part.straights[i + 1] += change;
    }
    return part;
}

Length centreline_length(const Part& part) {
    Length sum;
    for (const Length straight : part.straights) sum += straight;
    for (const Bend& bend : part.bends) sum += arc_length(part.radius, bend.angle);
    return sum;
}

Angle direction_in_section(const Part& part, std::size_t bend) {
    Angle sum;
    for (std::size_t i = 0; i <= bend; ++i) sum = wrapped(sum + part.bends[i].rotation);
    return sum;
}

}  // namespace tubewright
