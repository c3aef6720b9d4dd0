#include "scene/scene.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "bench/samples.h"
#include "bench/stance.h"
#include "scene/camera.h"
#include "scene/surfaces.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

constexpr PictureKind all_kinds[] = {PictureKind::finished, PictureKind::marked, PictureKind::turned, PictureKind::pulled, PictureKind::checked};

Bounds of_ink(const Scene& scene, Ink ink) {
    Bounds bounds;
    for (const Mesh& mesh : scene.meshes)
        if (mesh.ink == ink) bounds.take_in(mesh);
    return bounds;
}

Sheet two_bends(double rotation, const SetUp& set_up = {}, const std::string& mark = "0") {
    SheetChoice choice;
    choice.set_up = set_up;
    choice.mark = mark;
    return bend_sheet(line_of({6, 6, 6}, {{90, 0}, {90, rotation}}), choice);
}

/// From a place to the nearest point of a line of straight pieces.
double distance_to(const std::vector<Vector3d>& path, const Vector3d& place) {
    double nearest = 1e9;
    for (std::size_t i = 1; i < path.size(); ++i) {
        const Vector3d way = path[i] - path[i - 1];
        const double along = way.squaredNorm() > 0 ? std::clamp((place - path[i - 1]).dot(way) / way.squaredNorm(), 0.0, 1.0) : 0;
        nearest = std::min(nearest, (place - path[i - 1] - along * way).norm());
    }
    return nearest;
}

double nearest_corner(const Scene& scene, Ink ink, const Vector3d& place) {
    double nearest = 1e9;
    for (const Mesh& mesh : scene.meshes)
        if (mesh.ink == ink)
            for (const Vertex& vertex : mesh.vertices) nearest = std::min(nearest, (vertex.at.cast<double>() - place).norm());
    return nearest;
}

}  // namespace

TEST_CASE("every surface of every picture is closed and faces outward") {
    std::mt19937 dice(41);
    std::uniform_real_distribution<double> leg(2, 30), angle(5, 170), rotation(-180, 180);
    for (int i = 0; i < 8; ++i) {  // both hands, all four swings
        SheetChoice choice;
        choice.set_up = SetUp{i % 2 ? HookHand::left : HookHand::right, static_cast<Swing>(i / 2 % 4)};
        choice.mark = i % 3 == 0 ? "L" : "0";
        const Sheet sheet = bend_sheet(line_of({leg(dice), leg(dice) + 8, leg(dice) + 8, leg(dice)}, {{angle(dice), 0}, {angle(dice), rotation(dice)}, {angle(dice), rotation(dice)}}), choice);
        for (const PictureKind kind : all_kinds) {
            const Scene scene = bench_scene(sheet, static_cast<std::size_t>(i) % sheet.steps.size(), kind);
            for (const Mesh& mesh : scene.meshes) {
                INFO("line " << i << ", kind " << static_cast<int>(kind) << ", ink " << static_cast<int>(mesh.ink));
                CHECK(not_closed(mesh) == "");
                CHECK(not_outward(mesh) == "");
            }
        }
    }
}

TEST_CASE("a line that can't be made as it stands still gives sound pictures") {
    // Straights too short or less than nothing, bends from 1 to 170 degrees, either end held.
    std::mt19937 dice(170);
    std::uniform_real_distribution<double> leg(0.1, 2), angle(1, 170), rotation(-180, 180);
    for (int i = 0; i < 24; ++i) {
        SheetChoice choice;
        choice.set_up = SetUp{i % 2 ? HookHand::left : HookHand::right, static_cast<Swing>(i / 2 % 4)};
        if (i % 3) choice.hook = i % 3 == 1 ? End::A : End::B;
        const Sheet sheet = bend_sheet(line_of({leg(dice), leg(dice), leg(dice)}, {{angle(dice), 0}, {angle(dice), rotation(dice)}}), choice);
        for (std::size_t step = 0; step < sheet.steps.size(); ++step)
            for (const PictureKind kind : all_kinds) {
                const Scene scene = bench_scene(sheet, step, kind);
                const Camera camera = camera_for(scene, 1.3);
                INFO("line " << i << ", step " << step << ", kind " << static_cast<int>(kind));
                CHECK(camera.eye.allFinite());
                CHECK(scene.bounds.size() < 2000);
                for (const Mesh& mesh : scene.meshes) {
                    bool finite = true;
                    for (const Vertex& vertex : mesh.vertices) finite = finite && vertex.at.allFinite() && vertex.normal.allFinite();
                    CHECK(finite);
                    CHECK(mesh.triangles.size() > 0);
                }
            }
    }
}

TEST_CASE("the ink mark lies at the reference mark's offset along the tube") {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down})
            for (const ReferenceMark& mark : small_bender().marks) {
                const Sheet sheet = two_bends(90, {hook, swing}, mark.name);
                for (std::size_t step = 0; step < 2; ++step) {
                    const Bounds ring = of_ink(bench_scene(sheet, step, PictureKind::marked), Ink::ink_mark);
                    REQUIRE_FALSE(ring.empty());
                    const Vector3d middle = (ring.low + ring.high) / 2, expected = mark.offset.mm * stance(sheet.set_up).axis;
                    CHECK((middle - expected).norm() == Approx(0).margin(1e-3));
                }
            }
}

TEST_CASE("the wrong-way twin lies at the mirrored roll") {
    // Rotation 90 with hook left and swing away: the made leg points down (see loaded_tube_test), its twin up.
    const Scene scene = bench_scene(two_bends(90), 1, PictureKind::turned);
    const Bounds twin = of_ink(scene, Ink::wrong_way), made = of_ink(scene, Ink::tube_done);
    REQUIRE_FALSE(twin.empty());
    CHECK(made.low.z() < -10);
    CHECK(twin.high.z() > 10);
    CHECK(twin.low.z() > -4);  // but for the tube's own thickness it is all above
    CHECK(scene.anchors.at(Anchor::wrong_way).z() > 10);
    // It belongs to the turn alone.
    CHECK(of_ink(bench_scene(two_bends(90), 1, PictureKind::pulled), Ink::wrong_way).empty());
    CHECK(of_ink(bench_scene(two_bends(90), 0, PictureKind::turned), Ink::wrong_way).empty());
}

TEST_CASE("in one plane the wrong way is the other side: a Z in place of a U") {
    // Rotation 0: the made leg points away, as the swing does; its own mirror image does too, and the mistake points toward the person.
    const Scene scene = bench_scene(two_bends(0), 1, PictureKind::turned);
    const Bounds twin = of_ink(scene, Ink::wrong_way), made = of_ink(scene, Ink::tube_done);
    REQUIRE_FALSE(twin.empty());
    CHECK(made.high.y() > 10);
    CHECK(twin.low.y() < -10);
    CHECK(twin.high.y() < 4);
}

TEST_CASE("the wrong way is seen apart from the right one, however the bender stands") {
    std::mt19937 dice(90210);
    std::uniform_real_distribution<double> angle(30, 110), rotation(-180, 180);
    int looked_at = 0;
    for (int i = 0; i < 160; ++i) {
        SheetChoice choice;
        choice.set_up = SetUp{i % 2 ? HookHand::left : HookHand::right, static_cast<Swing>(i / 2 % 4)};
        const Sheet sheet = bend_sheet(line_of({6, 6, 6}, {{angle(dice), 0}, {angle(dice), rotation(dice)}}), choice);
        const double roll = std::abs(sheet.steps[1].neighbour->leg_roll.deg);
        if (roll < 25 || roll > 155) continue;
        const Scene scene = bench_scene(sheet, 1, PictureKind::turned);
        const Camera camera = camera_for(scene, 1.3);
        const Vector3d twin = scene.anchors.at(Anchor::wrong_way), n = stance(sheet.set_up).normal;
        const Share wrong = *project(camera, twin), right = *project(camera, twin - 2 * twin.dot(n) * n);
        INFO("line " << i << ", roll " << roll << ", swing " << i / 2 % 4);
        CHECK(std::hypot(1.3 * (wrong.x - right.x), wrong.y - right.y) > 0.05);  // a twentieth of the picture's height
        ++looked_at;
    }
    CHECK(looked_at > 60);
}

TEST_CASE("what comes after the pull is dashed on the side of the swing") {
    for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down}) {
        const Scene scene = bench_scene(two_bends(90, {HookHand::left, swing}), 1, PictureKind::pulled);
        CHECK_FALSE(of_ink(scene, Ink::after_pull).empty());
        CHECK(scene.anchors.at(Anchor::after_pull).dot(stance({HookHand::left, swing}).swing) > 20);
        CHECK(scene.anchors.at(Anchor::after_pull).x() < 20);  // 90 degrees and a bit: no longer to the right
    }
}

TEST_CASE("the picture stands still between the moves of one bend") {
    const Sheet sheet = two_bends(90);
    const Bounds first = bench_scene(sheet, 1, PictureKind::marked).bounds;
    for (const PictureKind kind : {PictureKind::turned, PictureKind::pulled, PictureKind::checked}) {
        const Bounds bounds = bench_scene(sheet, 1, kind).bounds;
        CHECK(bounds.low == first.low);
        CHECK(bounds.high == first.high);
    }
}

TEST_CASE("bends of earlier steps are formed, the one in hand is straight until it is checked") {
    const Sheet sheet = two_bends(90);
    CHECK(of_ink(bench_scene(sheet, 0, PictureKind::pulled), Ink::tube_done).empty());
    CHECK_FALSE(of_ink(bench_scene(sheet, 1, PictureKind::pulled), Ink::tube_done).empty());
    const Bounds before = of_ink(bench_scene(sheet, 0, PictureKind::pulled), Ink::tube_now);
    const Bounds after = of_ink(bench_scene(sheet, 0, PictureKind::checked), Ink::tube_now);
    const double half = sheet.line.tube.od.mm / 2;
    CHECK(before.high.y() == Approx(half).margin(1e-3));
    // 90 degrees: a quarter circle ends at its radius along the swing.
    CHECK(after.high.y() == Approx(sheet.steps[0].finished_radius.mm).margin(1e-3));
}

TEST_CASE("all that labels point at can be seen, however the bender stands") {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down})
            for (std::size_t step = 0; step < 2; ++step) {
                const Sheet sheet = two_bends(90, {hook, swing});
                for (const PictureKind kind : all_kinds) {
                    const Scene scene = bench_scene(sheet, step, kind);
                    CHECK(anchors_in(scene, camera_for(scene, 1.3)).size() == scene.anchors.size());
                    const auto has = [&](Anchor anchor) { return scene.anchors.contains(anchor); };
                    CHECK((has(Anchor::hook_end) && has(Anchor::lever_end)));
                    CHECK(has(Anchor::after_pull) == (kind == PictureKind::pulled));
                }
            }
}

TEST_CASE("no leg of the finished part is seen end on") {
    for (const double rotation : {90.0, -90.0, 0.0, 45.0, 180.0, -60.0}) {
        const Sheet sheet = two_bends(rotation);
        const Scene scene = bench_scene(sheet, 0, PictureKind::finished);
        const Vector3d a = scene.anchors.at(Anchor::hook_end), b = scene.anchors.at(Anchor::lever_end), eyes = ahead(scene.outlook);
        INFO("rotation " << rotation);
        for (const Vector3d& leg : {Vector3d(scene.bends[0].path.front() - a), Vector3d(scene.bends[1].path.front() - scene.bends[0].path.back()), Vector3d(b - scene.bends[1].path.back())})
            CHECK(leg.normalized().cross(eyes).norm() > 0.5);  // at least 30 degrees off the line of sight
    }
}

TEST_CASE("a second pull begins at the bend as it reads") {
    const Sheet sheet = two_bends(90);
    const Pulled again{{80}, {95}};
    const Scene first = bench_scene(sheet, 0, PictureKind::pulled), second = bench_scene(sheet, 0, PictureKind::pulled, again);
    // The lever side then lies 80 degrees round from the axis, not along it: nothing of it reaches as far.
    CHECK(of_ink(second, Ink::tube_now).high.x() < of_ink(first, Ink::tube_now).high.x());
    CHECK(of_ink(second, Ink::after_pull).high.x() < of_ink(bench_scene(sheet, 0, PictureKind::pulled, Pulled{{30}, {40}}), Ink::after_pull).high.x());
}

TEST_CASE("the finished part keeps its hand") {
    // 6 in along, 90 degrees, 6 in, then 90 degrees at rotation 90. With u, v, w the three straights from A to B,
    // u x v . w is the same before and after it is laid down, and not its negative.
    for (const double rotation : {90.0, -90.0}) {
        const Sheet sheet = two_bends(rotation);
        const Scene scene = bench_scene(sheet, 0, PictureKind::finished);
        REQUIRE(scene.bends.size() == 2);
        const Vector3d a = scene.anchors.at(Anchor::hook_end), b = scene.anchors.at(Anchor::lever_end);
        const Vector3d u = scene.bends[0].path.front() - a, v = scene.bends[1].path.front() - scene.bends[0].path.back(), w = b - scene.bends[1].path.back();
        // In the part's own frame: u = x, the first bend turns towards y, v = y, and the index line then faces -x.
        // Rotation 90 about y from there: y x -x = z. So w = z, and x cross y . z = 1; for -90 it is -1.
        CHECK(u.cross(v).dot(w) * rotation > 0);
        CHECK(a.x() < b.x());
    }
}

TEST_CASE("the label of a bend points at the made neighbour, in every move and however the bender stands") {
    std::mt19937 dice(66);
    std::uniform_real_distribution<double> angle(30, 110), rotation(-180, 180);
    int looked_at = 0;
    for (int i = 0; i < 24; ++i) {
        SheetChoice choice;
        choice.set_up = SetUp{i % 2 ? HookHand::left : HookHand::right, static_cast<Swing>(i / 2 % 4)};
        if (i % 3) choice.hook = i % 3 == 1 ? End::A : End::B;
        const Sheet sheet = bend_sheet(line_of({5, 6, 7, 5}, {{angle(dice), 0}, {angle(dice), rotation(dice)}, {angle(dice), rotation(dice)}}), choice);
        for (std::size_t step = 0; step < sheet.steps.size(); ++step)
            for (const PictureKind kind : {PictureKind::marked, PictureKind::turned, PictureKind::pulled, PictureKind::checked}) {
                const Scene scene = bench_scene(sheet, step, kind);
                INFO("line " << i << ", step " << step << ", kind " << static_cast<int>(kind));
                REQUIRE(scene.anchors.contains(Anchor::bend) == sheet.steps[step].neighbour.has_value());
                if (!sheet.steps[step].neighbour) continue;
                const std::size_t neighbour = sheet.steps[step].neighbour->bend;
                bool was_made = false;
                for (std::size_t earlier = 0; earlier < step; ++earlier) was_made = was_made || sheet.steps[earlier].bend == neighbour;
                CHECK(was_made);
                const double half = sheet.line.tube.od.mm / 2;
                const Vector3d anchor = scene.anchors.at(Anchor::bend);
                for (const DrawnBend& drawn : scene.bends) {
                    const double away = distance_to(drawn.path, anchor);
                    if (drawn.bend == neighbour) CHECK(away == Approx(0).margin(1e-6));
                    else CHECK(away > half);
                }
                CHECK(nearest_corner(scene, Ink::tube_done, anchor) < 1.5 * half);  // and it is drawn as a made one
                ++looked_at;
            }
    }
    CHECK(looked_at > 100);
}

TEST_CASE("a tape in the picture of the part lies between the points that it is held to") {
    // Legs of 6, 4 and 3 in to the centre with square corners, a U: from end A to the corner of bend 2 it is sqrt(6^2 + 4^2) = 7.2111,
    // from end to end sqrt(3^2 + 4^2) = 5.
    const Sheet sheet = bend_sheet(line_of({6, 4, 3}, {{90, 0}, {90, 0}}));
    const auto taped = [&](Span span) {
        const Scene scene = part_scene(sheet, std::nullopt, span);
        return (scene.anchors.at(Anchor::gauge_2) - scene.anchors.at(Anchor::gauge_1)).norm() / 25.4;
    };
    CHECK(taped({0, 2}) == Approx(7.2111).margin(0.00005));
    CHECK(taped({0, 3}) == Approx(5));
    const Scene scene = part_scene(sheet, std::nullopt, Span{0, 3});
    CHECK((scene.anchors.at(Anchor::gauge_1) - scene.anchors.at(Anchor::hook_end)).norm() == Approx(0).margin(0.001));
    CHECK((scene.anchors.at(Anchor::gauge_2) - scene.anchors.at(Anchor::lever_end)).norm() == Approx(0).margin(0.001));
    CHECK_FALSE(of_ink(scene, Ink::gauge).empty());
    CHECK_FALSE(part_scene(sheet).anchors.contains(Anchor::gauge_1));
    CHECK_FALSE(part_scene(sheet, std::nullopt, Span{0, 9}).anchors.contains(Anchor::gauge_1));  // no such point
}

TEST_CASE("a tube that is half made is drawn and taped as it lies in the hand, on the outside of its corners") {
    // The U's bend 2 is still straight: 6 in to the corner, and past it what is left; od 3/16, half of it from the middle to the outside, square:
    // from end A to the outside corner of bend 1 sqrt((6 + 3/32)^2 + (3/32)^2) = 6.0945.
    const Sheet sheet = bend_sheet(line_of({6, 4, 3}, {{90, 0}, {90, 0}}));
    Part half = sheet.layout->part;
    half.bends[1].angle = {};
    const Scene scene = made_scene(sheet.line.tube, half, 1, Span{0, 1});
    CHECK((scene.anchors.at(Anchor::gauge_2) - scene.anchors.at(Anchor::gauge_1)).norm() / 25.4 == Approx(6.0945).margin(0.0001));
    CHECK_FALSE(of_ink(scene, Ink::gauge).empty());
    CHECK(scene.anchors.contains(Anchor::bend));
    // From end to end: 6 and all of what is past the corner, at right angles.
    const Length past = half.straights[1] + half.straights[2] + setback(half.radius, {90});
    CHECK((scene.anchors.at(Anchor::lever_end) - scene.anchors.at(Anchor::hook_end)).norm() / 25.4 == Approx(std::hypot(6, past.inch())).margin(0.001));
}

TEST_CASE("what is made lies over what is wanted as a fitter holds it, each in an ink of its own") {
    // A hook of 10, 8 and 10 in, its second bend 92: the ends come nearer by 10 sin 2 = 0.35 in.
    const Sheet sheet = bend_sheet(line_of({10, 8, 10}, {{90, 0}, {90, 0}}));
    const Part wanted = sheet.layout->part;
    Part made = wanted;
    made.bends[1].angle = Angle{92};
    const auto apart = [](const Scene& scene) { return (scene.anchors.at(Anchor::lever_end) - scene.anchors.at(Anchor::hook_end)).norm() / 25.4; };
    const Scene same = laid_over_scene(sheet.line.tube, wanted, wanted), over = laid_over_scene(sheet.line.tube, wanted, made);
    CHECK(apart(same) == Approx(8).margin(0.01));
    CHECK(apart(over) == Approx(8 - 0.35).margin(0.03));
    for (const Scene& scene : {same, over}) {
        const Bounds as_wanted = of_ink(scene, Ink::stands), as_made = of_ink(scene, Ink::swings);
        REQUIRE_FALSE((as_wanted.empty() || as_made.empty()));
        // Half of it at either end, and the walls' own thickness: never the whole of it at one.
        CHECK((as_wanted.low - as_made.low).cwiseAbs().maxCoeff() < 0.35 * 25.4);
        CHECK((as_wanted.high - as_made.high).cwiseAbs().maxCoeff() < 0.35 * 25.4);
    }
    CHECK((same.anchors.at(Anchor::hook_end) - over.anchors.at(Anchor::hook_end)).norm() / 25.4 == Approx(0.175).margin(0.05));
}
