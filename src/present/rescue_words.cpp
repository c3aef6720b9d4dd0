#include "present/rescue_words.h"

#include <algorithm>
#include <cmath>

#include "bench/spread.h"
#include "present/words.h"

namespace tubewright {
namespace {

Angle size_of(Angle angle) { return {std::abs(angle.deg)}; }

const std::string as_wanted = "as wanted";

std::string end_off_words(const EndOff& off, const Tape& tape) {
    const std::string none = learned_text(Length{}, tape.unit), place = learned_text(off.place, tape.unit);
    const bool turned = !shows_as(off.direction, 0);
    if (place == none) return turned ? text(off.direction, tape) : as_wanted;
    return place + (turned ? " and " + text(off.direction, tape) : "");
}

/// More or less of its turn against the bend that it is turned by. Where it lies with that one in one plane neither says anything.
std::string turn_words(const RescueChange& change, const Sheet& sheet, const Tape& tape) {
    std::vector<Placing> order;
    for (const Step& step : sheet.steps) order.push_back({step.bend, step.hook});
    const Part& part = sheet.layout->part;
    const auto against = turned_against(part, order);
    Angle before = direction_in_section(part, change.bend);
    for (std::size_t i = 0; i < order.size(); ++i)
        if (order[i].bend == change.bend && against[i]) before = wrapped(before - direction_in_section(part, *against[i]));
    const std::string by = "Turn " + bend_name(change.bend) + " by " + text(size_of(change.angle), tape);
    if (shows_as(before, 0) || shows_as(before, 180)) return by + ", the way its screen will show";
    return by + (size_of(wrapped(before + change.angle)) > size_of(before) ? " more" : " less");
}

std::string numbered(const std::string& one, const std::string& many, const std::vector<std::string>& numbers) {
    return (numbers.size() == 1 ? one : many) + " " + piece_list(numbers);
}

std::string which_numbers(const RescueWay& way) {
    std::vector<std::string> angles, turns, marks, ends, said;
    for (const RescueChange& change : way.changes) {
        const std::string bend = std::to_string(change.bend + 1);
        switch (change.number) {
            case RescueNumber::angle: angles.push_back(bend); break;
            case RescueNumber::turn: turns.push_back(bend); break;
            case RescueNumber::mark: marks.push_back(bend); break;
            case RescueNumber::cut_off: ends.push_back(std::string(1, letter(change.end))); break;
        }
    }
    if (!angles.empty()) said.push_back(numbered("the angle of bend", "the angles of bends", angles));
    if (!turns.empty()) said.push_back(numbered("the turn of bend", "the turns of bends", turns));
    if (!marks.empty()) said.push_back(numbered("mark", "marks", marks));
    if (!ends.empty()) said.push_back(numbered("the cut at end", "the cuts at ends", ends));
    std::string all;
    for (const std::string& one : said) all += (all.empty() ? "" : ", ") + one;
    return counted(way.changes.size(), "number changes", "numbers change") + ": " + all;
}

/// "left rear" and 2 more.
std::string line_names(const std::vector<std::size_t>& lines, const std::vector<Sheet>& sheets) {
    std::vector<std::string> names;
    constexpr std::size_t most = 2;
    for (std::size_t i = 0; i < std::min(lines.size(), most); ++i) names.push_back(sheets.at(lines[i]).line.name);
    if (lines.size() > most) names.push_back(std::to_string(lines.size() - most) + " more");
    return piece_list(names);
}

}  // namespace

std::string off_words(const EndsOff& off, const Tape& tape) { return "A " + end_off_words(off.a, tape) + ", B " + end_off_words(off.b, tape); }

std::string end_words(End end, const EndOff& off, const Tape& tape) {
    const std::string said = end_off_words(off, tape);
    return std::string(1, letter(end)) + " " + said + (said == as_wanted ? "" : " off");
}

std::string round_words(Angle turn, const Tape& tape) {
    const Angle size = size_of(wrapped(turn));
    if (shows_as(size, 0)) return "the same way round";
    if (shows_as(size, 180)) return "the other way round";
    return text(size, tape) + (wrapped(turn) < Angle{} ? " to the left" : " to the right");
}

std::string change_words(const RescueChange& change, const Sheet& sheet, const Tape& tape) {
    switch (change.number) {
        case RescueNumber::angle: {
            const Angle was = sheet.layout->part.bends[change.bend].angle;
            return capital(bend_name(change.bend)) + ": to " + text(was + change.angle, tape) + " instead of " + text(was, tape);
        }
        case RescueNumber::mark:
            return "Move mark " + std::to_string(change.bend + 1) + " by " + moved_text(change.length, tape) + " towards " + (change.length > Length{} ? "B" : "A");
        case RescueNumber::turn: return turn_words(change, sheet, tape);
        case RescueNumber::cut_off:
            return "Cut " + moved_text(change.length, tape) + (change.length > Length{} ? " more off " : " less off ") + end_name(change.end);
    }
    return "";
}

std::string way_words(const RescueWay& way, const Sheet& sheet, const Tape& tape) {
    constexpr std::size_t most_said = 3;
    if (way.changes.size() > most_said) return which_numbers(way);
    std::string said;
    for (const RescueChange& change : way.changes) said += (said.empty() ? "" : ". ") + change_words(change, sheet, tape);
    return said;
}

std::string bar_words(const Rescue& found, const Sheet& sheet, const Tape& tape) {
    const std::string bend = found.bar_bend ? bend_name(*found.bar_bend) : "a bend", end = found.bar_end ? end_name(*found.bar_end) : "an end";
    switch (found.bar.value_or(RescueBar::out_of_reach)) {
        case RescueBar::nothing_left: return "No bend is still to come that could make it up.";
        case RescueBar::out_of_reach:
            return "The bends still to come can't make it up: at the best " + off_words(found.nearest, tape) + " would be off.";
        case RescueBar::bender_angle: return capital(bend) + " would have to go past " + text(sheet.line.bender.max_angle, tape) + ", where the bender stops.";
        case RescueBar::straight: return "Too little straight tube at " + bend + ": " + learned_text(found.lacking, tape.unit) + " is missing.";
        case RescueBar::length: return "The tube is too short at " + end + ": " + learned_text(found.lacking, tape.unit) + " is missing.";
        case RescueBar::in_the_way: return "The bends still to come could make it up, but the tube would hit the bender or itself, or a mark would lie on a bend.";
    }
    return "";
}

std::vector<TextView> good_for_words(const StillGood& good, const std::vector<Sheet>& sheets, const Tape& tape) {
    std::vector<TextView> said;
    if (!good.lines.empty()) {
        const GoodForLine& best = good.lines.front();
        said.push_back({"It would still make " + sheets.at(best.line).line.name + ": what is bent is its " + bend_name(best.first_bend) + " on" + (best.turned_round ? ", ends A and B changed over." : "."), Tone::go});
    }
    for (const StraightEnd& straight : good.straights) {
        if (straight.lines.empty()) continue;
        said.push_back({"The straight " + left_text(straight.length, tape) + " at " + end_name(straight.end) + " is enough for " + line_names(straight.lines, sheets) + ".", Tone::go});
        break;  // the longer one
    }
    return said;
}

}  // namespace tubewright
