#pragma once
// What could be read of a tube besides, so that it is known better where its ends come to lie.

#include <vector>

#include "bench/rescue.h"

namespace tubewright {

struct ToRead {
    enum class What { turn, tape } what = What::turn;
    std::size_t bend = 0, against = 0;  ///< of a turn, as in TurnReading
    Span span;                          ///< of a tape
    double foreseen = 0;                ///< degrees or mm, of the tube as it is believed to be
    double most_off = 0;                ///< from that, the same: further off it is a slip of the reading, or of a tube that nothing can save
    Length known;                       ///< as MoreToRead::known, once this is read too
    bool operator==(const ToRead&) const = default;
};

struct MoreToRead {
    Length known;                  ///< of the end that is known worse, gone on with as planned: standard deviation of its place
    std::vector<ToRead> readings;  ///< turns, the one that tells most first; then one or two tapes
};

/// A tape over less than this tells nothing that a hand could not feel. Our choice.
inline constexpr Length shortest_taped{2 * 25.4};

/// Every turn between made neighbours, and the tapes that tell most, none of them in `taken` as the tube is now. `most_off` is what one bend
/// off by as much as a rescue changes at the most (RescueLimits) would make of it. The second tape is the one that
/// tells most once the first is read.
//   C - C j j'C / (j'C j + r^2):  the errors' covariance C with one more reading that they move by j, itself good to r
MoreToRead more_to_read(const RescueQuestion& question, const MadeReadings& taken, const CheckSd& sd = {});

}  // namespace tubewright
