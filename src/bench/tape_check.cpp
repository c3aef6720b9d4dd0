#include "bench/tape_check.h"

#include "base/tolerance.h"
#include "tube/centreline.h"

namespace tubewright {
namespace {

/// From a bend's tangent point to the outside corner.
Length to_outside(const Part& part, Length od, std::size_t bend) {
    const Angle angle = part.bends[bend].angle;
    return setback(part.radius, angle) + edge_shift(od, angle);
}

}  // namespace

Part part_as_measured(const Sheet& sheet, const AsMeasured& measured) {
    Part part = sheet.layout->part;
    for (const Step& step : sheet.steps) {
        const auto found = measured.find(step.bend);
        if (found == measured.end()) continue;
        const Length more = (1 - sheet.line.bender.stretch) * arc_length(part.radius, found->second - part.bends[step.bend].angle);
        part.straights[step.hook == End::A ? step.bend + 1 : step.bend] -= more;
        part.bends[step.bend].angle = found->second;
    }
    return part;
}

std::vector<TapeLeg> tape_legs(const Sheet& sheet, const AsMeasured& measured) {
    const Part part = part_as_measured(sheet, measured);
    std::vector<TapeLeg> legs;
    TapeLeg leg;
    leg.outside = sheet.layout->waste(End::A);
    bool touched = true;
    const auto close = [&] {
        if (touched) legs.push_back(leg);
    };
    for (std::size_t i = 0; i < part.straights.size(); ++i) {
        leg.outside += part.straights[i];
        if (i == part.bends.size() || !is_made(part.bends[i])) continue;
        const bool near_enough = part.bends[i].angle <= tolerance::sharpest_touched;
        leg.before = i;
        if (near_enough) leg.outside += to_outside(part, sheet.line.tube.od, i);
        else touched = false;
        close();
        leg = {i, std::nullopt, near_enough ? to_outside(part, sheet.line.tube.od, i) : Length{}};
        touched = near_enough;
    }
    leg.outside += sheet.layout->waste(End::B);
    close();
    return legs;
}

Length straight_across(const Sheet& sheet, const AsMeasured& measured) {
    const Frame start{};
    const Frame cut_a = gone_straight(start, -sheet.layout->waste(End::A));
    const Frame cut_b = gone_straight(far_end(part_as_measured(sheet, measured), start), sheet.layout->waste(End::B));
    return {(cut_b.at - cut_a.at).norm()};
}

}  // namespace tubewright
