#include <cmath>

#include "bench/tube_plan.h"

namespace tubewright {

TubePlan plan_on_tube(const Sheet& sheet) {
    const Layout& laid = *sheet.layout;
    TubePlan plan;
    for (std::size_t i = 0; i < laid.spans.size(); ++i)
        plan.bends.push_back({laid.spans[i].start, End::A, laid.part.bends[i].angle, direction_in_section(laid.part, i)});
    for (const Step& step : sheet.steps) {
        plan.bends[step.bend].hook = step.hook;
        if (step.hook == End::B) plan.bends[step.bend].at = laid.spans[step.bend].end;
    }
    plan.cut_length = laid.cut_length;
    plan.end_a = laid.waste_a;
    plan.end_b = laid.cut_length - laid.waste_b;
    plan.radius = laid.part.radius;
    plan.stretch = sheet.line.bender.stretch;
    return plan;
}

BendSpan span_of(const TubePlan& plan, std::size_t bend) {
    const BendOnTube& one = plan.bends[bend];
    const Length taken = (1 - plan.stretch) * arc_length(plan.radius, one.angle);
    return one.hook == End::A ? BendSpan{one.at, one.at + taken} : BendSpan{one.at - taken, one.at};
}

Part part_of(const TubePlan& plan) {
    Part part;
    part.radius = plan.radius;
    Length from = plan.end_a;
    for (std::size_t i = 0; i < plan.bends.size(); ++i) {
        const BendSpan span = span_of(plan, i);
        part.straights.push_back(span.start - from);
        part.bends.push_back({plan.bends[i].angle, wrapped(plan.bends[i].direction - (i == 0 ? Angle{} : plan.bends[i - 1].direction))});
        from = span.end;
    }
    part.straights.push_back(plan.end_b - from);
    return part;
}

Layout layout_of(const TubePlan& plan) {
    Layout layout{part_of(plan), plan.end_a, plan.cut_length - plan.end_b, plan.cut_length, {}};
    for (std::size_t i = 0; i < plan.bends.size(); ++i) layout.spans.push_back(span_of(plan, i));
    return layout;
}

Line line_as_planned(const Line& line, const TubePlan& plan) {
    Line planned = line;
    const Part part = part_of(plan);
    planned.route = {RouteForm::straights, TapeEdge::centre, part.straights, part.bends};
    const auto trim = [](Length left) { return std::abs(left.mm) < 0.005 ? Length{} : left; };  // what is rounding is not cut off
    planned.a.trim = trim(plan.end_a - line.a.allowance);
    planned.b.trim = trim(plan.cut_length - plan.end_b - line.b.allowance);
    return planned;
}

Sheet sheet_as_planned(const Sheet& sheet, const TubePlan& plan) {
    SheetChoice choice;
    for (const Step& step : sheet.steps) choice.order.push_back({step.bend, step.hook});
    choice.set_up = sheet.set_up;
    choice.springback = sheet.springback;
    choice.laid_growth = plan.radius / sheet.line.bender.radius - 1;
    choice.hand = sheet.hand;
    return bend_sheet(line_as_planned(sheet.line, plan), choice);
}

}  // namespace tubewright
