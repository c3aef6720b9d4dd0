#pragma once
// Wanted and made laid over each other as a fitter holds them: the ends at their places, the rest where it comes to lie.

#include <Eigen/Geometry>
#include <vector>

#include "tube/part.h"

namespace tubewright {

/// What an end may be off where it is screwed on, and the rest of the line along its way. There is no datum in a job file, so
/// the line is judged by its two ends, free to be laid anywhere as a whole and rolled about itself. Our choice, common
/// practice, no source: a nut draws in an eighth of an inch (OrderWeights::end_tolerance), half of it at each end, and two
/// degrees (tolerance::same_direction); an inch to a side, no hose, clip or frame is in the way yet.
struct EndTolerance {
    Length place{25.4 / 16};
    Angle direction{2};
    Length aside{25.4};
    bool operator==(const EndTolerance&) const = default;
};

struct EndOff {
    Length place;
    Angle direction;
    bool operator==(const EndOff&) const = default;
};

/// `aside`: the most that the middle of any bend lies from where it was wanted.
struct EndsOff {
    EndOff a, b;
    Length aside;
    bool operator==(const EndsOff&) const = default;
};

/// What is compared: measured ends, the way A to B runs there, and the middle of each bend; mm.
struct KeyPlaces {
    Eigen::Vector3d a, b, along_a, along_b;
    std::vector<Eigen::Vector3d> middles;
};
KeyPlaces key_places(const Part& part);

struct LaidOver {
    Eigen::Isometry3d placed;                     ///< takes what is made to where it is wanted
    Eigen::Vector3d a, b, along_a, along_b;       ///< made less wanted: mm, and differences of unit vectors
    std::vector<Eigen::Vector3d> middles;         ///< the same, mm
};

/// With the least sum of squares over the tolerances, both ends alike. Bends count a tenth of it: they decide where the
/// ends leave a choice. As many bends in the one as in the other.
//   Horn, J. Opt. Soc. Am. A 4 (1987) 629, from memory: the rotation's quaternion belongs to the greatest eigenvalue of a 4 x 4 matrix
//   of the sums of made x wanted; directions are points that no shift moves
LaidOver laid_over(const KeyPlaces& wanted, const KeyPlaces& made, const EndTolerance& tolerance);

EndsOff ends_off(const LaidOver& laid);

/// 1 where something is just within its tolerance: the greatest of all shares.
double worst_share(const EndsOff& off, const EndTolerance& tolerance);

}  // namespace tubewright
