#include "bench/springback.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace tubewright {
namespace {

constexpr double pi = std::numbers::pi;

/// A solid round bar of radius q with flow stress Y and an elastic core of half height c.
// c >= q :  M = (Y/c) pi q^4 / 4
// c <  q :  M = 4 { (Y/c) [ (q^4/8) asin(c/q) - (c/8)(q^2 - 2 c^2) w ] + Y w^3/3 },  w = sqrt(q^2 - c^2)
// Derived by integrating stress * y over the section; plane sections stay plane.
double bar_moment(double q, double c, double yield) {
    if (c >= q) return yield / c * pi * std::pow(q, 4) / 4;
    const double w = std::sqrt(q * q - c * c);
    const double core = std::pow(q, 4) / 8 * std::asin(c / q) - c / 8 * (q * q - 2 * c * c) * w;
    return 4 * (yield / c * core + yield * w * w * w / 3);
}

double cube(double x) { return x * x * x; }

/// Share of the curved tube's extra flexibility that acts; the rest is held round by the straight legs.
/// Our estimate, not checked against measurements.
constexpr double legs_hold = 0.5;
/// Chord modulus after straining over the elastic modulus: 10 to 20 % loss, from memory.
constexpr double modulus_left = 0.90;
/// On a form so wide for its tube the bend would be half elastic and the power law out of its depth. No
/// bender of any groove comes near; a wrong groove is stopped by a finding of its own.
constexpr double most_ratio = 0.5;
/// Lever arm of the straight legs in tube diameters: our estimate.
constexpr double leg_arm_od = 1.5;

}  // namespace

Angle set_angle(const Springback& springback, Angle target) { return (1 + springback.growth) * target + springback.zero; }

Angle released(const Springback& springback, Angle set) { return (1 / (1 + springback.growth)) * (set - springback.zero); }

Angle on_lever(Angle set) { return {std::floor(set.deg * 2 + tolerance::arithmetic) / 2}; }

Length finished_radius(const Springback& springback, Length form_radius) { return (1 + springback.growth) * form_radius; }

double plastic_moment(Length od, Length wall, double yield_mpa) {
    return yield_mpa * (cube(od.mm) - cube(od.mm - 2 * wall.mm)) / 6;
}

double elastic_plastic_moment(Length od, Length wall, Length radius, double modulus_mpa, double yield_mpa) {
    const double core = yield_mpa * radius.mm / modulus_mpa;
    return bar_moment(od.mm / 2, core, yield_mpa) - bar_moment(od.mm / 2 - wall.mm, core, yield_mpa);
}

double power_law_moment(Length od, Length wall, Length radius, double strength_mpa, double exponent) {
    const double n = exponent, outer = od.mm / 2, inner = outer - wall.mm;
    const double rings = (std::pow(outer, n + 3) - std::pow(inner, n + 3)) / (n + 3);
    return strength_mpa * std::pow(radius.mm, -n) * rings * 2 * std::beta(n / 2 + 1, 0.5);
}

double second_moment(Length od, Length wall) {
    return pi * (std::pow(od.mm, 4) - std::pow(od.mm - 2 * wall.mm, 4)) / 64;
}

SpringbackPrior springback_prior(const Material& material, Length od, Length wall, Length form_radius) {
    assert(!material.curves.empty());
    SpringbackPrior prior{};
    // c = R M / (E I), the share of the bend that the elastic unloading of its own moment takes back
    for (const FlowCurve& curve : material.curves)
        prior.beam_ratio += form_radius.mm * power_law_moment(od, wall, form_radius, curve.strength_mpa, curve.exponent) /
                            (material.elastic_modulus_mpa * second_moment(od, wall));
    prior.beam_ratio /= static_cast<double>(material.curves.size());
    // von Karman 1911, from memory: a curved tube goes oval on unloading and is softer by k
    const double r = (od.mm - wall.mm) / 2, h = wall.mm * form_radius.mm / (r * r);
    prior.curved_tube = h;
    prior.flexibility = (10 + 12 * h * h) / (1 + 12 * h * h);
    prior.flexibility_used = 1 + legs_hold * (prior.flexibility - 1);
    prior.ratio = std::min(prior.beam_ratio * prior.flexibility_used / modulus_left, most_ratio);
    prior.line.growth = prior.ratio / (1 - prior.ratio);
    // The legs between tangent points and grips unload too: c / 0.90 * arm / R, in radians. No ovalling there.
    const double legs = prior.beam_ratio / modulus_left * leg_arm_od * od.mm / form_radius.mm;
    prior.line.zero = {legs * 180 / pi};
    return prior;
}

}  // namespace tubewright
