#include "scene/loaded_tube.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <set>

namespace tubewright {
namespace {

/// A stretch before it has a place. `taken` is the straight tube it uses.
struct Piece {
    Length length, taken;
    Angle angle, direction;
    Length radius;
    std::optional<std::size_t> bend;
    bool formed = false, now = false, gap = false;
    Length from_a;
};

std::vector<Piece> whole_tube(const Sheet& sheet, std::size_t step, const std::optional<Formed>& formed) {
    const Layout& laid = *sheet.layout;
    std::set<std::size_t> made;
    for (std::size_t i = 0; i < step; ++i) made.insert(sheet.steps[i].bend);
    std::vector<Piece> pieces;
    Length at;
    for (std::size_t i = 0; i < laid.part.straights.size(); ++i) {
        Piece straight;
        straight.from_a = at;
        const Length end = i < laid.spans.size() ? laid.spans[i].start : laid.cut_length;
        straight.length = straight.taken = std::max(end - at, Length{});
        pieces.push_back(straight);
        if (i == laid.spans.size()) break;
        Piece bend;
        bend.bend = i;
        bend.now = i == sheet.steps[step].bend;
        bend.from_a = laid.spans[i].start;
        bend.length = bend.taken = laid.spans[i].end - laid.spans[i].start;
        bend.direction = direction_in_section(laid.part, i);
        if (made.contains(i) || (bend.now && formed)) {
            bend.formed = true;
            bend.angle = bend.now ? formed->angle : laid.part.bends[i].angle;
            bend.radius = bend.now ? formed->radius : laid.part.radius;
            bend.length = arc_length(bend.radius, bend.angle);
        }
        pieces.push_back(bend);
        at = laid.spans[i].end;
    }
    return pieces;
}

/// What of a piece lies between two places of its run, as a piece of its own.
void keep(std::vector<Piece>& kept, const Piece& piece, Length begins, Length from, Length to) {
    const Length low = std::max(from, begins), high = std::min(to, begins + piece.length);
    if (high <= low) return;
    Piece part = piece;
    part.from_a += low - begins;
    part.length = part.taken = high - low;
    kept.push_back(part);
}

/// A run of straight tube, closed up where it is longer than it is drawn. `near_start`, `near_end`: which
/// of its sides adjoins the bend in hand.
void add_run(std::vector<Piece>& kept, const std::vector<Piece>& run, bool near_start, bool near_end, const DrawnLength& drawn) {
    Length whole;
    for (const Piece& piece : run) whole += piece.length;
    Length first = (drawn.elsewhere - drawn.gap) / 2, last = first;
    if (near_start) first = drawn.near_bend, last = drawn.beyond;
    if (near_end) first = drawn.beyond, last = drawn.near_bend;
    const bool broken = whole > first + drawn.gap + last;
    Length begins;
    for (const Piece& piece : run) {
        keep(kept, piece, begins, {}, broken ? first : whole);
        begins += piece.length;
    }
    if (!broken) return;
    Piece gap;
    gap.gap = true;
    gap.from_a = run.front().from_a + first;
    gap.length = drawn.gap;
    kept.push_back(gap);
    begins = {};
    for (const Piece& piece : run) {
        keep(kept, piece, begins, whole - last, whole);
        begins += piece.length;
    }
}

std::vector<Piece> closed_up(const std::vector<Piece>& pieces, const DrawnLength& drawn) {
    std::vector<Piece> kept, run;
    bool after_now = false;
    for (const Piece& piece : pieces) {
        if (!piece.formed && !piece.now) {
            run.push_back(piece);
            continue;
        }
        if (!run.empty()) add_run(kept, run, after_now, piece.now, drawn);
        run.clear();
        kept.push_back(piece);
        after_now = piece.now;
    }
    if (!run.empty()) add_run(kept, run, after_now, false, drawn);
    return kept;
}

Frame past(const Frame& frame, const Piece& piece) {
    return piece.formed ? gone_round(frame, piece.radius, piece.angle, piece.direction) : gone_straight(frame, piece.length);
}

/// The frame of A that brings the hook-side tangent point to the bender's origin, A to B along the axis
/// (against it with B on the hook) and the index line to its roll.
Frame start_for(const std::vector<Piece>& pieces, const Sheet& sheet, const Step& step) {
    Frame tangent;
    for (const Piece& piece : pieces) {
        if (piece.now && step.hook == End::A) break;
        tangent = past(tangent, piece);
        if (piece.now) break;
    }
    const Stance stand = stance(sheet.set_up);
    const Eigen::Vector3d along = step.hook == End::A ? stand.axis : Eigen::Vector3d(-stand.axis);
    const Eigen::Vector3d aside = facing(stand, step.index_roll);
    Eigen::Matrix3d here, there;
    here << tangent.along, tangent.aside, tangent.along.cross(tangent.aside);
    there << along, aside, along.cross(aside);
    const Eigen::Matrix3d turn = there * here.transpose();
    const Frame origin;
    return {turn * (origin.at - tangent.at), turn * origin.along, turn * origin.aside};
}

}  // namespace

std::vector<std::size_t> LoadedTube::side(End end) const {
    std::vector<std::size_t> there;
    if (end == End::A)
        for (std::size_t i = now; i > 0; --i) there.push_back(i - 1);
    else
        for (std::size_t i = now + 1; i < stretches.size(); ++i) there.push_back(i);
    return there;
}

LoadedTube loaded_tube(const Sheet& sheet, std::size_t step, const std::optional<Formed>& formed, const DrawnLength& drawn) {
    assert(sheet.layout && step < sheet.steps.size());
    const std::vector<Piece> pieces = closed_up(whole_tube(sheet, step, formed), drawn);
    LoadedTube tube{{}, 0, sheet.steps[step].hook};
    Frame at = start_for(pieces, sheet, sheet.steps[step]);
    for (const Piece& piece : pieces) {
        DrawnStretch stretch;
        stretch.stretch = {at, piece.length, piece.angle, piece.direction, piece.radius, piece.formed ? static_cast<int>(*piece.bend) : -1};
        stretch.bend = piece.bend;
        stretch.formed = piece.formed;
        stretch.from_a = piece.from_a;
        stretch.gap = piece.gap;
        if (piece.now) tube.now = tube.stretches.size();
        tube.stretches.push_back(stretch);
        at = past(at, piece);
    }
    return tube;
}

std::vector<Frame> frames_of(const Stretch& stretch) {
    constexpr double step_deg = 4;
    const int steps = stretch.bend < 0 ? 1 : std::max(1, static_cast<int>(std::ceil(stretch.angle.deg / step_deg)));
    std::vector<Frame> frames;
    for (int i = 0; i <= steps; ++i) frames.push_back(frame_in(stretch, (static_cast<double>(i) / steps) * stretch.length));
    return frames;
}

std::optional<Frame> frame_at(const LoadedTube& tube, Length from_a) {
    for (const DrawnStretch& drawn : tube.stretches) {
        const Length in = from_a - drawn.from_a;
        if (!drawn.gap && !drawn.formed && in >= Length{} && in <= drawn.stretch.length) return frame_in(drawn.stretch, in);
    }
    return std::nullopt;
}

}  // namespace tubewright
