#include "bench/hand_log.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

BendCheck bend(double off) {
    BendCheck check;
    check.target = 90_deg;
    check.set = 93_deg;
    check.measured = {90 + off};
    return check;
}
TurnCheck turn(TurnedBy by, double off) { return {{}, by, 45_deg, {45 + off}}; }
LegCheck leg(int marks, double off) { return {{}, marks, 100_mm, {100 + off}}; }

/// The likeliest spread by trying: six readings of `before`, and differences of `parts` errors read with spread t.
double by_trying(double before, const std::vector<std::pair<double, int>>& differences, double t) {
    double best = 0, least = 1e300;
    for (double m = before / 5; m < 5 * before; m *= 1.0001) {
        double cost = 6 * (std::log(m * m) + before * before / (m * m));
        for (const auto& [off, parts] : differences) {
            const double v = parts * m * m + t * t;
            cost += std::log(v) + off * off / v;
        }
        if (cost < least) least = cost, best = m;
    }
    return best;
}

}  // namespace

TEST_CASE("a shop that has logged nothing has the hand that is common") {
    const HandLearned none = hand_of({}, {}, {});
    CHECK(none.hand.angle_sd.deg == Approx(Hand{}.angle_sd.deg));
    CHECK(none.hand.turn_sd.deg == Approx(Hand{}.turn_sd.deg));
    CHECK(none.hand.float_sd.deg == Approx(Hand{}.float_sd.deg));
    CHECK(none.hand.mark_sd.mm == Approx(Hand{}.mark_sd.mm));
    CHECK(none.angle.counted == 0);
    CHECK(none.angle.share == Approx(1 / std::sqrt(12.0)));
}

TEST_CASE("six bends, each a degree off, by pocket calculator") {
    // .35^2 + (6 (.5^2 - .35^2) + 6 * 1^2) / 12 = .1225 + (.765 + 6) / 12 = .68625, sd .82840
    const HandLearned learned = hand_of({bend(1), bend(-1), bend(1), bend(-1), bend(1), bend(-1)}, {}, {});
    CHECK(learned.hand.angle_sd.deg == Approx(0.82840).margin(5e-6));
    CHECK(learned.angle.counted == 6);
    CHECK(learned.angle.share == Approx(1 / std::sqrt(24.0)));
    BendCheck piece = bend(1);
    piece.target.reset();  // bent to learn from: nothing was aimed at
    CHECK(hand_of({piece}, {}, {}) == hand_of({}, {}, {}));
    // And however well they read, the protractor's own error stays in the bends.
    CHECK(hand_of(std::vector<BendCheck>(10000, bend(0)), {}, {}).hand.angle_sd.deg == Approx(0.35).margin(0.001));
}

TEST_CASE("turns and marks: the likeliest spread once the reading's own is taken off") {
    const HandLearned learned = hand_of({}, {turn(TurnedBy::neighbour, 2.5), turn(TurnedBy::neighbour, -1), turn(TurnedBy::index_line, 6), turn(TurnedBy::index_line, -4)},
                                        {leg(1, 1.5), leg(2, -2), leg(2, 0.5), leg(1, -1)});
    CHECK(learned.hand.turn_sd.deg == Approx(by_trying(1, {{2.5, 1}, {-1, 1}}, 1)).epsilon(2e-4));
    CHECK(learned.hand.float_sd.deg == Approx(by_trying(2, {{6, 2}, {-4, 2}}, 1)).epsilon(2e-4));
    CHECK(learned.hand.mark_sd.mm == Approx(by_trying(0.5, {{1.5, 1}, {-2, 2}, {0.5, 2}, {-1, 1}}, 0.4572)).epsilon(2e-4));
    CHECK(learned.turn.counted == 2);
    CHECK(learned.floating.counted == 2);
    CHECK(learned.mark.counted == 4);
    CHECK(learned.hand.angle_sd.deg == Approx(0.5));
    // A turn of 179 that came out as -179 is two degrees off, not 358.
    TurnCheck round{{}, TurnedBy::neighbour, 179_deg, {-179}};
    CHECK(hand_of({}, {round}, {}).hand.turn_sd == hand_of({}, {turn(TurnedBy::neighbour, 2)}, {}).hand.turn_sd);
}

TEST_CASE("what is left out or asked after is not counted; put back, all is as it was") {
    std::vector<BendCheck> bends(5, bend(1));
    std::vector<TurnCheck> turns(5, turn(TurnedBy::neighbour, 3));
    std::vector<LegCheck> legs(5, leg(2, 2));
    const HandLearned all = hand_of(bends, turns, legs);
    bends[0].record.left_out = turns[1].record.left_out = true;
    legs[2].record.standing = RecordStanding::asked;
    const HandLearned less = hand_of(bends, turns, legs);
    CHECK(less.angle.counted == 4);
    CHECK(less.turn.counted == 4);
    CHECK(less.mark.counted == 4);
    CHECK(less.hand.angle_sd < all.hand.angle_sd);
    CHECK(less.hand.turn_sd < all.hand.turn_sd);
    CHECK(less.hand.mark_sd < all.hand.mark_sd);
    bends[0].record.left_out = turns[1].record.left_out = false;
    legs[2].record.standing = RecordStanding::confirmed;
    CHECK(hand_of(bends, turns, legs) == all);
}

TEST_CASE("a turn or a leg far beyond the hand's own spread is measured again first") {
    // neighbour: 4 sqrt(1 + 1) = 5.66 degrees; ink, two errors: 4 sqrt(2 * 4 + 1) = 12; legs: 4 sqrt(.25 k + .209) = 2.71 and 3.37 mm
    CHECK_FALSE(asks_again(turn(TurnedBy::neighbour, 5.6), Hand{}));
    CHECK(asks_again(turn(TurnedBy::neighbour, -5.7), Hand{}));
    CHECK_FALSE(asks_again(turn(TurnedBy::index_line, 11.9), Hand{}));
    CHECK(asks_again(turn(TurnedBy::index_line, 12.1), Hand{}));
    CHECK_FALSE(asks_again(leg(1, 2.7), Hand{}));
    CHECK(asks_again(leg(1, -2.72), Hand{}));
    CHECK_FALSE(asks_again(leg(2, 3.36), Hand{}));
    CHECK(asks_again(leg(2, 3.38), Hand{}));
}

TEST_CASE("of 1,000 hands logged forty times each, the truth lies within two of the stated shares") {
    // The hands are drawn about the common one as widely as its six readings leave it: 6 / chi-squared of 6.
    std::mt19937 dice(20240901);
    std::normal_distribution<double> normal;
    const auto drawn = [&](double common) {
        double chi = 0;
        for (int i = 0; i < 6; ++i) chi += std::pow(normal(dice), 2);
        return common * std::sqrt(6 / chi);
    };
    int turned = 0, floated = 0, marked = 0, turns_judged = 0;
    double over = 0;
    for (int shop = 0; shop < 1000; ++shop) {
        const double turn_sd = drawn(1), float_sd = drawn(2), mark_sd = drawn(0.5);
        std::vector<TurnCheck> turns;
        std::vector<LegCheck> legs;
        for (int i = 0; i < 40; ++i) {
            turns.push_back(turn(TurnedBy::neighbour, turn_sd * normal(dice) + normal(dice)));
            turns.push_back(turn(TurnedBy::index_line, float_sd * (normal(dice) - normal(dice)) + normal(dice)));
            legs.push_back(leg(2, mark_sd * (normal(dice) - normal(dice)) + 0.4572 * normal(dice)));
        }
        const HandLearned learned = hand_of({}, turns, legs);
        const auto holds = [](double found, double truth, double share) { return std::abs(std::log(found / truth)) <= 2 * share; };
        floated += holds(learned.hand.float_sd.deg, float_sd, learned.floating.share);
        marked += holds(learned.hand.mark_sd.mm, mark_sd, learned.mark.share);
        turned += holds(learned.hand.turn_sd.deg, turn_sd, learned.turn.share);
        over += std::log(learned.hand.mark_sd.mm / mark_sd) / 1000;
        ++turns_judged;
    }
    CHECK(turns_judged == 1000);
    CHECK(floated >= 920);
    CHECK(marked >= 900);  // the tape's own error is as large as a mark's, and the share leaves it out
    CHECK(turned >= 850);  // and so is that of a turn's reading
    CHECK(std::abs(over) < 0.05);
}

TEST_CASE("a learned hand is what the ends' spread takes") {
    const Part part = layout(line_of({6, 6, 6}, {{90, 0}, {90, 90}}), {}).part;
    const std::vector<Placing> order{{0, End::A}, {1, End::A}};
    const Hand rough = hand_of(std::vector<BendCheck>(30, bend(2)), {}, {}).hand;
    CHECK(within(end_spread(part, order, rough).b) > within(end_spread(part, order, Hand{}).b));
    CHECK(end_spread(part, order, hand_of({}, {}, {}).hand).b.isApprox(end_spread(part, order, Hand{}).b));
}
