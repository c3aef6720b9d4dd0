#include "bench/sheet.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/tolerance.h"
#include "bench/findings.h"

namespace tubewright {
namespace {

/// The mark asked for, else the bender's usual one; another where that would lie beyond the tube's end or
/// on a bend that is already made.
std::size_t mark_for(const Step& step, const Bender& bender, const SheetChoice& choice) {
    std::size_t wanted = usual_mark(bender);
    for (std::size_t i = 0; i < bender.marks.size(); ++i)
        if (choice.mark && bender.marks[i].name == *choice.mark) wanted = i;
    if (can_be_inked(step, bender, wanted)) return wanted;
    for (std::size_t i = 0; i < bender.marks.size(); ++i)
        if (can_be_inked(step, bender, i)) return i;
    return wanted;
}

/// A feature of the section at this direction from the index line, as a roll when bend i's own
/// direction lies in the swing. Directions are right-handed about A to B; the axis of the bender's
/// frame runs A to B only with A on the hook.
Angle roll_of(Angle direction, Angle bend_direction, End hook) {
    const Angle turned = direction - bend_direction;
    return wrapped(hook == End::A ? turned : -turned);
}

/// The leg beyond a bend of more than 180 degrees points to the side opposite to the one the bend turns to.
std::optional<MadeNeighbour> made_neighbour(const Part& part, const std::vector<Angle>& directions, const std::vector<bool>& made, const Placing& placing) {
    const auto bend = turned_against(part, made, placing);
    if (!bend) return std::nullopt;
    const Angle to_leg{std::sin(part.bends[*bend].angle.rad()) < 0 ? 180.0 : 0.0};
    return MadeNeighbour{*bend, roll_of(directions[*bend] + to_leg, directions[placing.bend], placing.hook)};
}

/// Every bend to be made, each once.
bool fits(const std::vector<Placing>& order, const Part& part) {
    std::set<std::size_t> given, made;
    for (const Placing& placing : order) given.insert(placing.bend);
    for (std::size_t bend = 0; bend < part.bends.size(); ++bend)
        if (is_made(part.bends[bend])) made.insert(bend);
    return given == made && order.size() == made.size();
}

std::vector<Placing> order_of_work(const Layout& layout, const Bender& bender, const SheetChoice& choice) {
    std::vector<Placing> order = fits(choice.order, layout.part) ? choice.order : default_order(layout, bender);
    if (choice.hook)
        for (Placing& placing : order) placing.hook = *choice.hook;
    return order;
}

void fill_steps(Sheet& sheet, const SheetChoice& choice) {
    const Layout& laid = *sheet.layout;
    const std::vector<Placing> order = order_of_work(laid, sheet.line.bender, choice);
    std::vector<Angle> directions;  // each is a sum over all bends before it
    for (std::size_t i = 0; i < laid.part.bends.size(); ++i) directions.push_back(direction_in_section(laid.part, i));
    std::vector<bool> made(laid.part.bends.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Placing& placing = order[i];
        Step step{};
        step.bend = placing.bend;
        step.hook = placing.hook;
        step.target = laid.part.bends[placing.bend].angle;
        step.taken = laid.spans[placing.bend].end - laid.spans[placing.bend].start;
        step.room = room_for(laid, order, i);
        step.align_to = mark_for(step, sheet.line.bender, choice);
        const Length from_a = ink_mark(laid, placing.bend, placing.hook, sheet.line.bender.marks[step.align_to]);
        step.mark_from = choice.mark_from;
        step.mark = step.mark_from == End::A ? from_a : laid.cut_length - from_a;
        step.index_roll = roll_of({}, directions[placing.bend], placing.hook);
        step.neighbour = made_neighbour(laid.part, directions, made, placing);
        step.set = set_angle(sheet.springback, step.target);
        step.finished_radius = laid.part.radius;
        made[placing.bend] = true;
        sheet.steps.push_back(step);
    }
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
        sheet.steps[i].formed = formed_length(sheet, i + 1);
        sheet.steps[i].left = laid.cut_length - sheet.steps[i].formed;
    }
}

}  // namespace

Sheet bend_sheet(const Line& line, const SheetChoice& choice) {
    Sheet sheet;
    sheet.line = line;
    sheet.set_up = choice.set_up.value_or(line.bender.set_up);
    sheet.springback = choice.springback.value_or(springback_prior(line.material, line.tube.od, line.tube.wall, line.bender.radius).line);
    sheet.hand = choice.hand;
    sheet.findings = line_findings(line);
    if (!too_sharp(line.route)) {
        sheet.layout = layout(line, {choice.laid_growth.value_or(sheet.springback.growth), sheet.springback.zero});
        fill_steps(sheet, choice);
        for (Finding& finding : step_findings(sheet)) sheet.findings.push_back(std::move(finding));
    }
    std::stable_sort(sheet.findings.begin(), sheet.findings.end(), [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    return sheet;
}

bool can_be_inked(const Room& room, Length taken, const ReferenceMark& mark) {
    // From the nearest bend made, or the tube's end, on the hook side to the same on the lever side.
    return mark.offset >= -room.hook - tolerance::straight_slack && mark.offset <= taken + room.lever + tolerance::straight_slack;
}

bool can_be_inked(const Step& step, const Bender& bender, std::size_t mark) { return can_be_inked(step.room, step.taken, bender.marks[mark]); }

Length mark_from_a(const Step& step, Length cut_length) { return step.mark_from == End::A ? step.mark : cut_length - step.mark; }

bool stopped(const Sheet& sheet) {
    return std::any_of(sheet.findings.begin(), sheet.findings.end(), [](const Finding& f) { return f.severity == Severity::stop; });
}

Length formed_length(const Sheet& sheet, std::size_t steps_done) {
    if (!sheet.layout) return {};
    const Layout& laid = *sheet.layout;
    const std::size_t bends = laid.part.bends.size();
    std::vector<bool> done(bends);
    for (std::size_t i = 0; i < bends; ++i) done[i] = !is_made(laid.part.bends[i]);
    for (std::size_t i = 0; i < steps_done && i < sheet.steps.size(); ++i) done[sheet.steps[i].bend] = true;
    if (steps_done >= sheet.steps.size()) return laid.cut_length;
    Length formed;
    for (std::size_t i = 0; i < bends; ++i)
        if (done[i]) formed += laid.spans[i].end - laid.spans[i].start;
    for (std::size_t i = 0; i <= bends; ++i) {
        const bool before = i == 0 || done[i - 1], after = i == bends || done[i];
        if (!before || !after) continue;
        formed += laid.part.straights[i];
        if (i == 0) formed += laid.waste_a;
        if (i == bends) formed += laid.waste_b;
    }
    return formed;
}

}  // namespace tubewright
