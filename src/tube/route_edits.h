#pragma once
// What can be done to a measured route as a whole while it is being entered. Each gives a new route and
// leaves notes and kept keys with the thing beside which they stood.

#include <optional>

#include "tube/measured.h"

namespace tubewright {

/// Left for right: what is seen in a mirror. Points and moves are mirrored in y.
MeasuredRoute mirrored(MeasuredRoute route);

/// The same wire entered from its other end.
MeasuredRoute reversed(MeasuredRoute route);

/// With a bend of 0 degrees in this run, `before` from the run's beginning: nothing of the shape changes until
/// the bend is given its angle. For legs and straights; 0 < before < the run.
MeasuredRoute with_bend_in(MeasuredRoute route, std::size_t run, Length before);

/// With this bend taken out straight: its two runs become one, and every other bend keeps its direction in the
/// tube's section. For legs and straights.
MeasuredRoute without_bend(MeasuredRoute route, std::size_t bend);

/// With this leg, straight or move longer by that much, in the direction it has; all past it moves along. Nothing
/// where the route has no such run of its own, as where several moves go on the same way.
std::optional<MeasuredRoute> with_longer_run(MeasuredRoute route, std::size_t run, Length by);

/// With one point more, halfway to the next one: a corner of 0 degrees until it is moved. `point` + 1 is there.
MeasuredRoute with_point_after(MeasuredRoute route, std::size_t point);
/// Without this point, or this move.
MeasuredRoute without_point(MeasuredRoute route, std::size_t point);
MeasuredRoute without_move(MeasuredRoute route, std::size_t move);

/// As much of the route from end A as can be drawn. Where the next bend is known but not the leg past it,
/// that leg is shown as `stub` long.
MeasuredRoute drawable(const MeasuredRoute& route, Length stub);

/// Whether all its bends lie in one plane.
bool is_flat(const MeasuredRoute& route);

}  // namespace tubewright
