#pragma once
// The theme file: two palettes, by their roles.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "ui/palette.h"

namespace tubewright {

struct Themes {
    Palette light, dark;
};

/// One sentence that says what is wrong with the file.
struct ThemeRefused {
    std::string sentence;
};

Result<Themes, ThemeRefused> read_themes(const std::filesystem::path& path);

}  // namespace tubewright
