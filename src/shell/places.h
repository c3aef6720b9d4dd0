#pragma once
// Where the program's own files and the user's lie.

#include <filesystem>
#include <string>

namespace tubewright {

struct Places {
    std::filesystem::path assets, shaders, jobs;  ///< shipped
    std::filesystem::path home;                   ///< the user's: shop book, own jobs, own cards
};

/// `home` empty: tubewright in the XDG data folder (XDG Base Directory Specification), that is
/// $XDG_DATA_HOME or else ~/.local/share. Shipped files: $TUBEWRIGHT_DATA, else beside the sources.
Places find_places(const std::string& home);

}  // namespace tubewright
