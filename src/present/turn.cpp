#include "present/turn.h"

#include <cmath>
#include <numbers>

#include "bench/wrong_turn.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string phrase(Way way) {
    switch (way) {
        case Way::up: return "up";
        case Way::down: return "down";
        case Way::away: return "away from you";
        case Way::toward: return "toward you";
    }
    return "";
}

std::string word(Way way) {
    switch (way) {
        case Way::up: return "up";
        case Way::down: return "down";
        case Way::away: return "away";
        case Way::toward: return "toward";
    }
    return "";
}

double clock_of(const Stance& stance, const Eigen::Vector3d& direction) {
    // Looking along the axis with up at the top, the viewer's right hand is axis x up: (ay, -ax, 0).
    const double right = direction.x() * stance.axis.y() - direction.y() * stance.axis.x(), up = direction.z();
    const double deg = std::atan2(right, up) * 180 / std::numbers::pi;
    const double round = std::round(deg * 1e6) / 1e6;  // no -0 and no 359.9999999 beside 0
    return round < 0 ? round + 360 : round + 0.0;
}

}  // namespace

std::string pointing_words(const Pointing& pointing) {
    if (!pointing.slanted) return phrase(pointing.main);
    return phrase(pointing.main) + " and " + phrase(pointing.also);
}

Angle feature_roll(const Step& step) { return step.neighbour ? step.neighbour->leg_roll : step.index_roll; }

std::string turn_way(const SetUp& set_up, const Step& step) {
    const Pointing way = pointing(stance(set_up), feature_roll(step));
    return word(way.main) + (way.slanted ? " and " + word(way.also) : "");
}

std::string turn_asks(const Step& step) { return step.neighbour ? "Turn the leg past " + bend_name(step.neighbour->bend) : "Turn the top line"; }

std::string turn_hero(const SetUp& set_up, const Step& step) { return (step.neighbour ? "Leg " : "Top line ") + turn_way(set_up, step); }

std::string turn_chip(const Step& step, const Tape& tape) { return text(Angle{std::abs(feature_roll(step).deg)}, tape); }

namespace {

/// How far round from the swing; what shows as 0° or 180° is said without a number.
std::string against_swing(Angle roll, const Tape& tape) {
    const Angle size{std::abs(roll.deg)};
    if (shows_as(size, 0)) return "with the swing";
    if (shows_as(size, 180)) return "against the swing";
    return text(size, tape) + " round from the swing";
}

std::string top_line_faces(const SetUp& set_up, const Step& step) {
    return "The top line faces " + pointing_words(pointing(stance(set_up), step.index_roll));
}

}  // namespace

std::string turn_sentence(const SetUp& set_up, const Step& step, const Tape& tape) {
    if (!step.neighbour) return top_line_faces(set_up, step) + ", " + against_swing(step.index_roll, tape) + ".";
    return "The leg past " + bend_name(step.neighbour->bend) + " points " + pointing_words(pointing(stance(set_up), step.neighbour->leg_roll)) + ", " + against_swing(step.neighbour->leg_roll, tape) + ".";
}

std::string turn_line(const Step& step, const Tape& tape) { return capital(against_swing(feature_roll(step), tape)) + "."; }

std::string top_line_sentence(const SetUp& set_up, const Step& step) {
    return top_line_faces(set_up, step) + ".";
}

std::string hook_sentence(const SetUp& set_up, const Step& step) {
    return capital(end_name(step.hook)) + " on the hook, on your " + hand_word(set_up.hook) + ".";
}

double clock_of(const Stance& stance, Angle roll) { return clock_of(stance, facing(stance, roll)); }

ClockView turn_clock(const SetUp& set_up, const Step& step) {
    const Stance frame = stance(set_up);
    ClockView clock;
    if (step.neighbour) clock.hands.push_back({clock_of(frame, step.neighbour->leg_roll), "leg past " + bend_name(step.neighbour->bend), ClockHand::Kind::leg});
    clock.hands.push_back({clock_of(frame, Angle{}), "swing", ClockHand::Kind::swing});
    if (const auto wrong = wrong_leg_roll(step)) clock.hands.push_back({clock_of(frame, *wrong), "wrong way", ClockHand::Kind::wrong});
    clock.hands.push_back({clock_of(frame, step.index_roll), "top line", ClockHand::Kind::top_line});
    const Eigen::Vector3d away(0, 1, 0), toward(0, -1, 0);
    clock.rim = {{0, "up"}, {clock_of(frame, away), "away"}, {180, "down"}, {clock_of(frame, toward), "toward"}};
    clock.caption = "Seen from the hook, " + end_name(step.hook) + " on your " + hand_word(set_up.hook) + ".";
    return clock;
}

}  // namespace tubewright
