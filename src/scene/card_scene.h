#pragma once
// A bender card as it looks: the solids of its body round the tube.

#include <optional>

#include "scene/scene.h"

namespace tubewright {

/// What is asked of the picture: how far the lever has gone, and which solid of the body is pointed out.
struct CardLook {
    Angle lever;
    std::optional<std::size_t> picked;
};

/// In the operator's frame, the hook-side tangent point at the origin. The tube lies in the bender, bent as
/// far as the lever has gone; the straights that hook and lever need have an ink of their own. A half space is
/// a plate, and solids of the bench that go further than the bender are cut off a little way round it. The
/// outermost places are the same for lever angles from 0 to 90, so that the picture stands still.
Scene card_scene(const Bender& bender, const SetUp& set_up, const CardLook& look);

}  // namespace tubewright
