#pragma once
// Breaking text into lines that fit a width.

#include <imgui.h>

#include <string>
#include <vector>

namespace tubewright {

struct TextLine {
    std::string text;
    float width = 0;
    bool known = true;        ///< the font has a picture of its own for every character
};
struct TextLines {
    std::vector<TextLine> lines;
    bool words_whole = true;  ///< false where a word, or a number and its unit, was wider than the width and had to be broken
    float widest() const;
};

/// Breaks at "\n" and at spaces, but not between a number and its fraction or its unit; a word wider
/// than `width` is broken between letters. `wrap` false: one line, however wide.
TextLines lines_of(const ImFont& font, float size, const std::string& text, float width, bool wrap);

float text_width(const ImFont& font, float size, const std::string& text);

/// The least width in which the text takes no more than two lines.
float halved_width(const ImFont& font, float size, const std::string& text);

/// As much of the text as fits, ending in "…".
std::string shortened(const ImFont& font, float size, const std::string& text, float width);

}  // namespace tubewright
