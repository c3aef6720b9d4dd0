#include "bench/hand_log.h"

#include <cassert>
#include <cmath>

namespace tubewright {
namespace {

constexpr double ask_beyond = 4;
constexpr int most_passes = 500;
constexpr double same_spread = 1e-12;

/// A difference that was read, made of `parts` errors of the hand.
struct Difference {
    double off;
    int parts;
};

double squared(double x) { return x * x; }

SpreadKnown known_from(std::size_t count, double worth) { return {static_cast<int>(count), 1 / std::sqrt(2 * (hand_readings + worth))}; }

/// The share of a difference's variance that is the hand's.
double hands_share(const Difference& difference, double spread, double reading_sd) {
    const double own = difference.parts * squared(spread);
    return own / (own + squared(reading_sd));
}

/// How many readings without any error of their own these are worth: the curvature of the likelihood in log m is 2 share^2.
double worth(const std::vector<Difference>& differences, double spread, double reading_sd) {
    double sum = 0;
    for (const Difference& difference : differences) sum += squared(hands_share(difference, spread, reading_sd));
    return sum;
}

// Expectation and maximisation in turn: of a difference d of k errors of spread m, read with spread t, the errors' own sum has
//   mean d k m^2 / (k m^2 + t^2) and variance k m^2 t^2 / (k m^2 + t^2);   m^2 = (6 before^2 + sum (mean^2 + variance) / k) / (6 + n)
double likeliest(double before, const std::vector<Difference>& differences, double reading_sd) {
    double spread = before;
    for (int round = 0; round < most_passes; ++round) {
        double sum = hand_readings * squared(before);
        for (const Difference& difference : differences) {
            const double share = hands_share(difference, spread, reading_sd);
            sum += (squared(difference.off * share) + share * squared(reading_sd)) / difference.parts;
        }
        const double next = std::sqrt(sum / (hand_readings + static_cast<double>(differences.size())));
        const bool still = std::abs(next - spread) <= same_spread * spread;
        spread = next;
        if (still) break;
    }
    return spread;
}

double off_deg(const TurnCheck& check) { return wrapped(check.measured - check.wanted).deg; }

}  // namespace

HandLearned hand_of(const std::vector<BendCheck>& bends, const std::vector<TurnCheck>& turns, const std::vector<LegCheck>& legs, const Hand& before, const CheckSd& sd) {
    HandLearned learned;
    double sum = hand_readings * (squared(before.angle_sd.deg) - squared(sd.protractor.deg));
    std::size_t count = 0;
    for (const BendCheck& check : bends)
        if (is_learned_from(check.record) && check.target) sum += squared((check.measured - *check.target).deg), ++count;
    learned.hand.angle_sd = {std::sqrt(squared(sd.protractor.deg) + sum / (hand_readings + static_cast<double>(count)))};
    learned.angle = known_from(count, static_cast<double>(count));

    std::vector<Difference> turned, floated, marked;
    for (const TurnCheck& check : turns)
        if (is_learned_from(check.record)) (check.turned_by == TurnedBy::neighbour ? turned : floated).push_back({off_deg(check), check.turned_by == TurnedBy::neighbour ? 1 : 2});
    for (const LegCheck& check : legs)
        if (is_learned_from(check.record)) marked.push_back({(check.read - check.expected).mm, check.marked_bends});
    learned.hand.turn_sd = {likeliest(before.turn_sd.deg, turned, sd.rotation.deg)};
    learned.hand.float_sd = {likeliest(before.float_sd.deg, floated, sd.rotation.deg)};
    learned.hand.mark_sd = {likeliest(before.mark_sd.mm, marked, sd.tape.mm)};
    learned.turn = known_from(turned.size(), worth(turned, learned.hand.turn_sd.deg, sd.rotation.deg));
    learned.floating = known_from(floated.size(), worth(floated, learned.hand.float_sd.deg, sd.rotation.deg));
    learned.mark = known_from(marked.size(), worth(marked, learned.hand.mark_sd.mm, sd.tape.mm));
    return learned;
}

bool asks_again(const TurnCheck& check, const Hand& hand, const CheckSd& sd) {
    const bool by_neighbour = check.turned_by == TurnedBy::neighbour;
    const double hands = by_neighbour ? squared(hand.turn_sd.deg) : 2 * squared(hand.float_sd.deg);
    return std::abs(off_deg(check)) > ask_beyond * std::sqrt(hands + squared(sd.rotation.deg));
}

bool asks_again(const LegCheck& check, const Hand& hand, const CheckSd& sd) {
    assert(check.marked_bends == 1 || check.marked_bends == 2);
    return std::abs((check.read - check.expected).mm) > ask_beyond * std::sqrt(check.marked_bends * squared(hand.mark_sd.mm) + squared(sd.tape.mm));
}

}  // namespace tubewright
