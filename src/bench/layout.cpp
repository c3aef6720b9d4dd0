#include "bench/layout.h"

namespace tubewright {

Layout layout(const Line& line, const Springback& springback) {
    Layout result;
    result.part = part_from(line.route, finished_radius(springback, line.bender.radius), line.tube.od);
    result.waste_a = line.a.allowance + line.a.trim;
    result.waste_b = line.b.allowance + line.b.trim;
    Length at = result.waste_a;
    for (std::size_t i = 0; i < result.part.straights.size(); ++i) {
        at += result.part.straights[i];
        if (i == result.part.bends.size()) break;
        // A bend takes R_finished * angle * (1 - stretch) of straight tube; the stretch adds the rest.
        const Length taken = (1 - line.bender.stretch) * arc_length(result.part.radius, result.part.bends[i].angle);
        result.spans.push_back({at, at + taken});
        at += taken;
    }
    result.cut_length = at + result.waste_b;
    return result;
}

Length ink_mark(const Layout& layout, std::size_t bend, End hook, const ReferenceMark& mark) {
    // The bend starts at the hook-side tangent point; the mark's offset counts from there towards the lever side.
    const BendSpan& span = layout.spans[bend];
    return hook == End::A ? span.start + mark.offset : span.end - mark.offset;
}

}  // namespace tubewright
