#include <algorithm>
#include <cmath>
#include <numeric>

#include "bench/piece_fit.h"

namespace tubewright {
namespace {

constexpr std::array<MarkMeans, meanings> all_meanings{MarkMeans::fixed, MarkMeans::corner, MarkMeans::middle, MarkMeans::far_end};
/// Odds at which a meaning counts as told. Our choice.
constexpr double told_from = 20.0 / 21;

bool shows(const BentPiece& piece, const std::string& mark) {
    return has_legs(piece) && std::any_of(piece.inks.begin(), piece.inks.end(), [&](const InkOnPiece& ink) { return ink.mark == mark; });
}

/// The smallest and the largest angle at which a mark was inked.
std::pair<Angle, Angle> angles_of(const std::vector<BentPiece>& pieces, const std::string& mark) {
    Angle low{360}, high{0};
    for (const BentPiece& piece : pieces)
        if (shows(piece, mark)) low = std::min(low, piece.angle), high = std::max(high, piece.angle);
    return {low, high};
}

/// The value that a sum of `count` squared standard deviations passes once in a thousand: Wilson and Hilferty 1931, the
/// cube root of such a sum over its count is normal with mean 1 - 2/(9 count) and variance 2/(9 count). From memory.
double once_in_a_thousand(double count) {
    const double variance = 2 / (9 * count);
    return count * std::pow(1 - variance + 3.0902 * std::sqrt(variance), 3);
}

/// The angle at which the four places part most, against where they lie at the angle there is.
Angle telling_angle(const BenderBelief& belief, Angle there) {
    const double radius = finished_radius(belief.springback, belief.form_radius).mm;
    const auto moved = [&](MarkMeans means, Angle to) { return place_of(means, radius, belief.stretch, to.rad()) - place_of(means, radius, belief.stretch, there.rad()); };
    Angle best{90};
    double most = -1;
    for (const double deg : {30.0, 45.0, 90.0}) {
        double least = radius;
        for (std::size_t i = 0; i < meanings; ++i)
            for (std::size_t k = 0; k < i; ++k) least = std::min(least, std::abs(moved(all_meanings[i], {deg}) - moved(all_meanings[k], {deg})));
        if (least > most) most = least, best = {deg};
    }
    return best;
}

MarkMeaning meaning_of(const BenderBelief& belief, const std::vector<BentPiece>& pieces, const std::string& name, double misfit_without) {
    MarkMeaning meaning;
    meaning.mark = name;
    std::array<double, meanings> misfit{};
    for (std::size_t i = 0; i < meanings; ++i) {
        const PieceFit fit = fit_pieces(belief, pieces, {anywhere(belief, name, all_meanings[i])});
        misfit[i] = fit.misfit;
        meaning.past[i] = {fit.at[2]};
        meaning.past_sd[i] = {std::sqrt(fit.covariance(2, 2))};
    }
    const auto times = std::count_if(pieces.begin(), pieces.end(), [&](const BentPiece& piece) { return shows(piece, name); });
    const auto [low, high] = angles_of(pieces, name);
    const bool apart = high - low >= far_apart;
    const double least = *std::min_element(misfit.begin(), misfit.end());
    // Each meaning has one number of its own to fit, so that their misfits can be compared as they are.
    for (std::size_t i = 0; i < meanings; ++i) meaning.chance[i] = apart ? std::exp((least - misfit[i]) / 2) : 1;
    const double all = std::accumulate(meaning.chance.begin(), meaning.chance.end(), 0.0);
    for (double& chance : meaning.chance) chance /= all;
    const auto best = static_cast<std::size_t>(std::max_element(meaning.chance.begin(), meaning.chance.end()) - meaning.chance.begin());
    meaning.means = all_meanings[best];
    meaning.none_fits = times > 1 && least - misfit_without > once_in_a_thousand(static_cast<double>(times - 1));
    meaning.told = apart && !meaning.none_fits && meaning.chance[best] >= told_from;
    if (!meaning.told && !meaning.none_fits) meaning.try_next = telling_angle(belief, low);
    return meaning;
}

}  // namespace

SettledMarks settled_marks(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    SettledMarks settled;
    std::optional<double> without;
    for (const SoughtMark& mark : sought_marks(belief, pieces)) {
        const auto [low, high] = angles_of(pieces, mark.name);
        if (high - low >= far_apart) {
            if (!without) without = fit_pieces(belief, pieces, {}).misfit;
            const MarkMeaning meaning = meaning_of(belief, pieces, mark.name, *without);
            if (meaning.told && meaning.means != MarkMeans::fixed) {
                settled.moving.push_back(mark.name);
                continue;
            }
        }
        settled.marks.push_back(mark);
    }
    const PieceFit fit = fit_pieces(belief, pieces, settled.marks);
    for (std::size_t i = 0; i < settled.marks.size(); ++i) {
        SoughtMark& mark = settled.marks[i];
        settled.surprised.push_back(mark.before_sd == belief.mark_sd.mm && std::abs(fit.at[static_cast<Eigen::Index>(2 + i)] - mark.before) > mark_surprise.mm);
        if (settled.surprised.back()) mark = anywhere(belief, mark.name, MarkMeans::fixed);
    }
    return settled;
}

Result<std::vector<MarkMeaning>, LearnTrouble> mark_meanings(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    if (auto trouble = trouble_with(belief, pieces)) return *trouble;
    const double without = fit_pieces(belief, pieces, {}).misfit;
    std::vector<MarkMeaning> found;
    for (const SoughtMark& mark : sought_marks(belief, pieces)) found.push_back(meaning_of(belief, pieces, mark.name, without));
    return found;
}

}  // namespace tubewright
