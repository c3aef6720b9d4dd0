// What a frame of our screens costs, against a frame of Dear ImGui's own demo window in the same run
// and on the same screen. No picture in space is drawn. Prints each screen's time and its ratio.
//
// frame_bench [FRAMES]

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

/// The middle one of many frames, in microseconds: one that was interrupted doesn't count.
double frame_time(int frames, const std::function<void()>& frame) {
    for (int i = 0; i < 10; ++i) frame();
    std::vector<double> times;
    for (int i = 0; i < frames; ++i) {
        const auto start = Clock::now();
        frame();
        times.push_back(std::chrono::duration<double, std::micro>(Clock::now() - start).count());
    }
    std::nth_element(times.begin(), times.begin() + frames / 2, times.end());
    return times[static_cast<std::size_t>(frames / 2)];
}

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

void print(const std::string& name, double time, double demo) {
    std::printf("%-22s %8.1f us  %6d corners  %5.2f\n", name.c_str(), time, ImGui::GetDrawData()->TotalVtxCount, time / demo);
}

}  // namespace

int main(int count, char** words) {
    const int frames = count > 1 ? std::max(1, std::atoi(words[1])) : 400;
    const TryScreen& screen = try_screens().front();
    double demo = 0;
    {
        // In its own context, so that no window of ours is in it.
        const ScreenView view = sample("shelf");
        HeadlessScreen desk(screen, [&] { return view; }, [](const Action&) {});
        demo = frame_time(frames, demo_frame);
        print("demo window", demo, demo);
        open_demo_sections();
        print("demo, sections open", frame_time(frames, demo_frame), demo);
    }
    double worst = 0;
    std::string busiest;
    for (const Sample& one : samples()) {
        Ui* ui = nullptr;
        HeadlessScreen desk(screen, [&] { return one.view; }, [](const Action&) {});
        ui = &desk.ui();
        double seconds = 100;
        const double ours = frame_time(frames, [&] {
            seconds += 1.0 / 60;
            ImGui::NewFrame();
            ui->begin_frame(seconds, one.view.key);
            std::vector<Action> actions;
            draw_screen(*ui, one.view, {}, actions);
            ui->end_frame();
            ImGui::Render();
        });
        print(one.name, ours, demo);
        if (ours > worst) {
            worst = ours;
            busiest = one.name;
        }
    }
    std::printf("\nbusiest: %s, %.2f times the demo window; the aim is no more than 2\n", busiest.c_str(), worst / demo);
    return 0;
}
