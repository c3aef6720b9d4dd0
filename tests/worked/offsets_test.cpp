// Offsets and rolling offsets from pipefitting texts. They give the travel from corner to corner; the
// tube's own length is one gain shorter at each bend.
#include <catch2/catch.hpp>

#include "bench/samples.h"

using namespace tubewright;

namespace {

Route through(const std::vector<Eigen::Vector3d>& inches) {
    std::vector<Eigen::Vector3d> points;
    for (const auto& point : inches) points.push_back(point * 25.4);
    return route_through(points, RouteForm::points);
}

}  // namespace

TEST_CASE("a 45 degree offset of 12 in travels 16.968 in") {
    // Industrial maintenance training course, pipefitting text, figure 1-11: 12 x 1.414 = 16.968; exact 16.9706.
    const Route route = through({{0, 0, 0}, {20, 0, 0}, {32, 12, 0}, {52, 12, 0}});
    CHECK(route.bends[0].angle.deg == Approx(45));
    CHECK(route.runs[1].inch() == Approx(16.968).margin(0.003));
    CHECK(route.runs[1].inch() == Approx(16.9706).margin(0.00005));
    CHECK(route.bends[1].rotation.deg == Approx(180));
}

TEST_CASE("a 60 degree offset of 12 in advances 6.9288 in and travels 13.8564 in") {
    // Plumbing formula sheet "Formula for Figuring Angle Measurement", page 3: 12 x 0.5774 and 12 x 1.1547.
    const Route route = through({{0, 0, 0}, {20, 0, 0}, {26.9282, 12, 0}, {46, 12, 0}});
    CHECK(route.bends[0].angle.deg == Approx(60).margin(0.001));
    CHECK(route.runs[1].inch() == Approx(13.8564).margin(0.0005));
}

TEST_CASE("a rolling offset of 10 by 12 in at 45 degrees: true offset 15.6205, travel 22.0907") {
    // Set-up: industrial maintenance training course, pipefitting text, figure 1-12. The answer is the identity
    // sqrt(10^2 + 12^2) and that times sqrt 2.
    const double offset = std::hypot(10, 12);
    CHECK(offset == Approx(15.6205).margin(0.00005));
    const Route route = through({{0, 0, 0}, {30, 0, 0}, {30 + offset, 10, 12}, {90, 10, 12}});
    CHECK(route.bends[0].angle.deg == Approx(45));
    CHECK(route.runs[1].inch() == Approx(22.0907).margin(0.00005));
    CHECK(route.bends[1].rotation.deg == Approx(180));
}

TEST_CASE("a rolling offset of 30 5/8 by 17 5/8 in: true offset 35.33456") {
    // Apprentice pipefitter notes, "Rolling Offsets" (2011); travel 49.9706 exactly (50.02 there, from a 35 3/8
    // taken off the tape).
    const double offset = std::hypot(30.625, 17.625);
    CHECK(offset == Approx(35.33456).margin(0.00001));
    const Route route = through({{0, 0, 0}, {60, 0, 0}, {60 + offset, 30.625, 17.625}, {150, 30.625, 17.625}});
    CHECK(route.runs[1].inch() == Approx(49.9706).margin(0.0001));
}

TEST_CASE("offsets with their real radius: run, straight between and developed length") {
    // Identities worked out apart from this program: developed = run + offset tan(a/2) - 2 gain.
    struct Row { double radius, offset, angle, run, travel, straight, developed; };
    const Row rows[]{
        {0.65625, 2, 45, 12, 2.828427, 2.284772, 12.771952},
        {0.65625, 2, 30, 12, 4.000000, 3.648317, 12.519755},
        {1.3125, 3, 45, 18, 4.242641, 3.155330, 19.129690},
    };
    for (const Row& row : rows) {
        INFO("radius " << row.radius << ", angle " << row.angle);
        const double advance = row.offset / std::tan(row.angle * std::acos(-1.0) / 180), lead = (row.run - advance) / 2;
        Line line = line_of({}, {});
        line.bender.radius = Length{row.radius * 25.4};
        line.route = through({{0, 0, 0}, {lead, 0, 0}, {lead + advance, row.offset, 0}, {row.run, row.offset, 0}});
        const Layout laid = layout(line, {});
        CHECK(line.route.runs[1].inch() == Approx(row.travel).margin(5.1e-7));
        CHECK(laid.part.straights[1].inch() == Approx(row.straight).margin(5.1e-7));
        CHECK(laid.cut_length.inch() == Approx(row.developed).margin(5.1e-7));
    }
}
