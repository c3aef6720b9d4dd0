#pragma once
// The least squares behind bench/learn_bender; for it alone.

#include "bench/learn_bender.h"

namespace tubewright {

/// A mark to find: its offset, or how far past a place that moves with the angle it lies. mm.
struct SoughtMark {
    std::string name;
    double before, before_sd;
    MarkMeans means = MarkMeans::fixed;
};

/// The marks inked on any piece, in the order they are met, with what is believed of them.
std::vector<SoughtMark> sought_marks(const BenderBelief& belief, const std::vector<BentPiece>& pieces);
/// Nothing is known of its place but that it lies on the bender.
SoughtMark anywhere(const BenderBelief& belief, const std::string& name, MarkMeans means);

/// The marks to learn from: those that are told to move with the angle are left out, and where a mark lies further off
/// than mark_surprise, what was believed of it is dropped.
struct SettledMarks {
    std::vector<SoughtMark> marks;
    std::vector<bool> surprised;        ///< of each
    std::vector<std::string> moving;
};
SettledMarks settled_marks(const BenderBelief& belief, const std::vector<BentPiece>& pieces);

/// Where a bend's start, corner, middle and far end lie on the straight tube, from its start; mm.
double place_of(MarkMeans means, double radius, double stretch, double angle_rad);

/// Unknowns: radius (mm), stretch, the marks in order (mm); then of each piece with a leg or crown gap its angle (rad)
/// and the start of its bend from the hook end (mm).
struct PieceFit {
    Eigen::VectorXd at;
    Eigen::MatrixXd covariance;
    double misfit = 0;             ///< of readings and beliefs, in squared standard deviations
    std::vector<OddReading> off;   ///< every reading
};
/// `pieces` are sound. `stretch_held`: not learned, but this.
PieceFit fit_pieces(const BenderBelief& belief, const std::vector<BentPiece>& pieces, const std::vector<SoughtMark>& marks, std::optional<double> stretch_held = {});

/// None where the pieces can be learned from.
std::optional<LearnTrouble> trouble_with(const BenderBelief& belief, const std::vector<BentPiece>& pieces);

/// Whether its bend is looked at, not only its width.
inline bool has_legs(const BentPiece& piece) { return piece.hook_leg || piece.lever_leg || piece.crown_gap; }

}  // namespace tubewright
