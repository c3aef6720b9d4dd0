// What a frame of our screens costs, against a frame of Dear ImGui's own demo window in the same run, on
// the same screen with the same fonts. No picture in space is drawn, and nothing is sent to a graphics card.
// Prints for each sample screen, in microseconds:
//   rest   nothing has changed since the frame before, and nobody touches the screen
//   change something has: all of it is drawn again; its words have been seen before
//   new    the same, with words that are measured for the first time, as on coming to another screen
// and what the busiest of each is as a multiple of the demo window as it opens, and with its sections open.
//
// frame_bench [FRAMES [NAME]]    NAME: only sample screens whose name holds it

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

namespace {

using Clock = std::chrono::steady_clock;

/// The middle one of many frames, in microseconds: one that was interrupted doesn't count. What comes
/// before each frame isn't timed.
double frame_time(int frames, const std::function<void()>& before, const std::function<void()>& frame) {
    std::vector<double> times;
    for (int i = -10; i < frames; ++i) {
        before();
        const auto start = Clock::now();
        frame();
        if (i >= 0) times.push_back(std::chrono::duration<double, std::micro>(Clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + frames / 2, times.end());
    return times[static_cast<std::size_t>(frames / 2)];
}

void nothing() {}

/// The demo window over the whole screen.
void demo_frame() {
    ImGui::NewFrame();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
    ImGui::ShowDemoWindow();
    ImGui::Render();
}

/// Opens every section of the demo window; what is below its edge is clipped, as it is for its users.
void open_demo_sections() {
    ImGui::NewFrame();
    ImGui::ShowDemoWindow();
    ImGui::Begin("Dear ImGui Demo");
    for (const char* section : {"Help", "Configuration", "Window options", "Widgets", "Layout & Scrolling", "Popups & Modal windows", "Tables & Columns", "Filtering", "Inputs, Navigation & Focus"})
        ImGui::GetStateStorage()->SetInt(ImGui::GetID(section), 1);
    ImGui::End();
    ImGui::Render();
}

struct DemoTimes {
    double opening = 0, open = 0;
};

DemoTimes demo_times(const TryScreen& screen, int frames) {
    // In its own context, so that nothing of ours is in it.
    const ScreenView view = sample("shelf");
    HeadlessScreen desk(screen, [&] { return view; }, [](const Action&) {});
    DemoTimes demo;
    demo.opening = frame_time(frames, nothing, demo_frame);
    std::printf("demo window, as it opens      %6.1f us  %5d corners\n", demo.opening, ImGui::GetDrawData()->TotalVtxCount);
    open_demo_sections();
    demo.open = frame_time(frames, nothing, demo_frame);
    std::printf("demo window, sections open    %6.1f us  %5d corners\n\n", demo.open, ImGui::GetDrawData()->TotalVtxCount);
    return demo;
}

struct Times {
    double rest = 0, change = 0, fresh = 0;
};

Times times_of(const TryScreen& screen, const Sample& one, int frames) {
    HeadlessScreen desk(screen, [&] { return one.view; }, [](const Action&) {});
    Ui& ui = desk.ui();
    // They differ in what is compared last but one, so that a whole comparison is in the time.
    const ScreenView views[] = {one.view, [&] { ScreenView other = one.view; other.footer.back_id += "-"; return other; }()};
    double seconds = 100;
    std::size_t shown = 0;
    const auto frame = [&] {
        seconds += 1.0 / 60;
        ImGui::NewFrame();
        ui.begin_frame(seconds, one.view.key);
        std::vector<Action> actions;
        draw_screen(ui, views[shown], {}, actions);
        ui.end_frame();
        ImGui::Render();
    };
    const auto change = [&] { shown = 1 - shown; };
    const auto forget = [&] {
        change();
        ui.use_scale(screen.px_per_mm * 1.000001);
        ui.use_scale(screen.px_per_mm);
    };
    Times times;
    times.rest = frame_time(frames, nothing, frame);
    times.change = frame_time(frames, change, frame);
    times.fresh = frame_time(frames / 4 + 1, forget, frame);
    std::printf("%-14s  rest %6.1f   change %6.1f   new %6.1f us  %5d corners\n", one.name.c_str(), times.rest, times.change, times.fresh, ui.draw_data()->TotalVtxCount);
    return times;
}

void print_worst(const char* what, double Times::*which, const std::vector<std::pair<std::string, Times>>& all, const DemoTimes& demo) {
    const auto worst = std::max_element(all.begin(), all.end(), [&](const auto& a, const auto& b) { return a.second.*which < b.second.*which; });
    const double time = worst->second.*which;
    std::printf("busiest, %-6s  %-14s %6.1f us  %5.2f times the demo window as it opens, %5.2f times with its sections open\n", what, worst->first.c_str(), time, time / demo.opening, time / demo.open);
}

}  // namespace

int main(int count, char** words) {
    const int frames = count > 1 ? std::max(1, std::atoi(words[1])) : 400;
    const std::string wanted = count > 2 ? words[2] : "";
    const TryScreen& screen = try_screens().front();
    const DemoTimes demo = demo_times(screen, frames);
    std::vector<std::pair<std::string, Times>> all;
    for (const Sample& one : samples())
        if (one.name.find(wanted) != std::string::npos) all.emplace_back(one.name, times_of(screen, one, frames));
    if (all.empty()) return 1;
    std::printf("\n");
    print_worst("rest", &Times::rest, all, demo);
    print_worst("change", &Times::change, all, demo);
    print_worst("new", &Times::fresh, all, demo);
    std::printf("the aim is no more than 2\n");
    return 0;
}
