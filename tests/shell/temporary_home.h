#pragma once
// A folder of one's own for a test, gone when it ends.

#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "shell/places.h"

namespace tubewright {

class TemporaryHome {
public:
    TemporaryHome() {
        std::string name = (std::filesystem::temp_directory_path() / "tubewright-test-XXXXXX").string();
        if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    ~TemporaryHome() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TemporaryHome(const TemporaryHome&) = delete;
    TemporaryHome& operator=(const TemporaryHome&) = delete;

    const std::filesystem::path& path() const { return path_; }
    Places places() const {
        const std::filesystem::path root = TUBEWRIGHT_SOURCE_DIR;
        return {root / "assets", root / "shaders", root / "jobs", path_};
    }

private:
    std::filesystem::path path_;
};

inline std::string one_day() { return "2026-11-25"; }

}  // namespace tubewright
