#include "gl/picture_maker.h"

#include <catch2/catch.hpp>
#include <cstdio>

#include "bench/samples.h"
#include "pictures/studio.h"

using namespace tubewright;

namespace {

Sheet l_shape() { return bend_sheet(line_of({6, 6}, {{90, 0}})); }

/// Runs with a context, or says why not.
template <class Work>
void with_context(GlFlavour flavour, const Work& work) {
    const auto context = Offscreen::made(flavour);
    if (!context.ok()) {
        std::printf("skipped: %s\n", context.trouble().sentence.c_str());
        return;
    }
    work();
}

Image drawn(PictureMaker& maker, const Scene& scene, int width, int height, int samples) {
    maker.draw(scene, camera_for(scene, static_cast<double>(width) / height), light_colours(), width, height, samples);
    return {maker.width(), maker.height(), maker.pixels()};
}

/// Pixels in which the red, green or blue differ by more than `levels`.
int differing(const Image& a, const Image& b, int levels) {
    int count = 0;
    for (std::size_t i = 0; i < a.rgba.size(); i += 4) {
        bool differs = false;
        for (std::size_t c = 0; c < 3; ++c) differs = differs || std::abs(a.rgba[i + c] - b.rgba[i + c]) > levels;
        count += differs;
    }
    return count;
}

}  // namespace

TEST_CASE("a shader that does not compile is refused in one sentence that names it") {
    with_context(GlFlavour::core_33, [] {
        ShaderTexts texts = shader_texts();
        texts["solid.frag"] += "\nthis is no shader;\n";
        const auto maker = PictureMaker::made(GlFlavour::core_33, texts);
        REQUIRE_FALSE(maker.ok());
        const std::string& sentence = maker.trouble().sentence;
        CHECK(sentence.find("solid") != std::string::npos);
        CHECK(sentence.find('\n') == std::string::npos);
        CHECK(sentence.find('\0') == std::string::npos);
    });
}

TEST_CASE("a shader that is missing is refused by name") {
    with_context(GlFlavour::core_33, [] {
        ShaderTexts texts = shader_texts();
        REQUIRE(texts.size() == shader_files().size());
        texts.erase("bench_top.vert");
        const auto maker = PictureMaker::made(GlFlavour::core_33, texts);
        REQUIRE_FALSE(maker.ok());
        CHECK(maker.trouble().sentence.find("bench_top") != std::string::npos);
    });
}

TEST_CASE("shaders carry no version of their own") {
    for (const auto& [name, text] : shader_texts()) {
        INFO(name);
        CHECK(text.find("#version") == std::string::npos);
        CHECK(text.rfind("//", 0) == 0);
    }
}

TEST_CASE("the same picture comes from every kind of context") {
    const Scene scene = bench_scene(l_shape(), 0, PictureKind::pulled);
    std::optional<Image> first;
    for (const GlFlavour flavour : {GlFlavour::core_33, GlFlavour::desktop_31, GlFlavour::es_30})
        with_context(flavour, [&] {
            auto made = PictureMaker::made(flavour, shader_texts());
            INFO("flavour " << static_cast<int>(flavour) << ": " << (made.ok() ? "" : made.trouble().sentence));
            REQUIRE(made.ok());
            PictureMaker maker = std::move(made).value();
            const Image image = drawn(maker, scene, 200, 150, 0);
            if (!first) first = image;
            // The driver rounds a little differently for ES; an edge pixel may tip over.
            CHECK(differing(*first, image, 8) <= 200 * 150 / 1000);
        });
}

TEST_CASE("a smoothed picture shows the same as an unsmoothed one, but for edges") {
    with_context(GlFlavour::core_33, [] {
        auto made = PictureMaker::made(GlFlavour::core_33, shader_texts());
        REQUIRE(made.ok());
        PictureMaker maker = std::move(made).value();
        const Scene scene = bench_scene(l_shape(), 0, PictureKind::turned);
        const Image plain = drawn(maker, scene, 240, 180, 0);
        const unsigned plain_texture = maker.texture();
        CHECK(plain_texture != 0);
        const Image smooth = drawn(maker, scene, 240, 180, 4);
        const int edges = differing(plain, smooth, 8);
        CHECK(edges > 100);              // something was smoothed
        CHECK(edges < 240 * 180 / 6);
        CHECK(differing(smooth, drawn(maker, scene, 240, 180, 4), 0) == 0);
        CHECK(drawn(maker, scene, 64, 48, 4).rgba.size() == 64u * 48u * 4u);
    });
}
