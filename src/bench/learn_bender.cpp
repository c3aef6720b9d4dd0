#include "bench/learn_bender.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bench/piece_fit.h"

namespace tubewright {
namespace {

constexpr std::array<double, 5> common_angles{30, 45, 60, 90, 120};

LearnedBender learned_from(const BenderBelief& belief, const SettledMarks& settled, const PieceFit& fit) {
    const std::vector<SoughtMark>& marks = settled.marks;
    const auto sd = [&](Eigen::Index i) { return std::sqrt(fit.covariance(i, i)); };
    LearnedBender learned;
    learned.radius = {fit.at[0]}, learned.radius_sd = {sd(0)};
    learned.stretch = fit.at[1], learned.stretch_sd = sd(1);
    // R = form (1 + growth): the shares of both doubts add as squares.
    const double grown = 1 + belief.springback.growth;
    learned.form_radius = learned.radius / grown;
    learned.form_radius_sd = std::hypot(learned.radius_sd / learned.radius, belief.growth_sd / grown) * learned.form_radius;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto at = static_cast<Eigen::Index>(2 + i);
        learned.marks.push_back({marks[i].name, {fit.at[at]}, {sd(at)}, settled.surprised[i]});
    }
    learned.moving = settled.moving;
    for (const OddReading& reading : fit.off)
        if (std::abs(reading.off) > odd_reading) learned.odd.push_back(reading);
    std::sort(learned.odd.begin(), learned.odd.end(), [](const OddReading& a, const OddReading& b) { return std::abs(a.off) > std::abs(b.off); });
    learned.misfit = fit.misfit;
    const auto kept = static_cast<Eigen::Index>(2 + marks.size());
    learned.covariance = fit.covariance.topLeftCorner(kept, kept);
    return learned;
}

LearnedBender learned_from_sound(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    const SettledMarks settled = settled_marks(belief, pieces);
    PieceFit fit = fit_pieces(belief, pieces, settled.marks);
    const double held = std::clamp(fit.at[1], least_stretch, most_stretch);
    const bool at_limit = held != fit.at[1];
    if (at_limit) fit = fit_pieces(belief, pieces, settled.marks, held);
    LearnedBender learned = learned_from(belief, settled, fit);
    learned.stretch_at_limit = at_limit;
    return learned;
}

/// The piece that would be bent next, its readings as they are foreseen.
BentPiece foreseen_piece(const BenderBelief& belief, const LearnedBender& learned, Angle angle, const PieceSd& sd) {
    BentPiece piece;
    const Length straight = 8 * belief.form_radius, arc = (1 - learned.stretch) * arc_length(learned.radius, angle);
    piece.cut = 2 * straight + arc;
    piece.angle = angle;
    piece.sd = sd;
    if (angle == Angle{180}) {
        piece.width = 2 * learned.radius + belief.od;
        return piece;
    }
    const Length corner = std::tan(angle.rad() / 2) * (learned.radius + belief.od / 2);
    piece.hook_leg = piece.lever_leg = straight + corner;
    for (const LearnedMark& mark : learned.marks) piece.inks.push_back({mark.name, straight + mark.offset});
    return piece;
}

}  // namespace

std::optional<BendCheck> bend_check(const BentPiece& piece, const BenderAndTube& with, const std::string& lot) {
    if (!piece.set) return std::nullopt;
    return BendCheck{{}, with, lot, {}, *piece.set, piece.angle};
}

Result<LearnedBender, LearnTrouble> learn_bender(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    if (auto trouble = trouble_with(belief, pieces)) return *trouble;
    return learned_from_sound(belief, pieces);
}

Length corner_sd(const LearnedBender& learned, std::size_t mark, Angle angle) {
    const Eigen::MatrixXd& v = learned.covariance;
    const auto m = static_cast<Eigen::Index>(2 + mark);
    const double t = std::tan(angle.rad() / 2);
    return {std::sqrt(std::max(0.0, t * t * v(0, 0) - 2 * t * v(0, m) + v(m, m)))};
}

Length worst_corner_sd(const LearnedBender& learned) {
    Length worst;
    for (const double angle : common_angles)
        for (std::size_t mark = 0; mark < learned.marks.size(); ++mark) worst = std::max(worst, corner_sd(learned, mark, {angle}));
    return worst;
}

std::vector<OneMore> one_more(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    const LearnedBender now = learned_from_sound(belief, pieces);
    std::vector<OneMore> offers;
    for (const double angle : {45.0, 90.0, 180.0}) {
        std::vector<BentPiece> with = pieces;
        with.push_back(foreseen_piece(belief, now, {angle}, pieces.back().sd));
        const LearnedBender then = learned_from_sound(belief, with);
        OneMore offer{{angle}, then.radius_sd, then.stretch_sd, {}, worst_corner_sd(then)};
        for (const LearnedMark& mark : then.marks) offer.offset_sd.push_back(mark.sd);
        offers.push_back(std::move(offer));
    }
    std::stable_sort(offers.begin(), offers.end(), [](const OneMore& a, const OneMore& b) { return a.worst_corner_sd < b.worst_corner_sd; });
    return offers;
}

}  // namespace tubewright
