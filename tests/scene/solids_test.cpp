#include "scene/solids.h"

#include <catch2/catch.hpp>
#include <numbers>

#include "scene/surfaces.h"
#include "scene/tube_solids.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

Tube bar() { return {Length{10}, Length{5}, ""}; }    // no bore: every vertex lies on the outside
Tube pipe() { return {Length{10}, Length{1}, ""}; }

Stretch straight(const Frame& start, double length) {
    Stretch stretch;
    stretch.start = start;
    stretch.length = Length{length};
    return stretch;
}

/// Along x, then a quarter bend of this radius towards y, then straight on.
std::vector<Stretch> an_l(double first, double radius, double second) {
    Part part;
    part.straights = {Length{first}, Length{second}};
    part.bends = {{{90}, {}}};
    part.radius = Length{radius};
    return centreline(part);
}

}  // namespace

TEST_CASE("a straight tube is as long and as thick as it should be") {
    const Mesh mesh = tube_solid({straight({}, 100)}, pipe(), Ink::tube);
    Bounds bounds;
    bounds.take_in(mesh);
    CHECK(bounds.low.x() == Approx(0).margin(1e-4));
    CHECK(bounds.high.x() == Approx(100).margin(1e-4));
    // 28 sides: corners lie right on the y and z axes.
    CHECK(bounds.high.y() - bounds.low.y() == Approx(10).margin(1e-4));
    CHECK(bounds.high.z() - bounds.low.z() == Approx(10).margin(1e-4));
    CHECK(not_closed(mesh) == "");
    CHECK(not_outward(mesh) == "");
}

TEST_CASE("the bounds of an L are those worked out by hand") {
    // 100 along x, a quarter turn on radius 30, 50 along y; 10 thick.
    //   x: 0 to 100 + 30 + 5 = 135;  y: -5 to 30 + 50 = 80;  z: -5 to 5
    Bounds bounds;
    bounds.take_in(tube_solid(an_l(100, 30, 50), bar(), Ink::tube));
    CHECK(bounds.low.isApprox(Vector3d(0, -5, -5), 1e-5));
    CHECK(bounds.high.isApprox(Vector3d(135, 80, 5), 1e-5));
}

TEST_CASE("a bent tube's normals point away from its centre line") {
    const std::vector<Stretch> stretches = an_l(40, 30, 25);
    const Mesh mesh = tube_solid(stretches, bar(), Ink::tube);
    CHECK(not_closed(mesh) == "");
    CHECK(not_outward(mesh) == "");
    // On the arc: centre of the bend at (40, 30), so the centre line's nearest place lies 30 from there.
    int looked_at = 0;
    for (const Vertex& vertex : mesh.vertices) {
        const Vector3d at = vertex.at.cast<double>();
        if (at.x() <= 41 || at.y() >= 29) continue;
        const Vector3d centre(40, 30, 0), flat(at.x(), at.y(), 0);
        const Vector3d on_line = centre + 30 * (flat - centre).normalized();
        CHECK((at - on_line).normalized().dot(vertex.normal.cast<double>()) > 0.99);
        ++looked_at;
    }
    CHECK(looked_at > 100);
}

TEST_CASE("solids hold what their formulas say") {
    SECTION("a straight bar: a 28-sided prism, 28/2 r^2 sin(360/28) times its length") {
        const double section = 14 * 25 * std::sin(2 * std::numbers::pi / 28);
        CHECK(volume(tube_solid({straight({}, 60)}, bar(), Ink::tube)) == Approx(section * 60).epsilon(1e-5));
    }
    SECTION("a turned cone: a third of base times height") {
        const Mesh cone = turned({}, {{0, 0}, {6, 0}, {0.001, 9}, {0, 9}}, Ink::form);
        const double base = 14 * 36 * std::sin(2 * std::numbers::pi / 28);
        CHECK(volume(cone) == Approx(base * 9 / 3).epsilon(1e-3));
    }
    SECTION("an extruded box, whichever way round its outline runs") {
        const std::vector<Vector3d> outline{{0, 0, 0}, {4, 0, 0}, {4, 3, 0}, {0, 3, 0}};
        CHECK(volume(extruded(outline, {0, 0, 2}, Ink::post)) == Approx(24));
        CHECK(volume(extruded(outline, {0, 0, -2}, Ink::post)) == Approx(24));
        CHECK(volume(extruded({outline.rbegin(), outline.rend()}, {0, 0, 2}, Ink::post)) == Approx(24));
    }
}

TEST_CASE("a rod with round ends is closed and reaches its radius beyond the path") {
    const Mesh mesh = rod({{0, 0, 0}, {20, 0, 0}, {30, 10, 0}}, 2, Ink::hook);
    CHECK(not_closed(mesh) == "");
    CHECK(not_outward(mesh) == "");
    Bounds bounds;
    bounds.take_in(mesh);
    CHECK(bounds.low.x() == Approx(-2).margin(0.02));  // the last ring lies just short of the pole
}

TEST_CASE("dashes and gaps add up to the path") {
    // 10 long in dashes of 2 and gaps of 1.5: dashes begin at 0, 3.5 and 7; the fourth would begin at 10.5.
    const std::vector<Mesh> dashes = dashed({{0, 0, 0}, {4, 0, 0}, {10, 0, 0}}, 0.5, 2, 1.5, Ink::after_pull);
    REQUIRE(dashes.size() == 3);
    for (std::size_t i = 0; i < dashes.size(); ++i) {
        Bounds bounds;
        bounds.take_in(dashes[i]);
        CHECK((bounds.low.x() + bounds.high.x()) / 2 == Approx(1 + 3.5 * static_cast<double>(i)).margin(1e-4));
        CHECK(not_closed(dashes[i]) == "");
    }
}

TEST_CASE("a surface with a triangle missing is not closed, and one inside out is not outward") {
    Mesh mesh = extruded({{0, 0, 0}, {4, 0, 0}, {4, 3, 0}, {0, 3, 0}}, {0, 0, 2}, Ink::post);
    Mesh inside_out = mesh;
    for (std::size_t i = 0; i < mesh.triangles.size(); i += 3) std::swap(inside_out.triangles[i], inside_out.triangles[i + 1]);
    CHECK(not_outward(inside_out) != "");
    CHECK(volume(inside_out) == Approx(-24));
    mesh.triangles.resize(mesh.triangles.size() - 3);
    CHECK(not_closed(mesh) != "");
}
