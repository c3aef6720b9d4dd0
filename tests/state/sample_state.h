#pragma once
// A job made by hand, and fingers to walk through it. Invented, with figures that are easy to follow.

#include <string>
#include <vector>

#include "bench/samples.h"
#include "state/rules.h"
#include "state/state.h"

namespace tubewright {

inline Length inches(double value) { return {value * 25.4}; }

/// As the rack counts it.
inline Length to_the_micrometre(Length length) { return measured(exact(length)); }

/// What is left of the length that was last taken to cut from; nothing where it is gone.
Length left_in_use(const Work& work);
/// Of the other lengths on the rack, the longest first.
std::vector<Length> beside_in_use(const Work& work);
/// The rack holds these of one tube, none of them in use.
Rack rack_of(const Tube& tube, const std::vector<Length>& offcuts);

Fitting flare();

/// Two bends in two planes, then a line of one, then one that no bender of ours can make, then a straight one.
Job sample_job();

/// Six bends round a tank, none of them in another's way.
Job tank_job();

Checklists sample_checklists();

/// Best orders that are asked for are looked for at once.
StateStep orders_found(StateStep step);

State touched(State state, const std::vector<Action>& actions);

State job_open();

State at_prepare(const std::string& line = "axle crossover", double stick_in = 240);

State all_ticked(State state);

/// At the first bend's mark.
State at_first_bend(const std::string& line = "axle crossover");

/// At the check of the bend in hand, which is at its mark.
State at_check(State state);

State reading(State state, const std::string& keys);

/// Round the tank, cut and inked for the order 4 5 3 6 2 1, always with A on the hook, and the first of them bent.
State tank_with_made(std::size_t bends);

/// That line of the sample's tube beside one of its others, cut, inked, at the mark of its first bend; half an inch is left on at B.
State at_line(Line line);
/// Along 10, up 8, and 10 back.
State at_hook();


/// The card is changed: a wall so far to the right, or to the left below 0, of where the bend starts, and more besides.
State with_wall(const State& state, double right_mm, const std::vector<Solid>& more = {});

/// The whole piece, every check passed over.
State piece_made(const std::string& line = "axle crossover");

}  // namespace tubewright
