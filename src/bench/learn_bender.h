#pragma once
// What a bender is, learned from straight pieces that were marked, bent once and measured: where its marks lie, on
// which radius its bends come out, and how much of a bend the tube stretches.

#include <Eigen/Core>
#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/result.h"
#include "bench/bend_log.h"
#include "bench/bender.h"
#include "bench/springback.h"
#include "tube/route.h"

namespace tubewright {

/// How finely a piece is measured: standard deviations, independent of one another. Two readings in three are within
/// one. A tape's 32nds are read to half of one and laid to half of one; common practice, no source.
struct PieceSd {
    Length leg, ink, cut, crown, width;
    Angle angle;
    bool operator==(const PieceSd&) const = default;
};
inline constexpr PieceSd read_to_32nds{Length{.018 * 25.4}, Length{.012 * 25.4}, Length{.018 * 25.4}, Length{.010 * 25.4}, Length{.005 * 25.4}, Angle{.5}};
inline constexpr PieceSd read_to_64ths{Length{.009 * 25.4}, Length{.006 * 25.4}, Length{.009 * 25.4}, Length{.006 * 25.4}, Length{.004 * 25.4}, Angle{.25}};

/// An ink line that lay on one of the bender's marks, from the end that was in the hook.
struct InkOnPiece {
    std::string mark;
    Length from_hook_end;
    bool operator==(const InkOnPiece&) const = default;
};

/// One piece, bent once. Any of its readings may be missing; the legs are taped outside on the tube, from an end to a
/// block held along the outside of the other leg: end to tangent point + (radius + od/2) tan(angle/2).
struct BentPiece {
    Length cut;                        ///< of the straight tube, before
    std::vector<InkOnPiece> inks;      ///< one piece can carry the ink of every mark
    Angle angle;                       ///< after release
    std::optional<Angle> set;          ///< where the lever stood; for the springback log
    std::optional<Length> hook_leg, lever_leg;
    std::optional<Length> crown_gap;   ///< from the legs' outside corner to the outside of the bend
    std::optional<Length> width;       ///< of a half turn, outside over both legs
    Length width_beyond;               ///< past the bend's ends, where the width was taken
    PieceSd sd = read_to_32nds;
    bool operator==(const BentPiece&) const = default;
};

/// What the piece says of springback; none where the lever was not read.
std::optional<BendCheck> bend_check(const BentPiece& piece, const BenderAndTube& with, const std::string& lot);

/// What is believed before.
struct BenderBelief {
    Length od;                          ///< of the tube that was bent
    Length form_radius;                 ///< to the centre line, as the card or its stamp says
    Springback springback;              ///< what is known of this tube's
    double growth_sd = 0;               ///< of springback.growth
    std::vector<ReferenceMark> marks;   ///< those whose place is known about, such as the card's; others are looked for anywhere
    Length radius_sd{.025 * 25.4};      ///< of the finished radius. Our choice, as the next three
    Length mark_sd{.06 * 25.4};
    double stretch = .022, stretch_sd = .012;  ///< drawn-out share of the arc; one bend can hardly measure it
};

struct LearnedMark {
    std::string name;
    Length offset, sd;  ///< as in ReferenceMark
    bool far_from_belief = false;  ///< more than mark_surprise: perhaps another mark; what was believed of it is not used
    bool operator==(const LearnedMark&) const = default;
};
inline constexpr Length mark_surprise{.12 * 25.4};  ///< our choice: twice mark_sd

/// A reading that lies oddly by all others: to be taken again before anything is kept.
enum class PieceReading { angle, ink, hook_leg, lever_leg, crown_gap, width };
struct OddReading {
    std::size_t piece;
    PieceReading which;
    double off;  ///< in standard deviations of its reading
    bool operator==(const OddReading&) const = default;
};

struct LearnedBender {
    Length radius, radius_sd;            ///< finished, of this tube
    Length form_radius, form_radius_sd;  ///< for the card: radius / (1 + growth)
    double stretch, stretch_sd;
    bool stretch_at_limit = false;       ///< held at least_stretch or most_stretch
    std::vector<LearnedMark> marks;      ///< in the order they are met
    std::vector<std::string> moving;     ///< marks left out, because they are told to mean a place that moves with the angle
    std::vector<OddReading> odd;         ///< more than odd_reading off; worst first
    double misfit;                       ///< sum of squares in standard deviations, priors counted in
    Eigen::MatrixXd covariance;          ///< of radius (mm), stretch, then the marks' offsets (mm)
};
inline constexpr double least_stretch = -.01, most_stretch = .05;
inline constexpr double odd_reading = 3;

// --- what can stand in the way; pieces count from 0
struct NothingMeasured { std::optional<std::size_t> piece; };  ///< no piece at all, or neither leg, crown gap nor width
struct NotALength { std::size_t piece; PieceReading which; Length read; };
struct CutNotALength { std::size_t piece; Length read; };
struct AngleNotFor { std::size_t piece; Angle angle, least, most; };  ///< legs and crown gaps, or the width, of such an angle
struct WidthWithLegs { std::size_t piece; };  ///< a half turn has no corner to tape legs to: two pieces
struct InkOffPiece { std::size_t piece; std::string mark; Length at, cut; };
struct InkedTwice { std::size_t piece; std::string mark; };
struct LegTooShort { std::size_t piece; bool hook_side; Length leg, least; };  ///< shorter than its own corner
struct LegTooLong { std::size_t piece; bool hook_side; Length leg, most; };    ///< longer than the piece and its corner
struct CrownGapFarOff { std::size_t piece; Length gap, expected; };           ///< of a radius more than a tenth from the believed one
/// Both legs and the cut length contradict each other. `would_fit`: what the tape may have touched instead.
struct LegsDontFit { std::size_t piece; Length sum, expected; std::optional<TapeEdge> would_fit; };
struct RadiusFarOff { Length radius, expected; };
using LearnTrouble = std::variant<NothingMeasured, NotALength, CutNotALength, AngleNotFor, WidthWithLegs, InkOffPiece, InkedTwice, LegTooShort, LegTooLong, CrownGapFarOff, LegsDontFit, RadiusFarOff>;

/// Least squares with weak priors over radius, stretch, offsets and each piece's true angle and start of bend:
//   hook leg  = start + (R + D/2) tan(a/2)
//   lever leg = cut - start - (1 - stretch) R a + (R + D/2) tan(a/2)
//   crown gap = (R + D/2) (1 / cos(a/2) - 1)
//   width     = 2 R + D + 2 beyond tan((180 - a)/2)
//   ink       = start + offset
/// Derived from the geometry of an arc between two straights. The bands (1.96 sd) hold the truth 95 times in 100.
Result<LearnedBender, LearnTrouble> learn_bender(const BenderBelief& belief, const std::vector<BentPiece>& pieces);

/// How well the corner of a bend of this angle comes to lie where the ink says: sd of R tan(a/2) - offset. Learned at one
/// angle from legs alone, the errors of radius and offset cancel there and nowhere else. `mark` as in LearnedBender::marks.
Length corner_sd(const LearnedBender& learned, std::size_t mark, Angle angle);

/// What a mark shows: a place on the bender, the same at every angle (offset 0: the bend's start), or the corner, the
/// middle of the arc or its far end, whose distance from the start grows with the angle.
enum class MarkMeans { fixed, corner, middle, far_end };
inline constexpr std::size_t meanings = 4;

/// A card takes marks that mean a fixed place. `told` needs two angles far_apart from each other and odds of 20 to 1.
struct MarkMeaning {
    std::string mark;
    bool told = false;
    MarkMeans means = MarkMeans::fixed;        ///< the likeliest
    std::array<double, meanings> chance{};     ///< of each; all alike where only one angle is there
    std::array<Length, meanings> past{};       ///< how far past that place the mark lies; under `fixed` its offset
    std::array<Length, meanings> past_sd{};
    bool none_fits = false;                    ///< no meaning brings the readings of this mark together
    std::optional<Angle> try_next;             ///< while it is not told: the angle that would tell
    bool operator==(const MarkMeaning&) const = default;
};
inline constexpr Angle far_apart{20};  ///< our choice

Result<std::vector<MarkMeaning>, LearnTrouble> mark_meanings(const BenderBelief& belief, const std::vector<BentPiece>& pieces);

/// What one more piece would leave of the doubt; to first order, so that it can be said before the piece is bent.
struct OneMore {
    Angle angle;       ///< 180: a half turn, its width taken; else a bend with both legs and all marks inked
    Length radius_sd;
    double stretch_sd;
    std::vector<Length> offset_sd;  ///< as in LearnedBender::marks
    Length worst_corner_sd;         ///< the largest corner_sd of all marks at 30, 45, 60, 90 and 120 degrees
    bool operator==(const OneMore&) const = default;
};
Length worst_corner_sd(const LearnedBender& learned);

/// For a 45, a 90 and a half turn; `pieces` can be learned from. The most useful first, by worst_corner_sd.
std::vector<OneMore> one_more(const BenderBelief& belief, const std::vector<BentPiece>& pieces);

}  // namespace tubewright
