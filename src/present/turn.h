#pragma once
// How the tube lies around its own axis in the bender: in words, and as a clock.

#include <optional>
#include <string>

#include "bench/sheet.h"
#include "bench/stance.h"
#include "present/text.h"
#include "present/views.h"

namespace tubewright {

/// "up and away from you": the nearer word first.
std::string pointing_words(const Pointing& pointing);

/// The feature that the turn is read by: the leg past a made neighbour, or else the top line.
Angle feature_roll(const Step& step);
/// "Leg up and away", "Top line down": where it ends up, never how far to turn.
std::string turn_hero(const SetUp& set_up, const Step& step);
/// The same in two parts, so that the larger one is short: "Turn the leg past bend 3" and "up and away".
std::string turn_asks(const Step& step);
std::string turn_way(const SetUp& set_up, const Step& step);
/// How far round from the swing, for a chip.
std::string turn_chip(const Step& step, const Tape& tape);
/// "The leg past bend 3 points up and away from you, 45° round from the swing."
std::string turn_sentence(const SetUp& set_up, const Step& step, const Tape& tape);
/// "45° round from the swing.": under the hero, which says what is turned and where it points.
std::string turn_line(const Step& step, const Tape& tape);
/// "The top line faces down."
std::string top_line_sentence(const SetUp& set_up, const Step& step);
/// "End A on the hook, on your left."
std::string hook_sentence(const SetUp& set_up, const Step& step);

/// Degrees clockwise from the top of the side with this roll, seen from the hook along the tube.
double clock_of(const Stance& stance, Angle roll);
/// With the wrong way as the wrong answer where an earlier bend makes it one.
ClockView turn_clock(const SetUp& set_up, const Step& step);

}  // namespace tubewright
