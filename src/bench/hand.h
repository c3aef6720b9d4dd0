#pragma once
// How exactly a hand works.

#include "base/quantity.h"

namespace tubewright {

/// One hand's own spread: standard deviations of what it does at each bend, independent of one another.
/// Our estimates until a shop's own bends are logged: a protractor is read to half a degree, a tube is
/// turned by eye to about two degrees against a made bend (tolerance::same_direction) and less well
/// against an ink line, and a mark is scribed, and laid on its line, to about half a millimetre.
struct Hand {
    Angle angle_sd{0.5};   ///< of a bend
    Angle turn_sd{1.0};    ///< of a bend's plane, turned against a made neighbour
    Angle float_sd{2.0};   ///< of a bend's plane, turned against the index line only
    Length mark_sd{0.5};   ///< of a bend's place along the straight tube
    bool operator==(const Hand&) const = default;
};

}  // namespace tubewright
