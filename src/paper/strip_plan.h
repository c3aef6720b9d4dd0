#pragma once
// How a strip of marks is cut into pieces that fit on paper, and where the words under its marks stand.

#include <vector>

#include "base/quantity.h"

namespace tubewright {

struct StripRoom {
    Length widest;      ///< of a piece without its tab: what the paper has
    Length tab;         ///< beyond a join, for the next piece to lie on
    Length inset;       ///< kept free of labels at the tube's ends
    Length join_words;  ///< and at the start of each piece but the first
    Length label_gap;   ///< between two labels
    Length step;        ///< joins lie on whole multiples of it, so that a tape finds them
};

/// A place on the strip, from cut end A, and how wide the words are that belong to it.
struct LabelledSpot {
    Length at, label_width;
};

struct StripPiece {
    Length from, to;                    ///< from cut end A; its ends are the tube's, or joins
    std::vector<std::size_t> spots;     ///< which of them lie on this piece
    std::vector<Length> label_starts;   ///< of each, from the start of the piece: no two labels overlap, none stands before another's
};

/// Joins keep clear of the spots by join_clearance where that can be, and a piece has no more spots than their labels have
/// room for. `spots` from A to B. The last piece's labels may stand beyond end B.
inline constexpr Length join_clearance{8};
std::vector<StripPiece> strip_pieces(Length cut, const std::vector<LabelledSpot>& spots, const StripRoom& room);

/// Starts of labels between `first` and `last`, in order and a gap apart, so that their middles are as near to the spots' places
/// as least squares get them. Where they have no room, they begin at `first` and run over.
std::vector<Length> label_starts(const std::vector<LabelledSpot>& spots, Length first, Length last, Length gap);

}  // namespace tubewright
