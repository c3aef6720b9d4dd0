#include "shell/canvas.h"

#include <glad/gl.h>

#include <catch2/catch.hpp>

#include "gl/offscreen.h"
#include "shell/temporary_home.h"

using namespace tubewright;

namespace {

constexpr CanvasSize tablet{1280, 800, 5.87};

/// A framebuffer in place of a window.
struct Paper {
    Paper() {
        unsigned frame = 0, colour = 0;
        glGenFramebuffers(1, &frame);
        glBindFramebuffer(GL_FRAMEBUFFER, frame);
        glGenTextures(1, &colour);
        glBindTexture(GL_TEXTURE_2D, colour);
        glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, tablet.width, tablet.height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
        glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour, 0);
        glViewport(0, 0, tablet.width, tablet.height);
    }
    std::vector<unsigned char> pixels() const {
        std::vector<unsigned char> all(static_cast<std::size_t>(tablet.width) * static_cast<std::size_t>(tablet.height) * 4);
        glReadPixels(0, 0, tablet.width, tablet.height, GL_RGBA, GL_UNSIGNED_BYTE, all.data());
        return all;
    }
};

/// How many pixels are nearly black: on the light shelf that is header, and the ink of letters.
std::size_t dark_below_header(const std::vector<unsigned char>& pixels) {
    std::size_t count = 0;
    const std::size_t rows = static_cast<std::size_t>(tablet.height) * 9 / 10;  // the first row is the lowest
    for (std::size_t i = 0; i < rows * static_cast<std::size_t>(tablet.width); ++i) count += pixels[4 * i] < 60 && pixels[4 * i + 1] < 60 && pixels[4 * i + 2] < 60;
    return count;
}

}  // namespace

TEST_CASE("the first frame has its letters, the same as after the fonts were made anew") {
    const auto offscreen = Offscreen::made();
    if (!offscreen.ok()) {
        WARN("skipped: " << offscreen.trouble().sentence);
        return;
    }
    const Paper paper;
    TemporaryHome home;
    Desk desk = Desk::made(home.places(), one_day).value();
    auto canvas = Canvas::made(desk, home.places(), GlFlavour::core_33);
    REQUIRE(canvas.ok());
    canvas.value()->frame(tablet, 1.0, {});
    const std::vector<unsigned char> first = paper.pixels();
    CHECK(dark_below_header(first) > 3000);
    CanvasSize other = tablet;
    other.screen_px_per_mm = 4.0;
    canvas.value()->frame(other, 1.1, {});
    canvas.value()->frame(tablet, 1.2, {});
    canvas.value()->frame(tablet, 1.3, {});
    CHECK(paper.pixels() == first);
}
