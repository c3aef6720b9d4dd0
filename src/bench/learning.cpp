#include "bench/learning.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "bench/card_limits.h"

namespace tubewright {
namespace {

/// A hand's breadth on the hook side and three on the whole: what can be held and taped. Common practice, no source.
constexpr Length least_hook_side_in{4 * 25.4}, least_cut_in{12 * 25.4}, least_hook_side_mm{100}, least_cut_mm{300};
constexpr Length hand_in{25.4}, hand_mm{30};
/// The springback before any bend was measured is good to about a third.
constexpr double growth_share = tolerance::springback_forecast_share;
constexpr std::size_t most_marks = 20;  // of a card file

Length rounded_up(Length length, Length step) { return {std::ceil(length / step - tolerance::arithmetic) * step.mm}; }

Length to_card(Length length, Unit unit) {
    if (unit == Unit::mm) return {std::round(length.mm * 100) / 100 + 0.0};  // + 0.0: no "-0"
    return {std::round(length.inch() * 1000) / 1000 * 25.4 + 0.0};
}

}  // namespace

PiecePlan piece_plan(const Bender& bender, Unit unit) {
    const bool inch = unit == Unit::inch;
    const Length step = inch ? Length{25.4} : Length{10}, hand = inch ? hand_in : hand_mm;
    Length furthest;
    for (const ReferenceMark& mark : bender.marks) furthest = std::max(furthest, Length{std::abs(mark.offset.mm)});
    const Length ink = rounded_up(std::max(inch ? least_hook_side_in : least_hook_side_mm, bender.hook_straight + furthest + hand), step);
    const Length cut = ink + furthest + arc_length(bender.radius, half_turn) + bender.lever_straight + 2 * hand;
    return {rounded_up(std::max(inch ? least_cut_in : least_cut_mm, cut), step), ink};
}

bool can_aim(const Bender& bender, Angle aim) {
    if (aim > bender.max_angle) return false;
    return aim == half_turn || (aim >= tolerance::springback_linear_from && aim <= tolerance::sharpest_touched);
}

BenderBelief belief_of(const Line& line, const Springback& springback) {
    BenderBelief belief;
    belief.od = line.tube.od;
    belief.form_radius = line.bender.radius;
    belief.springback = springback;
    belief.growth_sd = growth_share * springback.growth;
    belief.marks = line.bender.marks;
    return belief;
}

BentPiece bent_piece(const KeptPiece& piece) {
    BentPiece bent;
    bent.sd = piece.tape == 64 ? read_to_64ths : read_to_32nds;
    if (is_half_turn(piece)) {
        bent.cut = least_cut_mm;  // of a half turn nobody asks for it, and nothing goes by it
        bent.angle = half_turn;
        bent.width = piece.width;
        return bent;
    }
    bent.set = piece.set;  // of a half turn nobody read how far it opened: it says nothing of springback
    bent.cut = piece.cut.value_or(Length{});
    for (const KeptInk& ink : piece.inks)
        if (ink.from_hook_end) bent.inks.push_back({ink.mark, *ink.from_hook_end});
    bent.angle = piece.angle.value_or(Angle{});
    bent.hook_leg = piece.hook_leg;
    bent.lever_leg = piece.lever_leg;
    bent.crown_gap = piece.crown_gap;
    return bent;
}

std::optional<Learning> learn_from(const BenderBelief& belief, const Bender& bender, const std::vector<KeptPiece>& kept) {
    Learning learning;
    std::vector<BentPiece> bent;
    for (const KeptPiece& piece : kept) {
        if (next_step(piece) != PieceStep::done) continue;
        learning.pieces.push_back(piece);
        bent.push_back(bent_piece(piece));
    }
    if (bent.empty()) return std::nullopt;
    auto learned = learn_bender(belief, bent);
    if (!learned.ok()) {
        learning.trouble = learned.trouble();
        return learning;
    }
    learning.learned = std::move(learned).value();
    if (auto told = mark_meanings(belief, bent); told.ok()) learning.meanings = std::move(told).value();
    for (OneMore& more : one_more(belief, bent))
        if (can_aim(bender, more.angle)) learning.more.push_back(std::move(more));
    return learning;
}

bool tells_stretch(const LearnedBender& learned) {
    constexpr double band = 1.96;
    const BenderBelief before;
    const auto weight = [](double sd) { return 1 / (sd * sd); };
    const double said = weight(learned.stretch_sd) - weight(before.stretch_sd);
    if (learned.stretch_at_limit || said <= 0) return false;
    const double mean = (learned.stretch * weight(learned.stretch_sd) - before.stretch * weight(before.stretch_sd)) / said;
    return std::abs(mean) > band / std::sqrt(said);
}

std::optional<Bender> with_learned(Bender card, const LearnedBender& learned, Unit unit) {
    card.radius = to_card(learned.form_radius, unit);
    const double radii = card.radius / card.tube_od;
    if (!(radii > card_limits::least_radius && radii <= card_limits::most_radius)) return std::nullopt;
    for (const LearnedMark& mark : learned.marks) {
        const Length offset = to_card(mark.offset, unit);
        if (!(std::abs(offset.mm) <= card_limits::reach)) return std::nullopt;
        const auto known = std::find_if(card.marks.begin(), card.marks.end(), [&](const ReferenceMark& one) { return one.name == mark.name; });
        if (known != card.marks.end()) known->offset = offset;
        else card.marks.push_back({mark.name, offset});
    }
    if (card.marks.size() > most_marks) return std::nullopt;
    if (tells_stretch(learned)) card.stretch = std::round(learned.stretch * 1000) / 1000 + 0.0;
    return card;
}

}  // namespace tubewright
