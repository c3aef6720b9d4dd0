// The length of the tube, measured along the curve by numerical quadrature. The curve is built here from
// the corners alone, each rounded by the circle that touches both legs; its length is the integral of the
// speed |dr/dt|, taken by GSL's adaptive Gauss-Kronrod rule with GSL's numerical derivative.
#include <gsl/gsl_deriv.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <random>

#include "bench/samples.h"
#include "tube/centreline.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

/// One rounded corner, swept by t from 0 to 1: the circle through both touching points.
struct Corner {
    Vector3d centre, from, across;
    double radius, turn;
    Vector3d at(double t) const { return centre + radius * (std::cos(t * turn) * from + std::sin(t * turn) * across); }
};

Corner rounded(const Vector3d& before, const Vector3d& corner, const Vector3d& after, double radius) {
    const Vector3d in = (before - corner).normalized(), out = (after - corner).normalized();
    const double half_opening = std::acos(in.dot(out)) / 2;
    Corner made;
    made.radius = radius;
    made.centre = corner + (in + out).normalized() * radius / std::sin(half_opening);
    const Vector3d touch_in = corner + in * radius / std::tan(half_opening), touch_out = corner + out * radius / std::tan(half_opening);
    made.from = (touch_in - made.centre).normalized();
    const Vector3d to = (touch_out - made.centre).normalized();
    made.turn = std::acos(made.from.dot(to));
    made.across = (to - made.from.dot(to) * made.from).normalized();
    return made;
}

struct Along {
    const Corner* corner;
    int axis;
};
double coordinate(double t, void* p) { const auto* a = static_cast<Along*>(p); return a->corner->at(t)[a->axis]; }

double speed(double t, void* p) {
    Vector3d rate;
    for (int axis = 0; axis < 3; ++axis) {
        Along along{static_cast<Corner*>(p), axis};
        gsl_function f{coordinate, &along};
        double error = 0;
        gsl_deriv_central(&f, t, 1e-3, &rate[axis], &error);
    }
    return rate.norm();
}

double length(Corner& corner) {
    gsl_integration_workspace* space = gsl_integration_workspace_alloc(200);
    gsl_function f{speed, &corner};
    double sum = 0, error = 0;
    gsl_integration_qag(&f, 0, 1, 0, 1e-8, 200, GSL_INTEG_GAUSS21, space, &sum, &error);
    gsl_integration_workspace_free(space);
    return sum;
}

}  // namespace

TEST_CASE("the length along the tube agrees with quadrature along the curve") {
    gsl_set_error_handler_off();
    std::mt19937 dice(20240604);
    std::uniform_real_distribution<double> place(-400, 400), radius(8, 30);
    int compared = 0;
    for (int i = 0; i < 300; ++i) {
        std::vector<Vector3d> points;
        for (int k = std::uniform_int_distribution<int>(3, 9)(dice); k > 0; --k) points.push_back({place(dice), place(dice), place(dice)});
        const double r = radius(dice);
        const Route route = route_through(points, RouteForm::points);
        if (std::any_of(route.bends.begin(), route.bends.end(), [](const Bend& bend) { return bend.angle.deg > 165; })) continue;
        const Part part = part_from(route, Length{r}, Length{4.76});
        if (std::any_of(part.straights.begin(), part.straights.end(), [](Length straight) { return straight.mm < 0; })) continue;
        double sum = 0;
        Vector3d last = points.front();
        for (std::size_t k = 1; k + 1 < points.size(); ++k) {
            Corner corner = rounded(points[k - 1], points[k], points[k + 1], r);
            sum += (corner.at(0) - last).norm() + length(corner);
            last = corner.at(1);
        }
        sum += (points.back() - last).norm();
        INFO("route " << i);
        CHECK(centreline_length(part).mm == Approx(sum).epsilon(1e-7));
        ++compared;
    }
    CHECK(compared > 100);
}
