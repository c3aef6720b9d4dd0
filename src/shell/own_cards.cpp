#include "shell/own_cards.h"

#include <cctype>
#include <fstream>
#include <sstream>

#include "store/bender_file.h"
#include "store/card_text.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

/// Card files of a folder, by the card's id.
std::map<std::string, fs::path> cards_in(const fs::path& folder) {
    std::map<std::string, fs::path> cards;
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble)) {
        if (at->path().extension() != ".json") continue;
        if (const auto card = read_bender(at->path()); card.ok()) cards[card.value().id] = at->path();
    }
    return cards;
}

std::string bytes_in(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

/// A name that no file has, from letters and digits of the id: hand-3-16.json for hand-3/16.
fs::path fresh_file(const fs::path& folder, const std::string& id) {
    std::string stem;
    for (const char c : id) stem += std::isalnum(static_cast<unsigned char>(c)) ? c : '-';
    fs::path path = folder / (stem + ".json");
    std::error_code ignored;
    for (int number = 2; fs::exists(path, ignored); ++number) path = folder / (stem + "-" + std::to_string(number) + ".json");
    return path;
}

}  // namespace

std::set<std::string> own_card_ids(const fs::path& home) {
    std::set<std::string> ids;
    for (const auto& [id, path] : cards_in(home / "benders")) ids.insert(id);
    return ids;
}

std::map<std::string, Bender> shipped_cards(const fs::path& assets) {
    std::map<std::string, Bender> shipped;
    for (const auto& [id, path] : cards_in(assets / "benders"))
        if (auto card = read_bender(path); card.ok()) shipped.emplace(id, std::move(card).value());
    return shipped;
}

Result<Saved, CardNotKept> drop_own_card(Disk& disk, const fs::path& home, const std::string& id) {
    const auto own = cards_in(home / "benders");
    const auto mine = own.find(id);
    if (mine == own.end()) return Saved{};
    fs::path aside = mine->second.string() + ".old";
    std::error_code trouble;
    for (int number = 2; fs::exists(aside, trouble); ++number) aside = mine->second.string() + ".old-" + std::to_string(number);
    if (!disk.rename_over(mine->second, aside)) return CardNotKept{"The file " + mine->second.string() + " can't be renamed: your own card is still in force."};
    return Saved{};
}

Result<Saved, CardNotKept> keep_own_card(Disk& disk, const Places& places, const Bender& bender, Unit unit) {
    const fs::path folder = places.home / "benders";
    std::error_code trouble;
    fs::create_directories(folder, trouble);
    if (trouble) return CardNotKept{"The folder " + folder.string() + " can't be made (" + trouble.message() + "): the card is not kept."};
    const auto own = cards_in(folder), shipped = cards_in(places.assets / "benders");
    const auto mine = own.find(bender.id), theirs = shipped.find(bender.id);
    const std::string before = mine != own.end() ? bytes_in(mine->second) : theirs != shipped.end() ? bytes_in(theirs->second) : "";
    const std::string text = card_text(bender, unit, before);
    // What can't be read again must not get in the way of everything else at the next start.
    const auto again = read_bender_text(text, "the card");
    if (!again.ok()) return CardNotKept{again.trouble().sentence()};
    const auto saved = save_whole(disk, mine != own.end() ? mine->second : fresh_file(folder, bender.id), text);
    if (!saved.ok()) return CardNotKept{sentence(saved.trouble())};
    return Saved{};
}

}  // namespace tubewright
