#pragma once
// A bender card as it looks: the solids of its body round the tube.

#include <optional>
#include <vector>

#include "bench/card_gauge.h"
#include "scene/scene.h"

namespace tubewright {

/// What is asked of the picture: how far the lever has gone, which solid of the body is pointed out, and which
/// numbers of the card are shown, of a solid those of the one pointed out.
struct CardLook {
    Angle lever;
    std::optional<std::size_t> picked;
    std::vector<CardGauge> gauges;
};

/// In the operator's frame, the hook-side tangent point at the origin. The tube lies in the bender, bent as
/// far as the lever has gone. The camera's places are round tube and form, and the solid pointed out: a long handle or
/// the bench runs out of the picture. They are the same for lever angles from 0 to 90, so that the picture
/// stands still. Each number has an arrow from where it is counted, with an anchor in the middle of it; for
/// the straights that hook and lever need, that stretch of tube has an ink of its own too.
Scene card_scene(const Bender& bender, const SetUp& set_up, const CardLook& look);

}  // namespace tubewright
