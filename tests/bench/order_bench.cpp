// What the search for the best order costs, as ratios to the rule of thumb (default_order) in the same run.
// Prints; asserts nothing; is no test.
//
//   order_bench [MICROSECONDS]     what each question to the geometry takes; 5 unless told

#include <chrono>
#include <cstdlib>
#include <iostream>
#include <random>
#include <string>

#include "bench/order_reasons.h"
#include "bench/samples.h"

using namespace tubewright;

namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) { return std::chrono::duration<double>(Clock::now() - start).count(); }

/// A geometry that takes its time, counts, and answers as it is told.
struct Geometry {
    double microseconds;
    long* asked;
    std::function<bool(std::uint64_t, const Placing&)> answer;
    bool operator()(std::uint64_t made, const Placing& placing) const {
        ++*asked;
        const auto start = Clock::now();
        while (seconds_since(start) < microseconds * 1e-6) {}
        return answer(made, placing);
    }
};

Line line_with(std::size_t bends) {
    std::vector<double> legs{6};
    std::vector<std::pair<double, double>> list;
    for (std::size_t i = 0; i < bends; ++i) {
        list.emplace_back(i % 3 == 0 ? 90 : 45, i ? static_cast<double>(i * 50 % 360) - 180 : 0);
        legs.push_back(static_cast<double>(4 + i % 4));
    }
    return line_of(legs, list);
}

int swinging(std::uint64_t made, const Placing& placing) {
    const std::uint64_t before = (std::uint64_t{1} << placing.bend) - 1;
    return __builtin_popcountll(placing.hook == End::A ? made & ~before : made & before);
}

bool coin(std::uint64_t made, const Placing& placing, double heads) {
    std::mt19937_64 dice((made * 0x9e3779b97f4a7c15u) ^ (placing.bend * 2 + (placing.hook == End::B)) * 0xff51afd7ed558ccdu);
    return std::uniform_real_distribution<double>()(dice) < heads;
}

}  // namespace

int main(int count, char** words) {
    const double microseconds = count > 1 ? std::atof(words[1]) : 5;
    for (const std::size_t bends : {std::size_t{8}, std::size_t{12}, std::size_t{16}, std::size_t{18}, std::size_t{24}}) {
        const Line line = line_with(bends);
        OrderQuestion question;
        question.layout = layout(line, {});
        question.bender = line.bender;
        const auto start = Clock::now();
        std::size_t sum = 0;
        for (int i = 0; i < 20; ++i) sum += default_order(question.layout, question.bender).size();
        const double reference = seconds_since(start) / 20;
        const std::size_t middle = bends / 2;
        const std::vector<std::pair<std::string, std::function<bool(std::uint64_t, const Placing&)>>> kinds{
            {"all allowed", [](std::uint64_t, const Placing&) { return true; }},
            {"one bend swings at most", [](std::uint64_t made, const Placing& p) { return swinging(made, p) <= 1; }},
            {"half allowed", [](std::uint64_t made, const Placing& p) { return coin(made, p, 0.5); }},
            {"one in five allowed", [](std::uint64_t made, const Placing& p) { return coin(made, p, 0.2); }},
            {"two bends block each other", [=](std::uint64_t made, const Placing& p) { return !(p.bend == middle && (made >> (middle + 1) & 1)) && !(p.bend == middle + 1 && (made >> middle & 1)); }},
            {"one bend never", [=](std::uint64_t, const Placing& p) { return p.bend != middle; }},
        };
        for (const auto& [name, answer] : kinds) {
            long asked = 0;
            const CanBend can = Geometry{microseconds, &asked, answer};
            const auto begun = Clock::now();
            const OrderAnswer found = best_order(question, can);
            const double took = seconds_since(begun);
            std::cout << bends << " bends, " << name << ": " << took << " s, " << took / reference << " times the rule of thumb; geometry asked " << asked << " times; "
                      << (std::holds_alternative<OrderFound>(found) ? "found" : "none") << "\n";
        }
        if (sum == 0) return 1;
    }
    return 0;
}
