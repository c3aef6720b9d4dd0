#pragma once
// What is drawn for a desk: fonts, colours, the screen, the picture in space, and the touch map. Needs an
// OpenGL context and knows no window, so that pictures for documents come from the same drawing.

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "gl/flavour.h"
#include "shell/desk.h"
#include "shell/input_queue.h"
#include "ui/ui.h"

namespace tubewright {

struct CanvasSize {
    int width, height;       ///< pixels
    double screen_px_per_mm; ///< as the screen says of itself
};

class Canvas {
public:
    /// The context is current and its functions are loaded.
    static Result<std::unique_ptr<Canvas>, Refusal> made(Desk& desk, const Places& places, GlFlavour flavour);
    ~Canvas();

    void write_touch_map(const std::filesystem::path& path);
    /// One frame. `seconds` only ever grows.
    void frame(const CanvasSize& size, double seconds, const Finger& finger);
    void press_key(KeyPress key);
    /// Another frame is wanted though nobody touches anything.
    bool wants_frames() const;
    const Ui& ui() const;

private:
    struct Parts;
    explicit Canvas(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace tubewright
