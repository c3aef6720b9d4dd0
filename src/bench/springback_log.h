#pragma once
// Springback that gets better with each bend: the physics of the tube as what is believed first, moved by what the
// protractor says, one log for each bender and tube.

#include <functional>
#include <optional>
#include <variant>
#include <vector>

#include "base/result.h"
#include "bench/belief_line.h"
#include "bench/bend_log.h"
#include "bench/springback.h"

namespace tubewright {

/// What is believed of a line set - target = growth * target + zero: the likeliest, and how surely. Variances in 1, degrees
/// and degrees^2.
struct SpringbackBelief {
    Springback line;
    double growth_variance = 0, covariance = 0, zero_variance = 0;
    bool operator==(const SpringbackBelief&) const = default;
};

/// Of tube that no bend has been measured of: the physics, its growth good to 35 % and never better than half a degree at
/// 90, its zero to a degree, for scale, hook slack and parallax come to the legs' share. Our choices, from how far the
/// ingredients of the physics can push it.
SpringbackBelief first_belief(const Springback& physics);
/// The same for another delivery of the tube: 15 % of the physics' growth and 0.3 degrees more doubt. Our choices.
SpringbackBelief for_another_lot(const SpringbackBelief& belief, const Springback& physics);

/// One reading to learn from. `share` of a full reading's weight: a quarter below tolerance::springback_linear_from,
/// where the rule is no straight line.
struct Sprung {
    Angle set, measured;
    double share = 1;
    bool operator==(const Sprung&) const = default;
};

struct SpringbackHow {
    Angle scatter{0.5};          ///< standard deviation of one reading about the line: lever 0.35, protractor 0.35; our choice
    bool robust = true;          ///< else all readings weigh alike
    bool never_surer = true;     ///< no reading weighs more than 1
    ScatterFrom from = ScatterFrom::clipped;  ///< from scatter_from readings on; before that, belief
};
inline constexpr std::size_t scatter_from = 6;

struct SpringbackLearned {
    SpringbackBelief belief;
    std::vector<double> weight;  ///< of each reading: about 1; below not_followed the line does not follow it
    Angle scatter;
    bool operator==(const SpringbackLearned&) const = default;
};
inline constexpr double not_followed = 0.3;

/// Least squares with a belief, each reading's error from a Student distribution of 4 degrees of freedom, so that a slip
/// weighs little: expectation and maximisation in turn until nothing moves. With x = (measured, 1), V the belief's
/// covariance, s the scatter and r the reading's miss:
//   weight = 5 / (4 + (r^2 + x'V x) / s^2);   V^-1 = V0^-1 + sum weight x x' / s^2;   line = V (V0^-1 line0 + sum weight x opened / s^2)
//   scatter weighed:  s^2 = (6 scatter^2 + sum weight (r^2 + x'V x)) / (6 + readings)
//   scatter clipped:  s^2 = (6 scatter^2 + sum min(r^2 + x'V x, 9 s^2)) / (6 + readings)
/// Lange, Little and Taylor, J. Am. Stat. Assoc. 84 (1989) 881, from memory; the posterior derived here. Of 4,000 logs of 20
/// bends with honest, normal scatter the 95 % band holds the truth in 94 % as it is by default; without never_surer and
/// with the weighed scatter in 90 %: learn_bench prints it.
SpringbackLearned learn_springback(const SpringbackBelief& before, const std::vector<Sprung>& readings, const SpringbackHow& how = {});

/// Where to stop the lever, and how sure that is.
struct SetTo {
    Angle set;             ///< to the line's full precision; on_lever() rounds it
    Angle line_sd;         ///< of the set angle as the log knows it
    Angle next_sd;         ///< of what the next bend will read, about the target
    Angle careful;         ///< aims one next_sd short: a tube can be bent on, never back
    double chance_good;    ///< that the next bend reads within tolerance::good_bend of the target, 0 to 1
    bool operator==(const SetTo&) const = default;
};
SetTo set_to(const SpringbackBelief& belief, Angle target, Angle scatter);
/// Of the released bend's radius: radius * sd of growth.
Length finished_radius_sd(const SpringbackBelief& belief, Length form_radius);

// --- the gate: what is asked of a reading before it is learned from
struct NotABend { Angle set, measured; };            ///< no finite angles above 0, or a lever beyond most_set
struct OpenedTheWrongWay { Angle opened, least; };   ///< reads more than it was pulled to, beyond 3 scatters
struct OpenedTooFar { Angle opened, most; };         ///< slip, wrong groove or scale; springback_gate
struct SetNotRead {};                                ///< pulled on without reading the lever's scale
using BendRefused = std::variant<NotABend, OpenedTheWrongWay, OpenedTooFar, SetNotRead>;
inline constexpr Angle most_set{190};

struct BendJudged {
    double off;          ///< from what was foreseen, in standard deviations of the next bend
    bool ask;            ///< too far off to be learned from before it is measured again: RecordStanding::asked
    bool small_angle;    ///< below springback_linear_from: kept, with a quarter of the weight
};
/// `learned_from`: how many readings stand behind the belief. More than 3 off asks, 2.5 while fewer than 3 stand behind it.
Result<BendJudged, BendRefused> judge_bend(const BendCheck& check, const SpringbackBelief& belief, const Springback& physics, std::size_t learned_from, Angle scatter = SpringbackHow{}.scatter);

// --- the whole log
/// The physics' line for a bender and tube; none where the tube's material or the bender is no longer known.
using PhysicsOf = std::function<std::optional<Springback>(const BenderAndTube&)>;

/// One record of the asked bender, tube and lot.
struct Followed {
    std::int64_t id;
    double off;      ///< from the line as it was before it, in standard deviations
    double weight;   ///< 0 where it is not learned from
    bool operator==(const Followed&) const = default;
};

/// The last drift_readings lie to one side of what those before them say.
struct Drift {
    Angle by;        ///< their mean distance; above 0: opens more than before
    std::int64_t first;  ///< the record it begins with
    bool operator==(const Drift&) const = default;
};
inline constexpr std::size_t drift_readings = 4;
inline constexpr double drift_off = 1.5;  ///< mean, in standard deviations; our choice

struct SpringbackState {
    SpringbackBelief belief;
    Angle scatter;
    std::size_t learned_from = 0;      ///< readings of this very lot
    std::size_t others = 0;            ///< of other lots, and of other tubes on this bender
    bool slope_seen = false;           ///< false while all angles lie within slope_needs of each other: only the angles bent so far are sure
    bool opens_backwards = false;      ///< growth not above 0: something is wrong with lever or protractor
    std::vector<Followed> readings;    ///< in the order of the log
    std::optional<Drift> drift;
    bool operator==(const SpringbackState&) const = default;
};
inline constexpr Angle slope_needs{20};

/// What the log says of one bender, tube and lot; none where `physics` knows nothing of it. Other sizes on the same bender,
/// of the same material, share one factor on the physics' growth and one shift of its zero; other lots of the same tube are
/// followed in the order of their first record; its own come last. What all other logs of the shop say of the scatter, on
/// whatever bender, is what is believed of it here. Only records that is_learned_from() are used.
std::optional<SpringbackState> springback_of(const BenderAndTube& with, const std::string& lot, const std::vector<BendCheck>& log, const PhysicsOf& physics, const SpringbackHow& how = {});

/// A check at the bench as it goes into the log: counted, or asked after. `state` is springback_of() its bender, tube and lot.
Result<BendCheck, BendRefused> for_the_log(BendCheck check, const SpringbackState& state, const Springback& physics);

/// What the sizes with readings say of a size without, in Gaussian steps: growth = factor * physics, factor 1 +- 0.35, each
/// size's own +- 0.15; zero = physics + shift, shift +- 1 degree, the bender's.
struct SizeReadings {
    Springback physics;
    std::vector<Sprung> readings;
};
SpringbackBelief belief_from_sizes(const Springback& physics, const std::vector<SizeReadings>& sizes, const SpringbackHow& how = {});

}  // namespace tubewright
