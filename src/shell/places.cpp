#include "shell/places.h"

#include <cstdlib>

namespace tubewright {
namespace {

std::filesystem::path from_environment(const char* name) {
    const char* value = std::getenv(name);
    return value ? value : "";
}

std::filesystem::path users_data() {
    // The specification has relative paths ignored.
    const std::filesystem::path data = from_environment("XDG_DATA_HOME");
    if (data.is_absolute()) return data / "tubewright";
    return from_environment("HOME") / ".local" / "share" / "tubewright";
}

}  // namespace

Places find_places(const std::string& home) {
    std::filesystem::path data = from_environment("TUBEWRIGHT_DATA");
    if (data.empty()) data = TUBEWRIGHT_DATA;
    return {data / "assets", data / "shaders", data / "jobs", home.empty() ? users_data() : std::filesystem::path(home)};
}

}  // namespace tubewright
