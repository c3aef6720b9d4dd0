#include "bench/spread.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "bench/order_weights.h"
#include "bench/samples.h"
#include "tube/centreline.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

constexpr double degree = std::numbers::pi / 180;

Part part_of(const Line& line) { return layout(line, {}).part; }

/// The tube as a hand would form it, bend by bend from a straight one: a place along the tube and a
/// direction around it for each bend, with that bend's own errors. Nothing is linear here.
class FormedByHand {
public:
    FormedByHand(const Part& part, const std::vector<Placing>& order, const Hand& hand, std::mt19937& dice) {
        const std::size_t n = part.bends.size();
        std::normal_distribution<double> normal;
        double at = 0, direction = 0;
        std::vector<double> start(n), end(n), angle(n), turned(n);
        for (std::size_t i = 0; i < n; ++i) {
            start[i] = at += part.straights[i].mm;
            end[i] = at += part.radius.mm * part.bends[i].angle.rad();
            turned[i] = direction += i ? part.bends[i].rotation.rad() : 0;
        }
        const double length = at + part.straights[n].mm;
        std::vector<double> off(n);
        std::vector<bool> made(n);
        for (std::size_t step = 0; step < order.size(); ++step) {
            const std::size_t i = order[step].bend;
            const double mark = hand.mark_sd.mm * normal(dice), over = hand.angle_sd.rad() * normal(dice);
            angle[i] = part.bends[i].angle.rad() + over;
            start[i] += mark - (order[step].hook == End::B ? part.radius.mm * over : 0);
            end[i] += mark + (order[step].hook == End::A ? part.radius.mm * over : 0);
            const bool before = i > 0 && made[i - 1], after = i + 1 < n && made[i + 1];
            const bool use_before = before && (order[step].hook == End::A || !after);
            if (before || after) off[i] = off[use_before ? i - 1 : i + 1] + hand.turn_sd.rad() * normal(dice);
            else off[i] = hand.float_sd.rad() * normal(dice);
            made[i] = true;
        }
        const std::size_t first = order.front().bend;
        const double hold = turned[first] + off[first];
        datum = Eigen::Isometry3d::Identity();
        a = along(part, first, -1, start, end, angle, turned, off, hold, length);
        b = along(part, first, +1, start, end, angle, turned, off, hold, length);
    }

    Eigen::Isometry3d datum, a, b;

private:
    /// From the middle of the first bend's arc outward; the pose's x looks from A to B, y to the first bend's centre.
    static Eigen::Isometry3d along(const Part& part, std::size_t first, int way, const std::vector<double>& start, const std::vector<double>& end,
                                   const std::vector<double>& angle, const std::vector<double>& turned, const std::vector<double>& off, double hold, double length) {
        Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
        const auto straight = [&](double by) { pose.translate(Eigen::Vector3d(way * by, 0, 0)); };
        const auto round = [&](double by, double direction) {
            pose.rotate(Eigen::AngleAxisd(direction, Eigen::Vector3d::UnitX()));
            pose.translate(Eigen::Vector3d(0, part.radius.mm, 0));
            pose.rotate(Eigen::AngleAxisd(way * by, Eigen::Vector3d::UnitZ()));
            pose.translate(Eigen::Vector3d(0, -part.radius.mm, 0));
            pose.rotate(Eigen::AngleAxisd(-direction, Eigen::Vector3d::UnitX()));
        };
        round(angle[first] / 2, 0);
        const int n = static_cast<int>(part.bends.size());
        double at = way > 0 ? end[first] : start[first];
        for (int i = static_cast<int>(first) + way; i >= 0 && i < n; i += way) {
            const auto k = static_cast<std::size_t>(i);
            straight(way > 0 ? start[k] - at : at - end[k]);
            round(angle[k], turned[k] + off[k] - hold);
            at = way > 0 ? end[k] : start[k];
        }
        straight(way > 0 ? length - at : at);
        return pose;
    }
};

Eigen::Matrix<double, 6, 1> error(const Eigen::Isometry3d& made, const Eigen::Isometry3d& meant) {
    const Eigen::AngleAxisd turned(made.linear() * meant.linear().transpose());
    Eigen::Matrix<double, 6, 1> result;
    result << made.translation() - meant.translation(), turned.angle() * turned.axis();
    return result;
}

}  // namespace

TEST_CASE("one bend: an end's spread is the angle's half on its arm, and the mark's") {
    // A 90 on a 20 mm radius, 200 mm beyond it, A on the hook. From the middle of the arc, half of the angle is
    // this end's. By hand: the end turns about the arc's centre by d/2, at 45 deg, that is 200 mm out on a line
    // that passes 20 from the centre; the straight loses 20 d; the mark moves the tube along by m.
    Part part;
    part.straights = {100_mm, 200_mm};
    part.bends = {{90_deg, {}}};
    part.radius = 20_mm;
    Hand hand;
    hand.angle_sd = 1_deg;
    hand.mark_sd = 0.5_mm;
    const EndSpread spread = end_spread(part, {{0, End::A}}, hand);
    // End B seen from the centre: 200 along, 20 out. Turning by d/2 moves it 200 d/2 across and 20 d/2 along,
    // the taken tube -20 d along: across 100 d, along -10 d; d = 0.0174533.
    const double d = degree;
    CHECK(spread.b.topLeftCorner<3, 3>().trace() == Approx(100 * d * 100 * d + 10 * d * 10 * d + 0.25).epsilon(1e-6));
    CHECK(spread.b(5, 5) == Approx(d * d / 4).epsilon(1e-6));
    // End A: 100 along, 20 out; nothing is taken there: across 50 d, along 10 d.
    CHECK(spread.a.topLeftCorner<3, 3>().trace() == Approx(50 * d * 50 * d + 10 * d * 10 * d + 0.25).epsilon(1e-6));
    // Of a bender that stretches the tube by a quarter of the arc the straight loses 15 d: along 20/2 d - 15 d = -5 d, and
    // across 100 d as before, for the straight is lost along its own way.
    const EndSpread stretched = end_spread(part, {{0, End::A}}, hand, 0.25);
    CHECK(stretched.b.topLeftCorner<3, 3>().trace() == Approx(100 * d * 100 * d + 5 * d * 5 * d + 0.25).epsilon(1e-6));
}

TEST_CASE("a bend is turned against its made neighbour on the hook's side, else against the other, else against the ink") {
    const Part part = part_of(line_of({5, 5, 5, 5, 5}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}}));
    const auto against = turned_against(part, {{0, End::A}, {2, End::A}, {1, End::B}, {3, End::A}});
    REQUIRE(against.size() == 4);
    CHECK_FALSE(against[0]);
    CHECK_FALSE(against[1]);
    CHECK(against[2] == std::size_t{2});
    CHECK(against[3] == std::size_t{2});
}

TEST_CASE("95 in 100: the known distances of one, two and three equal spreads") {
    // Chi quantiles at 0.95 for 1, 2, 3 degrees of freedom: sqrt(3.8415), sqrt(5.9915), sqrt(7.8147), printed
    // in any table of the chi-squared distribution.
    const auto spread = [](double x, double y, double z) {
        Spread s = Spread::Zero();
        s.diagonal() << x, y, z, 1, 1, 1;
        return within(s).mm;
    };
    CHECK(spread(1, 1, 1) == Approx(std::sqrt(7.8147)).epsilon(0.002));
    CHECK(spread(0, 1, 1) == Approx(std::sqrt(5.9915)).epsilon(0.002));
    CHECK(spread(1, 0, 0) == Approx(std::sqrt(3.8415)).epsilon(0.002));
    CHECK(spread(4, 4, 4) == Approx(2 * std::sqrt(7.8147)).epsilon(0.002));
    CHECK(spread(0, 0, 0) == 0);
}

TEST_CASE("the spread to first order is that of 100,000 lines formed with real errors") {
    struct Case { Line line; std::vector<Placing> order; };
    const Line jog = line_of({8, 6, 7, 9, 5}, {{60, 0}, {45, 90}, {90, -40}, {30, 170}});
    const std::vector<Case> cases{
        {jog, {{0, End::A}, {1, End::A}, {2, End::A}, {3, End::A}}},
        {jog, {{2, End::A}, {3, End::A}, {1, End::B}, {0, End::B}}},
        {jog, {{1, End::B}, {3, End::A}, {2, End::A}, {0, End::B}}},  // the second floats
    };
    std::mt19937 dice(20240611);
    for (const Case& example : cases) {
        const Part part = part_of(example.line);
        const Hand hand;
        std::mt19937 none(1);
        const FormedByHand meant(part, example.order, {{}, {}, {}, {}}, none);
        Spread a = Spread::Zero(), b = Spread::Zero();
        constexpr int runs = 100000;
        std::vector<double> far;
        for (int i = 0; i < runs; ++i) {
            const FormedByHand made(part, example.order, hand, dice);
            const auto off_a = error(made.a, meant.a), off_b = error(made.b, meant.b);
            a += off_a * off_a.transpose() / runs;
            b += off_b * off_b.transpose() / runs;
            far.push_back(off_b.head<3>().norm());
        }
        const EndSpread spread = end_spread(part, example.order, hand);
        INFO("first bend " << example.order.front().bend + 1 << "\n" << spread.b << "\n\n" << b);
        // 100,000 runs know a variance to sqrt(2 / 100000) = 0.45 %, a standard deviation to 0.22 %. Each element is
        // compared on the scale of the standard deviations that it belongs to.
        for (int i = 0; i < 6; ++i)
            for (int k = 0; k < 6; ++k) {
                CHECK(std::abs(a(i, k) - spread.a(i, k)) <= 0.02 * std::sqrt(spread.a(i, i) * spread.a(k, k)) + 1e-12);
                CHECK(std::abs(b(i, k) - spread.b(i, k)) <= 0.02 * std::sqrt(spread.b(i, i) * spread.b(k, k)) + 1e-12);
            }
        std::sort(far.begin(), far.end());
        CHECK(within(spread.b).mm == Approx(far[runs * 95 / 100]).epsilon(0.02));
    }
}

TEST_CASE("begun in the middle of a long line, the worse end lands nearer than begun at A") {
    const Part part = part_of(line_of({6, 6, 6, 6, 6, 6, 6, 6}, {{45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}, {45, 90}, {45, 0}}));
    const auto worse = [&](std::size_t start) {
        const EndSpread spread = end_spread(part, outward_order(part, start), {});
        return std::max(within(spread.a), within(spread.b)).mm;
    };
    CHECK(worse(3) < 0.7 * worse(0));
}
