// One function for each fact; a new fact without words does not compile.

#include "present/order_words.h"
#include "present/way_out_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// "bend 2" or "the straight after bend 2", as stretches are counted in tube/clearance.h.
std::string stretch_name(std::size_t stretch) {
    if (stretch % 2 == 1) return bend_name(stretch / 2);
    return stretch == 0 ? "the straight at end A" : "the straight after " + bend_name(stretch / 2 - 1);
}

/// "the straight at end A is 1/2"; what runs less than nothing is no straight, but an overlap.
std::string straight_is(const std::string& where, Length straight, const Speech& speech) {
    if (straight < Length{}) return "the corners " + where + " overlap by " + text(-straight, speech.tape);
    return "the straight " + where + " is " + text(straight, speech.tape);
}

Words say(const NoRoomInBender& f, const Speech& speech) {
    const std::string side = f.hook_side ? "hook" : "lever", lack = text(up_on_tape(f.enough.value_or(f.needed - f.straight), speech.tape), speech.tape);
    std::string beside = "beside it";
    if (f.made_neighbour) beside = "next to " + bend_name(*f.made_neighbour);
    if (f.at_end) beside = "at " + end_name(*f.at_end);
    std::string to_do = std::string("Lengthen it by ") + (f.no_order && !f.enough ? "at least " : "") + lack;
    to_do += f.at_end ? ", or leave more trim there." : ", or take another bender.";
    const std::string needs = f.with_pieces ? " side and the pieces slid on need " : " side needs ";
    return {straight_is(beside, f.straight, speech) + ", the bender's " + side + needs + text(f.needed, speech.tape), bend_name(f.bend), to_do};
}

Words say(const CornersOverlap& f, const Speech& speech) {
    std::string where = bend_name(f.first);
    if (f.second) where += " and " + bend_name(*f.second);
    if (f.at_end) where += " and " + end_name(*f.at_end);
    return {"no straight is left between them, " + text(f.missing, speech.tape) + " is missing", where, "Lengthen that leg, or bend on a smaller radius."};
}

Words say(const EndTooShort& f, const Speech& speech) {
    return {straight_is("up to " + bend_name(f.bend), f.straight, speech) + ", flare, nut and sleeve need " + text(f.needed, speech.tape),
            end_name(f.end), "Lengthen that leg by " + text(up_on_tape(f.needed - f.straight, speech.tape), speech.tape) + "."};
}

Words say(const AngleBeyondBender& f, const Speech& speech) {
    return {"it wants a pull to " + text(f.set, speech.tape) + ", the bender stops at " + text(f.limit, speech.tape), bend_name(f.bend),
            "Split it into two bends, or choose a bender that goes further."};
}

Words say(const RadiusTooTight& f, const Speech& speech) {
    const std::string what = "the bend radius (to tube centre) is " + fine(f.radius, speech.tape) + ", this tube ";
    if (f.stop) return {what + "takes no less than " + fine(f.least, speech.tape), "", "Choose a bender with a larger radius."};
    return {what + "wants " + fine(f.least, speech.tape) + " or more", "", "Bend slowly, look for flattening and wrinkles after each bend."};
}

Words say(const WallTooHeavy& f, const Speech& speech) {
    return {"the wall is " + fine(f.wall, speech.tape) + ", this flare takes up to " + fine(f.heaviest, speech.tape), end_name(f.end), "Choose a thinner wall or another fitting."};
}

Words say(const SingleFlareOnBrake& f, const Speech&) {
    return {"a 45° single flare on a brake line; seats for inverted flares are made for the double flare", end_name(f.end),
            "Make a double flare, or ask the fitting's maker."};
}

Words say(const HitsItself& f, const Speech& speech) {
    const std::string where = stretch_name(f.first) + " and " + stretch_name(f.second);
    if (f.stop) return {"the tube runs through itself", where, "Measure the route again: a leg, an angle or a turn is wrong."};
    return {"they pass with " + fine(f.gap, speech.tape) + " between them", where, "Lay the route out wider, or keep them apart by a clamp."};
}

Words say(const LongerThanStick& f, const Speech& speech) {
    return {"the cut length " + text(f.cut, speech.tape) + " is more than a straight length of " + text(f.stick, speech.tape), "", "Take a longer length or a coil, or plan it as two lines."};
}

Words say(const DegenerateCorner& f, const Speech& speech) {
    return {"a corner of " + text(f.angle, speech.tape) + " can't be laid out from corners", bend_name(f.bend), "Leave it out if it is straight; above 170° give straights between bend ends."};
}

Words say(const TrappedPieces& f, const Speech&) {
    const bool one = f.pieces.size() == 1;
    return {piece_list(f.pieces) + (one ? " has" : " have") + " to be on before " + bend_name(f.bend) + " traps " + (one ? "it" : "them"), end_name(f.end),
            one ? "Slide it on when the tube is cut." : "Slide them on when the tube is cut."};
}

Words say(const WrongGroove& f, const Speech& speech) {
    return {"the tube is " + od_text(f.od, speech.tape) + " OD, the bender's groove is for " + od_text(f.groove, speech.tape), "", "Take the bender of the tube's own size."};
}

Words say(const MarkOffStraight& f, const Speech&) {
    return {"on the bender's line " + f.mark + " the mark falls on a made bend or off the tube", capital(bend_name(f.bend)),
            "Use another line of the bender, or lengthen the straight beside it."};
}

Words say(const NoBend&, const Speech&) {
    return {"the line has no bend", "", "Between two fixed points put in at least one, so that it can give."};
}

Words say(const SmallAngle& f, const Speech& speech) {
    return {text(f.angle, speech.tape) + " is a small bend: its springback is less sure", bend_name(f.bend), "Stop short, release, measure, and pull again."};
}

Words say(const NoOrderPossible& f, const Speech& speech) {
    std::string what = "no order of bends works";
    if (f.made > 0) what += "; after " + counted(f.made, "bend", "bends");
    const std::string it = f.made > 0 ? " it would " : ": it would ";
    if (f.bend && f.depth) what += it + hit_words(*f.depth, f.solid.empty() ? "the tube itself" : "the " + f.solid, speech.tape);
    else if (f.bend && f.short_of) what += it + "have " + too_short_words(f.short_of->has, f.short_of->needed, f.short_of->hook_side, speech.tape);
    else if (f.bend) what += it + "have no straight place for its ink mark";
    std::string out;
    for (std::size_t i = 0; i < f.ways.size() && i < 2; ++i) out += (i == 0 ? "A way out: " : " Another: ") + way_out_words(f.ways[i], speech.tape);
    if (out.empty()) out = f.every_way ? "Look at the order of bends for a way out." : "No way out was found.";
    if (!f.every_way) out += " Not every way was tried.";
    return {what, f.bend ? bend_name(*f.bend) : "", out};
}

Words say(const OrderNotLooked& f, const Speech&) {
    const std::string look = "Before each pull, look what is in the lever's and the tube's way.";
    if (f.stopped) return {"the looking was stopped: nobody has looked whether the tube hits bender or bench", "", look};
    return {"of so many bends no order is looked for, nor whether the tube hits bender or bench", "", look};
}

Words say(const HitsAsItStands& f, const Speech& speech) {
    const StoppedBend stop{{f.made, f.placing, InTheWay{}}, f.obstacle, f.solid};
    const auto stand = [](const SetUp& so) { return "tand the bender with the hook on your " + hand_word(so.hook) + ", the lever swung " + swing_word(so.swing); };
    const bool none = f.rest && f.rest->is == OtherRest::Is::none;
    std::string to_do = none ? std::string(f.rest->every_order ? "No other order and no stance" : "No other order and no stance that was tried") + " is free of it: go slowly, stop before they touch, or say that it went wrong."
                             : "No stance is free of it: go slowly, stop before they touch.";
    if (f.free) to_do = "S" + stand(*f.free) + ".";
    else if (none && f.rest->stance) to_do = "S" + stand(*f.rest->stance) + ": then what is left goes in another order.";
    if (f.rest && f.rest->is == OtherRest::Is::looking) to_do += " Looking whether what is left goes in another order.";
    if (f.rest && f.rest->is == OtherRest::Is::found) {
        const std::string other = other_order_words(*f.rest) + ": nothing is in the way then.";
        to_do = f.free ? to_do + " Or m" + other.substr(1) : other;
    }
    const std::string since = f.new_measures ? "by the bender's new measures, which came after the cut, " : "as the bender stands, ";
    return {since + stop_words(stop, speech.tape), "", to_do};
}

Words say(const LookedAgain&, const Speech&) {
    return {"the bender's measures changed after this tube was cut; the bends still to make were looked at again", "", "Nothing is in their way: go on in the same order."};
}

}  // namespace

Words words(const Fact& fact, const Speech& speech) {
    return std::visit([&](const auto& f) { return say(f, speech); }, fact);
}

std::string sentence(const Finding& finding, const Speech& speech) {
    const Words said = words(finding.fact, speech);
    const std::string what = said.where.empty() ? said.what : said.where + ": " + said.what;
    return capital(what) + ". " + said.to_do;
}

std::string finding_message(const Finding& finding, const Sheet& sheet, Unit unit) {
    return sentence(finding, {{unit, 64}, &sheet.line});
}

}  // namespace tubewright
