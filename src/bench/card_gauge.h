#pragma once
// Which number of a bender card is meant, for whoever has to show where it is measured.

#include <cstddef>

namespace tubewright {

/// `which`: of a mark, its place in the list; of a solid, the number among its own. A box, a cylinder and a half
/// space give two places of three numbers each (a half space: one and the direction into it); a cylinder's
/// seventh is its radius.
struct CardGauge {
    enum class Of { radius, max_angle, hook, lever, mark, stretch, solid } of = Of::radius;
    std::size_t which = 0;
    bool operator==(const CardGauge&) const = default;
};
inline constexpr std::size_t radius_of_cylinder = 6;

}  // namespace tubewright
