#include "scene/loaded_tube.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <random>

#include "bench/samples.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

constexpr DrawnLength whole{Length{1e9}, Length{1e9}, Length{1e9}, Length{}};

/// Across the axis, from the made bend's near end to its far one.
Vector3d leads_away(const LoadedTube& tube) {
    for (std::size_t i = 0; i < tube.stretches.size(); ++i) {
        if (!tube.stretches[i].formed) continue;
        const Stretch& bend = tube.stretches[i].stretch;
        const Vector3d first = bend.start.at, last = frame_in(bend, bend.length).at;
        return i < tube.now ? Vector3d(first - last) : Vector3d(last - first);
    }
    return Vector3d::Zero();
}

LoadedTube second_bend(double rotation, const SetUp& set_up) {
    SheetChoice choice;
    choice.set_up = set_up;
    const Sheet sheet = bend_sheet(line_of({6, 6, 6}, {{90, 0}, {90, rotation}}), choice);
    REQUIRE(sheet.steps.size() == 2);
    return loaded_tube(sheet, 1, std::nullopt, whole);
}

Line random_line(std::mt19937& dice) {
    std::uniform_real_distribution<double> leg(3, 9), angle(10, 120), rotation(-180, 180);
    std::vector<double> legs{leg(dice)};
    std::vector<std::pair<double, double>> bends;
    const int count = std::uniform_int_distribution<int>(1, 7)(dice);
    for (int i = 0; i < count; ++i) {
        legs.push_back(leg(dice));
        bends.push_back({angle(dice), i == 0 ? 0 : rotation(dice)});
    }
    return line_of(legs, bends);
}

}  // namespace

TEST_CASE("a made leg points where the bender's frame says") {
    // Hook left, swing away: a = right (x), w = away (y), n = a x w = up (z).
    // Rotation 0: both bends lie in one plane and turn the same way, so the made leg goes away, with the swing.
    const Vector3d same = leads_away(second_bend(0, {HookHand::left, Swing::away}));
    CHECK(same.y() > 10);
    CHECK(same.z() == Approx(0).margin(1e-9));
    // Rotation 90, right-handed about A to B. With A held and bend 1 made: a is A to B, bend 2 lies at w, so
    // bend 1 lies 90 before it, at roll -90: along -n, down. With B held and bend 2 made: bend 2 lies 90 past
    // bend 1 about A to B, which is -90 about a: down again.
    const Vector3d left = leads_away(second_bend(90, {HookHand::left, Swing::away}));
    CHECK(left.z() < -10);
    CHECK(left.y() == Approx(0).margin(1e-9));
    // Hook right: a = -x, n = -x x y = -z; roll -90 is up.
    CHECK(leads_away(second_bend(90, {HookHand::right, Swing::away})).z() > 10);
    // Hook left, swing up: n = x x z = -y, toward the operator; roll -90 is away.
    CHECK(leads_away(second_bend(90, {HookHand::left, Swing::up})).y() > 10);
    // Hook left, swing toward: n = x x -y = -z; roll -90 is up.
    CHECK(leads_away(second_bend(90, {HookHand::left, Swing::toward})).z() > 10);
    // Hook left, swing down: n = x x -z = y; roll -90 is toward.
    CHECK(leads_away(second_bend(90, {HookHand::left, Swing::down})).y() < -10);
}

TEST_CASE("the lever side of the tube goes to the swing by the angle it is formed to") {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down})
            for (const End held : {End::A, End::B}) {
                SheetChoice choice;
                choice.set_up = SetUp{hook, swing};
                choice.hook = held;
                const Sheet sheet = bend_sheet(line_of({6, 6}, {{60, 0}}), choice);
                const LoadedTube tube = loaded_tube(sheet, 0, Formed{sheet.line.bender.radius, {60}}, whole);
                const Stance stand = stance(sheet.set_up);
                const Stretch& last = tube.stretches[tube.side(other(held)).back()].stretch;
                const Vector3d out = held == End::A ? last.start.along : Vector3d(-last.start.along);
                CHECK(out.dot(stand.axis) == Approx(0.5));                // cos 60
                CHECK(out.dot(stand.swing) == Approx(0.866025).margin(1e-6));  // sin 60
                const Stretch& bend = tube.stretches[tube.now].stretch;
                const Vector3d tangent_point = held == End::A ? bend.start.at : frame_in(bend, bend.length).at;
                CHECK(tangent_point.norm() == Approx(0).margin(1e-9));
            }
}

TEST_CASE("the last bend, released, gives the finished part, seen from any stand") {
    std::mt19937 dice(20261125);
    for (int i = 0; i < 200; ++i) {
        SheetChoice choice;
        choice.set_up = SetUp{i % 2 ? HookHand::left : HookHand::right, static_cast<Swing>(i / 2 % 4)};
        const Sheet sheet = bend_sheet(random_line(dice), choice);
        INFO("line " << i);
        const Step& last = sheet.steps.back();
        const LoadedTube tube = loaded_tube(sheet, sheet.steps.size() - 1, Formed{last.finished_radius, last.target}, whole);
        const Frame a = tube.stretches.front().stretch.start;
        const Stretch& end = tube.stretches.back().stretch;
        const Frame b = frame_in(end, end.length), expected = far_end(sheet.layout->part, a);
        CHECK((b.at - expected.at).norm() == Approx(0).margin(1e-6));
        CHECK((b.along - expected.along).norm() == Approx(0).margin(1e-9));
        CHECK((b.aside - expected.aside).norm() == Approx(0).margin(1e-9));
    }
}

TEST_CASE("a long straight is drawn closed up, and stays true beside the bend") {
    const Sheet sheet = bend_sheet(line_of({60, 6, 60}, {{90, 0}, {90, 0}}));
    const DrawnLength drawn{Length{40}, Length{15}, Length{45}, Length{4}};
    const LoadedTube tube = loaded_tube(sheet, 1, std::nullopt, drawn);
    int gaps = 0;
    for (const DrawnStretch& stretch : tube.stretches) gaps += stretch.gap;
    CHECK(gaps == 3);  // both ends and the straight between the bends: 6 in is more than 59 mm
    // Next to the bend in hand 40 mm are true: a place 39 mm outside of it is where it would be, one 41 mm
    // outside is left out.
    const End hook = sheet.steps[1].hook;
    const BendSpan& span = sheet.layout->spans[sheet.steps[1].bend];
    const auto outside = [&](double mm) { return hook == End::A ? span.start - Length{mm} : span.end + Length{mm}; };
    const auto near = frame_at(tube, outside(39));
    REQUIRE(near);
    CHECK((near->at - Vector3d(-39, 0, 0)).norm() == Approx(0).margin(1e-9));
    CHECK_FALSE(frame_at(tube, outside(41)));
}
