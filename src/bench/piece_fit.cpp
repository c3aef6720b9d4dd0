#include "bench/piece_fit.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace tubewright {
namespace {

constexpr double pi = std::numbers::pi;
/// Sums of squares of a dozen readings: the steps of Gauss and Newton halve the digits still missing several times over.
constexpr int most_steps = 30;
constexpr double small_step = 1e-10;  ///< of a standard deviation

/// One reading: what it should have been, how that depends on the unknowns, and how finely it was read.
struct Row {
    std::size_t piece;
    PieceReading which;
    double read, foreseen, sd;
    std::vector<std::pair<Eigen::Index, double>> slope;
};

double place_slope_radius(MarkMeans means, double stretch, double a) { return place_of(means, 1, stretch, a); }
double place_slope_stretch(MarkMeans means, double radius, double a) { return place_of(means, radius, 1, a) - place_of(means, radius, 0, a); }
double place_slope_angle(MarkMeans means, double radius, double stretch, double a) {
    const double t = std::tan(a / 2);
    return means == MarkMeans::corner ? radius * (1 + t * t) / 2 : place_of(means, radius, stretch, 1);
}

/// All readings as they would be at `x`.
class Readings {
public:
    Readings(const BenderBelief& belief, const std::vector<BentPiece>& pieces, const std::vector<SoughtMark>& marks) : belief_(belief), pieces_(pieces), marks_(marks) {
        Eigen::Index next = static_cast<Eigen::Index>(2 + marks.size());
        for (const BentPiece& piece : pieces) {
            bends_.push_back(has_legs(piece) ? next : -1);
            if (has_legs(piece)) next += 2;
        }
        count_ = next;
    }

    Eigen::Index unknowns() const { return count_; }
    Eigen::Index bend(std::size_t piece) const { return bends_[piece]; }

    std::vector<Row> rows(const Eigen::VectorXd& x) const {
        std::vector<Row> rows;
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (bends_[i] >= 0) of_bend(i, x, rows);
            if (pieces_[i].width) {
                const double open = std::tan((pi - pieces_[i].angle.rad()) / 2);
                rows.push_back({i, PieceReading::width, pieces_[i].width->mm, 2 * x[0] + belief_.od.mm + 2 * pieces_[i].width_beyond.mm * open, pieces_[i].sd.width.mm, {{0, 2}}});
            }
        }
        return rows;
    }

private:
    void of_bend(std::size_t i, const Eigen::VectorXd& x, std::vector<Row>& rows) const {
        const BentPiece& piece = pieces_[i];
        const Eigen::Index angle = bends_[i], start = angle + 1;
        const double r = x[0], stretch = x[1], a = x[angle], from = x[start], outside = r + belief_.od.mm / 2;
        const double t = std::tan(a / 2), secant = 1 / std::cos(a / 2), grows = outside * secant * secant / 2;
        rows.push_back({i, PieceReading::angle, piece.angle.rad(), a, piece.sd.angle.rad(), {{angle, 1}}});
        if (piece.hook_leg) rows.push_back({i, PieceReading::hook_leg, piece.hook_leg->mm, from + outside * t, piece.sd.leg.mm, {{0, t}, {angle, grows}, {start, 1}}});
        if (piece.lever_leg) {
            // The cut length counts as exact here and lends its doubt to the leg.
            rows.push_back({i, PieceReading::lever_leg, piece.lever_leg->mm, piece.cut.mm - from - (1 - stretch) * r * a + outside * t, std::hypot(piece.sd.leg.mm, piece.sd.cut.mm),
                            {{0, t - (1 - stretch) * a}, {1, r * a}, {angle, grows - (1 - stretch) * r}, {start, -1}}});
        }
        if (piece.crown_gap) rows.push_back({i, PieceReading::crown_gap, piece.crown_gap->mm, outside * (secant - 1), piece.sd.crown.mm, {{0, secant - 1}, {angle, outside * secant * t / 2}}});
        for (const InkOnPiece& ink : piece.inks) {
            const auto found = std::find_if(marks_.begin(), marks_.end(), [&](const SoughtMark& mark) { return mark.name == ink.mark; });
            if (found == marks_.end()) continue;
            const auto mark = static_cast<Eigen::Index>(2 + (found - marks_.begin()));
            rows.push_back({i, PieceReading::ink, ink.from_hook_end.mm, from + place_of(found->means, r, stretch, a) + x[mark], piece.sd.ink.mm,
                            {{0, place_slope_radius(found->means, stretch, a)}, {1, place_slope_stretch(found->means, r, a)}, {mark, 1}, {angle, place_slope_angle(found->means, r, stretch, a)}, {start, 1}}});
        }
    }

    const BenderBelief& belief_;
    const std::vector<BentPiece>& pieces_;
    const std::vector<SoughtMark>& marks_;
    std::vector<Eigen::Index> bends_;  ///< the angle of each piece's bend among the unknowns; -1: none
    Eigen::Index count_;
};

/// What is believed before any reading, and how firmly. Angles are not believed but read; a bend starts somewhere on its piece.
struct Before {
    Eigen::VectorXd at, sd;
};

Before before(const BenderBelief& belief, const std::vector<BentPiece>& pieces, const std::vector<SoughtMark>& marks, const Readings& readings, std::optional<double> stretch_held) {
    Before result{Eigen::VectorXd::Zero(readings.unknowns()), Eigen::VectorXd::Ones(readings.unknowns())};
    const auto put = [&](Eigen::Index i, double at, double sd) { result.at[i] = at, result.sd[i] = sd; };
    constexpr double held = 1e-6;  // of the arc: no reading moves it
    put(0, finished_radius(belief.springback, belief.form_radius).mm, belief.radius_sd.mm);
    put(1, stretch_held.value_or(belief.stretch), stretch_held ? held : belief.stretch_sd);
    for (std::size_t i = 0; i < marks.size(); ++i) put(static_cast<Eigen::Index>(2 + i), marks[i].before, marks[i].before_sd);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (readings.bend(i) < 0) continue;
        put(readings.bend(i), pieces[i].angle.rad(), pi);
        put(readings.bend(i) + 1, pieces[i].cut.mm / 2, 10 * pieces[i].cut.mm);
    }
    return result;
}

}  // namespace

double place_of(MarkMeans means, double radius, double stretch, double angle_rad) {
    switch (means) {
        case MarkMeans::fixed: return 0;
        case MarkMeans::corner: return radius * std::tan(angle_rad / 2);
        case MarkMeans::middle: return (1 - stretch) * radius * angle_rad / 2;
        case MarkMeans::far_end: return (1 - stretch) * radius * angle_rad;
    }
    return 0;
}

SoughtMark anywhere(const BenderBelief& belief, const std::string& name, MarkMeans means) { return {name, 0, 10 * belief.form_radius.mm, means}; }

std::vector<SoughtMark> sought_marks(const BenderBelief& belief, const std::vector<BentPiece>& pieces) {
    std::vector<SoughtMark> marks;
    for (const BentPiece& piece : pieces)
        for (const InkOnPiece& ink : piece.inks) {
            if (!has_legs(piece) || std::any_of(marks.begin(), marks.end(), [&](const SoughtMark& mark) { return mark.name == ink.mark; })) continue;
            const auto known = std::find_if(belief.marks.begin(), belief.marks.end(), [&](const ReferenceMark& mark) { return mark.name == ink.mark; });
            marks.push_back(known == belief.marks.end() ? anywhere(belief, ink.mark, MarkMeans::fixed) : SoughtMark{ink.mark, known->offset.mm, belief.mark_sd.mm});
        }
    return marks;
}

// Gauss and Newton: with r the readings' misses, J their slopes, both over the readings' sd, and B the beliefs' precision,
//   (J'J + B) step = J'r + B (believed - x);   covariance (J'J + B)^-1
PieceFit fit_pieces(const BenderBelief& belief, const std::vector<BentPiece>& pieces, const std::vector<SoughtMark>& marks, std::optional<double> stretch_held) {
    const Readings readings(belief, pieces, marks);
    const Before believed = before(belief, pieces, marks, readings, stretch_held);
    const Eigen::VectorXd firm = believed.sd.cwiseAbs2().cwiseInverse();
    PieceFit fit;
    fit.at = believed.at;
    Eigen::LDLT<Eigen::MatrixXd> solver;
    for (int step = 0; step < most_steps; ++step) {
        Eigen::MatrixXd precision = firm.asDiagonal();
        Eigen::VectorXd pull = firm.cwiseProduct(believed.at - fit.at);
        for (const Row& row : readings.rows(fit.at)) {
            const double weight = 1 / (row.sd * row.sd);
            for (const auto& [i, slope] : row.slope) {
                pull[i] += weight * slope * (row.read - row.foreseen);
                for (const auto& [k, other] : row.slope) precision(i, k) += weight * slope * other;
            }
        }
        solver.compute(precision);
        const Eigen::VectorXd move = solver.solve(pull);
        fit.at += move;
        if (move.dot(precision * move) < small_step * small_step) break;
    }
    fit.covariance = solver.solve(Eigen::MatrixXd::Identity(readings.unknowns(), readings.unknowns()));
    fit.misfit = firm.dot((believed.at - fit.at).cwiseAbs2());
    for (const Row& row : readings.rows(fit.at)) {
        const double off = (row.read - row.foreseen) / row.sd;
        fit.misfit += off * off;
        fit.off.push_back({row.piece, row.which, off});
    }
    return fit;
}

}  // namespace tubewright
