#include "bench/springback.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

// K and n: Callister, Fundamentals of Materials Science, 2nd ed., p. 199 (304: 1400 MPa, 0.44; low-carbon
// steel: 600 MPa, 0.21), as quoted in an encyclopedia; the lower sets and E from memory.
const Material low_carbon{"steel-low-carbon", "low-carbon steel", 207000, "from memory", {{600, 0.21, ""}, {530, 0.26, ""}}, 2, 3, "", {}};

/// The moment by adding strips: 2 * integral of stress * y * width. `hollow` is taken away.
template <class Stress>
double moment_by_strips(double od, double wall, double radius, Stress stress) {
    const auto half_width = [](double r, double y) { return y < r ? std::sqrt(r * r - y * y) : 0.0; };
    const double outer = od / 2, inner = outer - wall;
    const int strips = 400000;
    double sum = 0;
    for (int i = 0; i < strips; ++i) {
        const double y = outer * (i + 0.5) / strips;
        sum += stress(y / radius) * y * 2 * (half_width(outer, y) - half_width(inner, y)) * outer / strips;
    }
    return 2 * sum;
}

}  // namespace

TEST_CASE("moments agree with adding up strips of the section") {
    const Length od = 9.525_mm, wall = 0.889_mm, radius = 23.8125_mm;
    const double power = moment_by_strips(od.mm, wall.mm, radius.mm, [](double e) { return 1400 * std::pow(e, 0.44); });
    CHECK(power_law_moment(od, wall, radius, 1400, 0.44) == Approx(power).epsilon(1e-6));
    const double plastic = moment_by_strips(od.mm, wall.mm, radius.mm, [](double) { return 500.0; });
    CHECK(plastic_moment(od, wall, 500) == Approx(plastic).epsilon(1e-6));
    for (const double r : {23.8, 300.0, 2000.0, 5000.0}) {
        INFO("radius " << r);
        const double mixed = moment_by_strips(od.mm, wall.mm, r, [](double e) { return std::min(193000 * e, 500.0); });
        CHECK(elastic_plastic_moment(od, wall, {r}, 193000, 500) == Approx(mixed).epsilon(1e-6));
    }
}

TEST_CASE("with no hardening the power law is perfectly plastic, with an exponent of 1 it is elastic") {
    CHECK(power_law_moment(9.525_mm, 0.889_mm, 23.8_mm, 500, 0) == Approx(plastic_moment(9.525_mm, 0.889_mm, 500)));
    // M = K I / R
    CHECK(power_law_moment(9.525_mm, 0.889_mm, 23.8_mm, 500, 1) == Approx(500 * second_moment(9.525_mm, 0.889_mm) / 23.8));
}

TEST_CASE("a hardly bent tube is elastic, E I / R") {
    CHECK(elastic_plastic_moment(9.525_mm, 0.889_mm, 1e6_mm, 193000, 500) == Approx(193000 * second_moment(9.525_mm, 0.889_mm) / 1e6));
}

TEST_CASE("the prior of 3/8 x .035 stainless on a 15/16 in radius, in full precision") {
    // Worked out apart from this program, to 8 places; the moment also by a strip sum: 39.07214 N m.
    const Material material = stainless();
    const Length od = 0.375_in, wall = 0.035_in, radius = 0.9375_in;
    CHECK(second_moment(od, wall) / std::pow(25.4, 4) == Approx(5.45937137e-4).epsilon(1e-8));
    CHECK(power_law_moment(od, wall, radius, 1400, 0.44) / 1000 == Approx(39.0721).margin(0.00005));
    CHECK(radius.mm * plastic_moment(od, wall, 500) / (193000 * second_moment(od, wall)) == Approx(0.01806336).margin(5e-9));
    const SpringbackPrior prior = springback_prior(material, od, wall, radius);
    CHECK(prior.beam_ratio == Approx(0.02008161).margin(5e-9));
    CHECK(prior.curved_tube == Approx(1.13538062).margin(5e-9));
    CHECK(prior.flexibility == Approx(1.54647895).margin(5e-9));
    CHECK(prior.flexibility_used == Approx(1.27323947).margin(1e-8));
    CHECK(prior.ratio == Approx(0.02840966).margin(5e-9));
    CHECK(prior.line.growth == Approx(0.02924037).margin(5e-9));
    CHECK(prior.line.zero.deg == Approx(0.76706088).margin(5e-9));
}

TEST_CASE("priors by tube, material and radius") {
    // Worked out apart from this program; growth to 5 places, zero to 3, the springback at 90 to 2.
    struct Row { double od, wall, radius; bool stainless; double growth, zero, at_90; };
    const Row rows[]{
        {0.1875, 0.028, 0.5625, true, 0.02765, 0.727, 3.22}, {0.1875, 0.028, 0.5625, false, 0.01715, 0.456, 2.00},
        {0.25, 0.035, 0.5625, true, 0.02484, 0.823, 3.06},   {0.25, 0.035, 0.75, true, 0.02782, 0.724, 3.23},
        {0.25, 0.035, 0.75, false, 0.01723, 0.453, 2.00},    {0.375, 0.035, 1.125, true, 0.03036, 0.707, 3.44},
        {0.375, 0.035, 1.125, false, 0.01860, 0.438, 2.11},  {0.5, 0.049, 1.5, true, 0.02989, 0.709, 3.40},
        {0.5, 0.049, 1.5, false, 0.01834, 0.440, 2.09},
    };
    for (const Row& row : rows) {
        INFO(row.od << " on " << row.radius << (row.stainless ? " stainless" : " steel"));
        const Springback line = springback_prior(row.stainless ? stainless() : low_carbon, {row.od * 25.4}, {row.wall * 25.4}, {row.radius * 25.4}).line;
        CHECK(line.growth == Approx(row.growth).margin(0.0000051));
        CHECK(line.zero.deg == Approx(row.zero).margin(0.00051));
        CHECK(set_angle(line, 90_deg).deg - 90 == Approx(row.at_90).margin(0.0051));
    }
}

TEST_CASE("springback rises with strength and with angle, and falls with stiffness") {
    const Springback usual = springback_prior(stainless(), 0.1875_in, 0.028_in, 0.5625_in).line;
    Material strong = stainless(), stiff = stainless();
    for (FlowCurve& curve : strong.curves) curve.strength_mpa *= 1.1;
    stiff.elastic_modulus_mpa *= 1.1;
    CHECK(springback_prior(strong, 0.1875_in, 0.028_in, 0.5625_in).line.growth > usual.growth);
    CHECK(springback_prior(stiff, 0.1875_in, 0.028_in, 0.5625_in).line.growth < usual.growth);
    CHECK(set_angle(usual, 120_deg) - 120_deg > set_angle(usual, 45_deg) - 45_deg);
}

TEST_CASE("a hair of tube on a wheel of a form gives numbers that still make sense") {
    const Springback line = springback_prior(stainless(), 0.5_mm, 0.05_mm, 5000_mm).line;
    CHECK(line.growth > 0);
    CHECK(line.growth <= 1);
}

TEST_CASE("the lever stops at the half degree below, never above") {
    CHECK(on_lever(Angle{93.49}).deg == 93);
    CHECK(on_lever(Angle{93.5}).deg == 93.5);
    CHECK(on_lever(Angle{93.99}).deg == 93.5);
    CHECK(on_lever(Angle{47}).deg == 47);
    CHECK(on_lever(Angle{0.1 * 3 * 5}).deg == 1.5);  // 1.5 with a rounding of the last digit
}

TEST_CASE("a pull of 92.5 for 90, with 2 percent of growth and 0.7 of play") {
    const Springback line{0.02, {0.7}};
    CHECK(set_angle(line, 90_deg).deg == Approx(92.5));           // 90 * 1.02 + 0.7
    CHECK(finished_radius(line, 1_in).inch() == Approx(1.02));    // play in the legs does not open the bend itself
}
