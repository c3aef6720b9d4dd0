#include "bench/proof_model.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "bench/wires.h"

using namespace tubewright;

TEST_CASE("a reading that shares a leg with one that came out long is foreseen longer") {
    // Two legs of 10 in one line, all errors 1/16 in. The first alone: leg and tape, 2/256 in^2. Both: two legs and tape, 3/256. They
    // share a leg, 1/256. When the first reads 1/8 too much: the second (1/256) / (2/256) of it, 1/16; variance 3/256 - 1/2 of 1/256.
    const ProofEntry entry = entry_of({10, 10}, {{0, 0}});
    const Possibility right = possibilities(entry).front();
    const std::vector<NextReading> next = foreseen_after(right, {{{0, 1}, {10.125 * 25.4}}}, {{0, 2}}, entry.measuring);
    CHECK(next.at(0).mean / 25.4 == Approx(20.0625));
    CHECK(next.at(0).variance / (25.4 * 25.4) == Approx(2.5 / 256));
    const std::vector<NextReading> alone = foreseen_after(right, {}, {{0, 2}}, entry.measuring);
    CHECK(alone.at(0).mean / 25.4 == Approx(20));
    CHECK(alone.at(0).variance / (25.4 * 25.4) == Approx(3.0 / 256));
}

TEST_CASE("a density is that of the normal distribution") {
    // Two independent readings, 1 and 2 standard deviations off: misfit 1 + 4; log density -2.5 - log(2 pi) - log(3 x 0.5).
    Foreseen foreseen{Eigen::Vector2d(100, 50), Eigen::Vector2d(9, 0.25).asDiagonal()};
    const Eigen::Vector2d read(103, 49);
    CHECK(misfit(foreseen, read) == Approx(5));
    CHECK(log_density(foreseen, read) == Approx(-2.5 - std::log(2 * 3.14159265358979) - std::log(1.5)));
}

TEST_CASE("each shape is there once, the entry first, and the chances are all there are") {
    const ProofEntry entry = entry_of({9, 12, 7, 15}, {{90, 0}, {45, 90}, {60, 180}});
    const std::vector<Possibility> possible = possibilities(entry);
    CHECK(possible.front().slips.empty());
    double sum = unknown_odds * possible.front().prior;
    for (std::size_t i = 0; i < possible.size(); ++i) {
        sum += possible[i].prior;
        if (i > 0) REQUIRE_FALSE(possible[i].slips.empty());
        for (std::size_t k = 0; k < i; ++k) {
            INFO(i << " and " << k);
            const double hand = handedness(possible[i].shape, 0, 1) * handedness(possible[k].shape, 0, 1);
            CHECK((most_different(possible[i].shape, possible[k].shape) > same_shape || hand < 0));
        }
    }
    CHECK(sum == Approx(1));
    const std::vector<double> chances = probabilities(possible, taken_of(entry, entry), entry.measuring);
    CHECK(chances.size() == possible.size() + 1);
    CHECK(std::accumulate(chances.begin(), chances.end(), 0.0) == Approx(1));
}

TEST_CASE("what a slip would read is in its favour, whatever the slip") {
    const ProofEntry entry = entry_of({9, 12, 7, 15}, {{90, 0}, {45, 90}, {60, 180}});
    const std::vector<Possibility> possible = possibilities(entry);
    for (std::size_t i = 1; i < possible.size(); ++i) {
        Taken taken;
        for (const Span span : {Span{0, 2}, Span{1, 4}, Span{0, 4}}) taken.readings.push_back({span, apart(possible[i].shape, span)});
        const std::vector<double> chances = probabilities(possible, taken, entry.measuring);
        INFO("possibility " << i);
        CHECK(chances[i] / possible[i].prior >= 0.999 * chances.front() / possible.front().prior);
    }
}
