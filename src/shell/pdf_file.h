#pragma once
// A PDF as a file: the letters it is set in, and where it may be written.

#include <filesystem>
#include <optional>
#include <string>

#include "paper/lettering.h"
#include "store/refusal.h"

namespace tubewright {

/// Of the shipped fonts; none where a file is missing or is no font.
std::optional<Lettering> read_letters(const std::filesystem::path& assets);

/// Why nothing is written to this name. Nothing but an older PDF is written over: a job named by a slip of the hand stays.
/// `said`: how the person named it, such as "--out it.pdf".
std::optional<Refusal> bar_to_pdf(const std::filesystem::path& path, const std::string& said);

/// Whole or not at all. One sentence where it can't be.
std::optional<std::string> write_pdf(const std::filesystem::path& path, const std::string& bytes);

}  // namespace tubewright
