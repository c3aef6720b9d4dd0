#pragma once
// The user's tables of corner points: a folder of .csv files, read from and written to, never written over.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/points_file.h"
#include "store/save_beside.h"

namespace tubewright {

struct FoundPoints {
    std::string name;          ///< of the file, with its ending
    std::optional<Unit> says;  ///< its header
    std::string trouble;       ///< one sentence: why its header can't be read
    bool operator==(const FoundPoints&) const = default;
};

/// Every .csv file of the folder, by name. The folder is made where it is not there yet, so that there is a place to put them.
std::vector<FoundPoints> point_files_in(const std::filesystem::path& folder);

/// Writes the table under the first of name.csv, name-2.csv and so on that no file has, and says where.
Result<std::filesystem::path, NotWritten> write_points_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::vector<MeasuredPoint>& points, Unit unit);

}  // namespace tubewright
