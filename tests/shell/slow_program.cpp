// slow_program HOME JOB TOUCH_MAP
// The program as it is, but for one thing: looking for an order keeps a processor busy for half a minute first, and
// says how far it is.

#include <chrono>
#include <iostream>

#include "shell/window.h"

using namespace tubewright;

namespace {

using Clock = std::chrono::steady_clock;

LookedFor slowly(const Sheet& sheet, const OrderWish& wish, const Progress& progress, const std::vector<Bender>& benders) {
    constexpr int parts = 100;
    for (int part = 0; part < parts; ++part) {
        if (!progress(static_cast<double>(part) / parts)) {
            LookedFor stopped;
            stopped.verdict.outcome = OrderVerdict::Outcome::cancelled;
            return stopped;
        }
        for (const auto until = Clock::now() + std::chrono::milliseconds(300); Clock::now() < until;) {}
    }
    return look_for_order(sheet, wish, {}, benders);
}

}  // namespace

int main(int count, char** words) {
    if (count < 4) return 2;
    const std::filesystem::path root = TUBEWRIGHT_SOURCE_DIR;
    const auto closed = open_window({{root / "assets", root / "shaders", root / "jobs", words[1]}, words[2], words[3], slowly});
    if (closed.ok()) return 0;
    std::cerr << closed.trouble().sentence << "\n";
    return 1;
}
