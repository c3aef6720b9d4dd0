#pragma once
// The colours of a theme by their roles, and how well one can be read on another.

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace tubewright {

struct Rgb {
    std::uint8_t r = 0, g = 0, b = 0;
    bool operator==(const Rgb&) const = default;
};

/// Four colours carry a meaning: now (blue), go (green), caution (amber) and stop (red). Each has a
/// strong shade, to fill with or to write with, a pale one to write on, and an ink for the strong one.
struct Palette {
    Rgb paper;                      ///< behind everything
    Rgb tray;                       ///< behind the footer
    Rgb panel;                      ///< plates and buttons
    Rgb well;                       ///< sunk places: the picture, an entry
    Rgb bar, bar_ink, bar_edge;     ///< the header
    Rgb ink, ink_soft;              ///< text; second-rank text
    Rgb edge;                       ///< borders of buttons and plates
    Rgb now, now_pale, on_now;
    Rgb go, go_pale, on_go;
    Rgb caution, caution_pale, on_caution;
    Rgb stop, stop_pale, on_stop;
    Rgb steel_bright, steel, steel_deep;
    bool operator==(const Palette&) const = default;
};

/// The theme file leaves this role out.
struct RoleMissing {
    std::string role;
};

/// From roles as the theme file names them; colours as 0xRRGGBB.
Result<Palette, RoleMissing> palette_from(const std::map<std::string, std::uint32_t>& roles);

/// Every role's name, in the order of Palette.
std::vector<std::string> palette_roles();

/// Contrast ratio, 1 to 21. WCAG 2.2, definitions of "contrast ratio" and "relative luminance".
double contrast(Rgb a, Rgb b);

/// One colour on another as the kit uses them, and the least contrast that is allowed there.
struct ColourPair {
    std::string_view use;
    Rgb upper, ground;
    double least;
};

/// The pairs that are not text: borders, hands, bands, icons. What text is drawn on is noted where it is drawn.
std::vector<ColourPair> shape_pairs(const Palette& palette);

inline constexpr double text_contrast = 7.0;     ///< numbers and running text
inline constexpr double least_contrast = 4.5;    ///< text of things that can't be used now
inline constexpr double shape_contrast = 3.0;    ///< borders, icons

}  // namespace tubewright
