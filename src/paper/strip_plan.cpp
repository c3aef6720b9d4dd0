#include "paper/strip_plan.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/tolerance.h"

namespace tubewright {
namespace {

Length labels_length(const std::vector<LabelledSpot>& spots, Length gap) {
    Length all;
    for (const LabelledSpot& spot : spots) all += spot.label_width + gap;
    return spots.empty() ? all : all - gap;
}

std::vector<LabelledSpot> between(const std::vector<LabelledSpot>& spots, Length from, Length to) {
    std::vector<LabelledSpot> found;
    for (const LabelledSpot& spot : spots)
        if (spot.at >= from && spot.at < to) found.push_back({spot.at - from, spot.label_width});
    return found;
}

bool is_clear(const std::vector<LabelledSpot>& spots, Length join, Length clearance) {
    return std::none_of(spots.begin(), spots.end(), [&](const LabelledSpot& spot) { return std::abs((spot.at - join).mm) < clearance.mm; });
}

/// The furthest join that keeps clear and leaves the labels room; else the furthest there is.
Length next_join(Length from, Length cut, const std::vector<LabelledSpot>& spots, const StripRoom& room) {
    constexpr Length least_last_piece{120};
    const Length words = from > Length{} ? room.join_words : room.inset;
    const Length furthest = std::max(std::min(from + room.widest - room.tab, cut - least_last_piece), from + room.step);
    const double last_step = std::floor(furthest.mm / room.step.mm + tolerance::arithmetic);
    for (const double share : {1.0, 0.5, 0.25})
        for (double step = last_step; step * room.step.mm > from.mm + words.mm + room.step.mm; --step) {
            const Length join = step * room.step;
            if (is_clear(spots, join, share * join_clearance) && labels_length(between(spots, from, join), room.label_gap) <= join - from - words) return join;
        }
    return furthest;
}

}  // namespace

std::vector<Length> label_starts(const std::vector<LabelledSpot>& spots, Length first, Length last, Length gap) {
    // With what lies before each label taken off, "in order and a gap apart" is "not falling": pool adjacent violators
    // (Barlow, Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions, 1972, chapter 1; from memory).
    struct Pool {
        double sum;
        std::size_t count;
        double mean() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pool> pools;
    Length before;
    for (const LabelledSpot& spot : spots) {
        pools.push_back({(spot.at - spot.label_width / 2 - before).mm, 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            const Pool taken = pools.back();
            pools.pop_back();
            pools.back().sum += taken.sum;
            pools.back().count += taken.count;
        }
        before += spot.label_width + gap;
    }
    const double most = std::max(first, last - labels_length(spots, gap)).mm;
    std::vector<Length> starts;
    before = {};
    for (const Pool& pool : pools)
        for (std::size_t i = 0; i < pool.count; ++i) {
            starts.push_back(Length{std::clamp(pool.mean(), first.mm, most)} + before);
            before += spots[starts.size() - 1].label_width + gap;
        }
    return starts;
}

std::vector<StripPiece> strip_pieces(Length cut, const std::vector<LabelledSpot>& spots, const StripRoom& room) {
    std::vector<StripPiece> pieces;
    Length from;
    for (bool last = false; !last;) {
        const Length words = pieces.empty() ? room.inset : room.join_words;
        const Length beyond = cut + Length{1};  // the spot on end B itself is the last piece's
        last = cut - from <= room.widest && labels_length(between(spots, from, beyond), room.label_gap) <= room.widest - words - room.inset;
        StripPiece piece{from, last ? cut : next_join(from, cut, spots, room), {}, {}};
        if (piece.to >= cut) {
            piece.to = cut;
            last = true;
        }
        const Length end = last ? beyond : piece.to;
        for (std::size_t i = 0; i < spots.size(); ++i)
            if (spots[i].at >= from && spots[i].at < end) piece.spots.push_back(i);
        const std::vector<LabelledSpot> here = between(spots, from, end);
        const Length needed = words + labels_length(here, room.label_gap);
        piece.label_starts = label_starts(here, words, last ? std::max(cut - from - room.inset, needed) : piece.to - from, room.label_gap);
        from = piece.to;
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

}  // namespace tubewright
