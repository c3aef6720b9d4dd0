#include "bench/still_good.h"

#include <algorithm>

#include "base/tolerance.h"
#include "bench/handling.h"

namespace tubewright {
namespace {

bool same_stock(const Line& one, const Line& other) {
    return one.tube == other.tube && one.bender.id == other.bender.id && one.bender.radius == other.bender.radius && one.material.id == other.material.id;
}

/// The bends made of a piece, from one end to the other.
struct Piece {
    std::vector<BendOnTube> bends;
    Length cut_length;
};

// Seen from the other end directions run the other way round: the rotation from one bend to the next stays.
Piece turned_round(Piece piece) {
    std::reverse(piece.bends.begin(), piece.bends.end());
    for (BendOnTube& bend : piece.bends) bend = {piece.cut_length - bend.at, other(bend.hook), bend.angle, -bend.direction};
    return piece;
}

/// The line on the piece, its bend `first` where the piece's first one is.
TubePlan on_piece(const TubePlan& line, const Piece& piece, const std::vector<std::size_t>& bends, std::size_t first) {
    TubePlan plan = line;
    const auto start_of = [&](BendOnTube bend) {
        TubePlan one = line;
        one.bends = {bend};
        return span_of(one, 0).start;
    };
    const Length shift = start_of(piece.bends.front()) - span_of(line, bends[first]).start;
    const Angle turn = piece.bends.front().direction - line.bends[bends[first]].direction;
    for (BendOnTube& bend : plan.bends) bend.at += shift, bend.direction += turn;
    plan.end_a += shift, plan.end_b += shift;
    plan.cut_length = piece.cut_length;
    for (std::size_t i = 0; i < piece.bends.size(); ++i) plan.bends[bends[first + i]] = piece.bends[i];
    return plan;
}

/// What is made comes first, then the rest in the sheet's order: each still has the straight tube that it needs.
bool can_be_gone_on_with(const Sheet& sheet, const TubePlan& plan, const std::vector<std::size_t>& made) {
    const Line& line = sheet.line;
    if (plan.end_a < line.a.allowance - tolerance::straight_slack || plan.cut_length - plan.end_b < line.b.allowance - tolerance::straight_slack) return false;
    std::vector<Placing> order;
    for (const std::size_t bend : made) order.push_back({bend, plan.bends[bend].hook});
    for (const Step& step : sheet.steps)
        if (std::find(made.begin(), made.end(), step.bend) == made.end()) order.push_back({step.bend, step.hook});
    const Layout layout = layout_of(plan);
    for (std::size_t step = made.size(); step < order.size(); ++step) {
        const Room room = room_for(layout, order, step);
        if (room.hook < straight_needed(line, order[step], true, room.hook_at_end) - tolerance::straight_slack) return false;
        if (room.lever < straight_needed(line, order[step], false, room.lever_at_end) - tolerance::straight_slack) return false;
    }
    return true;
}

std::vector<std::size_t> bends_to_make(const Part& part) {
    std::vector<std::size_t> bends;
    for (std::size_t i = 0; i < part.bends.size(); ++i)
        if (is_made(part.bends[i])) bends.push_back(i);
    return bends;
}

void look_at_line(const std::vector<Sheet>& sheets, std::size_t line, const Piece& piece, bool turned, const EndTolerance& tolerance, std::vector<GoodForLine>& found) {
    const Sheet& sheet = sheets[line];
    const TubePlan wanted = plan_on_tube(sheet);
    const KeyPlaces places = key_places(sheet.layout->part);
    const std::vector<std::size_t> bends = bends_to_make(sheet.layout->part);
    for (std::size_t first = 0; first + piece.bends.size() <= bends.size(); ++first) {
        const TubePlan plan = on_piece(wanted, piece, bends, first);
        const EndsOff off = ends_off(laid_over(places, key_places(part_of(plan)), tolerance));
        if (worst_share(off, tolerance) > 1) continue;
        const std::vector<std::size_t> made(bends.begin() + static_cast<std::ptrdiff_t>(first), bends.begin() + static_cast<std::ptrdiff_t>(first + piece.bends.size()));
        if (can_be_gone_on_with(sheet, plan, made)) found.push_back({line, turned, bends[first], plan, off});
    }
}

std::vector<StraightEnd> straight_ends(const Sheet& sheet, const TubePlan& plan, const std::vector<std::size_t>& made, const std::vector<Sheet>& sheets) {
    Length from = plan.cut_length, to;
    for (const std::size_t bend : made) from = std::min(from, span_of(plan, bend).start), to = std::max(to, span_of(plan, bend).end);
    std::vector<StraightEnd> ends{{End::A, from, {}}, {End::B, plan.cut_length - to, {}}};
    for (StraightEnd& end : ends)
        for (std::size_t i = 0; i < sheets.size(); ++i)
            if (sheets[i].layout && sheets[i].line.tube == sheet.line.tube && sheets[i].line.material.id == sheet.line.material.id && sheets[i].layout->cut_length <= end.length) end.lines.push_back(i);
    std::stable_sort(ends.begin(), ends.end(), [](const StraightEnd& a, const StraightEnd& b) { return a.length > b.length; });
    return ends;
}

}  // namespace

StillGood still_good(const Sheet& sheet, const std::vector<std::size_t>& made, const TubePlan& plan, const std::vector<Sheet>& sheets, const EndTolerance& tolerance) {
    StillGood result;
    result.straights = straight_ends(sheet, plan, made, sheets);
    if (made.empty()) return result;
    Piece piece{{}, plan.cut_length};
    std::vector<std::size_t> along = made;
    std::sort(along.begin(), along.end());
    for (const std::size_t bend : along) piece.bends.push_back(plan.bends[bend]);
    for (std::size_t line = 0; line < sheets.size(); ++line) {
        if (!sheets[line].layout || !same_stock(sheets[line].line, sheet.line)) continue;
        std::vector<GoodForLine> found;
        look_at_line(sheets, line, piece, false, tolerance, found);
        look_at_line(sheets, line, turned_round(piece), true, tolerance, found);
        const auto best = std::min_element(found.begin(), found.end(), [&](const GoodForLine& a, const GoodForLine& b) { return worst_share(a.off, tolerance) < worst_share(b.off, tolerance); });
        if (best != found.end()) result.lines.push_back(*best);
    }
    std::stable_sort(result.lines.begin(), result.lines.end(), [&](const GoodForLine& a, const GoodForLine& b) { return worst_share(a.off, tolerance) < worst_share(b.off, tolerance); });
    return result;
}

}  // namespace tubewright
