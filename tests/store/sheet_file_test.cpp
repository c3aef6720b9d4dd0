#include "store/sheet_file.h"

#include <nlohmann/json.hpp>

#include "desk.h"

namespace tubewright {
namespace {

using nlohmann::json;

std::vector<std::string> messages_for(const Sheet& sheet) {
    std::vector<std::string> messages;
    for (std::size_t i = 0; i < sheet.findings.size(); ++i) messages.push_back("message " + std::to_string(i));
    return messages;
}

json tree_of(const Job& job, const Sheet& sheet) { return json::parse(sheet_json(job, sheet, messages_for(sheet))); }

}  // namespace

TEST_CASE("the machine form of the example says what the sheet holds, in inches and to the last digit") {
    const Job job = job_of(example_job);
    const Sheet sheet = bend_sheet(job.lines[0]);
    const json tree = tree_of(job, sheet);
    CHECK(tree["format"] == "tubewright-sheet");
    CHECK(tree["version"] == 1);
    CHECK(tree["units"] == "in");
    CHECK(tree["job"] == "Utility trailer brake lines");
    CHECK(tree["line"] == "axle crossover");
    CHECK(tree["tube"]["od"] == 0.1875);  // as it stands in the job, no digit lost on the way through mm
    CHECK(tree["tube"]["material"] == "stainless-304");
    CHECK(tree["bender"]["id"] == "hand-3/16");
    CHECK(tree["bender"]["radius"] == 0.5625);
    CHECK(tree["bender"]["set_up"] == json({{"hook", "left"}, {"swing", "away"}}));
    CHECK(tree["bender"]["marks"].size() == 3);
    // 0.1 in goes into each flare, 0.5 in is trimmed at B
    CHECK(tree["waste"]["A"].get<double>() == Approx(0.1));
    CHECK(tree["waste"]["B"].get<double>() == Approx(0.6));
    CHECK(tree["cut_length"].get<double>() == Approx(sheet.layout->cut_length.inch()).epsilon(1e-15));
    REQUIRE(tree["steps"].size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        const json& step = tree["steps"][i];
        CHECK(step["bend"] == sheet.steps[i].bend + 1);
        CHECK(step["hook_end"] == std::string(1, letter(sheet.steps[i].hook)));
        CHECK(step["mark"]["from"] == "A");
        CHECK(step["mark"]["align_to"] == "0");
        CHECK(step["mark"]["distance"].get<double>() == Approx(sheet.steps[i].mark.inch()).epsilon(1e-15));
        CHECK(step["rotation"]["index_line_deg"].get<double>() == sheet.steps[i].index_roll.deg);
        CHECK(step["angle"]["set"].get<double>() == sheet.steps[i].set.deg);
        CHECK(step["angle"]["springback"].get<double>() == Approx(sheet.steps[i].set.deg - sheet.steps[i].target.deg));
        CHECK(step["angle"]["finished_radius"].get<double>() == Approx(sheet.steps[i].finished_radius.inch()).epsilon(1e-15));
        CHECK(step["tally"]["formed"].get<double>() + step["tally"]["left"].get<double>() == Approx(tree["cut_length"].get<double>()));
    }
    CHECK(tree["steps"][0]["rotation"]["neighbour"].is_null());
    REQUIRE(tree["steps"][1]["rotation"]["neighbour"].is_object());
    CHECK(tree["steps"][1]["rotation"]["neighbour"]["bend"] == sheet.steps[1].neighbour->bend + 1);
    CHECK(tree["steps"][1]["rotation"]["neighbour"]["leg_deg"].get<double>() == sheet.steps[1].neighbour->leg_roll.deg);
}

TEST_CASE("findings stand with severity, code, bend from 1 or null, and the sentence given") {
    const Job job = job_of(job_with_route(R"({ "form": "legs", "legs": [6, 1.2, 12], "bends": [ {"angle": 90}, {"angle": 45, "rotation": 0} ] })"));
    const Sheet sheet = bend_sheet(job.lines[0]);
    const json tree = tree_of(job, sheet);
    REQUIRE(tree["findings"].size() == sheet.findings.size());
    REQUIRE_FALSE(sheet.findings.empty());
    for (std::size_t i = 0; i < sheet.findings.size(); ++i) {
        const json& finding = tree["findings"][i];
        CHECK(finding["code"] == sheet.findings[i].code);
        CHECK(finding["message"] == "message " + std::to_string(i));
        if (sheet.findings[i].bend) CHECK(finding["bend"] == *sheet.findings[i].bend + 1);
        else CHECK(finding["bend"].is_null());
    }
    CHECK(tree["findings"][0]["severity"] == "stop");
    CHECK(tree["findings"][0]["code"] == "short-straight");
}

TEST_CASE("a line that can't be laid out has no cut length and no steps, but its waste and its finding") {
    const Job job = job_of(job_with_route(R"({ "form": "legs", "legs": [6, 8], "bends": [ {"angle": 175} ] })"));
    const json tree = tree_of(job, bend_sheet(job.lines[0]));
    CHECK(tree["cut_length"].is_null());
    CHECK(tree["steps"] == json::array());
    CHECK(tree["waste"]["B"].get<double>() == Approx(0.6));
    REQUIRE(tree["findings"].size() >= 1);
    CHECK(tree["findings"][0]["code"] == "degenerate-corner");
    CHECK(tree["findings"][0]["bend"] == 1);
}

TEST_CASE("a job in mm gives its sheet in mm, the bender's card in whatever unit it was") {
    const auto read = read_job(source_dir / "jobs/engine-fuel-line.json", shipped_library());
    REQUIRE(read.ok());
    const Sheet sheet = bend_sheet(read.value().lines[0]);
    const json tree = tree_of(read.value(), sheet);
    CHECK(tree["units"] == "mm");
    CHECK(tree["bender"]["radius"].get<double>() == Approx(28.575));  // 1.125 in
    CHECK(tree["cut_length"].get<double>() == sheet.layout->cut_length.mm);
}

TEST_CASE("several lines make a list, in their order, and may stand on one line of text") {
    const auto read = read_job(source_dir / "jobs/cooler-pair.json", shipped_library());
    REQUIRE(read.ok());
    std::vector<Sheet> sheets;
    std::vector<std::vector<std::string>> messages;
    for (const Line& line : read.value().lines) {
        sheets.push_back(bend_sheet(line));
        messages.push_back(messages_for(sheets.back()));
    }
    const std::string text = sheets_json(read.value(), sheets, messages, -1);
    CHECK(text.find('\n') == std::string::npos);
    const json list = json::parse(text);
    REQUIRE(list.size() == 2);
    CHECK(list[0]["line"] == "left");
    CHECK(list[1] == json::parse(sheet_json(read.value(), sheets[1], messages[1])));
}

}  // namespace tubewright
