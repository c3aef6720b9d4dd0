#pragma once
// The fonts as the PDF library knows them. Only for use inside paper.

#include <cairo-ft.h>

#include <string>
#include <vector>

#include "paper/lettering.h"

namespace tubewright {

struct Lettering::Faces {
    struct Face {
        cairo_font_face_t* cairo = nullptr;
        FT_Face free_type = nullptr;  ///< lives as long as cairo's
    };
    Face regular, bold, signs, signs_bold;
    cairo_surface_t* nowhere = nullptr;  ///< to measure on
    cairo_t* measuring = nullptr;

    Faces() = default;
    Faces(const Faces&) = delete;
    Faces& operator=(const Faces&) = delete;
    ~Faces();
};

/// A stretch of text that one font has all letters of.
struct FontRun {
    const Lettering::Faces::Face* face;
    std::string text;
};
/// Controls become blanks, bytes that are no UTF-8 question marks.
std::vector<FontRun> font_runs(const Lettering::Faces& faces, const std::string& text, bool bold);

/// Sets the font and gives the width of the run, in the unit of `size`.
double set_font(cairo_t* at, const FontRun& run, double size);

}  // namespace tubewright
