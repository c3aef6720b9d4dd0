// Our check of a tube against a solid, compared with a general collision library (FCL, used by this test alone)
// on random poses: both say contact or both say none, wherever the gap is not within the library's own
// accuracy of the limit; and a sweep misses no contact that the library sees at any of many moments.

#include <fcl/fcl.h>

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <numbers>
#include <random>

#include "base/tolerance.h"
#include "bench/sweep.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

/// The sanitizers make the library some twenty times slower; the optimised build does the whole number.
#ifdef __SANITIZE_ADDRESS__
constexpr int poses = 10000;
#else
constexpr int poses = 100000;
#endif

/// How near to the limit the two may disagree: the library iterates, and is good to about 1e-4 mm here.
constexpr double unsure = 1e-3;

class Dice {
public:
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice_); }
    Vector3d place(double reach) { return {between(-reach, reach), between(-reach, reach), between(-reach, reach)}; }
    Eigen::Matrix3d turn() { return Eigen::Quaterniond(Eigen::Vector4d(between(-1, 1), between(-1, 1), between(-1, 1), between(-1, 1)).normalized()).toRotationMatrix(); }
    int one_of(int count) { return std::uniform_int_distribution<int>(0, count - 1)(dice_); }

private:
    std::mt19937 dice_{20240611};
};

/// The same solid for both, turned about the origin.
struct Posed {
    Shape shape;
    Eigen::Matrix3d turn;
    std::shared_ptr<fcl::CollisionGeometryd> geometry;
    fcl::Transform3d place = fcl::Transform3d::Identity();
    std::string name;
};

Posed random_solid(Dice& dice) {
    Posed posed;
    posed.turn = dice.turn();
    Vector3d middle = dice.place(60);
    Eigen::Matrix3d own = Eigen::Matrix3d::Identity();
    switch (dice.one_of(3)) {
        case 0: {
            const Vector3d half(dice.between(1, 40), dice.between(1, 40), dice.between(1, 40));
            posed.shape = Block{middle - half, middle + half};
            posed.geometry = std::make_shared<fcl::Boxd>(2 * half.x(), 2 * half.y(), 2 * half.z());
            posed.name = "box";
            break;
        }
        case 1: {
            const double radius = dice.between(1, 30), half = dice.between(1, 60);
            own = dice.turn();
            posed.shape = Cylinder{middle - half * own.col(2), middle + half * own.col(2), {radius}};
            posed.geometry = std::make_shared<fcl::Cylinderd>(radius, 2 * half);
            posed.name = "cylinder";
            break;
        }
        default: {
            const Vector3d into = dice.turn().col(0);
            posed.shape = HalfSpace{middle, into};
            // Of FCL's: n . x < d
            posed.geometry = std::make_shared<fcl::Halfspaced>(-into, -into.dot(middle));
            posed.name = "half space";
            middle.setZero();
        }
    }
    posed.place.linear() = posed.turn * own;
    posed.place.translation() = posed.turn * middle;
    return posed;
}

Capsule random_tube(Dice& dice) {
    const Vector3d at = dice.place(80);
    return {at, at + dice.between(1, 120) * dice.turn().col(0), dice.between(1, 8)};
}

bool fcl_touches(const Posed& posed, const Capsule& tube, double thicker) {
    const Vector3d way = tube.b - tube.a;
    const fcl::Capsuled capsule(tube.radius + thicker, way.norm());
    fcl::Transform3d there = fcl::Transform3d::Identity();
    there.linear() = Eigen::Quaterniond::FromTwoVectors(Vector3d::UnitZ(), way).toRotationMatrix();
    there.translation() = (tube.a + tube.b) / 2;
    fcl::CollisionRequestd request;
    fcl::CollisionResultd result;
    return fcl::collide(&capsule, there, posed.geometry.get(), posed.place, request, result) > 0;
}

}  // namespace

TEST_CASE("on random poses our gap and a general library agree on contact and on no contact") {
    Dice dice;
    int contacts = 0, missed = 0, invented = 0;
    std::string first;
    for (int i = 0; i < poses; ++i) {
        const Posed posed = random_solid(dice);
        const Capsule tube = random_tube(dice);
        const double gap = PlacedSolid(posed.shape, posed.turn).gap(tube);
        // With the tube made thicker by this the two just touch; a little less, and they must be apart.
        const bool near = fcl_touches(posed, tube, 0);
        contacts += near;
        if (near && gap > unsure) ++missed, first += " missed " + posed.name + " " + std::to_string(i) + " at " + std::to_string(gap);
        if (!near && gap < -unsure) ++invented, first += " invented " + posed.name + " " + std::to_string(i) + " at " + std::to_string(gap);
    }
    INFO(first.substr(0, 400));
    CHECK(missed == 0);
    CHECK(invented == 0);
    CHECK(contacts > poses / 20);
    CHECK(contacts < poses - poses / 20);
}

TEST_CASE("a swept tube misses no contact that a general library sees on the way, and invents none") {
    Dice dice;
    const int sweeps = poses / 50, moments = 200;
    const double room = tolerance::handling_room.mm, step = tolerance::handling_step.mm;
    int found = 0, missed = 0, invented = 0;
    for (int i = 0; i < sweeps; ++i) {
        const Posed posed = random_solid(dice);
        const Capsule tube = random_tube(dice);
        Motion motion{1, {dice.between(0, 40), 0, 0}, dice.between(10, 60), 0, dice.between(0.1, std::numbers::pi)};
        const auto contact = first_contact(tube, PlacedSolid(posed.shape, posed.turn), motion);
        found += contact.has_value();
        bool seen = false, just_before = false;
        for (int moment = 0; moment <= moments && !seen; ++moment) {
            const double t = motion.to * moment / moments;
            const auto there = moved(motion, tube, t);
            // No gap below room - step is passed over; up to the first contact all is clear of it.
            seen = fcl_touches(posed, *there, room - step - unsure);
            just_before = seen && contact && t < *contact - 1e-9;
        }
        if ((seen && !contact) || just_before) ++missed;
        if (contact && !fcl_touches(posed, *moved(motion, tube, *contact), room + unsure)) ++invented;
    }
    CHECK(missed == 0);
    CHECK(invented == 0);
    CHECK(found > sweeps / 10);
    CHECK(found < sweeps);
}
