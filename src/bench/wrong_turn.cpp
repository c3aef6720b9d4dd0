#include "bench/wrong_turn.h"

#include <cmath>

#include "base/tolerance.h"

namespace tubewright {

std::optional<Angle> wrong_leg_roll(const Step& step) {
    if (!step.neighbour) return std::nullopt;
    const Angle roll = step.neighbour->leg_roll;
    const bool in_one_plane = std::abs(std::sin(roll.rad())) <= std::sin(tolerance::same_direction.rad());
    return wrapped(in_one_plane ? roll + Angle{180} : Angle{-roll.deg});
}

}  // namespace tubewright
