#pragma once
// What the tests of files share: the shipped library, a small job to spoil, and a folder of one's own.

#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "store/job_file.h"
#include "store/library.h"

namespace tubewright {

inline const std::filesystem::path source_dir = TUBEWRIGHT_SOURCE_DIR;

inline const Library& shipped_library() {
    static const Library library = [] {
        const auto read = read_library(source_dir / "assets", {});
        if (!read.ok()) FAIL(read.trouble().sentence());
        return read.value();
    }();
    return library;
}

/// The text with one place changed; the place has to be there exactly once.
inline std::string with(std::string text, const std::string& was, const std::string& is) {
    const std::size_t at = text.find(was);
    if (at == std::string::npos || text.find(was, at + 1) != std::string::npos) FAIL("not there once: " << was);
    return text.replace(at, was.size(), is);
}

/// The job file format's own example.
inline const std::string example_job = R"({
  "format": "tubewright-job", "version": 1,
  "name": "Utility trailer brake lines", "service": "brake", "units": "in",
  "tube": { "od": 0.1875, "wall": 0.028, "material": "stainless-304" },
  "bender": "hand-3/16",
  "lines": [
    { "name": "axle crossover", "quantity": 1,
      "ends": { "A": { "fitting": "flare-37-single" },
                "B": { "fitting": "flare-37-single", "trim": 0.5 } },
      "route": { "form": "legs", "measured_to": "centre",
                 "legs": [6.5, 4.25, 12.0],
                 "bends": [ { "angle": 90 }, { "angle": 45, "rotation": 90 } ] } } ]
})";

/// The example with another route.
inline std::string job_with_route(const std::string& route) {
    const std::size_t at = example_job.find("{ \"form\"");
    const std::string end = "] } } ]\n}";
    return example_job.substr(0, at) + route + example_job.substr(example_job.rfind(end) + 3);
}

inline Job job_of(const std::string& text) {
    const auto read = read_job_text(text, "job.json", shipped_library());
    if (!read.ok()) FAIL(read.trouble().sentence());
    return read.value();
}

inline std::string sentence_of(const std::string& text) {
    const auto read = read_job_text(text, "job.json", shipped_library());
    return read.ok() ? "was taken" : read.trouble().sentence();
}

/// A folder that is gone again after the test.
class OwnFolder {
public:
    OwnFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "tubewright-test-XXXXXX").string();
        path_ = mkdtemp(name.data());
    }
    ~OwnFolder() { std::error_code ignored; std::filesystem::remove_all(path_, ignored); }
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;

    std::filesystem::path write(const std::string& name, const std::string& bytes) const {
        const std::filesystem::path path = path_ / name;
        std::filesystem::create_directories(path.parent_path());
        std::ofstream(path, std::ios::binary) << bytes;
        return path;
    }
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

inline std::string bytes_in(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace tubewright
