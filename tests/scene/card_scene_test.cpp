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
                const Scene scene = card_scene(card(), {hook, swing}, {{lever}, 1, {{CardGauge::Of::hook}, {CardGauge::Of::lever}}});
                REQUIRE(scene.meshes.size() >= 13);  // four stretches of tube or five, five solids, two arrows
                for (const Mesh& mesh : scene.meshes) {
                    CHECK(not_closed(mesh) == "");
                    CHECK(not_outward(mesh) == "");
                }
            }
}

TEST_CASE("solids lie where the card says; those of the lever turn with it about the form's centre") {
    // Hook left, swing away: the bender's frame is the operator's.
    const Bender bender = card();
    const Scene before = card_scene(bender, {}, {}), after = card_scene(bender, {}, {{90}, {}, {}});
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
    CHECK(plank.high.x() < scene.bounds.high.x() + 11 * scene.bounds.size());  // not all its 5 m
}

TEST_CASE("the straights that hook and lever need have an ink of their own, as long as the card says") {
    for (const double lever : {0.0, 90.0}) {
        double hook = 0, swept = 0;
        for (const Mesh& mesh : card_scene(card(), {}, {{lever}, {}, {{CardGauge::Of::hook}, {CardGauge::Of::lever}}}).meshes) {
            if (mesh.ink == Ink::tube_done) hook = (bounds_of(mesh).high - bounds_of(mesh).low).maxCoeff();
            if (mesh.ink == Ink::tube_now) swept = (bounds_of(mesh).high - bounds_of(mesh).low).maxCoeff();
        }
        CHECK(hook == Approx(40).margin(1e-3));
        CHECK(swept == Approx(50).margin(0.5));  // its first ring leans with the end of the bend
    }
}

TEST_CASE("the picture of a card stands still while its lever swings") {
    for (const std::optional<std::size_t> picked : {std::optional<std::size_t>{}, std::optional<std::size_t>{2}}) {
        const Scene at_rest = card_scene(card(), {}, {{}, picked, {}}), swung = card_scene(card(), {}, {{90}, picked, {}});
        CHECK(at_rest.bounds.low == swung.bounds.low);
        CHECK(at_rest.bounds.high == swung.bounds.high);
    }
    const Scene swung = card_scene(card(), {}, {{90}, 2, {}});
    CHECK_FALSE(card_scene(card(), {}, {}).anchors.contains(Anchor::picked));
    CHECK((swung.anchors.at(Anchor::picked) - Vector3d(43, 140, 0)).norm() < 1e-3);  // of the handle, by the quarter turn above
}

TEST_CASE("one looks at tube and form; a long handle comes into the picture only when it is pointed out") {
    Bender bender = card();
    const Scene before = card_scene(bender, {}, {});
    std::get<Cylinder>(bender.body[2].shape).to.x() = 2000;
    const Scene longer = card_scene(bender, {}, {}), pointed_out = card_scene(bender, {}, {{}, 2, {}});
    CHECK(longer.bounds.low == before.bounds.low);
    CHECK(longer.bounds.high == before.bounds.high);
    CHECK(pointed_out.bounds.high.x() >= 2000);
    // Tube and form are in it: the hook's straight of 40, the lever's of 50 after a quarter turn on 30, the form's far side.
    const Camera camera = camera_for(longer, 1.2);
    for (const Vector3d& place : {Vector3d(-40, 0, 0), Vector3d(50, 0, 0), Vector3d(30, 80, 0), Vector3d(0, 60, 0)}) {
        const auto share = project(camera, place);
        REQUIRE(share);
        CHECK((share->x > 0 && share->x < 1 && share->y > 0 && share->y < 1));
    }
}

TEST_CASE("a number's arrow runs where it is measured") {
    using Of = CardGauge::Of;
    const auto middle = [](const Bender& bender, const SetUp& set_up, const CardLook& look, Anchor anchor = Anchor::gauge_1) { return card_scene(bender, set_up, look).anchors.at(anchor); };
    const auto same = [](const Vector3d& a, const Vector3d& b) { INFO(a.transpose() << " and " << b.transpose()); CHECK((a - b).norm() < 1e-6); };
    Bender bender = card();
    bender.marks.push_back({"L", Length{24}});
    same(middle(bender, {}, {{}, {}, {{Of::radius}}}), {0, 15, 0});
    same(middle(bender, {}, {{}, {}, {{Of::hook}}}), {-20, 0, 0});
    same(middle(bender, {}, {{}, {}, {{Of::lever}}}), {25, 0, 0});
    same(middle(bender, {}, {{90}, {}, {{Of::lever}}}), {30, 55, 0});  // it begins where the quarter turn ends, at (30, 30)
    same(middle(bender, {}, {{}, {}, {{Of::mark, 1}}}), {12, 0, 0});
    // The block's far corner (-10, -6, 8): along the tube, then to the swing, then across.
    const CardLook corner{{}, 0, {{Of::solid, 3}, {Of::solid, 4}, {Of::solid, 5}}};
    same(middle(bender, {}, corner), {-5, 0, 0});
    same(middle(bender, {}, corner, Anchor::gauge_2), {-10, -3, 0});
    same(middle(bender, {}, corner, Anchor::gauge_3), {-10, -6, 4});
    // Hook on the right: along the tube is to the left, across is down.
    same(middle(bender, {HookHand::right, Swing::away}, corner), {5, 0, 0});
    same(middle(bender, {HookHand::right, Swing::away}, corner, Anchor::gauge_3), {10, -6, -4});
    // The bench's own numbers stay right, away and up.
    same(middle(bender, {HookHand::right, Swing::away}, {{}, 4, {{Of::solid, 2}}}), {-5000, 0, -20});
    // A number that is 0, and an angle, have no arrow.
    same(middle(bender, {}, {{}, {}, {{Of::mark, 0}}}), {0, 0, 0});  // where the bend starts: a place, and no arrow
    CHECK(card_scene(bender, {}, {{}, {}, {{Of::mark, 99}, {Of::max_angle}}}).anchors.empty());
}

TEST_CASE("the bench top is where the card's solid says, as wide as that, and bare when pointed out") {
    Bender bender = card();
    bender.body = {{"bench top", Stands::bench, Block{{-400, 5, -70}, {300, 600, -60}}}};
    const Scene scene = card_scene(bender, {}, {});
    CHECK(scene.bench_top_z == Approx(-60));
    REQUIRE(scene.bench_top);
    CHECK((scene.bench_top->low - Eigen::Vector2d(-400, 5)).norm() < 1e-3);
    CHECK((scene.bench_top->high - Eigen::Vector2d(300, 600)).norm() < 1e-3);
    const Scene bare = card_scene(bender, {}, {{}, 0, {}});
    REQUIRE(bare.bench_top);
    CHECK(bare.bench_top->low == bare.bench_top->high);  // no face is drawn over it
    CHECK(bare.meshes.back().ink == Ink::picked);
    bender.body[0].shape = Block{{-30, -30, -70}, {30, 30, -60}};  // a vise
    CHECK_FALSE(card_scene(bender, {}, {}).bench_top);
}
