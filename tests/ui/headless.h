#pragma once
// A screen nobody sees, and a finger on it. Knows views and actions only: a test gives it a function
// that makes the view and one that takes the actions, whatever stands behind them.

#include <imgui.h>

#include <functional>
#include <string>
#include <vector>

#include "ui/screen.h"

namespace tubewright {

/// A screen to try things on: its pixels, and how many of them a millimetre takes.
struct TryScreen {
    int width, height;
    double px_per_mm;
    std::string name() const;
};
/// Two tablets of 218 × 136 mm, a 16-inch screen, a 24-inch screen.
const std::vector<TryScreen>& try_screens();

/// The program's own theme file.
Palette palette_of(Theme theme);

class HeadlessScreen {
public:
    using Look = std::function<ScreenView()>;
    using Take = std::function<void(const Action&)>;

    /// `take` is called after each frame with what was asked for in it, in order.
    HeadlessScreen(const TryScreen& screen, Look look, Take take);
    ~HeadlessScreen();
    HeadlessScreen(const HeadlessScreen&) = delete;
    HeadlessScreen& operator=(const HeadlessScreen&) = delete;

    /// One sixtieth of a second.
    void frame();
    void wait(double seconds);

    /// A finger comes down on the thing with this id, lifts, and is gone. Waits first until the screen
    /// takes touches. Throws, naming the id, if it is not there.
    void tap(const std::string& id);
    /// The same at once, however lately the screen has changed.
    void tap_at_once(const std::string& id);
    void hold(const std::string& id, double seconds);
    void put_finger(ImVec2 at);
    void lift_finger();
    void key(KeyPress key);

    const Touchable& find(const std::string& id) const;
    bool has(const std::string& id) const;
    bool says(const std::string& text) const;   ///< anywhere, words in one or more lines
    Ui& ui() { return ui_; }
    const Ui& ui() const { return ui_; }
    PictureHandle& picture() { return picture_; }

private:
    ImGuiContext* context_;
    Look look_;
    Take take_;
    Ui ui_;
    PictureHandle picture_;
    double seconds_ = 10;
};

/// What is wrong with the screen that was just drawn, as sentences: ids twice, things too small, off
/// the screen, over each other, too near a warning; text cut off, on other text, too faint; disabled
/// things that don't say why. Empty: nothing.
std::vector<std::string> faults_of(const Ui& ui);

}  // namespace tubewright
