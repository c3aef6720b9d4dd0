// Three whole lines through corner points in space, worked out apart from this program to four places:
// rotation is the signed angle between the normals of successive bend planes, right-handed about the way
// of travel; cut length is the sum of the legs less a gain of R (2 tan(a/2) - a) at each bend.
#include <catch2/catch.hpp>

#include "bench/samples.h"
#include "tube/centreline.h"

using namespace tubewright;

namespace {

struct Known {
    std::vector<Eigen::Vector3d> corners_in;
    double radius_in;
    std::vector<double> angles, rotations, straights_in;
    double cut_in;
    std::vector<std::array<double, 3>> start_middle_end_in;
};

const std::vector<Known> known{
    {{{0, 0, 0}, {6, 0, 0}, {6, 4, 0}, {6, 4, 5}, {10, 4, 5}}, 0.65625, {90, 90, 90}, {90, 90},
     {5.3438, 2.6875, 3.6875, 3.3438}, 18.1550,
     {{5.3438, 5.8592, 6.3746}, {9.0621, 9.5775, 10.0929}, {13.7804, 14.2958, 14.8113}}},
    {{{0, 0, 0}, {8, 0, 0}, {12, 3, 0}, {15, 3, 4}, {20, 3, 4}}, 0.65625, {36.8699, 61.3146, 53.1301}, {114.2277, 136.8476},
     {7.7812, 4.3923, 4.2829, 4.6719}, 22.8614,
     {{7.7812, 7.9924, 8.2035}, {12.5958, 12.9469, 13.2981}, {17.5810, 17.8852, 18.1895}}},
    {{{0, 0, 0}, {10, 0, 0}, {10, 8, 0}, {10, 8, 6}}, 1.3125, {90, 90}, {90},
     {8.6875, 5.3750, 4.6875}, 22.8733,
     {{8.6875, 9.7183, 10.7492}, {16.1242, 17.1550, 18.1858}}},
};

constexpr double printed = 0.00011;  // four places, and one unit for their sums

Line line_through(const Known& one) {
    std::vector<Eigen::Vector3d> points;
    for (const auto& corner : one.corners_in) points.push_back(corner * 25.4);
    Line line = line_of({}, {});
    line.bender.radius = Length{one.radius_in * 25.4};
    line.route = route_through(points, RouteForm::points);
    return line;
}

}  // namespace

TEST_CASE("three lines in space: angles, rotations, straights, cut length and bend marks") {
    for (const Known& one : known) {
        INFO("radius " << one.radius_in << ", cut " << one.cut_in);
        const Line line = line_through(one);
        const Layout laid = layout(line, {});
        REQUIRE(laid.part.bends.size() == one.angles.size());
        for (std::size_t i = 0; i < one.angles.size(); ++i) {
            INFO("bend " << i + 1);
            CHECK(laid.part.bends[i].angle.deg == Approx(one.angles[i]).margin(printed));
            if (i > 0) CHECK(laid.part.bends[i].rotation.deg == Approx(one.rotations[i - 1]).margin(printed));
            CHECK(laid.spans[i].start.inch() == Approx(one.start_middle_end_in[i][0]).margin(printed));
            CHECK((laid.spans[i].start + laid.spans[i].end).inch() / 2 == Approx(one.start_middle_end_in[i][1]).margin(printed));
            CHECK(laid.spans[i].end.inch() == Approx(one.start_middle_end_in[i][2]).margin(printed));
        }
        for (std::size_t i = 0; i < one.straights_in.size(); ++i)
            CHECK(laid.part.straights[i].inch() == Approx(one.straights_in[i]).margin(printed));
        CHECK(laid.cut_length.inch() == Approx(one.cut_in).margin(printed));
    }
}

TEST_CASE("three lines in space end where their last point is") {
    // Start at the first point, along the first leg; bend 1 turns towards the second leg.
    for (const Known& one : known) {
        INFO("radius " << one.radius_in);
        const auto& p = one.corners_in;
        Frame start;
        start.along = (p[1] - p[0]).normalized();
        const Eigen::Vector3d second = (p[2] - p[1]).normalized();
        start.aside = (second - second.dot(start.along) * start.along).normalized();
        const Frame end = far_end(layout(line_through(one), {}).part, start);
        CHECK((end.at / 25.4 - p.back()).norm() < 1e-9);
    }
}
