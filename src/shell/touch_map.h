#pragma once
// What can be touched on the screen, written to a file for those who try the program from outside.

#include <filesystem>
#include <string>
#include <vector>

#include "ui/ui.h"

namespace tubewright {

/// A JSON list: id, label, "px" and "mm" as {x, y, width, height} from the upper left corner, enabled,
/// why_not, held (seconds to hold down; 0 for a tap).
std::string touch_map(const std::vector<Touchable>& things, double px_per_mm);

/// Keeps the file up to date: written whole, and only when something differs.
class TouchMapFile {
public:
    explicit TouchMapFile(std::filesystem::path path) : path_(std::move(path)) {}
    /// `key` is the screen's: a new step is written even where its buttons are the same.
    /// False: the file could not be written.
    bool show(const std::vector<Touchable>& things, double px_per_mm, const std::string& key);

private:
    std::filesystem::path path_;
    std::string last_, last_key_;
};

}  // namespace tubewright
