#include "bench/stance.h"

#include <Eigen/Geometry>
#include <array>
#include <cmath>

#include "base/tolerance.h"

namespace tubewright {
namespace {

Eigen::Vector3d towards(Way way) {
    switch (way) {
        case Way::up: return Eigen::Vector3d::UnitZ();
        case Way::down: return -Eigen::Vector3d::UnitZ();
        case Way::away: return Eigen::Vector3d::UnitY();
        case Way::toward: return -Eigen::Vector3d::UnitY();
    }
    return Eigen::Vector3d::UnitZ();
}

Way way_of(Swing swing) {
    switch (swing) {
        case Swing::up: return Way::up;
        case Swing::down: return Way::down;
        case Swing::away: return Way::away;
        case Swing::toward: return Way::toward;
    }
    return Way::away;
}

constexpr std::array all_ways{Way::up, Way::down, Way::away, Way::toward};

}  // namespace

Stance stance(const SetUp& set_up) {
    Stance result;
    result.axis = set_up.hook == HookHand::left ? Eigen::Vector3d::UnitX() : Eigen::Vector3d(-Eigen::Vector3d::UnitX());
    result.swing = towards(way_of(set_up.swing));
    result.normal = result.axis.cross(result.swing);
    return result;
}

Eigen::Vector3d facing(const Stance& stance, Angle roll) {
    return std::cos(roll.rad()) * stance.swing + std::sin(roll.rad()) * stance.normal;
}

Way way_of(const Eigen::Vector3d& direction) {
    Way best = Way::up;
    for (const Way way : all_ways)
        if (towards(way).dot(direction) > towards(best).dot(direction)) best = way;
    return best;
}

Pointing pointing(const Stance& stance, Angle roll) {
    const Eigen::Vector3d direction = facing(stance, roll);
    Pointing result;
    result.main = way_of(direction);
    const Eigen::Vector3d rest = direction - towards(result.main).dot(direction) * towards(result.main);
    const double off = std::atan2(rest.norm(), towards(result.main).dot(direction));
    result.slanted = off > tolerance::same_direction.rad();
    if (result.slanted) result.also = way_of(rest);
    return result;
}

}  // namespace tubewright
