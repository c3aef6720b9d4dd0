// The clock is seen from the hook along the tube, so a right-handed roll about the axis (from hook to
// lever) goes clockwise on it. With the hook on the left the axis points right and the viewer looks to
// the right: away from the operator is on his left hand, at nine o'clock.

#include <catch2/catch.hpp>

#include <algorithm>

#include "bench/wrong_turn.h"
#include "present/screen_view.h"
#include "present/turn.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

const Tape sixteenths{Unit::inch, 16};
constexpr SetUp left_away{HookHand::left, Swing::away};

Step step_with(Angle index, std::optional<MadeNeighbour> neighbour = std::nullopt) {
    Step step{};
    step.hook = End::A;
    step.index_roll = index;
    step.neighbour = neighbour;
    return step;
}

double at(const ClockView& clock, ClockHand::Kind kind) {
    for (const ClockHand& hand : clock.hands)
        if (hand.kind == kind) return hand.clock_deg;
    return -1;
}

}  // namespace

TEST_CASE("hook left, swing away: rolled 45 the leg points up and away, between nine and twelve") {
    // a = right, w = away, n = a × w = up. Roll 45 lies halfway from away to up.
    const Step step = step_with({0}, MadeNeighbour{2, {45}});
    const std::string hero = turn_hero(left_away, step);
    CHECK((hero == "Leg up and away" || hero == "Leg away and up"));
    const std::string said = turn_sentence(left_away, step, sixteenths);
    CHECK((said == "The leg past bend 3 points up and away from you, 45° round from the swing." || said == "The leg past bend 3 points away from you and up, 45° round from the swing."));
    const ClockView clock = turn_clock(left_away, step);
    CHECK(at(clock, ClockHand::Kind::swing) == Approx(270));
    CHECK(at(clock, ClockHand::Kind::leg) == Approx(315));
    CHECK(at(clock, ClockHand::Kind::wrong) == Approx(225));
    CHECK(at(clock, ClockHand::Kind::top_line) == Approx(270));
}

TEST_CASE("hook right, swing away: the same roll points down and away, and away is at three o'clock") {
    // a = left, w = away, n = a × w = down. Looking left, away is on the right hand.
    const SetUp right_away{HookHand::right, Swing::away};
    const Step step = step_with({0}, MadeNeighbour{2, {60}});
    CHECK(turn_hero(right_away, step) == "Leg down and away");
    CHECK(turn_sentence(right_away, step, sixteenths) == "The leg past bend 3 points down and away from you, 60° round from the swing.");
    const ClockView clock = turn_clock(right_away, step);
    CHECK(at(clock, ClockHand::Kind::swing) == Approx(90));
    CHECK(at(clock, ClockHand::Kind::leg) == Approx(150));
}

TEST_CASE("swing up: a positive roll goes toward the operator with the hook on the left") {
    // a = right (x), w = up (z): n = x × z = -y, toward.
    const SetUp left_up{HookHand::left, Swing::up};
    CHECK(turn_hero(left_up, step_with({0}, MadeNeighbour{0, {30}})) == "Leg up and toward");
    CHECK(turn_hero(left_up, step_with({0}, MadeNeighbour{0, {-30}})) == "Leg up and away");
}

TEST_CASE("on every stand, roll goes clockwise as the picture is seen") {
    for (const HookHand hook : {HookHand::left, HookHand::right})
        for (const Swing swing : {Swing::away, Swing::toward, Swing::up, Swing::down}) {
            const Stance frame = stance({hook, swing});
            const double turned = clock_of(frame, Angle{50}) - clock_of(frame, Angle{0});
            CHECK(wrapped(Angle{turned}).deg == Approx(50));
        }
}

TEST_CASE("no turn and half a turn name the swing, and each is the other's wrong way: a U in place of a Z") {
    const Step none = step_with({0}, MadeNeighbour{0, {0.1}});
    CHECK(turn_hero(left_away, none) == "Leg away");
    CHECK(turn_sentence(left_away, none, sixteenths) == "The leg past bend 1 points away from you, with the swing.");
    const Step half = step_with({0}, MadeNeighbour{0, {180}});
    CHECK(turn_hero(left_away, half) == "Leg toward");
    CHECK(turn_sentence(left_away, half, sixteenths) == "The leg past bend 1 points toward you, against the swing.");
    const auto leg = [&](const Step& step) { return at(turn_clock(left_away, step), ClockHand::Kind::leg); };
    const auto wrong = [&](const Step& step) { return at(turn_clock(left_away, step), ClockHand::Kind::wrong); };
    CHECK(wrapped(Angle{wrong(none) - leg(half)}).deg == Approx(0).margin(0.2));
    CHECK(wrapped(Angle{wrong(half) - leg(none)}).deg == Approx(0).margin(0.2));
}

TEST_CASE("before any neighbour is made the top line says how it lies, and nothing is wrong yet") {
    const Step step = step_with({90});
    CHECK(turn_sentence(left_away, step, sixteenths) == "The top line faces up, 90° round from the swing.");
    CHECK(turn_hero(left_away, step) == "Top line up");
    CHECK(at(turn_clock(left_away, step), ClockHand::Kind::wrong) == -1);
    CHECK(at(turn_clock(left_away, step), ClockHand::Kind::leg) == -1);
}

TEST_CASE("the picture says 'not like this' just where the clock shows a wrong way") {
    // Of the crossover's two bends the first has no made neighbour yet; the second has one, a quarter off.
    const auto says_wrong = [](const State& state) {
        const ScreenView view = screen_view(state);
        const auto& labels = std::get<MoveBody>(view.body).picture->labels;
        return std::any_of(labels.begin(), labels.end(), [](const auto& label) { return label.first == Anchor::wrong_way; });
    };
    CHECK_FALSE(says_wrong(touched(at_first_bend(), {Next{}})));
    CHECK(says_wrong(touched(at_check(at_first_bend()), {PassCheck{}, Next{}})));
    CHECK(wrong_leg_roll(step_with({0})) == std::nullopt);
    CHECK(wrong_leg_roll(step_with({0}, MadeNeighbour{0, {170}}))->deg == Approx(-170));
    CHECK(wrong_leg_roll(step_with({0}, MadeNeighbour{0, {180}}))->deg == Approx(0));
    CHECK(wrong_leg_roll(step_with({0}, MadeNeighbour{0, {-1}}))->deg == Approx(179));
}

TEST_CASE("the hook's end and hand are always said") {
    Step step = step_with({0});
    CHECK(hook_sentence(left_away, step) == "End A on the hook, on your left.");
    step.hook = End::B;
    CHECK(hook_sentence({HookHand::right, Swing::down}, step) == "End B on the hook, on your right.");
}

}  // namespace tubewright
