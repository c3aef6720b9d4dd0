#pragma once
// The user's own bender cards: files in the home folder's benders, that win over the shipped ones.

#include <filesystem>
#include <map>
#include <set>
#include <string>

#include "base/result.h"
#include "base/words.h"
#include "bench/bender.h"
#include "shell/places.h"
#include "store/save.h"

namespace tubewright {

std::set<std::string> own_card_ids(const std::filesystem::path& home);

/// By id.
std::map<std::string, Bender> shipped_cards(const std::filesystem::path& assets);

struct CardNotKept { std::string sentence; };
/// As the user's card of this id, in place of the one there is, else in a file of its own. Nothing shipped
/// is touched.
Result<Saved, CardNotKept> keep_own_card(Disk& disk, const Places& places, const Bender& bender, Unit unit);

/// The user's card of this id is no longer read: its file gets ".old" behind its name, or ".old-2" and so on, and
/// nothing is lost. Where there is none, nothing happens.
Result<Saved, CardNotKept> drop_own_card(Disk& disk, const std::filesystem::path& home, const std::string& id);

}  // namespace tubewright
