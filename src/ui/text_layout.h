#pragma once
// Breaking text into lines that fit a width.

#include <imgui.h>

#include <string>
#include <vector>

namespace tubewright {

struct TextLine {
    std::string text;
    float width = 0;
};
struct TextLines {
    std::vector<TextLine> lines;
    bool words_whole = true;  ///< false where a word was wider than the width and had to be broken
    float widest() const;
};

/// Breaks at spaces and at "\n"; a word wider than `width` is broken between letters. `wrap` false:
/// one line, however wide.
TextLines lines_of(const ImFont& font, float size, const std::string& text, float width, bool wrap);

float text_width(const ImFont& font, float size, const std::string& text);

/// As much of the text as fits, ending in "…".
std::string shortened(const ImFont& font, float size, const std::string& text, float width);

/// Whether the font has a picture of its own for every character.
bool every_glyph(const ImFont& font, const std::string& text);

}  // namespace tubewright
