// The handling of random tubes at random benders, against a slow and plain way: at many lever angles the whole tube
// is laid out afresh from end A to end B, brought into the bender by the roll of its index line, and
// looked at point by point.

#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "base/tolerance.h"
#include "bench/handling.h"
#include "bench/stance.h"
#include "tube/centreline.h"

using namespace tubewright;
using Eigen::Vector3d;

namespace {

/// The sanitizers slow this down some fifteen times.
#ifdef __SANITIZE_ADDRESS__
constexpr int trials = 100;
#else
constexpr int trials = 600;
#endif

struct Trial {
    Layout laid;
    Bender bender;
    Springback springback;
    Length od;
    std::uint64_t made = 0;
    Placing placing{};
};

class Dice {
public:
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(dice_); }
    bool toss() { return between(0, 1) < 0.5; }
    std::size_t one_of(std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(dice_); }
    Vector3d place(double reach) { return {between(-reach, reach), between(-reach, reach), between(-reach, reach)}; }

private:
    std::mt19937 dice_{4711};
};

Trial random_trial(Dice& dice) {
    Trial trial;
    trial.od = {6};
    trial.bender.tube_od = trial.od;
    trial.bender.radius = {dice.between(14, 24)};
    trial.bender.hook_straight = {dice.between(10, 30)};
    trial.bender.lever_straight = {dice.between(10, 30)};
    trial.bender.set_up = {dice.toss() ? HookHand::left : HookHand::right, static_cast<Swing>(dice.one_of(4))};
    trial.springback = {dice.between(0, 0.06), {dice.between(0, 2)}};
    Line line;
    line.bender = trial.bender;
    line.tube.od = trial.od;
    line.route.form = RouteForm::straights;
    const std::size_t bends = 2 + dice.one_of(4);
    for (std::size_t i = 0; i < bends; ++i) {
        line.route.runs.push_back({dice.between(15, 90)});
        line.route.bends.push_back({{dice.between(20, 170)}, {i == 0 ? 0 : dice.between(-180, 180)}});
    }
    line.route.runs.push_back({dice.between(30, 150)});
    line.a.trim = {dice.between(0, 20)};
    trial.laid = layout(line, trial.springback);
    trial.placing = {dice.one_of(bends), dice.toss() ? End::A : End::B};
    for (std::size_t i = 0; i < bends; ++i)
        if (i != trial.placing.bend && dice.toss()) trial.made |= std::uint64_t{1} << i;
    const std::size_t solids = 1 + dice.one_of(3);
    for (std::size_t i = 0; i < solids; ++i) {
        Solid solid{"solid", static_cast<Stands>(dice.one_of(3)), {}};
        const Vector3d at = dice.place(140);
        if (dice.toss()) solid.shape = Block{at, at + Vector3d(dice.between(5, 40), dice.between(5, 40), dice.between(5, 40))};
        else solid.shape = Cylinder{at, at + dice.place(40), {dice.between(2, 15)}};
        if (solid.stands == Stands::bench && dice.toss()) solid.shape = HalfSpace{{0, 0, -dice.between(30, 200)}, {0, 0, -1}};
        trial.bender.body.push_back(solid);
    }
    return trial;
}

/// A place on the tube's centre line. `out` counts along the tube from the bend's start, on either side.
struct Point {
    Vector3d at;
    double s, out;
    enum class On { hook, arc, lever } on;
    bool in_hand;  ///< on the straight that begins at the bend, or the arc
};

/// The tube in the bender's frame with the lever at this angle.
std::vector<Point> tube_at(const Trial& trial, double lever_deg) {
    const Part& part = trial.laid.part;
    const std::size_t now = trial.placing.bend;
    const bool hook_a = trial.placing.hook == End::A;
    std::vector<Point> points;
    Frame at, tangent;
    double s = 0;
    const auto go_straight = [&](double length) {
        const int steps = std::max(1, static_cast<int>(std::ceil(length)));
        for (int i = 0; i < steps; ++i) points.push_back({gone_straight(at, {length * i / steps}).at, s + length * i / steps, 0, Point::On::hook, false});
        at = gone_straight(at, {length});
        s += length;
    };
    const auto go_round = [&](double radius, double angle_deg, Angle direction, double taken) {
        const int steps = std::max(1, static_cast<int>(std::ceil(radius * angle_deg / 57)));
        for (int i = 0; i < steps; ++i)
            points.push_back({gone_round(at, {radius}, {angle_deg * i / steps}, direction).at, s + taken * i / steps, 0, Point::On::hook, false});
        at = gone_round(at, {radius}, {angle_deg}, direction);
        s += taken;
    };
    double start_s = 0, arc_from = 0, arc_to = 0;
    for (std::size_t i = 0; i <= part.bends.size(); ++i) {
        const double until = i < part.bends.size() ? trial.laid.spans[i].start.mm : trial.laid.cut_length.mm;
        go_straight(until - s);
        if (i == part.bends.size()) break;
        const double taken = (trial.laid.spans[i].end - trial.laid.spans[i].start).mm;
        const Angle direction = direction_in_section(part, i);
        if (i == now) {
            const double rolled = trial.bender.radius.mm * Angle{lever_deg}.rad(), rest = taken - rolled;
            start_s = hook_a ? s : s + taken;
            if (!hook_a) { go_straight(rest); }
            else tangent = at;
            arc_from = s;
            go_round(trial.bender.radius.mm, lever_deg, direction, rolled);
            arc_to = s;
            if (hook_a) go_straight(rest);
            else tangent = at;
        } else if (trial.made >> i & 1) go_round(part.radius.mm, part.bends[i].angle.deg, direction, taken);
        else go_straight(taken);
    }
    points.push_back({at.at, s, 0, Point::On::hook, false});
    // The hook-side tangent point to the origin, A to B along the axis or against it, the index line to its roll:
    // minus the bend's direction with A on the hook, plus with B.
    const double roll = (hook_a ? -1 : 1) * direction_in_section(part, now).rad();
    Eigen::Matrix3d here, there;
    here << tangent.along, tangent.aside, tangent.along.cross(tangent.aside);
    const Vector3d along(hook_a ? 1 : -1, 0, 0), aside(0, std::cos(roll), std::sin(roll));
    there << along, aside, along.cross(aside);
    const Eigen::Matrix3d turn = there * here.transpose();
    const Vector3d from = tangent.at;
    // The nearest made bends bound the straight in hand.
    double low = 0, high = trial.laid.cut_length.mm;
    for (std::size_t i = 0; i < part.bends.size(); ++i) {
        if (!(trial.made >> i & 1)) continue;
        if (i < now) low = trial.laid.spans[i].end.mm;
        if (i > now) high = std::min(high, trial.laid.spans[i].start.mm);
    }
    for (Point& point : points) {
        point.at = turn * (point.at - from);
        point.out = std::abs(point.s - start_s);
        if (point.s >= arc_from && point.s <= arc_to) point.on = Point::On::arc;
        else point.on = (point.s > arc_to) == hook_a ? Point::On::lever : Point::On::hook;
        point.in_hand = point.s >= low - 1e-9 && point.s <= high + 1e-9;
    }
    return points;
}

/// Whether the bender's own solids are made to hold this place.
bool held(const Trial& trial, const Point& point, Stands stands, double lever_deg) {
    if (stands == Stands::bench || !point.in_hand) return false;
    if (point.on == Point::On::arc) return true;
    const double past_arc = point.out - trial.bender.radius.mm * Angle{lever_deg}.rad();
    if (point.on == Point::On::hook) return stands == Stands::fixed || point.out <= trial.bender.hook_straight.mm;
    return stands == Stands::lever || past_arc <= trial.bender.lever_straight.mm;
}

std::vector<PlacedSolid> placed(const Trial& trial) {
    const Stance stand = stance(trial.bender.set_up);
    Eigen::Matrix3d to_bender;
    to_bender << stand.axis.transpose(), stand.swing.transpose(), stand.normal.transpose();
    std::vector<PlacedSolid> solids;
    for (const Solid& solid : trial.bender.body)
        solids.emplace_back(solid.shape, solid.stands == Stands::bench ? to_bender : Eigen::Matrix3d(Eigen::Matrix3d::Identity()));
    return solids;
}

double gap_at(const Trial& trial, const PlacedSolid& solid, Stands stands, const std::vector<Point>& points, double lever_deg) {
    const Vector3d centre(0, trial.bender.radius.mm, 0);
    const Eigen::Matrix3d back = Eigen::AngleAxisd(-Angle{lever_deg}.rad(), Vector3d::UnitZ()).toRotationMatrix();
    double least = INFINITY;
    for (const Point& point : points) {
        if (held(trial, point, stands, lever_deg)) continue;
        const Vector3d at = stands == Stands::lever ? Vector3d(centre + back * (point.at - centre)) : point.at;
        least = std::min(least, solid.gap({at, at, trial.od.mm / 2}));
    }
    return least;
}

/// Between places on different sides of the bend, or on a side and the arc; those near along the tube left out.
double own_gap(const Trial& trial, const std::vector<Point>& points, double apart) {
    double least = INFINITY;
    for (const Point& p : points)
        for (const Point& q : points)
            if (p.on != q.on && std::abs(p.s - q.s) > apart) least = std::min(least, (p.at - q.at).norm() - trial.od.mm);
    return least;
}

}  // namespace

TEST_CASE("random tubes at random benders: nothing that is in the way is missed, and what is said to be is there") {
    Dice dice;
    const double room = tolerance::handling_room.mm, step = tolerance::handling_step.mm;
    // Points are a millimetre apart: between two of them a gap of 3 mm from the line is at most 0.05 less.
    const double spacing = 0.06, near = std::numbers::pi * 6;
    int free = 0, hit_solid = 0, hit_self = 0, no_way = 0;
    for (int i = 0; i < trials; ++i) {
        const Trial trial = random_trial(dice);
        const std::vector<PlacedSolid> solids = placed(trial);
        Handling handling(trial.laid, trial.od, trial.bender, trial.bender.set_up, trial.springback);
        const auto found = handling.obstacle(trial.made, trial.placing);
        const double set = set_angle(trial.springback, trial.laid.part.bends[trial.placing.bend].angle).deg;
        INFO("trial " << i << ", bend " << trial.placing.bend << " hook " << letter(trial.placing.hook) << ", made " << trial.made);
        // Up to the angle at which something is said to be in the way all has to be clear.
        const bool swept = found && found->when == Obstacle::When::swept;
        const double clear_to = !found || found->when == Obstacle::When::taken_out ? set : swept ? found->lever.deg : 0;
        const int moments = found && found->when == Obstacle::When::laid_in ? 0 : 60;
        for (int moment = 0; moment < moments; ++moment) {
            const double lever = clear_to * moment / moments;
            const std::vector<Point> points = tube_at(trial, lever);
            double least = INFINITY;
            for (std::size_t k = 0; k < solids.size(); ++k) least = std::min(least, gap_at(trial, solids[k], trial.bender.body[k].stands, points, lever));
            INFO("lever at " << lever << " of " << set);
            CHECK(least > room - step - spacing);
            if (moment % 6 == 0) CHECK(own_gap(trial, points, 2 * near + 7) > room - step - spacing);
        }
        if (!found) ++free;
        if (!found || found->when == Obstacle::When::taken_out) continue;
        const std::vector<Point> points = tube_at(trial, found->lever.deg);
        const double slack = tolerance::handling_sagitta.mm + spacing;
        if (found->other) {
            ++hit_self;
            CHECK(own_gap(trial, points, near) < room + 2 * slack);
        } else if (found->when == Obstacle::When::swept) {
            ++hit_solid;
            CHECK(gap_at(trial, solids[*found->solid], trial.bender.body[*found->solid].stands, points, found->lever.deg) < room + slack);
        } else {
            // Laid in: it lies against the solid, or no way leads there.
            ++(gap_at(trial, solids[*found->solid], trial.bender.body[*found->solid].stands, points, 0) < room + slack ? hit_solid : no_way);
        }
    }
    CAPTURE(free, hit_solid, hit_self, no_way);
    CHECK(free > trials / 4);
    CHECK(hit_solid > trials / 10);
    CHECK(hit_self > 0);
}
