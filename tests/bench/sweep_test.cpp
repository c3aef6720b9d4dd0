#include "bench/sweep.h"

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <random>

#include "base/tolerance.h"

namespace tubewright {
namespace {

using Eigen::Vector3d;

/// Every hundredth of a millimetre along the way, with no step left out.
bool comes_closer_than(double room, const Capsule& moving, const PlacedSolid& still, const Motion& motion) {
    for (double t = motion.from; t <= motion.to; t += 0.01)
        if (const auto here = moved(motion, moving, t); here && still.clearance(*here) < room) return true;
    return false;
}

struct Dice {
    std::mt19937 dice{20261129};
    double between(double least, double most) { return std::uniform_real_distribution<double>(least, most)(dice); }
    Vector3d place(double reach) { return {between(-reach, reach), between(-reach, reach), between(-reach, reach)}; }
    Shape shape() {
        switch (std::uniform_int_distribution<int>(0, 2)(dice)) {
            case 0: {
                const Vector3d at = place(30);
                return Block{at, at + place(20).cwiseAbs() + Vector3d(1, 1, 1)};
            }
            case 1: {
                const Vector3d at = place(30);
                return Cylinder{at, at + place(20) + Vector3d(0, 0, 25), {between(1, 10)}};
            }
            default: return HalfSpace{place(40), place(1)};
        }
    }
};

}  // namespace

TEST_CASE("a tube taken out straight meets what lies in its way, and is not looked at any longer once nothing can come") {
    // The promise of first_contact: what comes nearer than the room less a step is seen, what stays further than the room is not.
    Dice dice;
    const double room = tolerance::handling_room.mm, step = tolerance::handling_step.mm;
    int met = 0, passed = 0, slid_along = 0;
    for (int i = 0; i < 600; ++i) {
        const Shape shape = dice.shape();
        const PlacedSolid still(shape, Eigen::AngleAxisd(dice.between(0, 6), dice.place(1).normalized()).toRotationMatrix());
        const Vector3d at = dice.place(60);
        const Capsule moving{at, at + dice.place(30), dice.between(1, 5)};
        Motion motion;
        motion.shift = dice.place(1).normalized();
        motion.to = 120;
        const auto contact = first_contact(moving, still, motion);
        INFO("case " << i);
        if (contact) CHECK(still.clearance(*moved(motion, moving, *contact)) < room);
        else CHECK_FALSE(comes_closer_than(room - step, moving, still, motion));
        if (!contact && comes_closer_than(room + 5, moving, still, motion)) ++slid_along;
        ++(contact ? met : passed);
    }
    CHECK(met > 100);
    CHECK(passed > 100);
    CHECK(slid_along > 10);  // near enough to matter
}

TEST_CASE("a tube that comes to something only at the far end of its way is seen there") {
    // By hand: a wall at x = 100, a ball of radius 2 that goes from x = 0 on. At 97.2 it is 0.8 from the wall, nearer than the room of 1;
    // at 96.9 it is 1.1 from it.
    const PlacedSolid wall(HalfSpace{{100, 0, 0}, {1, 0, 0}}, Eigen::Matrix3d::Identity());
    Motion motion;
    motion.shift = {-1, 0, 0};
    motion.to = 97.2;
    const Capsule ball{{0, 0, 0}, {0, 0, 0}, 2};
    CHECK(first_contact(ball, wall, motion));
    motion.to = 96.9;
    CHECK_FALSE(first_contact(ball, wall, motion));
    // Parallel to the wall, 3 from it, for as long as one likes.
    motion.shift = {0, -1, 0};
    motion.to = 1e6;
    CHECK_FALSE(first_contact(Capsule{{95, 0, 0}, {95, 0, 0}, 2}, wall, motion));
    CHECK(first_contact(Capsule{{97.2, 0, 0}, {97.2, 0, 0}, 2}, wall, motion));
    // Away at first, and never back: the far face of a block is passed, the near one is behind.
    const PlacedSolid block(Block{{-10, -10, -10}, {10, 10, 10}}, Eigen::Matrix3d::Identity());
    motion.shift = {-1, 0, 0};
    motion.to = 1000;
    CHECK_FALSE(first_contact(Capsule{{15, 0, 0}, {15, 0, 0}, 2}, block, motion));
    CHECK(first_contact(Capsule{{-50, 11, 0}, {-50, 11, 0}, 2}, block, motion));
}

}  // namespace tubewright
