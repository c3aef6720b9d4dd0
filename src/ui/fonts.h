#pragma once
// The three text sizes in two weights, as glyphs at the size they are drawn.

#include <imgui.h>

#include <string>

#include "base/result.h"

namespace tubewright {

/// Heights of a capital letter in mm. A letter of height h at distance d is seen under 2·atan(h / 2d):
/// 3.3 mm at 0.7 m are 16 minutes of arc, 4.5 mm 22; 13.1 mm at 1.5 m are 30, 9.6 mm 22, 17.5 mm 40.
/// 16 minutes are the least and 20 to 22 preferred in ISO 9241-3, as a display-ergonomics page quotes it.
namespace cap_height {
inline constexpr double small = 3.3;
inline constexpr double body = 4.5;
inline constexpr double hero_least = 9.6;
inline constexpr double hero = 13.1;
inline constexpr double hero_most = 17.5;
}  // namespace cap_height

/// Capital letters are this share of Dear ImGui's font size. The font's own figures: capitals 1500 units,
/// ascent 1930, descent 500, and 1500 / 2430 is this. Bold ones are drawn 2 % higher; a test measures both.
inline constexpr double cap_share = 0.617;

struct Fonts {
    ImFont* small = nullptr;
    ImFont* small_bold = nullptr;
    ImFont* body = nullptr;
    ImFont* body_bold = nullptr;
    ImFont* hero = nullptr;     ///< digits, Latin letters and a few signs only
};

/// The font file that is not there.
struct FontMissing {
    std::string path;
};

/// Adds our fonts to the atlas from the folder that holds them. `px_per_mm` is what one millimetre of
/// the layout takes: the screen's own, times grow_for().
Result<Fonts, FontMissing> load_fonts(ImFontAtlas& atlas, const std::string& folder, double px_per_mm);

/// How much larger than on the smallest screen everything is drawn: 1 on 217 × 135 mm, at most 2.1.
/// Under 1 only where the screen is smaller than that, so that nothing falls off its edge.
double grow_for(ImVec2 display_px, double px_per_mm);

}  // namespace tubewright
