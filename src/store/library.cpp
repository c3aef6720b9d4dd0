#include "store/library.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "base/tolerance.h"
#include "store/asset_files.h"
#include "store/bender_file.h"
#include "store/json_tree.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

template <class Take>
auto from_file(const fs::path& path, const Take& take) {
    const std::string file = path.string();
    const nlohmann::json tree = tree_from(bytes_of(path), file);
    return take(Node(tree, file));
}

bool is_there(const fs::path& path) {
    std::error_code ignored;
    return !path.empty() && fs::exists(path, ignored);
}

/// The entries of `own` take the place of those of the same key, or come after them.
template <class T, class Key>
void win_over(std::vector<T>& shipped, const std::vector<T>& own, const Key& key) {
    for (const T& entry : own) {
        const auto same = std::find_if(shipped.begin(), shipped.end(), [&](const T& other) { return key(other) == key(entry); });
        if (same != shipped.end()) *same = entry;
        else shipped.push_back(entry);
    }
}

/// Takes the user's own file where there is a good one; leaves out one that is not.
template <class Use>
void use_own(const fs::path& file, std::vector<LeftOut>& left_out, const Use& use) {
    if (!is_there(file)) return;
    try {
        use(file);
    } catch (const Refusal& why) {
        left_out.push_back({why, ""});
    }
}

/// Shipped and own together.
template <class Take, class Key>
auto both(const fs::path& assets, const fs::path& user, const char* name, const Take& take, const Key& key, std::vector<LeftOut>& left_out) {
    auto entries = from_file(assets / name, take);
    if (!user.empty()) use_own(user / name, left_out, [&](const fs::path& own) { win_over(entries, from_file(own, take), key); });
    return entries;
}

struct Card {
    fs::path path;
    Bender bender;
};

std::vector<fs::path> card_files(const fs::path& folder) {
    std::error_code trouble;
    std::vector<fs::path> paths;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == ".json") paths.push_back(at->path());
    if (trouble) throw Refusal{folder.string(), "", "can't be listed (" + trouble.message() + ")", "a folder that you may read"};
    std::sort(paths.begin(), paths.end());
    return paths;
}

/// The id of a card that does not read as a whole; empty where it can't be made out.
std::string id_in(const fs::path& path) {
    std::string text;
    try {
        text = bytes_of(path);
    } catch (const Refusal&) {
        return "";
    }
    std::size_t at = text.find("\"id\"");
    if (at == text.npos) return "";
    at = text.find_first_not_of(" \t\r\n:", at + 4);
    if (at == text.npos || text[at] != '"') return "";
    return text.substr(at + 1, std::min(text.find('"', at + 1), text.size()) - at - 1);
}

/// Cards by id. One that is not good is given to `spoiled` with its file.
template <class Spoiled>
std::map<std::string, Card> cards_in(const fs::path& folder, const Spoiled& spoiled) {
    std::map<std::string, Card> cards;
    for (const fs::path& path : card_files(folder)) {
        try {
            const Bender bender = from_file(path, bender_card);
            const auto [taken, is_new] = cards.emplace(bender.id, Card{path, bender});
            if (!is_new) throw Refusal{path.string(), "id", "is \"" + in_short(bender.id) + "\", as in " + taken->second.path.filename().string(), "an id for each card"};
        } catch (const Refusal& why) {
            spoiled(why, path);
        }
    }
    return cards;
}

void add_own_cards(std::map<std::string, Card>& cards, const fs::path& folder, std::vector<LeftOut>& left_out) {
    std::vector<LeftOut> spoiled;
    use_own(folder, left_out, [&](const fs::path&) {
        for (auto& [id, card] : cards_in(folder, [&](const Refusal& why, const fs::path& path) { spoiled.push_back({why, id_in(path)}); })) cards.insert_or_assign(id, card);
    });
    // What was meant for this bender is not known: the figures of another card could be wrong for it.
    for (const LeftOut& card : spoiled) cards.erase(card.bender);
    left_out.insert(left_out.end(), spoiled.begin(), spoiled.end());
}

std::vector<Bender> benders_from(const fs::path& assets, const fs::path& user, std::vector<LeftOut>& left_out) {
    std::map<std::string, Card> cards = cards_in(assets / "benders", [](const Refusal& why, const fs::path&) { throw why; });
    if (!user.empty()) add_own_cards(cards, user / "benders", left_out);
    std::vector<Bender> benders;
    for (auto& [id, card] : cards) benders.push_back(card.bender);
    return benders;
}

Library library_from(const fs::path& assets, const fs::path& user) {
    Library library;
    std::vector<LeftOut>& left_out = library.left_out;
    library.tubes = both(assets, user, "tubes.json", tubes_from, [](const TubeSize& tube) { return tube.od; }, left_out);
    library.materials = both(assets, user, "materials.json", materials_from, [](const Material& material) { return material.id; }, left_out);
    library.fittings = both(assets, user, "fittings.json", fittings_from, [](const FittingKind& kind) { return kind.usual.id; }, left_out);
    library.benders = benders_from(assets, user, left_out);
    const auto lists_from = [&](const fs::path& file) { library.checklists = from_file(file, [&](const Node& root) { return checklists_from(root, library); }); };
    lists_from(assets / "checklists.json");
    if (!user.empty()) use_own(user / "checklists.json", left_out, lists_from);
    return library;
}

/// The entry whose diameter is nearest, where it is the same size for a groove.
template <class T>
const T* nearest_size(const std::vector<T>& sizes, Length od) {
    const T* best = nullptr;
    const auto off = [&](const T& size) { return size.od > od ? size.od - od : od - size.od; };
    for (const T& size : sizes)
        if (off(size) <= tolerance::same_groove && (!best || off(size) < off(*best))) best = &size;
    return best;
}

template <class T>
const T* with_id(const std::vector<T>& entries, const std::string& id) {
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const T& entry) { return entry.id == id; });
    return found == entries.end() ? nullptr : &*found;
}

template <class T>
std::vector<std::string> ids_of(const std::vector<T>& entries) {
    std::vector<std::string> ids;
    for (const T& entry : entries) ids.push_back(entry.id);
    return ids;
}

}  // namespace

Result<Library, Refusal> read_library(const fs::path& assets_dir, const fs::path& user_dir) {
    return guarded([&] { return library_from(assets_dir, user_dir); });
}

const Material* find_material(const Library& library, const std::string& id) { return with_id(library.materials, id); }
const Bender* find_bender(const Library& library, const std::string& id) { return with_id(library.benders, id); }

std::string LeftOut::words() const {
    return "whose card is left out: " + why.file + (why.place.empty() ? "" : ", " + why.place) + " " + why.what;
}

const LeftOut* find_left_out(const Library& library, const std::string& bender) {
    const auto found = std::find_if(library.left_out.begin(), library.left_out.end(), [&](const LeftOut& card) { return !bender.empty() && card.bender == bender; });
    return found == library.left_out.end() ? nullptr : &*found;
}

std::string LeftOut::sentence() const { return "Left out: " + why.sentence(); }

std::optional<Fitting> find_fitting(const Library& library, const std::string& id, Length od) {
    for (const FittingKind& kind : library.fittings) {
        if (kind.usual.id != id) continue;
        Fitting fitting = kind.usual;
        const FittingSize* size = nearest_size(kind.sizes, od);
        if (!size) return fitting;
        if (size->allowance) fitting.allowance = *size->allowance;
        if (size->straight_needed) fitting.straight_needed = *size->straight_needed;
        fitting.heaviest_wall = size->heaviest_wall;
        fitting.wall_source = size->wall_source;
        return fitting;
    }
    return std::nullopt;
}

std::optional<Length> stick_for(const Library& library, Length od) {
    const TubeSize* size = nearest_size(library.tubes, od);
    return size ? std::optional<Length>(size->stick) : std::nullopt;
}

std::vector<std::string> material_ids(const Library& library) { return ids_of(library.materials); }
std::vector<std::string> bender_ids(const Library& library) { return ids_of(library.benders); }

std::vector<std::string> fitting_ids(const Library& library) {
    std::vector<std::string> ids;
    for (const FittingKind& kind : library.fittings) ids.push_back(kind.usual.id);
    return ids;
}

}  // namespace tubewright
