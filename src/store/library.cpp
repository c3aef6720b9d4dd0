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

/// Shipped and own together; a missing shipped file is refused, a missing own one is none.
template <class Take, class Key>
auto both(const fs::path& assets, const fs::path& user, const char* name, const Take& take, const Key& key) {
    auto entries = from_file(assets / name, take);
    if (!user.empty() && is_there(user / name)) win_over(entries, from_file(user / name, take), key);
    return entries;
}

std::map<std::string, Bender> cards_in(const fs::path& folder) {
    std::map<std::string, Bender> cards;
    std::map<std::string, std::string> files;
    std::error_code trouble;
    std::vector<fs::path> paths;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == ".json") paths.push_back(at->path());
    if (trouble) throw Refusal{folder.string(), "", "can't be listed (" + trouble.message() + ")", "a folder that you may read"};
    std::sort(paths.begin(), paths.end());
    for (const fs::path& path : paths) {
        const Bender card = from_file(path, bender_card);
        if (!cards.emplace(card.id, card).second)
            throw Refusal{path.string(), "id", "is \"" + in_short(card.id) + "\", as in " + files[card.id], "an id for each card"};
        files[card.id] = path.filename().string();
    }
    return cards;
}

std::vector<Bender> benders_from(const fs::path& assets, const fs::path& user) {
    std::map<std::string, Bender> cards = cards_in(assets / "benders");
    if (!user.empty() && is_there(user / "benders"))
        for (auto& [id, card] : cards_in(user / "benders")) cards[id] = card;
    std::vector<Bender> benders;
    for (auto& [id, card] : cards) benders.push_back(card);
    return benders;
}

Library library_from(const fs::path& assets, const fs::path& user) {
    Library library;
    library.tubes = both(assets, user, "tubes.json", tubes_from, [](const TubeSize& tube) { return tube.od; });
    library.materials = both(assets, user, "materials.json", materials_from, [](const Material& material) { return material.id; });
    library.fittings = both(assets, user, "fittings.json", fittings_from, [](const FittingKind& kind) { return kind.usual.id; });
    library.benders = benders_from(assets, user);
    const bool own_lists = !user.empty() && is_there(user / "checklists.json");
    library.checklists = from_file((own_lists ? user : assets) / "checklists.json", [&](const Node& root) { return checklists_from(root, library); });
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
