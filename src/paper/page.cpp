#include "paper/page.h"

#include <utility>

namespace tubewright {

Extent extent_of(PageSize size, bool on_its_side) {
    Extent extent = size == PageSize::letter ? Extent{215.9, 279.4} : Extent{210, 297};
    if (on_its_side) std::swap(extent.width_mm, extent.height_mm);
    return extent;
}

std::vector<Spot> box_of(Spot corner, double width_mm, double height_mm) {
    const double right = corner.x_mm + width_mm, foot = corner.y_mm + height_mm;
    return {corner, {right, corner.y_mm}, {right, foot}, {corner.x_mm, foot}};
}

}  // namespace tubewright
