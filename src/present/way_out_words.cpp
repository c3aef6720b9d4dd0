#include "present/way_out_words.h"

#include "present/order_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string straight_name(std::size_t straight) { return straight == 0 ? "the straight at end A" : "the straight after " + bend_name(straight - 1); }

std::string say(const FreeOrderOfWork&, const Tape&) { return "Let the program choose the order: there is one that works."; }
std::string say(const OtherSetUp& way, const Tape&) {
    return "Stand the bender another way: hook on your " + hand_word(way.set_up.hook) + ", lever swung " + swing_word(way.set_up.swing) + ".";
}
std::string say(const LongerStraight& way, const Tape& tape) { return "Make " + straight_name(way.straight) + " longer by " + text(up_on_tape(way.by, tape), tape) + "."; }
std::string say(const ShorterStraight& way, const Tape& tape) { return "Make " + straight_name(way.straight) + " shorter by " + text(up_on_tape(way.by, tape), tape) + "."; }
std::string say(const LongerBetween& way, const Tape& tape) { return "Make each straight between two bends longer by " + text(up_on_tape(way.by, tape), tape) + "."; }
std::string say(const OtherAngle& way, const Tape& tape) { return "Make " + bend_name(way.bend) + " " + text(way.to, tape) + " instead of " + text(way.from, tape) + "."; }
std::string say(const OtherBender& way, const Tape&) { return "Take another bender" + (way.name.empty() ? "" : ": " + way.name) + "."; }

}  // namespace

std::string way_out_words(const WayOut& way, const Tape& tape) {
    return std::visit([&](const auto& one) { return say(one, tape); }, way);
}

}  // namespace tubewright
