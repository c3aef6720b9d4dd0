#include "present/order_words.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "present/way_out_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// Less than this is no depth that a tape shows: then the tube only comes nearer than tolerance::handling_room.
bool really_hits(Length depth) { return depth.mm > 0.5; }

std::string side_word(bool hook_side) { return hook_side ? "on the hook side" : "on the lever side"; }

std::string say(const StoppedBend& stop, const ShortStraight& f, const Tape& tape) {
    return bend_name(stop.blocked.placing.bend) + " would have " + too_short_words(f.has, f.needed, f.hook_side, tape);
}
std::string say(const StoppedBend& stop, const BeyondAngle& f, const Tape& tape) {
    return bend_name(stop.blocked.placing.bend) + " wants a pull to " + text(f.set, tape) + ", the bender stops at " + text(f.limit, tape);
}
std::string say(const StoppedBend& stop, const NoPlaceForInk&, const Tape&) { return bend_name(stop.blocked.placing.bend) + " would have no straight place for its ink mark"; }
std::string say(const StoppedBend& stop, const AgainstWish&, const Tape&) { return bend_name(stop.blocked.placing.bend) + " is not the one asked for"; }

std::string say(const StoppedBend& stop, const InTheWay&, const Tape& tape) {
    const std::string bend = bend_name(stop.blocked.placing.bend);
    if (!stop.obstacle) return bend + " has something in its way at the bender";
    const std::string what = stop.obstacle->solid ? "the " + stop.solid : "the tube itself";
    const Length depth = stop.obstacle->depth;
    const std::string deep = really_hits(depth) ? " by " + text(up_on_tape(depth, tape), tape) : "";
    switch (stop.obstacle->when) {
        case Obstacle::When::laid_in: return bend + " can't be laid in: " + what + " is in the way" + deep;
        case Obstacle::When::swept: return bend + " would " + hit_words(depth, what, tape) + ", with the lever at " + text(stop.obstacle->lever, tape);
        case Obstacle::When::taken_out: return bend + " can't be taken out again: " + what + " is in the way" + deep;
    }
    return bend;
}

/// As short as it is said in passing: "bend 6 would hit the bench top".
std::string short_stop(const StoppedBend& stop, const Tape& tape) {
    if (!stop.obstacle) return stop_words(stop, tape);
    const std::string bend = bend_name(stop.blocked.placing.bend), what = stop.obstacle->solid ? "the " + stop.solid : "the tube itself";
    switch (stop.obstacle->when) {
        case Obstacle::When::laid_in: return bend + " could not be laid in past " + what;
        case Obstacle::When::swept: return bend + (really_hits(stop.obstacle->depth) ? " would hit " : " would come too near ") + what;
        case Obstacle::When::taken_out: return bend + " could not be taken out past " + what;
    }
    return bend;
}

/// "; started from A, end B could be 5/16 off, and bend 6 would hit the bench top"
std::string other_start(const InARow& row, const std::optional<StoppedBend>& stop, End from, Length chosen, const Tape& tape) {
    const Length off = from == End::A ? row.start.b : row.start.a;
    const bool worse = up_on_tape(off, tape) > up_on_tape(chosen, tape);
    if (!worse && !stop) return "";
    std::string said = "; started from " + end_name(from) + ", ";
    if (worse) said += end_name(other(from)) + " could be " + text(up_on_tape(off, tape), tape) + " off";
    if (stop) said += (worse ? ", and " : "") + short_stop(*stop, tape);
    return said;
}

}  // namespace

std::string too_short_words(Length has, Length needed, bool hook_side, const Tape& tape) {
    const Length some = std::max(Length{}, has);
    const bool alike = text(some, tape) == text(needed, tape);  // on this tape; the eye would see no reason
    const auto said = [&](Length length) { return alike ? fine(length, tape) : text(length, tape); };
    return said(some) + " of straight " + side_word(hook_side) + " and needs " + said(needed);
}

std::string hit_words(Length depth, const std::string& what, const Tape& tape) {
    if (really_hits(depth)) return "hit " + what + " by " + text(up_on_tape(depth, tape), tape);
    return "come nearer than " + text(up_on_tape(tolerance::handling_room, tape), tape) + " to " + what;
}

Length up_on_tape(Length length, const Tape& tape) {
    const double step = tape.unit == Unit::mm ? 0.5 : 25.4 / tape.denominator;
    return {std::ceil(length.mm / step - 1e-6) * step};
}

std::string stop_words(const StoppedBend& stop, const Tape& tape) {
    return std::visit([&](const auto& why) { return say(stop, why, tape); }, stop.blocked.why);
}

std::string break_words(const StoppedBend& stop, const Tape& tape) { return capital(stop_words(stop, tape)) + "."; }

TextView cost_of_hand_order(const HandFacts& facts, const std::optional<EndsWithin>& best, const Tape& tape) {
    const Length own = up_on_tape(facts.ends.worse(), tape);
    const std::string within = " both ends should land within " + text(own, tape);
    const std::string begin = facts.breaks.empty() ? "It can be made:" : "Besides,";
    if (!best) return {begin + within + ".", facts.breaks.empty() ? Tone::go : Tone::plain};
    const Length least = up_on_tape(best->worse(), tape);
    if (own == least) return {begin + within + ", as in the best order.", facts.breaks.empty() ? Tone::go : Tone::plain};
    return {begin + within + "; in the best order within " + text(least, tape) + ".", own > least ? Tone::caution : Tone::go};
}

std::string other_order_words(const OtherRest& other) {
    const auto bends = [](const std::vector<Placing>& order) {
        std::vector<std::size_t> all;
        for (const Placing& placing : order) all.push_back(placing.bend);
        return all;
    };
    const std::vector<std::size_t> now = bends(other.now), then = bends(other.then);
    const auto differs = std::mismatch(now.begin(), now.end(), then.begin(), then.end());
    if (differs.first == now.end()) {
        for (std::size_t i = 0; i < now.size(); ++i)
            if (other.now[i] != other.then[i]) return "Make " + bend_name(now[i]) + " with " + end_name(other.then[i].hook) + " on the hook";
        return "Go on in this order";
    }
    // One bend that comes sooner says it all; else the whole row is said.
    std::vector<std::size_t> sooner = now;
    const std::size_t bend = *differs.second;
    std::rotate(sooner.begin() + (differs.first - now.begin()), std::find(sooner.begin(), sooner.end(), bend), std::find(sooner.begin(), sooner.end(), bend) + 1);
    if (sooner == then) return "Make " + bend_name(bend) + " before " + bend_name(*differs.first);
    std::string row;
    for (std::size_t i = 0; i < then.size(); ++i) row += (i == 0 ? "" : i + 1 == then.size() ? " and " : ", ") + std::to_string(then[i] + 1);
    return "Make what is left in the order bend " + row;
}

std::string on_the_way_words(const OnTheWay& way) {
    const auto times = [](int count) { return count == 1 ? std::string("once") : count == 2 ? std::string("twice") : std::to_string(count) + " times"; };
    const std::string swaps = way.swaps == 0 ? "never swapped end for end" : "swapped end for end " + times(way.swaps);
    const std::string over = way.turns_over == 0 ? "no turn over 90° between bends" : counted(static_cast<std::size_t>(way.turns_over), "turn", "turns") + " over 90° between bends";
    const std::string ink = way.floating == 0 ? "every bend turned against a made one" : counted(static_cast<std::size_t>(way.floating), "bend", "bends") + " turned by the ink line alone";
    return "On the way: " + swaps + ", " + over + ", " + ink + ".";
}

std::string why_this_order(const OrderVerdict& verdict, const EndsWithin& ends, const Tape& tape) {
    if (!verdict.reasons) return "";
    const OrderReasons& reasons = *verdict.reasons;
    if (verdict.order.size() < 2) return "";
    const Length worst = ends.worse();
    const std::string said = "Start at " + bend_name(reasons.chosen.bend) + ": both ends should land within " + text(up_on_tape(worst, tape), tape);
    // One comparison is believed, two are skipped: the worse of the two rows.
    const std::string from_a = reasons.from_a.start.bend == reasons.chosen.bend ? "" : other_start(reasons.from_a, verdict.from_a_stop, End::A, worst, tape);
    const std::string from_b = reasons.from_b.start.bend == reasons.chosen.bend ? "" : other_start(reasons.from_b, verdict.from_b_stop, End::B, worst, tape);
    const bool b_tells_more = from_a.empty() || (!verdict.from_a_stop && verdict.from_b_stop) || (!verdict.from_a_stop && !verdict.from_b_stop && reasons.from_b.start.a > reasons.from_a.start.b);
    return said + (b_tells_more && !from_b.empty() ? from_b : from_a) + ".";
}

std::optional<TextView> why_found(const OrderVerdict& verdict, const EndsWithin& ends, const std::optional<EndsWithin>& best, const Tape& tape) {
    const std::string why = why_this_order(verdict, ends, tape);
    if (why.empty()) return std::nullopt;
    const Length least = best ? up_on_tape(best->worse(), tape) : Length{};
    if (!best || up_on_tape(ends.worse(), tape) <= least) return TextView{why, Tone::go};
    return TextView{why + " In the best order they should land within " + text(least, tape) + ".", Tone::caution};
}

std::vector<std::string> why_none(const OrderVerdict& verdict, const Tape& tape) {
    std::vector<std::string> said;
    std::vector<std::size_t> seen;
    for (const StoppedBend& stop : verdict.stops) {
        const std::size_t bend = stop.blocked.placing.bend;
        if (std::find(seen.begin(), seen.end(), bend) != seen.end()) continue;
        seen.push_back(bend);
        const bool both = std::count_if(verdict.stops.begin(), verdict.stops.end(), [&](const StoppedBend& s) { return s.blocked.placing.bend == bend; }) > 1;
        said.push_back((verdict.furthest.empty() ? "" : "After " + counted(verdict.furthest.size(), "bend", "bends") + ", ") + stop_words(stop, tape) +
                       (both ? "; nor does it go with the other end on the hook." : "."));
        said.back() = capital(said.back());
    }
    return said;
}

std::vector<std::string> ways_out_words(const OrderVerdict& verdict, const Tape& tape) {
    std::vector<std::string> said;
    for (const WayOut& way : verdict.ways) said.push_back(way_out_words(way, tape));
    return said;
}

}  // namespace tubewright
