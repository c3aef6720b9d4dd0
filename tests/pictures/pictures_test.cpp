// A handful of pictures, compared pixel for pixel with the PNG files beside this one. RENEW=1 rewrites
// those that differ, and still reports them; whoever commits a new one has looked at it.

#include <catch2/catch.hpp>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "bench/samples.h"
#include "pictures/studio.h"

using namespace tubewright;

namespace {

constexpr int side = 256;
constexpr int few_levels = 3;   // of 255: rounding in the rasteriser
constexpr int handful = 12;     // pixels: edges that tip over

Sheet sheet_for(const SetUp& set_up, const std::string& mark) {
    SheetChoice choice;
    choice.set_up = set_up;
    choice.mark = mark;
    return bend_sheet(line_of({5, 4, 6, 4}, {{90, 0}, {60, 60}, {45, -150}}), choice);
}

std::optional<Image> picture(const Scene& scene, const PictureColours& colours) {
    setenv("LIBGL_ALWAYS_SOFTWARE", "1", 1);
    const auto context = Offscreen::made();
    if (!context.ok()) {
        std::printf("skipped: %s\n", context.trouble().sentence.c_str());
        return std::nullopt;
    }
    auto made = PictureMaker::made(GlFlavour::core_33, shader_texts());
    REQUIRE(made.ok());
    PictureMaker maker = std::move(made).value();
    maker.draw(scene, camera_for(scene, 1), colours, side, side, 0);
    return Image{side, side, maker.pixels()};
}

struct Difference {
    int pixels = 0;
    int first_x = -1, first_y = -1;
    Image shown;  ///< differing pixels in black on white
};

Difference difference(const Image& expected, const Image& got) {
    Difference found;
    found.shown = {got.width, got.height, std::vector<unsigned char>(got.rgba.size(), 255)};
    const bool comparable = expected.width == got.width && expected.height == got.height;
    for (std::size_t i = 0; i < got.rgba.size(); i += 4) {
        bool differs = !comparable;
        for (std::size_t c = 0; c < 3 && comparable; ++c) differs = differs || std::abs(expected.rgba[i + c] - got.rgba[i + c]) > few_levels;
        if (!differs) continue;
        if (found.pixels++ == 0) {
            found.first_x = static_cast<int>(i / 4) % got.width;
            found.first_y = static_cast<int>(i / 4) / got.width;
        }
        for (std::size_t c = 0; c < 3; ++c) found.shown.rgba[i + c] = 0;
    }
    return found;
}

void compare(const std::string& name, const Scene& scene, const PictureColours& colours) {
    const std::string base = std::string(TUBEWRIGHT_SOURCE_DIR) + "/tests/pictures/" + name;
    const auto got = picture(scene, colours);
    if (!got) return;
    const auto expected = read_png(base + ".png");
    const Difference found = difference(expected.value_or(Image{}), *got);
    if (expected && found.pixels <= handful) {
        std::filesystem::remove(base + ".got.png");
        std::filesystem::remove(base + ".diff.png");
        SUCCEED();
        return;
    }
    if (std::getenv("RENEW")) write_png(base + ".png", *got);
    else {
        write_png(base + ".got.png", *got);
        write_png(base + ".diff.png", found.shown);
    }
    FAIL_CHECK(name << ": " << found.pixels << " pixels differ, the first at " << found.first_x << ", " << found.first_y);
}

}  // namespace

TEST_CASE("the mark on its line, hook left, swing away") {
    compare("marked_left_away", bench_scene(sheet_for({HookHand::left, Swing::away}, "L"), 1, PictureKind::marked), light_colours());
}

TEST_CASE("the turn with its wrong way, hook right, swing toward") {
    compare("turned_right_toward", bench_scene(sheet_for({HookHand::right, Swing::toward}, "0"), 1, PictureKind::turned), light_colours());
}

TEST_CASE("the pull, hook left, swing up") {
    compare("pulled_left_up", bench_scene(sheet_for({HookHand::left, Swing::up}, "0"), 2, PictureKind::pulled), light_colours());
}

TEST_CASE("the bend after release, hook right, swing down, in the dark") {
    compare("checked_right_down_dark", bench_scene(sheet_for({HookHand::right, Swing::down}, "R"), 2, PictureKind::checked), dark_colours());
}

TEST_CASE("the finished part") {
    compare("finished", bench_scene(sheet_for({}, "0"), 0, PictureKind::finished), light_colours());
}
