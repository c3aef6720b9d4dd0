#include "scene/bender_solids.h"

#include <catch2/catch.hpp>

#include "scene/surfaces.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

BenderShape shape(const SetUp& set_up, double offset) { return {stance(set_up), 15, 5, 12, offset}; }

template <class Look>
void for_all_stands(const Look& look) {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down}) look(SetUp{hook, swing});
}

}  // namespace

TEST_CASE("every part of the bender is closed and faces outward, however it stands and wherever its mark is") {
    for_all_stands([](const SetUp& set_up) {
        for (const double offset : {-20.0, 0.0, 14.0, 40.0}) {
            const BenderShape bender = shape(set_up, offset);
            std::vector<Mesh> meshes = bender_solids(bender);
            for (const auto& more : {bender_foot(bender, -60), sweep_arrow(bender, {4}, {93}), sweep_arrow(bender, {4}, {5})})
                meshes.insert(meshes.end(), more.begin(), more.end());
            for (const Mesh& mesh : meshes) {
                INFO("ink " << static_cast<int>(mesh.ink) << ", offset " << offset);
                CHECK(not_closed(mesh) == "");
                CHECK(not_outward(mesh) == "");
            }
        }
    });
}

TEST_CASE("the reference mark's tip lies at its offset, outside the tube on the lever's side") {
    for_all_stands([](const SetUp& set_up) {
        for (const double offset : {-20.0, 0.0, 14.0, 40.0}) {
            const BenderShape bender = shape(set_up, offset);
            const Vector3d tip = bender.place(offset, -0.56 * 5, 0.02 * 5);
            double nearest = 1e9;
            for (const Mesh& mesh : bender_solids(bender))
                if (mesh.ink == Ink::reference_mark)
                    for (const Vertex& vertex : mesh.vertices) nearest = std::min(nearest, (vertex.at.cast<double>() - tip).norm());
            CHECK(nearest < 1e-4);
        }
    });
}

TEST_CASE("the form's groove leaves the tube its place") {
    // Nothing of the form is nearer than half a diameter, 2.5, to the tube's centre line: a circle of radius 15
    // about the form's axis. The rim stops short of it, at 15 - 1.
    const BenderShape bender = shape({HookHand::left, Swing::away}, 0);
    for (const Mesh& mesh : bender_solids(bender)) {
        if (mesh.ink != Ink::form) continue;
        for (const Vertex& vertex : mesh.vertices) {
            const double out = std::hypot(vertex.at.x(), vertex.at.y() - 15.0), high = vertex.at.z();
            CHECK(std::hypot(out - 15, high) >= 2.5 - 1e-4);
            CHECK(out <= 14 + 1e-4);
        }
    }
}

TEST_CASE("a lever at 90 degrees points along the swing") {
    // About the form's centre (0, 15): the tangent point (0, 0) comes to (15, 15) with a = x, w = y.
    const BenderShape bender = shape({HookHand::left, Swing::away}, 0);
    CHECK((bender.swung({0, 0, 0}, {90}) - Vector3d(15, 15, 0)).norm() == Approx(0).margin(1e-9));
    // Hook right, swing up: a = -x, w = z; it comes to (-15, 0, 15).
    const BenderShape other = shape({HookHand::right, Swing::up}, 0);
    CHECK((other.swung({0, 0, 0}, {90}) - Vector3d(-15, 0, 15)).norm() == Approx(0).margin(1e-9));
}
