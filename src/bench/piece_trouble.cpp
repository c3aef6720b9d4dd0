#include <algorithm>
#include <cmath>
#include <set>

#include "base/tolerance.h"
#include "bench/card_limits.h"
#include "bench/piece_fit.h"
#include "tube/part.h"

namespace tubewright {
namespace {

/// Half a turn is called so within this: further off, the width depends on where it is taken. Our choice.
constexpr Angle half_turn_within{5};
/// Legs and cut length that miss each other by more than this many standard deviations, the beliefs' counted in, hold a
/// slip of the tape: 1 honest piece in 16,000. Our choice.
constexpr double legs_fit_within = 4;
/// A radius further than this share from the believed one is another bender's, or a slip. Our choice.
constexpr double radius_within = 0.10;

bool is_length(Length length) { return length.mm > 0 && length.mm <= card_limits::body_reach; }

std::optional<LearnTrouble> readings_of(const BentPiece& piece, std::size_t i) {
    if (!has_legs(piece) && !piece.width) return NothingMeasured{i};
    if (!is_length(piece.cut)) return CutNotALength{i, piece.cut};
    const std::pair<PieceReading, const std::optional<Length>&> all[]{
        {PieceReading::hook_leg, piece.hook_leg}, {PieceReading::lever_leg, piece.lever_leg}, {PieceReading::crown_gap, piece.crown_gap}, {PieceReading::width, piece.width}};
    for (const auto& [which, read] : all)
        if (read && !is_length(*read)) return NotALength{i, which, *read};
    const Angle least = has_legs(piece) ? tolerance::springback_linear_from : Angle{180} - half_turn_within;
    const Angle most = has_legs(piece) ? tolerance::sharpest_touched : Angle{180} + half_turn_within;
    if (has_legs(piece) && piece.width) return WidthWithLegs{i};
    if (!(piece.angle >= least && piece.angle <= most)) return AngleNotFor{i, piece.angle, least, most};
    std::set<std::string> met;
    for (const InkOnPiece& ink : piece.inks) {
        if (!is_length(ink.from_hook_end) || ink.from_hook_end >= piece.cut) return InkOffPiece{i, ink.mark, ink.from_hook_end, piece.cut};
        if (!met.insert(ink.mark).second) return InkedTwice{i, ink.mark};
    }
    return std::nullopt;
}

/// (R + D/2) (1/cos(a/2) - 1); a radius at its limit, and an angle and a gap misread by as much as legs may be, change it.
std::optional<LearnTrouble> crown_gap_of(const BenderBelief& belief, const BentPiece& piece, std::size_t i) {
    if (!piece.crown_gap) return std::nullopt;
    const double half = piece.angle.rad() / 2, secant = 1 / std::cos(half), outside = (finished_radius(belief.springback, belief.form_radius) + belief.od / 2).mm;
    const double expected = outside * (secant - 1), by_angle = outside * secant * std::tan(half) / 2 * piece.sd.angle.rad();
    const double room = radius_within * expected + legs_fit_within * std::hypot(by_angle, piece.sd.crown.mm);
    if (std::abs(piece.crown_gap->mm - expected) <= room) return std::nullopt;
    return CrownGapFarOff{i, *piece.crown_gap, {expected}};
}

std::optional<LearnTrouble> legs_of(const BenderBelief& belief, const BentPiece& piece, std::size_t i) {
    if (!has_legs(piece)) return std::nullopt;
    const Length radius = finished_radius(belief.springback, belief.form_radius);
    const Length corner = setback(radius, piece.angle) + edge_shift(belief.od, piece.angle);
    const Length least = (1 - radius_within) * corner, most = piece.cut + (1 + radius_within) * corner;
    for (const bool hook_side : {true, false}) {
        const std::optional<Length>& leg = hook_side ? piece.hook_leg : piece.lever_leg;
        if (leg && *leg < least) return LegTooShort{i, hook_side, *leg, least};
        if (leg && *leg > most) return LegTooLong{i, hook_side, *leg, most};
    }
    if (!piece.hook_leg || !piece.lever_leg) return std::nullopt;
    // Both legs are cut - (1 - stretch) R a + 2 (R + D/2) tan(a/2); its doubt is that of all it is made of.
    const double a = piece.angle.rad(), t = std::tan(a / 2);
    const Length expected = piece.cut - (1 - belief.stretch) * arc_length(radius, piece.angle) + 2 * corner, sum = *piece.hook_leg + *piece.lever_leg;
    const double by_angle = ((radius + belief.od / 2).mm * (1 + t * t) - (1 - belief.stretch) * radius.mm) * piece.sd.angle.rad();
    const double by_radius = (2 * t - (1 - belief.stretch) * a) * belief.radius_sd.mm, by_stretch = radius.mm * a * belief.stretch_sd;
    const double sd = std::sqrt(2 * piece.sd.leg.mm * piece.sd.leg.mm + piece.sd.cut.mm * piece.sd.cut.mm + by_angle * by_angle + by_radius * by_radius + by_stretch * by_stretch);
    const auto misses = [&](Length by) { return std::abs((sum + by - expected).mm) > legs_fit_within * sd; };
    if (!misses({})) return std::nullopt;
    LegsDontFit trouble{i, sum, expected, {}};
    if (!misses(2 * edge_shift(belief.od, piece.angle))) trouble.would_fit = TapeEdge::centre;
    else if (!misses(4 * edge_shift(belief.od, piece.angle))) trouble.would_fit = TapeEdge::inside;
    return trouble;
}

}  // namespace

std::optional<LearnTrouble> trouble_with(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    if (pieces.empty()) return NothingMeasured{};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (auto trouble = readings_of(pieces[i], i)) return trouble;
        if (auto trouble = legs_of(belief, pieces[i], i)) return trouble;
        if (auto trouble = crown_gap_of(belief, pieces[i], i)) return trouble;
    }
    const Length expected = finished_radius(belief.springback, belief.form_radius), found{fit_pieces(belief, pieces, settled_marks(belief, pieces).marks).at[0]};
    if (std::abs(found / expected - 1) > radius_within) return RadiusFarOff{found, expected};
    return std::nullopt;
}

}  // namespace tubewright
