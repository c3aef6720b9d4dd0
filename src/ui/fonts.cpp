#include "ui/fonts.h"

#include <algorithm>
#include <filesystem>

namespace tubewright {
namespace {

// ImGui keeps the pointers until the atlas is built.
constexpr ImWchar text_ranges[] = {0x20, 0x7e, 0xa0, 0x17f, 0x386, 0x3ce, 0x401, 0x45f, 0x2010, 0x2026, 0x2032, 0x2033, 0x20ac, 0x20ac, 0x2212, 0x2212, 0};
constexpr ImWchar hero_ranges[] = {0x20, 0x7e, 0xb0, 0xb1, 0xbc, 0xbe, 0xd7, 0xd8, 0x2013, 0x2013, 0x2019, 0x2019, 0x2032, 0x2033, 0x2212, 0x2212, 0};
constexpr ImWchar sign_ranges[] = {0x2011, 0x2011, 0x2030, 0x2044, 0x2070, 0x209c, 0x2150, 0x215f, 0x2190, 0x21ff, 0x2200, 0x22ff, 0x232b, 0x232b, 0x25a0, 0x25ff, 0x2600, 0x2613, 0x26a0, 0x26a0, 0x2713, 0x2718, 0};
constexpr ImWchar hero_sign_ranges[] = {0x2190, 0x2193, 0x21ba, 0x21bb, 0x2264, 0x2265, 0x2713, 0x2713, 0};

struct Files {
    std::string regular, bold, signs, signs_bold;
};

/// The signs are shaped to their letters' baseline by ImGui when they are merged.
ImFont* add(ImFontAtlas& atlas, const std::string& letters, const std::string& signs, float size, const ImWchar* letter_range, const ImWchar* sign_range) {
    ImFontConfig config;
    config.OversampleH = size > 40 ? 1 : 2;
    config.PixelSnapH = false;
    ImFont* font = atlas.AddFontFromFileTTF(letters.c_str(), size, &config, letter_range);
    config.MergeMode = true;
    atlas.AddFontFromFileTTF(signs.c_str(), size, &config, letter_range);
    atlas.AddFontFromFileTTF(signs.c_str(), size, &config, sign_range);
    return font;
}

}  // namespace

Result<Fonts, FontMissing> load_fonts(ImFontAtlas& atlas, const std::string& folder, double px_per_mm) {
    const Files files{folder + "/B612-Regular.otf", folder + "/B612-Bold.otf", folder + "/DejaVuSans.ttf", folder + "/DejaVuSans-Bold.ttf"};
    for (const std::string& path : {files.regular, files.bold, files.signs, files.signs_bold})
        if (!std::filesystem::is_regular_file(path)) return FontMissing{path};

    const auto size = [&](double cap) { return static_cast<float>(cap * px_per_mm / cap_share); };
    // Between the hero's own size and its largest: either way it is scaled little.
    constexpr double hero_baked = 14.0;
    atlas.TexDesiredWidth = px_per_mm > 6.5 ? 4096 : 2048;
    Fonts fonts;
    fonts.small = add(atlas, files.regular, files.signs, size(cap_height::small), text_ranges, sign_ranges);
    fonts.small_bold = add(atlas, files.bold, files.signs_bold, size(cap_height::small), text_ranges, sign_ranges);
    fonts.body = add(atlas, files.regular, files.signs, size(cap_height::body), text_ranges, sign_ranges);
    fonts.body_bold = add(atlas, files.bold, files.signs_bold, size(cap_height::body), text_ranges, sign_ranges);
    fonts.hero = add(atlas, files.bold, files.signs_bold, size(hero_baked), hero_ranges, hero_sign_ranges);
    return fonts;
}

double grow_for(ImVec2 display_px, double px_per_mm) {
    const double across = display_px.x / px_per_mm / 217.0, down = display_px.y / px_per_mm / 135.0;
    return std::clamp(std::min(across, down), 0.3, 2.1);
}

}  // namespace tubewright
