#include "store/home_files.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>

namespace tubewright {
namespace {

namespace fs = std::filesystem;
using namespace std::string_view_literals;

constexpr std::array folders{"jobs"sv, "benders"sv, "points"sv, "bends"sv};
constexpr std::array lists{std::string_view(bench_note), "tubes.json"sv, "materials.json"sv, "fittings.json"sv, "checklists.json"sv};

template <class Names>
bool among(const Names& names, std::string_view name) { return std::find(names.begin(), names.end(), name) != names.end(); }

bool begins_with(std::string_view name, std::string_view with) { return name.substr(0, with.size()) == with; }
bool ends_with(std::string_view name, std::string_view with) { return name.size() >= with.size() && name.substr(name.size() - with.size()) == with; }

/// One step of a path that goes nowhere else, and is nothing hidden or half written.
bool is_plain(std::string_view name) {
    const auto odd = [](char c) { return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
    return !name.empty() && name.size() <= 255 && name[0] != '.' && !ends_with(name, ".new") && std::none_of(name.begin(), name.end(), odd);
}

/// 0 where it is no book.
int book_number(std::string_view name) {
    if (name == "shop-book.db") return 1;
    constexpr std::string_view before = "shop-book-", after = ".db";
    if (name.size() <= before.size() + after.size() || !begins_with(name, before)) return 0;
    int number = 0;
    const auto [stop, wrong] = std::from_chars(name.data() + before.size(), name.data() + name.size(), number);
    return wrong == std::errc{} && number > 1 && stop == name.data() + name.size() - after.size() ? number : 0;
}

template <class Use>
void for_each_file(const fs::path& folder, const Use& use) {
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble)) {
        std::error_code ignored;
        if (at->is_regular_file(ignored)) use(at->path().filename().string());
    }
}

}  // namespace

fs::path book_path(const fs::path& home, int number) { return home / (number == 1 ? "shop-book.db" : "shop-book-" + std::to_string(number) + ".db"); }

int youngest_book(const fs::path& home) {
    int youngest = 1;
    std::error_code trouble;
    for (fs::directory_iterator at(home, trouble), end; !trouble && at != end; at.increment(trouble)) youngest = std::max(youngest, book_number(at->path().filename().string()));
    return youngest;
}

bool is_book(const std::string& name) { return book_number(name) > 0; }

bool is_persons_file(const std::string& name) {
    const std::size_t slash = name.find('/');
    if (slash != name.npos) return among(folders, std::string_view(name).substr(0, slash)) && is_plain(std::string_view(name).substr(slash + 1));
    return is_plain(name) && (among(lists, name) || begins_with(name, "shop-book"));
}

std::vector<std::string> persons_files(const fs::path& home) {
    std::vector<std::string> names;
    const auto add = [&](const std::string& name) { if (is_persons_file(name)) names.push_back(name); };
    for_each_file(home, add);
    for (const std::string_view folder : folders) for_each_file(home / folder, [&](const std::string& name) { add(std::string(folder) + "/" + name); });
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace tubewright
