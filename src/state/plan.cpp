// Whether the piece on the bench is still the piece on the sheet.

#include <algorithm>
#include <cmath>
#include <sstream>

#include "base/tolerance.h"
#include "state/rules.h"

namespace tubewright {
namespace {

std::string hundredths(double value) { return std::to_string(std::llround(value * 100)); }

/// -180 and 180 are one direction.
std::string turn_in_hundredths(Angle turn) { return std::to_string((std::llround(turn.deg * 100) + 36000) % 36000); }

Misfit misfit_of_made(const Sheet& sheet, const LineWork& work) {
    if (work.made.size() > sheet.steps.size()) return Misfit::bends;
    for (std::size_t i = 0; i < work.made.size(); ++i)
        if (work.made[i].bend != sheet.steps[i].bend) return Misfit::bends;
    if (work.stage == Stage::bending && (work.step >= sheet.steps.size() || work.made.size() != work.step)) return Misfit::bends;
    if (work.stage == Stage::finish && work.made.size() != sheet.steps.size()) return Misfit::bends;
    return Misfit::none;
}

}  // namespace

std::string plan_of(const Sheet& sheet) {
    std::string plan = tube_key(sheet.line.tube);
    if (!sheet.layout) return plan;
    const Layout& laid = *sheet.layout;
    for (std::size_t i = 0; i < laid.spans.size(); ++i)
        plan += "; " + hundredths(laid.spans[i].start.mm) + " " + hundredths(laid.spans[i].end.mm) + " " + turn_in_hundredths(direction_in_section(laid.part, i)) + " " +
                hundredths(laid.part.bends[i].angle.deg);
    return plan;
}

bool is_laid_out_as(const Sheet& sheet, const TubePlan& plan) {
    if (!sheet.layout || sheet.layout->spans.size() != plan.bends.size()) return false;
    constexpr double same = 0.01;  // mm and degrees
    const Layout there = layout_of(plan);
    for (std::size_t i = 0; i < plan.bends.size(); ++i) {
        const BendSpan is = sheet.layout->spans[i], was = there.spans[i];
        const Angle turned = wrapped(direction_in_section(sheet.layout->part, i) - direction_in_section(there.part, i));
        const double off[] = {(is.start - was.start).mm, (is.end - was.end).mm, turned.deg, (sheet.layout->part.bends[i].angle - plan.bends[i].angle).deg};
        if (std::any_of(std::begin(off), std::end(off), [](double by) { return std::abs(by) > same; })) return false;
    }
    return true;
}

std::string inking_of(const Sheet& sheet) {
    if (!sheet.layout) return "";
    std::vector<const Step*> by_bend;
    for (const Step& step : sheet.steps) by_bend.push_back(&step);
    std::sort(by_bend.begin(), by_bend.end(), [](const Step* a, const Step* b) { return a->bend < b->bend; });
    std::string inking;
    for (const Step* step : by_bend) {
        const Length from_a = mark_from_a(*step, sheet.layout->cut_length);
        inking += (inking.empty() ? "" : " ") + hundredths(from_a.mm);
    }
    return inking;
}

bool is_same_ink(const std::string& one, const std::string& other) {
    std::istringstream these(one), those(other);
    for (;;) {
        long long here = 0, there = 0;
        const bool some = static_cast<bool>(these >> here), more = static_cast<bool>(those >> there);
        if (!some || !more) return some == more;
        if (std::llabs(here - there) > 1) return false;
    }
}

Misfit misfit(const Sheet& sheet, const LineWork& work) {
    if (work.stage == Stage::done) return Misfit::none;
    if (!sheet.layout) return work.cut ? Misfit::bends : Misfit::none;
    if (work.cut && std::abs((work.cut_length - sheet.layout->cut_length).mm) > tolerance::same_cut.mm) return Misfit::cut_length;
    if (!work.cut && work.stage != Stage::prepare) return Misfit::bends;
    if (const Misfit made = misfit_of_made(sheet, work); made != Misfit::none) return made;
    if (work.cut && (work.saved ? !is_laid_out_as(sheet, work.saved->plan) : work.plan != plan_of(sheet))) return Misfit::plan;
    return work.stage == Stage::bending && work.inked != inking_of(sheet) ? Misfit::ink : Misfit::none;
}

}  // namespace tubewright
