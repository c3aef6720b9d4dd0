// What the whole computation of one line costs, as ratios to a reference in the same run: the same 12-bend
// line's plain geometry (route to centre line and its length). Prints; asserts nothing; is no test.
//
//   sheet_bench [PROGRAM]     PROGRAM: a tubewright to start as a whole process, too

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "bench/samples.h"
#include "tube/centreline.h"

using namespace tubewright;

namespace {

Line twelve_bends() {
    std::vector<double> legs{6};
    std::vector<std::pair<double, double>> bends;
    for (int i = 0; i < 12; ++i) {
        bends.emplace_back(i % 3 == 0 ? 90 : 45, i * 50 % 360 - 180);
        legs.push_back(4 + i % 4);
    }
    bends.front().second = 0;
    return line_of(legs, bends);
}

/// The middle of many runs, in microseconds.
template <class Work>
double microseconds(int runs, const Work& work) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        times.push_back(std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
    return times[static_cast<std::size_t>(runs) / 2];
}

}  // namespace

int main(int count, char** words) {
    const Line line = twelve_bends();
    double sum = 0;
    const double geometry = microseconds(2000, [&] {
        const Part part = part_from(line.route, line.bender.radius, line.tube.od);
        sum += far_end(part).at.norm() + centreline_length(part).mm;
    });
    const double sheet = microseconds(500, [&] { sum += bend_sheet(line).layout->cut_length.mm; });
    std::cout << "geometry alone " << geometry << " us; whole sheet " << sheet << " us: " << sheet / geometry << " times\n";
    if (count > 1) {
        const std::string quiet = " > /dev/null 2>&1";
        const double nothing = microseconds(20, [&] { sum += std::system(("/bin/true" + quiet).c_str()); }) / 1000;
        const double whole = microseconds(20, [&] { sum += std::system((std::string(words[1]) + " sheet --json " TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json" + quiet).c_str()); }) / 1000;
        std::cout << "a process that does nothing " << nothing << " ms; the sheets of a job " << whole << " ms: " << whole / nothing << " times\n";
    }
    return sum > 0 ? 0 : 1;
}
