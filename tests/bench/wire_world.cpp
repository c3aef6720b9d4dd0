#include "bench/wire_world.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tube/clearance.h"

using Eigen::Vector3d;
using namespace tubewright;

namespace wire_world {
namespace {

constexpr double degree = std::numbers::pi / 180;

double between(std::mt19937& dice, double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice); }
int whole(std::mt19937& dice, int low, int high) { return std::uniform_int_distribution<int>(low, high)(dice); }
int drawn(std::mt19937& dice, std::vector<double> shares) { return std::discrete_distribution<int>(shares.begin(), shares.end())(dice); }
/// Triangular between -bound and bound; its standard deviation is bound / sqrt 6.
double error(std::mt19937& dice, double bound) { return (between(dice, -1, 1) + between(dice, -1, 1)) / 2 * bound; }

double on_tape(double inch, Unit unit) { return unit == Unit::inch ? std::round(inch * 16) / 16 : std::round(inch * 25.4) / 25.4; }
double read_off(double inch, Unit unit, std::mt19937& dice, const Settings& settings) {
    return on_tape(inch + error(dice, settings.tape_sd_inch * std::sqrt(6)), unit);
}

/// How much longer a leg reads at a corner on this edge than to the centre.
double longer(TapeEdge edge, double od, double angle_deg) {
    const double shift = od / 2 * std::tan(angle_deg / 2 * degree);
    return edge == TapeEdge::outside ? shift : edge == TapeEdge::inside ? -shift : 0;
}

double random_angle(std::mt19937& dice) {
    const double usual[]{90, 45, 30, 60};
    const int which = drawn(dice, {50, 22, 10, 10, 8});
    return which < 4 ? usual[which] : whole(dice, 15, 110);
}

double random_rotation(std::mt19937& dice) {
    const double usual[]{0, 180, 90, -90};
    const int which = drawn(dice, {20, 25, 20, 20, 15});
    return which < 4 ? usual[which] : whole(dice, -179, 180);
}

bool clear_of_itself(const std::vector<Vector3d>& points) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
        for (std::size_t k = i + 2; k + 1 < points.size(); ++k)
            if (segment_distance(points[i], points[i + 1], points[k], points[k + 1]) < 1) return false;
    return true;
}

Vector3d turned(const Vector3d& v, const Vector3d& axis, double deg) { return Eigen::AngleAxisd(deg * degree, axis.normalized()) * v; }

double volume(const std::vector<Vector3d>& points, std::size_t before, std::size_t bend) {
    const Vector3d a = points[before + 1] - points[before], b = points[bend + 1] - points[bend], c = points[bend + 2] - points[bend + 1];
    return a.normalized().dot(b.normalized().cross(c.normalized()));
}

}  // namespace

std::vector<Vector3d> touched(const std::vector<double>& legs, const std::vector<double>& angles, const std::vector<double>& rotations, double od, TapeEdge edge) {
    Vector3d at(1, 2, 3), along = Vector3d(0.2, -0.5, 0.9).normalized(), up = along.unitOrthogonal();
    std::vector<Vector3d> points{at};
    for (std::size_t i = 0; i < angles.size(); ++i) {
        at += legs[i] * along;
        up = turned(up, along, rotations[i]);
        // Bends towards `up`: what was up then points back.
        const Vector3d past = std::cos(angles[i] * degree) * along + std::sin(angles[i] * degree) * up;
        up = std::cos(angles[i] * degree) * up - std::sin(angles[i] * degree) * along;
        const double shift = longer(edge, od, angles[i]), half = edge == TapeEdge::outside ? od / 2 : edge == TapeEdge::inside ? -od / 2 : 0;
        // The edge's line lies od/2 to the outside of the leg: along it past the corner, and that much away from the bend.
        const Vector3d aside = (past - past.dot(along) * along).normalized();
        points.push_back(angles[i] > 0 ? Vector3d(at + shift * along - half * aside) : at);
        along = past;
    }
    points.push_back(at + legs.back() * along);
    return points;
}

std::vector<Vector3d> touched(const World& world) {
    return touched(world.legs_inch, world.angles_deg, world.rotations_deg, world.od_inch, world.right.wire.route.measured_to);
}

std::vector<Vector3d> touched(const Route& route, double od_inch, TapeEdge edge) {
    std::vector<double> legs, angles, rotations;
    for (const Length run : route.runs) legs.push_back(run.inch());
    for (std::size_t i = 0; i < route.bends.size(); ++i) {
        angles.push_back(route.bends[i].angle.deg);
        rotations.push_back(i ? route.bends[i].rotation.deg : 0);
        for (const std::size_t leg : {i, i + 1}) legs[leg] -= longer(route.measured_to, od_inch, angles.back());
    }
    return touched(legs, angles, rotations, od_inch, edge);
}

World random_world(std::mt19937& dice, const Settings& settings) {
    World world;
    const double ods[]{0.1875, 0.25, 0.375, 0.5};
    do {
        world = {};
        world.od_inch = ods[drawn(dice, {50, 25, 15, 10})];
        Route& route = world.right.wire.route;
        const TapeEdge edges[]{TapeEdge::centre, TapeEdge::outside, TapeEdge::inside};
        route.measured_to = edges[drawn(dice, {50, 30, 20})];
        world.right.unit = drawn(dice, {75, 25}) ? Unit::mm : Unit::inch;
        world.right.wire.od = {world.od_inch * 25.4};
        world.right.wire.radius = {3 * world.od_inch * 25.4};
        const int bends = whole(dice, 2, 8);
        for (int i = 0; i <= bends; ++i) world.legs_inch.push_back(settings.even_legs ? between(dice, 2, 30) : 2 * std::pow(15, between(dice, 0, 1)));
        for (int i = 0; i < bends; ++i) {
            const double angle = random_angle(dice), rotation = i ? random_rotation(dice) : 0;
            route.bends.push_back({{angle}, wrapped({rotation})});
            world.angles_deg.push_back(angle + error(dice, settings.angle_bound_deg));
            world.rotations_deg.push_back(i ? rotation + error(dice, settings.rotation_bound_deg) : 0);
        }
        for (std::size_t i = 0; i < world.legs_inch.size(); ++i) {
            double leg = world.legs_inch[i];
            if (i > 0) leg += longer(route.measured_to, world.od_inch, world.angles_deg[i - 1]);
            if (i < world.angles_deg.size()) leg += longer(route.measured_to, world.od_inch, world.angles_deg[i]);
            route.runs.push_back({read_off(leg, world.right.unit, dice, settings) * 25.4});
        }
    } while (!clear_of_itself(touched(world)));
    return world;
}

TapeReading taped(const World& world, Span span, std::mt19937& dice, const Settings& settings) {
    const std::vector<Vector3d> points = touched(world);
    return {span, {read_off((points[span.to] - points[span.from]).norm(), world.right.unit, dice, settings) * 25.4}};
}

HandAnswer seen(const World& world, const HandQuestion& question) {
    // Looking along the middle leg with the leg before it hanging down, what lies to the left is along x down.
    const std::vector<Vector3d> points = touched(world);
    const Vector3d along = points[question.bend + 1] - points[question.bend];
    const Vector3d hanging = points[question.before] - points[question.before + 1], down = hanging - hanging.dot(along) / along.squaredNorm() * along;
    return {question.before, question.bend, (points[question.bend + 2] - points[question.bend + 1]).dot(along.cross(down)) > 0};
}

Difference difference(const Route& one, const Route& other, const World& world) {
    const TapeEdge edge = world.right.wire.route.measured_to;
    const std::vector<Vector3d> a = touched(one, world.od_inch, edge), b = touched(other, world.od_inch, edge);
    Difference result{0, false};
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t k = i + 1; k < a.size(); ++k)
            result.most_inch = std::max(result.most_inch, std::abs((a[i] - a[k]).norm() - (b[i] - b[k]).norm()));
    double same = 0;
    for (std::size_t bend = 1; bend + 2 < a.size(); ++bend) same += volume(a, bend - 1, bend) * volume(b, bend - 1, bend);
    result.other_hand = same < -0.01;
    return result;
}

double honest_inch(const World& world, std::mt19937& dice, const Settings& settings) {
    constexpr int tries = 60;
    std::vector<double> all;
    for (int i = 0; i < tries; ++i) {
        Route other = world.right.wire.route;
        for (Length& run : other.runs) run = {read_off(run.inch(), world.right.unit, dice, settings) * 25.4};
        for (Bend& bend : other.bends) {
            bend.angle.deg += error(dice, settings.angle_bound_deg);
            bend.rotation.deg += error(dice, settings.rotation_bound_deg);
        }
        all.push_back(difference(other, world.right.wire.route, world).most_inch);
    }
    const auto place = all.begin() + tries * 19 / 20;
    std::nth_element(all.begin(), place, all.end());
    return *place;
}

bool counts(const World& world, const Route& entered, std::mt19937& dice, const Settings& settings) {
    constexpr double surely_inch = 10;  // more than any honest entry of these wires; saves looking
    const Difference size = difference(entered, world.right.wire.route, world);
    return size.other_hand || size.most_inch > surely_inch || (size.most_inch > same_inch && size.most_inch > honest_inch(world, dice, settings));
}

Taken taken(const World& world, const ProofEntry& entry, std::mt19937& dice, const Settings& settings) {
    Taken taken;
    if (const auto question = hand_question(entry.wire)) taken.hand = seen(world, *question);
    while (taken.readings.size() < 3) {
        const auto task = next_task(entry, taken);
        if (!task) break;
        taken.readings.push_back(taped(world, task->span, dice, settings));
    }
    return taken;
}

bool names_it(const Proof& proof, const World& world) {
    if (proof.verdict != ProofVerdict::slip) return false;
    const Difference left = difference(proof.explanations.front().slip.meant, world.right.wire.route, world);
    return left.most_inch <= same_inch && !left.other_hand;
}

}  // namespace wire_world
