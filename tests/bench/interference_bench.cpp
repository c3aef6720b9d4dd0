// What our check of one tube against one solid costs, as a ratio to a general collision library's in the same run; and
// what a query of the handling costs. Prints; asserts nothing; is no test.

#include <fcl/fcl.h>

#include <Eigen/Geometry>
#include <chrono>
#include <cmath>
#include <ctime>
#include <iostream>
#include <random>
#include <vector>

#include "bench/handling.h"
#include "bench/samples.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

struct Pose {
    Capsule tube;
    fcl::Transform3d there = fcl::Transform3d::Identity();
};

std::vector<Pose> random_poses(std::size_t count) {
    std::mt19937 dice(7);
    std::uniform_real_distribution<double> place(-80, 80), way(-1, 1), length(1, 120);
    std::vector<Pose> poses(count);
    for (Pose& pose : poses) {
        const Vector3d at(place(dice), place(dice), place(dice)), along = Vector3d(way(dice), way(dice), way(dice)).normalized();
        const double long_ = length(dice);
        pose.tube = {at, at + long_ * along, 2.4};
        pose.there.linear() = Eigen::Quaterniond::FromTwoVectors(Vector3d::UnitZ(), along).toRotationMatrix();
        pose.there.translation() = at + long_ / 2 * along;
    }
    return poses;
}

template <class Work>
double nanoseconds(std::size_t count, const Work& work) {
    double best = INFINITY;
    for (int run = 0; run < 5; ++run) {
        const auto start = std::chrono::steady_clock::now();
        work();
        best = std::min(best, std::chrono::duration<double, std::nano>(std::chrono::steady_clock::now() - start).count() / static_cast<double>(count));
    }
    return best;
}

void compare(const char* name, const Shape& shape, const fcl::CollisionGeometryd& geometry, const std::vector<Pose>& poses) {
    const PlacedSolid solid(shape, Eigen::Matrix3d::Identity());
    int ours = 0, theirs = 0;
    double sum = 0;
    const double our_time = nanoseconds(poses.size(), [&] {
        ours = 0;
        for (const Pose& pose : poses) {
            const double gap = solid.gap(pose.tube);
            ours += gap < 0;
            sum += gap;
        }
    });
    const double their_time = nanoseconds(poses.size(), [&] {
        theirs = 0;
        for (const Pose& pose : poses) {
            const fcl::Capsuled capsule(2.4, (pose.tube.b - pose.tube.a).norm());
            fcl::CollisionRequestd request;
            fcl::CollisionResultd result;
            theirs += fcl::collide(&capsule, pose.there, &geometry, fcl::Transform3d::Identity(), request, result) > 0;
        }
    });
    std::cout << name << ": our gap " << our_time << " ns, FCL's yes or no " << their_time << " ns, ratio " << our_time / their_time << " (" << ours << " and "
              << theirs << " contacts of " << poses.size() << ")" << (sum > 0 ? "\n" : " \n");
}

Line line_of_bends(int bends) {
    std::vector<double> legs{6};
    std::vector<std::pair<double, double>> turns;
    for (int i = 0; i < bends; ++i) {
        turns.emplace_back(i % 3 == 0 ? 90 : 45, i == 0 ? 0 : i * 50 % 360 - 180);
        legs.push_back(4 + i % 4);
    }
    return line_of(legs, turns);
}

/// As the card of the 3/16 bender that comes with the program.
std::vector<Solid> body() {
    const auto in = [](double a, double w, double n) { return Vector3d(25.4 * a, 25.4 * w, 25.4 * n); };
    return {{"form", Stands::fixed, Cylinder{in(0, 0.562, -0.15), in(0, 0.562, 0.15), Length{0.459 * 25.4}}},
            {"foot", Stands::fixed, Cylinder{in(0, 0.562, -1.125), in(0, 0.562, -0.15), Length{0.131 * 25.4}}},
            {"hook", Stands::fixed, Block{in(-0.75, -0.3, -0.15), in(-0.225, -0.112, 0.15)}},
            {"follower", Stands::lever, Block{in(0.056, -0.338, -0.15), in(0.9, -0.112, 0.094)}},
            {"lever arm", Stands::lever, Block{in(0.113, -0.3, -0.356), in(0.675, 0.562, -0.244)}},
            {"lever handle", Stands::lever, Cylinder{in(0.675, -0.262, -0.3), in(6.75, -1.478, -0.3), Length{0.112 * 25.4}}},
            {"vise", Stands::bench, Block{in(-0.844, 0.188, -7.438), in(0.844, 0.938, -0.938)}},
            {"bench top", Stands::bench, Block{in(-36, 0.188, -8.938), in(36, 30, -7.438)}}};
}

void ask_all(int bends) {
    Line line = line_of_bends(bends);
    line.bender.body = body();
    const Springback springback{0.03, {1}};
    const std::clock_t start = std::clock();
    Handling handling(layout(line, springback), line.tube.od, line.bender, line.bender.set_up, springback);
    std::size_t asked = 0, free = 0;
    for (std::uint64_t made = 0; made < std::uint64_t{1} << bends; ++made)
        for (std::size_t bend = 0; bend < static_cast<std::size_t>(bends); ++bend)
            for (const End hook : {End::A, End::B}) {
                if (made >> bend & 1) continue;
                free += handling.is_free(made, {bend, hook});
                ++asked;
            }
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    std::cout << bends << " bends, every set of made bends, every bend, both ends: " << asked << " questions, " << free << " free, " << seconds << " s of processor time, "
              << 1e6 * seconds / static_cast<double>(asked) << " us each\n";
}

}  // namespace

int main() {
    const std::vector<Pose> poses = random_poses(20000);
    compare("box", Block{{-20, -30, -10}, {20, 30, 10}}, fcl::Boxd(40, 60, 20), poses);
    compare("cylinder", Cylinder{{0, 0, -30}, {0, 0, 30}, Length{15}}, fcl::Cylinderd(15, 60), poses);
    compare("half space", HalfSpace{{0, 0, -20}, {0, 0, -1}}, fcl::Halfspaced(Vector3d(0, 0, 1), -20), poses);
    for (const int bends : {4, 8, 12, 16}) ask_all(bends);
}
