#include "scene/card_scene.h"

#include <catch2/catch.hpp>

#include "scene/camera.h"
#include "scene/surfaces.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

/// Tube of 10 on a radius of 30, a bender of easy numbers.
Bender card() {
    Bender bender;
    bender.tube_od = Length{10};
    bender.radius = Length{30};
    bender.max_angle = Angle{180};
    bender.marks = {{"0", {}}};
    bender.hook_straight = Length{40};
    bender.lever_straight = Length{50};
    bender.body = {{"block", Stands::fixed, Block{{-40, -20, -8}, {-10, -6, 8}}},
                   {"arm", Stands::lever, Block{{10, -20, -8}, {60, -6, 8}}},
                   {"handle", Stands::lever, Cylinder{{60, -13, 0}, {160, -13, 0}, Length{4}}},
                   {"bench top", Stands::bench, HalfSpace{{0, 0, -50}, {0, 0, -1}}},
                   {"plank", Stands::bench, Block{{-5000, 0, -40}, {5000, 20, -30}}}};
    return bender;
}

Bounds bounds_of(const Mesh& mesh) {
    Bounds bounds;
    bounds.take_in(mesh);
    return bounds;
}

Bounds bounds_of_body(const Scene& scene, const Bender& bender, std::size_t i) { return bounds_of(scene.meshes[scene.meshes.size() - bender.body.size() + i]); }

void check_box(const Bounds& bounds, const Vector3d& low, const Vector3d& high) {
    INFO(bounds.low.transpose() << " to " << bounds.high.transpose());
    CHECK((bounds.low - low).norm() < 1e-3);
    CHECK((bounds.high - high).norm() < 1e-3);
}

}  // namespace

TEST_CASE("every solid of a card's picture is closed and faces outward, however the bender stands") {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down})
            for (const double lever : {0.0, 90.0}) {
                const Scene scene = card_scene(card(), {hook, swing}, {{lever}, 1});
                REQUIRE(scene.meshes.size() >= 9);  // four stretches of tube or five, five solids
                for (const Mesh& mesh : scene.meshes) {
                    CHECK(not_closed(mesh) == "");
                    CHECK(not_outward(mesh) == "");
                }
            }
}

TEST_CASE("solids lie where the card says; those of the lever turn with it about the form's centre") {
    // Hook left, swing away: the bender's frame is the operator's.
    const Bender bender = card();
    const Scene before = card_scene(bender, {}, {}), after = card_scene(bender, {}, {{90}, {}});
    check_box(bounds_of_body(before, bender, 0), {-40, -20, -8}, {-10, -6, 8});
    check_box(bounds_of_body(after, bender, 0), {-40, -20, -8}, {-10, -6, 8});
    check_box(bounds_of_body(before, bender, 1), {10, -20, -8}, {60, -6, 8});
    // A quarter turn about (0, 30): (x, y) goes to (30 - y, 30 + x).
    check_box(bounds_of_body(after, bender, 1), {36, 40, -8}, {50, 90, 8});
    check_box(bounds_of_body(after, bender, 2), {39, 90, -4}, {47, 190, 4});
}

TEST_CASE("hook on the right turns the body with the bender and leaves the bench where it is") {
    const Bender bender = card();
    const Scene scene = card_scene(bender, {HookHand::right, Swing::away}, {});
    // The axis runs to the left: x changes its sign, and with it z.
    check_box(bounds_of_body(scene, bender, 0), {10, -20, -8}, {40, -6, 8});
    CHECK(bounds_of_body(scene, bender, 4).high.z() == Approx(-30).margin(1e-3));
    CHECK(bounds_of_body(scene, bender, 4).low.z() == Approx(-40).margin(1e-3));
}

TEST_CASE("a half space is a plate on its plane, larger than the bender; a long plank is cut off round it") {
    const Bender bender = card();
    const Scene scene = card_scene(bender, {}, {});
    const Bounds plate = bounds_of_body(scene, bender, 3), plank = bounds_of_body(scene, bender, 4);
    CHECK(plate.high.z() == Approx(-50).margin(1e-3));
    CHECK(plate.low.z() == Approx(-60).margin(1e-3));  // as thick as the tube
    CHECK(plate.low.x() < scene.bounds.low.x());
    CHECK(plate.high.x() > scene.bounds.high.x());
    CHECK(plank.low.x() < scene.bounds.low.x());
    CHECK(plank.high.x() < scene.bounds.high.x() + 0.2 * scene.bounds.size());
}

TEST_CASE("the straights that hook and lever need have an ink of their own, as long as the card says") {
    for (const double lever : {0.0, 90.0}) {
        double hook = 0, swept = 0;
        for (const Mesh& mesh : card_scene(card(), {}, {{lever}, {}}).meshes) {
            if (mesh.ink == Ink::tube_done) hook = (bounds_of(mesh).high - bounds_of(mesh).low).maxCoeff();
            if (mesh.ink == Ink::tube_now) swept = (bounds_of(mesh).high - bounds_of(mesh).low).maxCoeff();
        }
        CHECK(hook == Approx(40).margin(1e-3));
        CHECK(swept == Approx(50).margin(0.5));  // its first ring leans with the end of the bend
    }
}

TEST_CASE("the picture of a card stands still while its lever swings, points out one solid, and holds its labels") {
    const Scene at_rest = card_scene(card(), {}, {}), swung = card_scene(card(), {}, {{90}, 2});
    CHECK(at_rest.bounds.low == swung.bounds.low);
    CHECK(at_rest.bounds.high == swung.bounds.high);
    CHECK_FALSE(at_rest.anchors.contains(Anchor::picked));
    CHECK((swung.anchors.at(Anchor::picked) - Vector3d(43, 140, 0)).norm() < 1e-3);  // of the handle, by the quarter turn above
    const auto seen = anchors_in(swung, camera_for(swung, 1.2));
    for (const Anchor anchor : {Anchor::hook_end, Anchor::lever_end, Anchor::form, Anchor::lever, Anchor::picked}) CHECK(seen.contains(anchor));
}
