#pragma once
// What the tube is made of.

#include <string>
#include <vector>

namespace tubewright {

/// One published flow curve, stress = strength * strain^exponent, and where it was published.
struct FlowCurve {
    double strength_mpa;
    double exponent;
    std::string source;
    bool operator==(const FlowCurve&) const = default;
};

/// `least_radius_od` and `usual_radius_od` are bend radii to the tube's centre over the outside
/// diameter: below the first it can't be bent, below the second it wants care.
struct Material {
    std::string id, name;
    double elastic_modulus_mpa = 0;
    std::string elastic_source;
    std::vector<FlowCurve> curves;  ///< at least one
    double least_radius_od = 0, usual_radius_od = 0;
    std::string radius_source;
    std::vector<std::string> advice;  ///< sentences for the person cutting and bending it
    bool operator==(const Material&) const = default;
};

}  // namespace tubewright
