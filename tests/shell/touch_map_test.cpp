#include "shell/touch_map.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "shell/temporary_home.h"

using namespace tubewright;
using nlohmann::json;

namespace {

Touchable thing(const std::string& id) {
    Touchable made;
    made.id = id;
    made.label = "Next \"bend\"";
    made.min = {100, 200};
    made.max = {300, 260};
    return made;
}

}  // namespace

TEST_CASE("the map gives each thing's place in pixels and in millimetres") {
    Touchable off = thing("undo");
    off.enabled = false;
    off.why_not = "nothing to undo";
    const json map = json::parse(touch_map({thing("next"), off}, 4.0));
    REQUIRE(map.size() == 2);
    CHECK(map[0]["id"] == "next");
    CHECK(map[0]["label"] == "Next \"bend\"");
    CHECK(map[0]["enabled"] == true);
    CHECK(map[0]["px"]["x"] == 100);
    CHECK(map[0]["px"]["height"] == 60);
    CHECK(map[0]["mm"]["width"] == 50);  // 200 px at 4 px/mm
    CHECK(map[1]["enabled"] == false);
    CHECK(map[1]["why_not"] == "nothing to undo");
}

TEST_CASE("the file is written anew when a thing or the step differs, and not otherwise") {
    TemporaryHome home;
    const auto path = home.path() / "map.json";
    TouchMapFile file(path);
    REQUIRE(file.show({thing("next")}, 4, "step 1"));
    CHECK(json::parse(std::ifstream(path))[0]["id"] == "next");
    std::filesystem::remove(path);
    REQUIRE(file.show({thing("next")}, 4, "step 1"));
    CHECK_FALSE(std::filesystem::exists(path));
    REQUIRE(file.show({thing("next")}, 4, "step 2"));
    CHECK(std::filesystem::exists(path));
    REQUIRE(file.show({thing("back")}, 4, "step 2"));
    CHECK(json::parse(std::ifstream(path))[0]["id"] == "back");
    CHECK_FALSE(TouchMapFile(home.path() / "no such folder" / "map.json").show({thing("next")}, 4, ""));
}
