#pragma once
// What is off, what is to be changed and why a tube can't be saved, in bench words.

#include <string>
#include <vector>

#include "bench/rescue.h"
#include "bench/still_good.h"
#include "present/text.h"
#include "present/views.h"

namespace tubewright {

/// "A 1/32" and 1/2°, B as wanted".
std::string off_words(const EndsOff& off, const Tape& tape);
/// "A 1/32" and 1/2° off", "B as wanted".
std::string end_words(End end, const EndOff& off, const Tape& tape);
/// How one bend's plane lies round from another's, seen from end A: "88° to the right".
std::string round_words(Angle turn, const Tape& tape);
/// "Bend 4: to 43 1/2° instead of 45°", "Move mark 5 by 1/16" towards B", "Turn bend 5 by 2° more", "Cut 1/8" more off end B".
std::string change_words(const RescueChange& change, const Sheet& sheet, const Tape& tape);
/// All of a way; of many numbers only which they are.
std::string way_words(const RescueWay& way, const Sheet& sheet, const Tape& tape);
/// Which limit bars it, and by how much.
std::string bar_words(const Rescue& found, const Sheet& sheet, const Tape& tape);
/// Which lines it would make, and what its straight ends are long enough for.
std::vector<TextView> good_for_words(const StillGood& good, const std::vector<Sheet>& sheets, const Tape& tape);

}  // namespace tubewright
