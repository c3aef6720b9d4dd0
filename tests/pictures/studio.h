#pragma once
// Everything a picture needs in a test: a context without a window, shaders, colours, PNG files.

#include <optional>
#include <string>
#include <vector>

#include "gl/offscreen.h"
#include "gl/picture_maker.h"

namespace tubewright {

struct Image {
    int width = 0, height = 0;
    std::vector<unsigned char> rgba;  ///< rows from the top
};

ShaderTexts shader_texts();
PictureColours light_colours();
PictureColours dark_colours();

std::optional<Image> read_png(const std::string& path);
void write_png(const std::string& path, const Image& image);

}  // namespace tubewright
