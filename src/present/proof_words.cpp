#include "present/proof_words.h"

#include <algorithm>
#include <cmath>

#include "present/entry_pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string edge_word(TapeEdge edge) { return edge == TapeEdge::outside ? "outside" : edge == TapeEdge::inside ? "inside" : "centre"; }

/// A number as it was typed, where the reader reads in that unit.
std::string number(Length length, const ProofSpeech& say) { return say.tape.unit == say.entered_in ? exact(on_tape(length, {say.entered_in, 64}), say.entered_in) : text(length, say.tape); }

/// As the entry's clock has it: clockwise, seen from end A, is to the right.
std::string turn_word(Angle rotation) {
    const Angle turn = wrapped(rotation);
    if (turn == Angle{0}) return "the same way round";
    if (std::abs(turn.deg) == 180) return "the other way round";
    return turn.deg < 0 ? exact(-turn) + " to the left" : exact(turn) + " to the right";
}

/// The ways that a move goes: "down and back".
std::string ways_word(const MeasuredMove& move, bool against_them) {
    std::string words;
    for (const auto& [way, length] : move.along) words += (words.empty() ? "" : " and ") + way_word(against_them ? against(way) : way);
    return words;
}

SlipWords at_bend(const Slip& slip, const ProofSpeech& say) {
    const std::string bend = bend_name(*slip.bend), turn = "turn " + std::to_string(*slip.bend + 1);
    const Bend& meant = slip.meant.bends[*slip.bend];
    const std::string side = turn_word(meant.rotation), angle = exact(meant.angle), typed = exact(say.route->bends[*slip.bend].angle);
    switch (slip.kind) {
        case SlipKind::bend_other_way: return {capital(bend) + " alone turns the other way", bend + " alone turned the other way", bend + " the other way"};
        case SlipKind::rest_other_way: return {capital(bend) + " turns the other way", bend + " turned the other way", bend + " the other way"};
        case SlipKind::turn_mirrored: return {capital(bend) + " turns " + side, bend + " turned " + side, bend + " " + side};
        case SlipKind::turn_alone: return {capital(bend) + " alone turns " + side, bend + " alone turned " + side, bend + " alone " + side};
        case SlipKind::quarter_turn: return {capital(bend) + " lies a quarter round: " + side, bend + " lay a quarter round, " + side, bend + " " + side};
        case SlipKind::complement:
        case SlipKind::supplement: return {capital(bend) + " is " + angle + ", not " + typed, bend + " were " + angle + " and not " + typed, bend + " to " + angle};
        default: break;
    }
    const std::string both = "bends " + std::to_string(*slip.bend + 1) + " and " + std::to_string(*slip.bend + 2);
    return {"The angles of " + both + " are swapped", "the angles of " + both + " were swapped", "swap the angles of " + both};
}

SlipWords at_leg(const Slip& slip, const ProofSpeech& say) {
    const std::string leg = run_name(say, *slip.leg), next = std::to_string(*slip.leg + 2);
    const std::string both = leg.substr(0, leg.find(' ')) + "s " + std::to_string(*slip.leg + 1) + " and " + next;
    switch (slip.kind) {
        case SlipKind::legs_swapped: return {capital(both) + " are swapped", both + " were swapped", "swap " + both};
        case SlipKind::moves_swapped: return {capital(both) + " are in the wrong order", both + " came the other way round", "swap " + both};
        case SlipKind::move_reversed: {
            const bool named = say.entered->moves.size() == say.route->runs.size();
            const std::string ways = named ? ways_word(say.entered->moves[*slip.leg], true) : "the opposite way";
            const std::string instead = named ? ", not " + ways_word(say.entered->moves[*slip.leg], false) : "";
            return {capital(leg) + " goes " + ways + instead, leg + " went " + ways + instead, leg + " " + ways};
        }
        default: break;
    }
    const std::string meant = number(slip.meant.runs[*slip.leg], say), typed = number(say.route->runs[*slip.leg], say);
    return {capital(leg) + " is " + meant + ", not " + typed, leg + " were " + meant + " and not " + typed, leg + " to " + meant};
}

SlipWords of_slip(const Slip& slip, const ProofSpeech& say) {
    if (slip.kind == SlipKind::wrong_edge) {
        const std::string edge = edge_word(slip.meant.measured_to);
        return {"The legs were taped to the " + edge, "the legs were taped to the " + edge, "legs to the " + edge};
    }
    if (slip.kind == SlipKind::mirrored) return {"Left and right are swapped all along", "left and right were swapped all along", "swap left and right"};
    if (slip.kind == SlipKind::ends_swapped) return {"It was entered from end B to end A", "it had been entered from end B to end A", "turn it end for end"};
    return slip.bend ? at_bend(slip, say) : at_leg(slip, say);
}

}  // namespace

std::string point_name(const ProofSpeech& say, std::size_t point) {
    if (point == 0) return "end A";
    return point > say.route->bends.size() ? "end B" : bend_name(point - 1);
}

std::string taping_words(const ProofSpeech& say, Span span) {
    const TapeEdge edge = say.route->measured_to;
    const auto is_corner = [&](std::size_t point) { return point > 0 && point <= say.route->bends.size(); };
    const auto held = [&](std::size_t point) { return is_corner(point) && edge != TapeEdge::centre ? "the " + edge_word(edge) + " corner of " + point_name(say, point) : point_name(say, point); };
    std::string words = "Tape tight and straight, from " + held(span.from) + " to " + held(span.to);
    // Of a corner to the centre, what the tape is held to is in the middle of the tube.
    if (edge == TapeEdge::centre && (is_corner(span.from) || is_corner(span.to)))
        words += is_corner(span.from) && is_corner(span.to) ? ", at the middle of both corners" : ", at the middle of its corner";
    return words + ".";
}

std::string span_name(const ProofSpeech& say, Span span) { return point_name(say, span.from) + " to " + point_name(say, span.to); }

std::string run_name(const ProofSpeech& say, std::size_t run) {
    const bool moves = say.entered->form == RouteForm::moves && say.entered->moves.size() == say.route->runs.size();
    const std::string what = say.entered->form == RouteForm::straights ? "straight " : moves ? "move " : "leg ";
    return what + std::to_string(run + 1);
}

SlipWords slip_words(const Slip& slip, const ProofSpeech& say) {
    SlipWords words = of_slip(slip, say);
    words.remedy = "Correct it: " + words.remedy;
    return words;
}

std::optional<std::size_t> loudest_reading(const Proof& proof) {
    const auto& off = proof.off;
    const auto loudest = std::max_element(off.begin(), off.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    return loudest == off.end() ? std::nullopt : std::optional(static_cast<std::size_t>(loudest - off.begin()));
}

std::string explained(const Explanation& explanation, const Proving& proving, const ProofSpeech& say) {
    const SlipWords words = slip_words(explanation.slip, say);
    const auto loudest = loudest_reading(proving.proof);
    const bool seen = explanation.slip.kind == SlipKind::mirrored && proving.kept.taken.hand;
    if (!loudest || seen) return "If " + words.were + ", it would lie as you saw it.";
    const TapeReading& read = proving.kept.taken.readings[*loudest];
    return "If " + words.were + ", " + span_name(say, read.span) + " would read " + text(explanation.would_read[*loudest], say.tape) + ", and you read " + text(read.read, say.tape) + ".";
}

std::string suspect_words(const Suspect& suspect, const ProofSpeech& say) {
    switch (suspect.what) {
        case Suspect::What::leg: return run_name(say, suspect.place) + " at " + text(Length{suspect.value}, say.tape);
        case Suspect::What::angle: return bend_name(suspect.place) + " at " + text(Angle{suspect.value}, say.tape);
        case Suspect::What::rotation: return bend_name(suspect.place) + " turned " + turn_word(Angle{std::round(suspect.value)});
    }
    return "";
}

std::string proof_sentence(ProofStanding standing, std::size_t readings) {
    switch (standing) {
        case ProofStanding::none: return "";
        case ProofStanding::stale: return "The route was changed after it was checked with a tape.";
        case ProofStanding::begun: return "The check of the entry with a tape is begun, not finished.";
        case ProofStanding::agrees: return "Entry checked with " + counted(readings, "reading", "readings") + ".";
        case ProofStanding::speaks_against: return "The tape does not agree with the entry: check it before you cut.";
    }
    return "";
}

}  // namespace tubewright
