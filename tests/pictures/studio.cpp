#include "pictures/studio.h"

#include <stb/stb_image.h>
#include <stb/stb_image_write.h>

#include <fstream>
#include <iterator>

namespace tubewright {
namespace {

Colour hex(unsigned value) {
    const auto part = [&](unsigned shift) { return static_cast<float>((value >> shift) & 0xff) / 255.0f; };
    return {part(16), part(8), part(0)};
}

}  // namespace

ShaderTexts shader_texts() {
    ShaderTexts texts;
    for (const std::string& name : shader_files()) {
        std::ifstream in(TUBEWRIGHT_SOURCE_DIR "/shaders/" + name);
        if (in) texts[name] = {std::istreambuf_iterator<char>(in), {}};
    }
    return texts;
}

PictureColours light_colours() {
    PictureColours colours;
    colours.background = hex(0xE6E9EA);
    colours.bench_top = hex(0xE9EBEA);
    colours.grid = hex(0xC3C9CB);
    colours.outline = hex(0x15181C);
    colours.tube = hex(0xC6CDD2);
    colours.tube_done = hex(0x2E8E6C);
    colours.tube_now = hex(0x86A8F2);
    colours.after_pull = hex(0x17409F);
    colours.wrong_way = hex(0xC03A26);
    colours.form = hex(0x7C848B);
    colours.hook = hex(0x9AA1A7);
    colours.lever = hex(0xB0B4B2);
    colours.grip = hex(0x2B3138);
    colours.post = hex(0x6A7178);
    colours.ink_mark = hex(0x17409F);
    colours.reference_mark = hex(0x15181C);
    colours.index_line = hex(0x15181C);
    colours.shadow = 0.30f;
    return colours;
}

PictureColours dark_colours() {
    PictureColours colours = light_colours();
    colours.background = hex(0x2A3138);
    colours.bench_top = hex(0x353D45);
    colours.grid = hex(0x4A535C);
    colours.outline = hex(0x07090B);
    colours.tube = hex(0xD4DADE);
    colours.tube_done = hex(0x4FBE90);
    colours.tube_now = hex(0x4C74C4);
    colours.after_pull = hex(0x9CC0FF);
    colours.wrong_way = hex(0xFFA796);
    colours.form = hex(0x7A838B);
    colours.hook = hex(0x98A0A7);
    colours.lever = hex(0xA6ACAE);
    colours.grip = hex(0x15191E);
    colours.post = hex(0x565E66);
    colours.ink_mark = hex(0x9CC0FF);
    colours.reference_mark = hex(0xF6F1E6);
    colours.index_line = hex(0x15181C);
    colours.shadow = 0.45f;
    return colours;
}

std::optional<Image> read_png(const std::string& path) {
    Image image;
    int channels = 0;
    unsigned char* pixels = stbi_load(path.c_str(), &image.width, &image.height, &channels, 4);
    if (!pixels) return std::nullopt;
    image.rgba.assign(pixels, pixels + static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height) * 4);
    stbi_image_free(pixels);
    return image;
}

void write_png(const std::string& path, const Image& image) {
    stbi_write_png(path.c_str(), image.width, image.height, 4, image.rgba.data(), image.width * 4);
}

}  // namespace tubewright
