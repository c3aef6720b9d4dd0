#include "store/own_points.h"

#include <algorithm>

#include "store/json_tree.h"
#include "store/node.h"
#include "store/save.h"

namespace tubewright {
namespace {

namespace fs = std::filesystem;

bool is_table(const fs::path& path) {
    std::string ends = path.extension().string();
    for (char& c : ends)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return ends == ".csv";
}

FoundPoints found_in(const fs::path& path) {
    FoundPoints found{path.filename().string(), std::nullopt, ""};
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return {found.name, std::nullopt, text.trouble().sentence()};
    const auto unit = unit_of_points(text.value(), found.name);
    if (unit.ok()) found.says = unit.value();
    else found.trouble = unit.trouble().sentence();
    return found;
}

}  // namespace

std::vector<FoundPoints> point_files_in(const fs::path& folder) {
    std::error_code trouble;
    fs::create_directories(folder, trouble);
    std::vector<fs::path> paths;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (is_table(at->path())) paths.push_back(at->path());
    std::sort(paths.begin(), paths.end());
    std::vector<FoundPoints> found;
    for (const fs::path& path : paths) found.push_back(found_in(path));
    return found;
}

Result<fs::path, NotWritten> write_points_beside(Disk& disk, const fs::path& folder, const std::string& name, const std::vector<MeasuredPoint>& points, Unit unit) {
    return save_beside(disk, folder, name, ".csv", "The points are not written", points_text(points, unit));
}

}  // namespace tubewright
