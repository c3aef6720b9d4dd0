// How far off the lever is set, and how honest the stated band is, as a shop's log of bends grows; and what pieces teach
// of a bender. Prints; asserts nothing; is no test.
//
//   learn_bench [SHOPS] [SEED]     4000 shops unless told
//
// Each shop has a true springback of its own, drawn from what is believed before any bend, or from a wider world; its
// bends scatter about it, and some are slips of four degrees. Angles are 30, 45, 60, 90 (twice as often) and 120.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <random>

#include "bench/learn_bender.h"
#include "bench/springback_log.h"

using namespace tubewright;

namespace {

// 3/8 x .035 304 on 15/16 in, and 3/16 x .028 low-carbon steel on 9/16 in: the physics' lines, from springback_test.
struct TubeRow { const char* name; Springback physics; };
const TubeRow tubes[]{{"3/8 x .035 304", {0.0292, {0.77}}}, {"3/16 x .028 steel", {0.01715, {0.456}}}};

struct World {
    const char* name;
    double scatter = 0.5;      ///< degrees
    bool heavy_tails = false;  ///< Student's of 4 degrees of freedom
    double slips = 0;          ///< share of readings, 4 degrees off
    double wider = 1;          ///< than the belief
};
const World worlds[]{{"as believed"}, {"heavy tails", 0.5, true}, {"1 in 25 a slip", 0.5, false, 0.04}, {"rough: scatter 1", 1}, {"fine: scatter 0.3", 0.3}, {"springback twice as unlike", 0.5, false, 0, 2}};

class Dice {
public:
    explicit Dice(unsigned seed) : dice_(seed) {}
    double normal() { return normal_(dice_); }
    double share() { return static_cast<double>(dice_()) / 4294967296.0; }
    double error(const World& world) {
        double e = world.scatter * normal();
        if (world.heavy_tails) {
            double chi = 0;
            for (int i = 0; i < 4; ++i) chi += std::pow(normal(), 2);
            e *= std::sqrt(4 / chi);
        }
        if (share() < world.slips) e += share() < 0.5 ? 4 : -4;
        return e;
    }
    Sprung bend(const Springback& truth, const World& world) {
        static constexpr double angles[]{30, 45, 60, 90, 90, 120};
        const Angle comes{angles[static_cast<int>(share() * 6)]};
        return {set_angle(truth, comes) + Angle{error(world)}, comes};
    }

private:
    std::mt19937 dice_;
    std::normal_distribution<double> normal_;
};

/// What a careful person would do with pencil and paper: the mean of what was opened per degree.
Springback by_rule_of_three(const std::vector<Sprung>& readings) {
    double sum = 0;
    for (const Sprung& reading : readings) sum += (reading.set - reading.measured).deg / reading.measured.deg;
    return {readings.empty() ? 0 : sum / static_cast<double>(readings.size()), {}};
}

/// A shop: whatever the gate asks after is measured again, and a slip of the measuring is then gone.
std::vector<Sprung> log_of(std::size_t bends, const Springback& truth, const Springback& physics, const World& world, bool gate, Dice& dice) {
    std::vector<Sprung> log;
    while (log.size() < bends) {
        Sprung next = dice.bend(truth, world);
        if (gate) {
            BendCheck check;
            check.set = next.set, check.measured = next.measured;
            const SpringbackLearned so_far = learn_springback(first_belief(physics), log);
            const auto judged = judge_bend(check, so_far.belief, physics, log.size(), so_far.scatter);
            if (!judged.ok() || judged.value().ask) {
                World again = world;
                again.slips = 0;
                next.set = set_angle(truth, next.measured) + Angle{dice.error(again)};
            }
        }
        log.push_back(next);
    }
    return log;
}

struct Errors {
    std::vector<double> off;
    int held = 0;
    void add(double error, double band) { off.push_back(std::abs(error)), held += std::abs(error) <= band; }
    double rms() const {
        double sum = 0;
        for (const double e : off) sum += e * e;
        return std::sqrt(sum / static_cast<double>(off.size()));
    }
    double at(double share) {
        std::sort(off.begin(), off.end());
        return off[static_cast<std::size_t>(share * static_cast<double>(off.size() - 1))];
    }
    double held_percent() const { return 100.0 * held / static_cast<double>(off.size()); }
};

void springback_table(const TubeRow& tube, const World& world, bool gate, int shops, unsigned seed) {
    std::printf("%s, %s%s\n  bends   at 90: rms  95 in 100  in the band   at 45: rms  95 in 100  in the band   rule of three at 90 and 45, rms\n", tube.name, world.name, gate ? ", asked after" : "");
    for (const std::size_t bends : {0u, 1u, 3u, 10u, 30u}) {
        Dice dice(seed);
        Errors at_90, at_45, paper_90, paper_45;
        for (int shop = 0; shop < shops; ++shop) {
            const SpringbackBelief first = first_belief(tube.physics);
            const Springback truth{tube.physics.growth + world.wider * std::sqrt(first.growth_variance) * dice.normal(), {tube.physics.zero.deg + world.wider * dice.normal()}};
            const std::vector<Sprung> log = log_of(bends, truth, tube.physics, world, gate, dice);
            const SpringbackLearned learned = learn_springback(first, log);
            const Springback paper = by_rule_of_three(log);
            const auto add = [&](double target, Errors& ours, Errors& papers) {
                const SetTo to = set_to(learned.belief, {target}, learned.scatter);
                const double right = set_angle(truth, {target}).deg;
                ours.add(to.set.deg - right, 1.96 * to.line_sd.deg);
                papers.add(set_angle(paper, {target}).deg - right, 0);
            };
            add(90, at_90, paper_90);
            add(45, at_45, paper_45);
        }
        std::printf("  %5zu        %6.2f     %6.2f     %6.1f %%        %6.2f     %6.2f     %6.1f %%       %6.2f %6.2f\n", bends, at_90.rms(), at_90.at(0.95), at_90.held_percent(), at_45.rms(), at_45.at(0.95), at_45.held_percent(), paper_90.rms(), paper_45.rms());
    }
    std::fflush(stdout);
}

/// Ways to weigh readings and to come by the scatter, at 20 bends of honest, normal scatter.
void ways_table(int shops, unsigned seed) {
    const Springback physics = tubes[0].physics;
    const std::pair<const char*, SpringbackHow> ways[]{{"as it is", {}}, {"scatter believed", {{0.5}, true, true, ScatterFrom::belief}}, {"scatter weighed", {{0.5}, true, true, ScatterFrom::weighed}},
                                                      {"weights above 1", {{0.5}, true, false, ScatterFrom::clipped}}, {"weights above 1, scatter weighed", {{0.5}, true, false, ScatterFrom::weighed}}};
    std::printf("20 bends, as believed: in the band at 90\n");
    for (const auto& [name, how] : ways) {
        Dice dice(seed);
        int held = 0;
        for (int shop = 0; shop < shops; ++shop) {
            const Springback truth{physics.growth * (1 + 0.35 * dice.normal()), {physics.zero.deg + dice.normal()}};
            const SpringbackLearned learned = learn_springback(first_belief(physics), log_of(20, truth, physics, worlds[0], false, dice), how);
            const SetTo to = set_to(learned.belief, {90}, learned.scatter);
            held += std::abs((to.set - set_angle(truth, {90})).deg) <= 1.96 * to.line_sd.deg;
        }
        std::printf("  %-34s %5.1f %%\n", name, 100.0 * held / shops);
    }
}

/// A rough shop that has bent 20 of another tube before.
void rough_shop_table(int shops, unsigned seed) {
    const Springback physics = tubes[0].physics;
    std::printf("rough: scatter 1, with 20 bends of another tube logged\n  bends   in the band at 90\n");
    for (const int bends : {1, 3, 10}) {
        Dice dice(seed);
        int held = 0;
        for (int shop = 0; shop < shops; ++shop) {
            Springback truth;
            std::vector<BendCheck> log;
            for (int i = 0; i < 20 + bends; ++i) {
                if (i == 0 || i == 20) truth = {physics.growth * (1 + 0.35 * dice.normal()), {physics.zero.deg + dice.normal()}};
                const Sprung reading = dice.bend(truth, worlds[3]);
                BendCheck check;
                check.with.bender = i < 20 ? "other" : "";
                check.set = reading.set, check.measured = reading.measured;
                log.push_back(check);
            }
            const SpringbackState state = *springback_of({}, "", log, [&](const BenderAndTube&) { return physics; });
            const SetTo to = set_to(state.belief, {90}, state.scatter);
            held += std::abs((to.set - set_angle(truth, {90})).deg) <= 1.96 * to.line_sd.deg;
        }
        std::printf("  %5d   %6.1f %%\n", bends, 100.0 * held / shops);
    }
}

/// A line of 0.5 scatter that stays, or opens by a degree more from its 11th bend on.
void drift_table(int shops, unsigned seed) {
    const Springback physics = tubes[0].physics;
    const auto told = [&](int before, double more) {
        Dice dice(seed);
        int count = 0;
        for (int shop = 0; shop < shops; ++shop) {
            std::vector<BendCheck> log;
            const Springback truth{physics.growth * (1 + 0.35 * dice.normal()), {physics.zero.deg + dice.normal()}};
            for (int i = 0; i < before + 4; ++i) {
                const Sprung reading = dice.bend(truth, worlds[0]);
                BendCheck check;
                check.set = reading.set + Angle{i < before ? 0 : more};
                check.measured = reading.measured;
                log.push_back(check);
            }
            count += springback_of({}, "", log, [&](const BenderAndTube&) { return physics; })->drift.has_value();
        }
        return 100.0 * count / shops;
    };
    std::printf("drift told after four bends, in 100 logs\n  bends before   none   by 1 degree   by 2 degrees\n");
    for (const int before : {3, 6, 10, 20}) std::printf("  %12d  %5.1f        %5.1f          %5.1f\n", before, told(before, 0), told(before, 1), told(before, 2));
}

void time_long_log() {
    Dice dice(1);
    std::vector<BendCheck> log;
    for (int i = 0; i < 500; ++i) {
        const Sprung reading = dice.bend(tubes[0].physics, worlds[0]);
        BendCheck check;
        check.set = reading.set, check.measured = reading.measured;
        log.push_back(check);
    }
    const std::clock_t start = std::clock();
    springback_of({}, "", log, [](const BenderAndTube&) { return tubes[0].physics; });
    std::printf("a log of 500 bends: %.1f ms\n", 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
}

// --- benders, in inches: 3/8 tube on a form of .963 when bent

BentPiece piece_of(double radius, double offset, double stretch, double angle, const PieceSd& sd, Dice& dice) {
    const double in = 25.4;
    const auto read = [&](double inch, Length noise) { return Length{inch * in + noise.mm * dice.normal()}; };
    BentPiece piece;
    piece.sd = sd;
    if (angle == 180) {
        piece.cut = Length{10 * in}, piece.angle = {180};
        piece.width = read(2 * radius + .375, sd.width);
        return piece;
    }
    const double a = Angle{angle}.rad(), outside = (radius + .375 / 2) * std::tan(a / 2), start = 4 - offset;
    piece.cut = read(12, sd.cut);
    piece.inks = {{"0", read(4, sd.ink)}};
    piece.hook_leg = read(start + outside, sd.leg);
    piece.lever_leg = read(12 - start - (1 - stretch) * radius * a + outside, sd.leg);
    piece.angle = {angle + sd.angle.deg * dice.normal()};
    return piece;
}

void bender_table(const PieceSd& sd, const char* name, int shops, unsigned seed) {
    BenderBelief belief;
    belief.od = Length{.375 * 25.4};
    belief.form_radius = Length{.963 * 25.4};
    belief.marks = {{"0", {}}};
    std::printf("benders, %s: rms in inches, and how often the 95 %% band holds\n  %-22s radius          mark            corner at 30    corner at 90    refused\n", name, "pieces");
    const std::vector<std::pair<const char*, std::vector<double>>> sets{{"a 90", {90}}, {"a 90, a half turn", {90, 180}}, {"two 90s, a half turn", {90, 90, 180}}, {"a 90, a 45, a half turn", {90, 45, 180}}, {"four 90s, a half turn", {90, 90, 90, 90, 180}}};
    for (const auto& [what, angles] : sets) {
        Dice dice(seed);
        Errors radius, mark, at_30, at_90;
        int refused = 0;
        for (int shop = 0; shop < shops; ++shop) {
            const double r = .963 + .025 * dice.normal(), offset = .06 * dice.normal(), stretch = .022 + .012 * dice.normal();
            std::vector<BentPiece> pieces;
            for (const double angle : angles) pieces.push_back(piece_of(r, offset, stretch, angle, sd, dice));
            const auto result = learn_bender(belief, pieces);
            if (!result.ok()) {
                ++refused;
                continue;
            }
            const LearnedBender& l = result.value();
            radius.add(l.radius.inch() - r, 1.96 * l.radius_sd.inch());
            mark.add(l.marks[0].offset.inch() - offset, 1.96 * l.marks[0].sd.inch());
            const auto corner = [&](double angle, Errors& errors) {
                errors.add((l.radius.inch() - r) * std::tan(Angle{angle}.rad() / 2) - (l.marks[0].offset.inch() - offset), 1.96 * corner_sd(l, 0, {angle}).inch());
            };
            corner(30, at_30);
            corner(90, at_90);
        }
        std::printf("  %-22s", what);
        for (const Errors* e : {&radius, &mark, &at_30, &at_90}) std::printf(" %.4f %5.1f %% ", e->rms(), e->held_percent());
        std::printf("  %d\n", refused);
    }
    std::fflush(stdout);
}

}  // namespace

int main(int count, char** words) {
    const int shops = count > 1 ? std::max(1, std::atoi(words[1])) : 4000;
    const unsigned seed = count > 2 ? static_cast<unsigned>(std::atoi(words[2])) : 20260102;
    std::printf("Degrees between the set angle and the right one; %d shops\n", shops);
    for (const TubeRow& tube : tubes) springback_table(tube, worlds[0], false, shops, seed);
    for (const World& world : worlds)
        if (&world != worlds) springback_table(tubes[0], world, world.slips > 0, shops, seed);
    springback_table(tubes[0], worlds[2], false, shops, seed);
    ways_table(shops, seed);
    rough_shop_table(shops, seed);
    drift_table(shops / 4, seed);
    time_long_log();
    bender_table(read_to_32nds, "tape to 32nds, angles to half a degree either way", shops / 4, seed);
    bender_table(read_to_64ths, "tape to 64ths, angles to a quarter", shops / 4, seed);
    return 0;
}
