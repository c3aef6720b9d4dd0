#include "shell/print.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "shell/temporary_home.h"

using namespace tubewright;
using nlohmann::json;

namespace {

struct Printed {
    int status;
    std::string out, trouble;
};

Printed sheet(const SheetRequest& request) {
    TemporaryHome home;
    std::ostringstream out, trouble;
    const int status = print_sheet(home.places(), request, out, trouble);
    return {status, out.str(), trouble.str()};
}

std::string trailer() { return TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json"; }

json two_bends() {
    return json::parse(R"({"format": "tubewright-job", "version": 1, "name": "Sample", "service": "other", "units": "in",
        "tube": {"od": 0.1875, "wall": 0.028, "material": "stainless-304"}, "bender": "hand-3/16",
        "lines": [{"name": "only", "ends": {"A": {"fitting": "none"}, "B": {"fitting": "none"}},
                   "route": {"form": "legs", "legs": [6, 5, 6], "bends": [{"angle": 90}, {"angle": 90, "rotation": 90}]}}]})");
}

Printed sheet_of(const json& job, bool as_json) {
    TemporaryHome home;
    const std::string path = (home.path() / "sample.json").string();
    std::ofstream(path) << job.dump();
    std::ostringstream out, trouble;
    const int status = print_sheet(home.places(), {path, std::nullopt, as_json}, out, trouble);
    return {status, out.str(), trouble.str()};
}

}  // namespace

TEST_CASE("a job of one line gives one object, a job of several a list, a named line an object") {
    const Printed one = sheet_of(two_bends(), true);
    CHECK(one.status == exit_status::made);
    CHECK(one.trouble.empty());
    CHECK(json::parse(one.out)["format"] == "tubewright-sheet");
    const Printed several = sheet({trailer(), std::nullopt, true});
    CHECK(several.status == exit_status::made);
    const json list = json::parse(several.out);
    REQUIRE(list.is_array());
    CHECK(list.size() == 5);
    const Printed named = sheet({trailer(), list[1]["line"].get<std::string>(), true});
    CHECK(json::parse(named.out) == list[1]);
}

TEST_CASE("a stop is printed and told by the exit status") {
    json job = two_bends();
    job["lines"][0]["route"]["legs"] = {6, 1.2, 6};
    const Printed printed = sheet_of(job, true);
    CHECK(printed.status == exit_status::stopped);
    const json made = json::parse(printed.out);
    REQUIRE_FALSE(made["findings"].empty());
    CHECK(made["findings"][0]["severity"] == "stop");
    CHECK_FALSE(made["findings"][0]["message"].get<std::string>().empty());
}

TEST_CASE("a corner too sharp to lay out leaves no cut length and no steps") {
    json job = two_bends();
    job["lines"][0]["route"]["bends"][0]["angle"] = 175;
    const Printed printed = sheet_of(job, true);
    CHECK(printed.status == exit_status::stopped);
    const json made = json::parse(printed.out);
    CHECK(made["cut_length"].is_null());
    CHECK(made["steps"] == json::array());
    CHECK(made["findings"][0]["code"] == "degenerate-corner");
    CHECK(sheet_of(job, false).status == exit_status::stopped);
}

TEST_CASE("what is refused says so in one line, and prints nothing") {
    const Printed missing = sheet({"no such job.json", std::nullopt, false});
    CHECK(missing.status == exit_status::refused);
    CHECK(missing.out.empty());
    CHECK(std::count(missing.trouble.begin(), missing.trouble.end(), '\n') == 1);
    CHECK(missing.trouble.find("no such job.json") != std::string::npos);
    const Printed no_line = sheet({trailer(), "no such line", true});
    CHECK(no_line.status == exit_status::refused);
    CHECK(no_line.out.empty());
    CHECK(no_line.trouble.find("no such line") != std::string::npos);
    json job = two_bends();
    job["lines"][0]["route"]["bends"][1]["angle"] = -5;
    const Printed negative = sheet_of(job, true);
    CHECK(negative.status == exit_status::refused);
    CHECK(negative.trouble.find("lines[0].route.bends[1].angle") != std::string::npos);
}

TEST_CASE("the readable sheet has the cut length and a row for each step") {
    const Printed printed = sheet_of(two_bends(), false);
    CHECK(printed.status == exit_status::made);
    CHECK(printed.out.find("CUT TO") != std::string::npos);
    CHECK(printed.out.find("93") != std::string::npos);  // 90 needs 93.2
}

TEST_CASE("check prints the findings and ends like the sheet") {
    TemporaryHome home;
    std::ostringstream out, trouble;
    CHECK(print_check(home.places(), trailer(), out, trouble) == exit_status::made);
    CHECK_FALSE(out.str().empty());
    std::ostringstream none, why;
    CHECK(print_check(home.places(), "/", none, why) == exit_status::refused);
    CHECK(none.str().empty());
    CHECK_FALSE(why.str().empty());
}

TEST_CASE("output that can't be written is a failure, not a success") {
    TemporaryHome home;
    std::ofstream full("/dev/full");
    std::ostringstream trouble;
    CHECK(print_sheet(home.places(), {trailer(), std::nullopt, true}, full, trouble) == exit_status::broken);
    CHECK_FALSE(trouble.str().empty());
}

TEST_CASE("a card of one's own that is not good is told of, and keeps no other job from being printed") {
    TemporaryHome home;
    std::filesystem::create_directories(home.path() / "benders");
    std::ofstream(home.path() / "benders" / "mine.json") << "{\"id\": \"mine\"}";
    std::ofstream(home.path() / "named.json") << [] { json job = two_bends(); job["bender"] = "mine"; return job; }().dump();
    const std::string file = (home.path() / "benders" / "mine.json").string();
    for (const bool only_check : {false, true}) {
        std::ostringstream out, trouble;
        const int status = only_check ? print_check(home.places(), trailer(), out, trouble) : print_sheet(home.places(), {trailer(), std::nullopt, false}, out, trouble);
        CHECK(status == exit_status::made);
        CHECK_FALSE(out.str().empty());
        CHECK(trouble.str() == "Left out: " + file + ", format is missing; allowed: \"tubewright-bender\".\n");
    }
    std::ostringstream out, trouble;
    CHECK(print_check(home.places(), (home.path() / "named.json").string(), out, trouble) == exit_status::refused);
    CHECK(out.str().empty());
    CHECK(trouble.str() == (home.path() / "named.json").string() + ", bender is \"mine\", whose card is left out: " + file + ", format is missing; allowed: \"tubewright-bender\".\n");
}
