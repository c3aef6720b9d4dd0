#pragma once
// How much a pulled bend opens again, from the physics of the tube.

#include "base/quantity.h"
#include "bench/material.h"
#include "tube/tube.h"

namespace tubewright {

/// set = (1 + growth) * target + zero. `growth` belongs to the bend itself and also makes its radius
/// larger by the same share; `zero` belongs to the legs and the bender's scale.
struct Springback {
    double growth = 0;
    Angle zero;
    bool operator==(const Springback&) const = default;
};

/// Where the lever has to stop so that the bend ends at `target` after release.
Angle set_angle(const Springback& springback, Angle target);

/// The half degree of the lever's scale to stop at: the one at or below `set`. A tube can be bent on, never
/// back, so a set angle is never rounded up.
Angle on_lever(Angle set);

/// What a bend pulled to `set` ends at after release.
Angle released(const Springback& springback, Angle set);

/// The radius of the released bend made on a form of this radius.
Length finished_radius(const Springback& springback, Length form_radius);

/// Bending moments in N mm about the tube's centre line when bent to `radius` (centre line), in mm and MPa.
/// Perfectly plastic: Y (D^3 - d^3) / 6.
double plastic_moment(Length od, Length wall, double yield_mpa);
/// Elastic core and plastic outside, exact for every curvature (springback notes, section 1.2).
double elastic_plastic_moment(Length od, Length wall, Length radius, double modulus_mpa, double yield_mpa);
/// Power law stress = K strain^n: K R^-n (b^(n+3) - a^(n+3)) / (n+3) * 2 Beta(n/2 + 1, 1/2), b and a outer and inner radius.
double power_law_moment(Length od, Length wall, Length radius, double strength_mpa, double exponent);
/// Second moment of area, pi (D^4 - d^4) / 64, in mm^4.
double second_moment(Length od, Length wall);

/// What the prior is made of, so that it can be explained and checked.
struct SpringbackPrior {
    double beam_ratio;    ///< R M / (E I) with the mean of the material's flow curves
    double curved_tube;   ///< h = t R / r^2, with r the mean radius of the wall
    double flexibility;   ///< k = (10 + 12 h^2) / (1 + 12 h^2), von Karman
    double flexibility_used;  ///< 1 + (k - 1) / 2: the straight legs hold the ends round
    double ratio;         ///< beam_ratio * flexibility_used / 0.90, the loss of modulus after straining
    Springback line;      ///< growth = ratio / (1 - ratio); zero from the legs, arm 1.5 D
};

/// The springback to expect of annealed tube on a hand bender before any bend has been measured.
/// Good to about a third; see DEVELOPERS.md for where each figure comes from.
SpringbackPrior springback_prior(const Material& material, Length od, Length wall, Length form_radius);

}  // namespace tubewright
