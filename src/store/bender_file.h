#pragma once
// Bender cards on disk: assets/benders, the user's own, and whole cards inside a job file.

#include <filesystem>
#include <string>

#include "base/result.h"
#include "bench/bender.h"
#include "store/refusal.h"

namespace tubewright {

class Node;

/// The card in this file, its lengths brought from the card's own unit to mm.
Result<Bender, Refusal> read_bender(const std::filesystem::path& path);
/// The same from the card's text; `file` is what a refusal calls it.
Result<Bender, Refusal> read_bender_text(const std::string& text, const std::string& file);

/// A card as it stands in a file of its own. Throws Refusal.
Bender bender_card(const Node& root);

}  // namespace tubewright
