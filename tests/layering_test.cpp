#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <string>

// The map of DEVELOPERS.md, checked.

namespace {

const std::map<std::string, std::set<std::string>> may_include{
    {"base", {}},
    {"tube", {"base"}},
    {"bench", {"base", "tube"}},
    {"stock", {"base", "tube"}},
    {"state", {"base", "tube", "bench", "stock"}},
    {"present", {"base", "tube", "bench", "stock", "state"}},
    {"scene", {"base", "tube", "bench"}},
    {"store", {"base", "tube", "bench", "stock", "state"}},
    {"paper", {"base", "present"}},
    {"ui", {"base", "present", "state"}},
    {"gl", {"base", "scene"}},
    {"shell", {"base", "tube", "bench", "stock", "state", "present", "scene", "store", "paper", "ui", "gl"}},
};

/// Of another folder only this header, where a whole folder would be too much.
const std::map<std::pair<std::string, std::string>, std::string> only{
    {{"ui", "state"}, "state/action.h"},
    {{"store", "state"}, "state/work.h"},
};

/// Beginnings of others' headers, and the folders that may have them.
const std::map<std::string, std::set<std::string>> others{
    {"<Eigen/", {"tube", "bench", "scene", "gl", "shell"}},
    {"<nlohmann/", {"store", "shell"}},
    {"<sqlite3", {"store"}},
    {"<sha2", {"store"}},
    {"<cairo", {"paper"}},
    {"<ft2build", {"paper"}},
    {"<imgui", {"ui", "shell"}},
    {"<backends/", {"shell"}},
    {"<glad/", {"gl"}},
    {"<EGL/", {"gl"}},
    {"<GLFW/", {"shell"}},
    {"<CLI/", {"shell"}},
};

template <class Look>
void for_each_include(const Look& look) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(TUBEWRIGHT_SOURCE_DIR "/src")) {
        const std::string ending = entry.path().extension().string();
        if (!entry.is_regular_file() || (ending != ".h" && ending != ".cpp")) continue;
        std::ifstream in(entry.path());
        for (std::string line; std::getline(in, line);)
            if (line.rfind("#include ", 0) == 0) look(entry.path().parent_path().filename().string(), entry.path().string(), line.substr(9));
    }
}

}  // namespace

TEST_CASE("every include goes down the map") {
    int seen = 0;
    for_each_include([&](const std::string& folder, const std::string& file, const std::string& what) {
        if (what[0] != '"') return;
        const std::string header = what.substr(1, what.find('"', 1) - 1);
        const std::string other = header.substr(0, header.find('/'));
        INFO(file << ": " << what);
        REQUIRE(may_include.contains(folder));
        CHECK((other == folder || may_include.at(folder).contains(other)));
        const auto limit = only.find({folder, other});
        if (limit != only.end()) CHECK(header == limit->second);
        ++seen;
    });
    CHECK(seen > 50);
}

TEST_CASE("each library's headers stay in their row") {
    for_each_include([](const std::string& folder, const std::string& file, const std::string& what) {
        for (const auto& [beginning, folders] : others) {
            if (what.rfind(beginning, 0) != 0) continue;
            INFO(file << ": " << what);
            CHECK(folders.contains(folder));
        }
    });
}
