#include "present/learn_words.h"

#include <algorithm>
#include <cmath>

namespace tubewright {
namespace {

struct Say {
    const std::vector<KeptPiece>& pieces;
    const Tape& tape;

    std::string piece(std::size_t i) const { return "Piece " + std::to_string(i + 1); }
    /// What of the piece may be at fault, in the order to look at it.
    std::vector<PieceSpot> spots(std::size_t i, std::initializer_list<PieceStep> steps) const {
        std::vector<PieceSpot> all;
        if (i >= pieces.size()) return all;
        for (const PieceStep step : steps)
            if (reading_at(pieces[i], step)) all.push_back({pieces[i].id, step});
        return all;
    }
    std::vector<PieceSpot> ink(std::size_t i, const std::string& mark) const {
        if (i >= pieces.size()) return {};
        for (std::size_t k = 0; k < pieces[i].inks.size(); ++k)
            if (pieces[i].inks[k].mark == mark) return {{pieces[i].id, PieceStep::ink, k}};
        return {};
    }
    std::string leg(bool hook_side) const { return hook_side ? "the hook leg" : "the lever leg"; }
};

LearnTroubleWords words(const NothingMeasured& t, const Say& say) {
    if (!t.piece) return {"No piece has been measured to the end.", "Bend one and tape it.", {}};
    return {say.piece(*t.piece) + " has neither a leg nor a width.", "Tape its legs.", say.spots(*t.piece, {PieceStep::hook_leg, PieceStep::lever_leg, PieceStep::width})};
}
LearnTroubleWords words(const NotALength& t, const Say& say) {
    const PieceSpot spot = t.piece < say.pieces.size() ? spot_of(say.pieces[t.piece], t.which) : PieceSpot{};
    return {say.piece(t.piece) + ": " + text(t.read, say.tape) + " can't be.", "Tape it again.", {spot}};
}
LearnTroubleWords words(const CutNotALength& t, const Say& say) {
    return {say.piece(t.piece) + " can't have been " + text(t.read, say.tape) + " long.", "How long was it before it was bent?", say.spots(t.piece, {PieceStep::cut})};
}
LearnTroubleWords words(const AngleNotFor& t, const Say& say) {
    return {say.piece(t.piece) + " reads " + text(t.angle, say.tape) + ": nothing can be learned from that.",
            "It has to be " + text(t.least, say.tape) + " to " + text(t.most, say.tape) + ", counted from straight. Is it the protractor's other scale?", say.spots(t.piece, {PieceStep::angle})};
}
LearnTroubleWords words(const WidthWithLegs& t, const Say& say) {
    return {say.piece(t.piece) + " has legs and a width.", "A half turn has no corner to tape to: bend two pieces.", {}};
}
LearnTroubleWords words(const InkOffPiece& t, const Say& say) {
    return {say.piece(t.piece) + ": the ink at " + text(t.at, say.tape) + " lies beyond its length of " + text(t.cut, say.tape) + ".", "One of the two is misread.",
            [&] { auto spots = say.ink(t.piece, t.mark); for (const PieceSpot& cut : say.spots(t.piece, {PieceStep::cut})) spots.push_back(cut); return spots; }()};
}
LearnTroubleWords words(const InkedTwice& t, const Say& say) {
    return {say.piece(t.piece) + " has two inks for line " + t.mark + ".", "Only one of them can be right.", say.ink(t.piece, t.mark)};
}
LearnTroubleWords words(const LegTooShort& t, const Say& say) {
    return {say.piece(t.piece) + ": " + say.leg(t.hook_side) + " reads " + text(t.leg, say.tape) + ", shorter than its own corner.",
            "It has to be at least " + text(t.least, say.tape) + ". Tape from the end to a block on the outside of the other leg.",
            say.spots(t.piece, {t.hook_side ? PieceStep::hook_leg : PieceStep::lever_leg})};
}
LearnTroubleWords words(const LegTooLong& t, const Say& say) {
    return {say.piece(t.piece) + ": " + say.leg(t.hook_side) + " reads " + text(t.leg, say.tape) + ", longer than the whole piece and its corner.",
            "It can be " + text(t.most, say.tape) + " at most.", say.spots(t.piece, {t.hook_side ? PieceStep::hook_leg : PieceStep::lever_leg, PieceStep::cut})};
}
LearnTroubleWords words(const CrownGapFarOff& t, const Say& say) {
    return {say.piece(t.piece) + ": the gap at the corner reads " + text(t.gap, say.tape) + ", and " + text(t.expected, say.tape) + " was to be expected.", "Measure it again, or the angle.", say.spots(t.piece, {PieceStep::crown_gap, PieceStep::angle})};
}
LearnTroubleWords words(const LegsDontFit& t, const Say& say) {
    std::string to_do = "One of the four is misread.";
    if (t.would_fit == TapeEdge::centre) to_do = "They would fit if the tape lay along the middle of the tube: it has to lie on the outside, up to the block.";
    else if (t.would_fit == TapeEdge::inside) to_do = "They would fit if the tape lay on the inside: it has to lie on the outside, up to the block.";
    return {say.piece(t.piece) + ": both legs make " + text(t.sum, say.tape) + ", and " + text(t.expected, say.tape) + " goes with its length and angle.", to_do,
            say.spots(t.piece, {PieceStep::hook_leg, PieceStep::lever_leg, PieceStep::angle, PieceStep::cut})};
}
LearnTroubleWords words(const RadiusFarOff& t, const Say& say) {
    LearnTroubleWords out{"The pieces say a radius of " + fine(t.radius, say.tape) + ", the card " + fine(t.expected, say.tape) + ": more than a tenth apart.",
                          "Is it another bender's card, or is the radius on the card wrong? Put right what is stamped on the form first.", {}};
    for (std::size_t i = 0; i < say.pieces.size(); ++i)
        for (const PieceSpot& spot : say.spots(i, {PieceStep::width})) out.again.push_back(spot);
    return out;
}

}  // namespace

LearnTroubleWords learn_trouble_words(const LearnTrouble& trouble, const std::vector<KeptPiece>& pieces, const Tape& tape) {
    const Say say{pieces, tape};
    return std::visit([&](const auto& t) { return words(t, say); }, trouble);
}

std::string reading_name(const KeptPiece& piece, const PieceSpot& spot) {
    switch (spot.step) {
        case PieceStep::cut: return "length, straight";
        case PieceStep::ink: return "ink for line " + (spot.ink < piece.inks.size() ? piece.inks[spot.ink].mark : "");
        case PieceStep::angle: return "angle";
        case PieceStep::hook_leg: return "hook leg";
        case PieceStep::lever_leg: return "lever leg";
        case PieceStep::width: return "width";
        case PieceStep::crown_gap: return "gap at the corner";
        case PieceStep::mark:
        case PieceStep::load:
        case PieceStep::pull:
        case PieceStep::done: break;
    }
    return "";
}

std::string reading_value(const KeptPiece& piece, const PieceSpot& spot, const Tape& tape) {
    const auto value = reading_at(piece, spot.step, spot.ink);
    if (!value) return "";
    return spot.step == PieceStep::angle ? exact(Angle{*value}) : exact(Length{*value}, tape.unit);
}

std::vector<PieceSpot> readings_of(const KeptPiece& piece) {
    std::vector<PieceSpot> spots;
    const auto add = [&](PieceStep step, std::size_t ink = 0) {
        if (reading_at(piece, step, ink)) spots.push_back({piece.id, step, ink});
    };
    add(PieceStep::cut);
    for (std::size_t i = 0; i < piece.inks.size(); ++i) add(PieceStep::ink, i);
    for (const PieceStep step : {PieceStep::angle, PieceStep::hook_leg, PieceStep::lever_leg, PieceStep::width, PieceStep::crown_gap}) add(step);
    return spots;
}

PieceSpot spot_of(const KeptPiece& piece, PieceReading which) {
    switch (which) {
        case PieceReading::angle: return {piece.id, PieceStep::angle};
        case PieceReading::ink: return {piece.id, PieceStep::ink};
        case PieceReading::hook_leg: return {piece.id, PieceStep::hook_leg};
        case PieceReading::lever_leg: return {piece.id, PieceStep::lever_leg};
        case PieceReading::width: return {piece.id, PieceStep::width};
        case PieceReading::crown_gap: return {piece.id, PieceStep::crown_gap};
    }
    return {piece.id, PieceStep::angle};
}

std::string aim_words(Angle aim, const Tape& tape) { return aim == half_turn ? "a half turn" : "a bend to " + text(aim, tape); }

std::string brief_offset(Length offset, Unit unit) {
    const std::string shown = learned_text({std::abs(offset.mm)}, unit);
    if (shown == learned_text({}, unit)) return "at the start";
    return shown + (offset.mm > 0 ? " past" : " before");
}

std::string offset_words(Length offset, Unit unit) {
    const std::string brief = brief_offset(offset, unit);
    return brief == "at the start" ? "where the bend starts" : brief + " where the bend starts";
}

std::string meant_place(MarkMeans means) {
    switch (means) {
        case MarkMeans::fixed: return "the start of the bend";
        case MarkMeans::corner: return "the corner of the bend";
        case MarkMeans::middle: return "the middle of the bend";
        case MarkMeans::far_end: return "the far end of the bend";
    }
    return "";
}

std::string meaning_words(const MarkMeaning& meaning, const Tape& tape) {
    const auto past = [&](MarkMeans means) {
        const auto i = static_cast<std::size_t>(means);
        return std::pair{meaning.past[i], band(meaning.past_sd[i])};
    };
    if (meaning.none_fits) return "The pieces don't agree where this line lies: tape its inks again.";
    if (meaning.told && meaning.means == MarkMeans::fixed) return "It stays at that place at every angle.";
    if (meaning.told) {
        const Length off = past(meaning.means).first;
        const std::string shown = learned_text({std::abs(off.mm)}, tape.unit);
        const std::string by = shown == learned_text({}, tape.unit) ? "" : ", " + shown + (off.mm > 0 ? " past it" : " before it");
        return "It shows " + meant_place(meaning.means) + by + ", and moves with the angle. A card holds lines that stay: it is left out.";
    }
    std::string also;
    for (const MarkMeans means : {MarkMeans::corner, MarkMeans::middle, MarkMeans::far_end})
        if (also.empty() && std::abs(past(means).first.mm) <= past(means).second.mm) also = meant_place(means);
    const std::string tells = meaning.try_next ? " A bend to " + text(*meaning.try_next, tape) + " tells." : "";
    if (!also.empty()) return "It may as well show " + also + ": at this angle that is the same place." + tells;
    return "Whether it stays there at other angles is not known yet." + tells;
}

}  // namespace tubewright
