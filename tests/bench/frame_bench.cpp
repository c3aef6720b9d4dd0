// What a frame of our screens costs, against a frame of Dear ImGui's own demo window in the same run, on
// the same screen with the same fonts. No picture in space is drawn, and nothing is sent to a graphics card.
// Prints for each sample screen, in microseconds:
//   rest   nothing has changed since the frame before, and nobody touches the screen
//   press  a finger comes down on a button or lifts from it; the button that takes longest
//   all    every part is drawn again, as on changing to the dark theme; its words have been seen before
//   new    the same, with words that are measured for the first time
// then for a digit typed on each keypad, and for coming from each move of a bend to the next, and
// what the busiest of each is as a multiple of the demo window as it opens, and with its sections open.
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

struct Time {
    std::string name;
    double time = 0;
};

/// A screen of ours; what it shows, and where the finger is, can be changed between two frames.
class Shown {
public:
    Shown(const TryScreen& screen, const ScreenView& view) : px_per_mm_(screen.px_per_mm), view_(&view), desk_(screen, [&view] { return view; }, [](const Action&) {}) {}
    Ui& ui() { return desk_.ui(); }
    void show(const ScreenView& view) { view_ = &view; }
    void frame() {
        seconds_ += 1.0 / 60;
        ImGui::NewFrame();
        ui().begin_frame(seconds_, view_->key);
        std::vector<Action> actions;
        draw_screen(ui(), *view_, {}, actions);
        ui().end_frame();
        ImGui::Render();
    }
    void change_theme() { ui().use(palette_of((dark_ = !dark_) ? Theme::dark : Theme::light)); }
    void forget_words() {
        ui().use_scale(px_per_mm_ * 1.000001);
        ui().use_scale(px_per_mm_);
    }

private:
    double px_per_mm_;
    const ScreenView* view_;
    HeadlessScreen desk_;
    double seconds_ = 100;
    bool dark_ = false;
};

double press_time(Shown& shown, int frames) {
    shown.frame();
    const std::vector<Touchable> things = shown.ui().touchables();
    double longest = 0;
    for (const Touchable& thing : things) {
        if (!thing.enabled) continue;
        ImGuiIO& io = ImGui::GetIO();
        io.MousePos = thing.box().centre();
        longest = std::max(longest, frame_time(frames / 4 + 1, [&] { io.MouseDown[0] = !io.MouseDown[0]; }, [&] { shown.frame(); }));
        io.MouseDown[0] = false;
        shown.frame();
        shown.frame();
    }
    return longest;
}

/// From one view to the other and back.
double switch_time(const TryScreen& screen, const ScreenView& one, const ScreenView& other, int frames) {
    Shown shown(screen, one);
    bool second = false;
    return frame_time(frames, [&] { shown.show((second = !second) ? other : one); }, [&] { shown.frame(); });
}

double digit_time(const TryScreen& screen, const ScreenView& view, int frames) {
    ScreenView typed = view;
    std::get<KeypadBody>(typed.body).entry += "5";
    return switch_time(screen, view, typed, frames);
}

struct Times {
    std::vector<Time> rest, press, all, fresh, digit, next;
};

void add_times(const TryScreen& screen, const Sample& one, int frames, Times& times) {
    Shown shown(screen, one.view);
    const auto frame = [&] { shown.frame(); };
    times.rest.push_back({one.name, frame_time(frames, nothing, frame)});
    times.press.push_back({one.name, press_time(shown, frames)});
    times.all.push_back({one.name, frame_time(frames, [&] { shown.change_theme(); }, frame)});
    times.fresh.push_back({one.name, frame_time(frames / 4 + 1, [&] { shown.forget_words(); }, frame)});
    if (std::holds_alternative<KeypadBody>(one.view.body)) times.digit.push_back({one.name, digit_time(screen, one.view, frames)});
    std::printf("%-14s  rest %6.1f   press %6.1f   all %6.1f   new %6.1f us  %5d corners\n", one.name.c_str(), times.rest.back().time, times.press.back().time, times.all.back().time, times.fresh.back().time, shown.ui().draw_data()->TotalVtxCount);
}

void print_worst(const char* what, const std::vector<Time>& all, const DemoTimes& demo) {
    if (all.empty()) return;
    const Time worst = *std::max_element(all.begin(), all.end(), [](const Time& a, const Time& b) { return a.time < b.time; });
    std::printf("busiest, %-5s  %-14s %6.1f us  %5.2f times the demo window as it opens, %5.2f times with its sections open\n", what, worst.name.c_str(), worst.time, worst.time / demo.opening, worst.time / demo.open);
}

}  // namespace

int main(int count, char** words) {
    const int frames = count > 1 ? std::max(1, std::atoi(words[1])) : 400;
    const std::string wanted = count > 2 ? words[2] : "";
    const TryScreen& screen = try_screens().front();
    const DemoTimes demo = demo_times(screen, frames);
    Times times;
    for (const Sample& one : samples())
        if (one.name.find(wanted) != std::string::npos) add_times(screen, one, frames, times);
    if (times.rest.empty()) return 1;
    const std::vector<std::string> moves{"mark", "turn", "pull", "check", "keypad"};
    for (std::size_t i = 0; i + 1 < moves.size(); ++i)
        times.next.push_back({moves[i] + ", " + moves[i + 1], switch_time(screen, sample(moves[i]), sample(moves[i + 1]), frames)});
    std::printf("\n");
    print_worst("rest", times.rest, demo);
    print_worst("digit", times.digit, demo);
    print_worst("press", times.press, demo);
    print_worst("next", times.next, demo);
    print_worst("all", times.all, demo);
    print_worst("new", times.fresh, demo);
    std::printf("the aim is no more than 2\n");
    return 0;
}
