#include "shell/theme_file.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <string_view>

namespace tubewright {
namespace {

using nlohmann::json;

ThemeRefused refused(const std::filesystem::path& path, const std::string& what) {
    return {path.filename().string() + ": " + what + "."};
}

bool is_colour(std::string_view text) {
    return text.size() == 7 && text[0] == '#' && text.find_first_not_of("0123456789ABCDEFabcdef", 1) == text.npos;
}

Result<Palette, ThemeRefused> read_palette(const json& file, const std::string& name, const std::filesystem::path& path) {
    if (!file.contains(name) || !file[name].is_object()) return refused(path, name + " is missing; allowed: a list of colours by their roles");
    std::map<std::string, std::uint32_t> roles;
    for (const auto& [role, value] : file[name].items()) {
        if (!value.is_string() || !is_colour(value.get<std::string>()))
            return refused(path, name + "." + role + " is no colour; allowed: # and six hexadecimal digits");
        roles[role] = static_cast<std::uint32_t>(std::stoul(value.get<std::string>().substr(1), nullptr, 16));
    }
    const auto palette = palette_from(roles);
    if (!palette.ok()) return refused(path, name + "." + palette.trouble().role + " is missing; allowed: # and six hexadecimal digits");
    return palette.value();
}

}  // namespace

Result<Themes, ThemeRefused> read_themes(const std::filesystem::path& path) {
    std::ifstream in(path);
    if (!in) return refused(path, "can't be read; it belongs to the program's assets");
    const json file = json::parse(in, nullptr, false);
    if (!file.is_object()) return refused(path, "is not JSON; allowed: an object with light and dark");
    const auto light = read_palette(file, "light", path);
    if (!light.ok()) return light.trouble();
    const auto dark = read_palette(file, "dark", path);
    if (!dark.ok()) return dark.trouble();
    return Themes{light.value(), dark.value()};
}

}  // namespace tubewright
