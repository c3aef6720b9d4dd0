#pragma once
// From a file's bytes to a checked JSON tree. Throws Refusal; only for use inside store.

#include <filesystem>
#include <nlohmann/json_fwd.hpp>
#include <string>

namespace tubewright {

/// The bytes of a plain file of sensible size.
std::string bytes_of(const std::filesystem::path& path);

/// Refuses what is too large, empty or no text in UTF-8; `allowed` is what the file should be.
void check_text(const std::string& text, const std::string& file, const std::string& allowed);

/// The tree of a JSON text: UTF-8, no key twice in one object, not deeply nested.
nlohmann::json tree_from(const std::string& text, const std::string& file);

}  // namespace tubewright
