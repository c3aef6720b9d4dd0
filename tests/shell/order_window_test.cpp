// The program in a real window, looking for an order that takes it long (see slow_program.cpp): what a person sees
// of that, and how they stop it. Runs under a virtual display.

#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>

#include "shell/desk.h"
#include "shell/real_program.h"
#include "shell/temporary_home.h"
#include "store/job_file.h"
#include "store/library.h"

using namespace tubewright;
using nlohmann::json;

namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr std::size_t bends = 18;  // as many cards as lie on the screen at once

/// A line that winds up and along, written as a person's own job file.
fs::path long_job(const fs::path& folder) {
    json legs = json::array({9}), list = json::array();
    for (std::size_t i = 0; i < bends; ++i) {
        list.push_back({{"angle", i % 3 == 0 ? 90 : 45}, {"rotation", i == 0 ? 0 : static_cast<int>(i * 50 % 360) - 180}});
        legs.push_back(6 + i % 4);
    }
    list[0].erase("rotation");
    const json end{{"fitting", "plain"}};
    const json line{{"name", "long one"}, {"quantity", 1}, {"ends", {{"A", end}, {"B", end}}},
                    {"route", {{"form", "legs"}, {"measured_to", "centre"}, {"legs", legs}, {"bends", list}}}};
    const json job{{"format", "tubewright-job"}, {"version", 1}, {"name", "A long line"}, {"service", "other"}, {"units", "in"},
                   {"tube", {{"od", 0.1875}, {"wall", 0.028}, {"material", "steel-low-carbon"}}}, {"bender", "hand-3/16"}, {"lines", json::array({line})}};
    const fs::path file = folder / "long.json";
    std::ofstream(file) << job.dump(1);
    return file;
}

/// Its bends, from 1, in the plain order that needs no looking.
std::vector<std::string> plain_order(const TemporaryHome& home, const fs::path& file) {
    const Library library = read_library(home.places().assets, home.path()).value();
    const Job job = read_job(file.string(), library).value();
    std::vector<std::string> order;
    for (const Step& step : bend_sheet(job.lines[0], {}).steps) order.push_back("bend-" + std::to_string(step.bend + 1));
    return order;
}

/// The share of the looking as the arrows say it, in percent; nothing while nothing is looked for.
std::optional<int> share_on_screen(const Program& program) {
    for (const json& thing : program.map())
        if (thing["id"] == "move-later" && thing["why_not"].get<std::string>().rfind("looking: ", 0) == 0) return std::stoi(thing["why_not"].get<std::string>().substr(9));
    return std::nullopt;
}

std::vector<std::string> cards(const Program& program) {
    std::vector<std::string> ids;
    for (const json& thing : program.map())
        if (thing["id"].get<std::string>().rfind("bend-", 0) == 0) ids.push_back(thing["id"]);
    return ids;
}

void keep_picture(const std::string& name) {
    const char* folder = std::getenv("KEEP_PICTURES");
    if (!folder) return;
    std::this_thread::sleep_for(std::chrono::milliseconds(500));  // the map is written before the frame is shown
    CHECK(std::system(("import -window root " + std::string(folder) + "/" + name + ".png").c_str()) == 0);
}

}  // namespace

TEST_CASE("a long search is seen to go on, leaves the screen live, and is stopped and begun again by pointer") {
    const TemporaryHome home;
    const fs::path file = long_job(home.path());
    const std::vector<std::string> plain = plain_order(home, file);
    REQUIRE(plain.size() == bends);
    Program program(home.path(), [&](const char* map) { execl(SLOW_PROGRAM, "slow_program", home.path().c_str(), file.c_str(), map, nullptr); });
    program.click("line-long one");
    program.click("order");
    program.wait_for([&] { return program.has("stop-looking"); });

    const int first = share_on_screen(program).value();
    keep_picture("order-looking");
    program.wait_for([&] { return share_on_screen(program).value_or(-1) > first; });
    CHECK(program.has("stop-looking"));  // and that was not its end

    // Pages are turned as promptly as ever while the other thread counts. The five seconds are for a busy machine and
    // the pointer's own program; a screen that waited for the search would take six times as long.
    for (const auto& [touched, shown] : {std::pair{"back", "stance"}, std::pair{"order", "stop-looking"}}) {
        const auto since = Clock::now();
        program.click(touched);
        program.wait_for([&, thing = shown] { return program.has(thing); });
        CHECK(std::chrono::duration<double>(Clock::now() - since).count() < 5);
    }
    REQUIRE(share_on_screen(program));  // it was looking all the while
    CHECK(*share_on_screen(program) > first);
    keep_picture("order-still-looking");

    program.click("stop-looking");
    program.wait_for([&] { return program.has("look-again"); });
    CHECK(cards(program) == plain);
    keep_picture("order-stopped");
    program.click("back");
    program.wait_for([&] { return program.has("next"); });  // the line can be begun in that order
    keep_picture("line-stopped");

    program.click("order");
    program.click("look-again");
    program.wait_for([&] { return program.has("stop-looking"); });
    CHECK(share_on_screen(program).value_or(100) <= first + 5);  // from the beginning
    program.click("stop-looking");
    program.wait_for([&] { return program.has("look-again"); });
}

TEST_CASE("a bend is dragged to its place by pointer, moved on by the large arrow, and undo brings it back") {
    const TemporaryHome home;
    Program program(home.path(), fs::path(TUBEWRIGHT_SOURCE_DIR "/jobs/trailer-brakes-stainless.json"));
    program.click("line-axle crossover");
    program.click("order");
    program.wait_for([&] { return cards(program).size() == 4 && !program.has("stop-looking"); });
    const std::vector<std::string> best = cards(program);
    const auto shown = [&](const std::vector<std::size_t>& places) {
        std::vector<std::string> order;
        for (const std::size_t place : places) order.push_back(best[place]);
        program.wait_for([&] { return cards(program) == order; });
    };
    program.drag(best[0], best[2]);
    shown({1, 2, 0, 3});
    program.wait_for([&] { return program.has("free-order"); });  // it is an order by hand now
    keep_picture("order-dragged");
    program.click("move-later");  // the one that was carried is still the one in hand
    shown({1, 2, 3, 0});
    program.click(best[3]);
    program.click("move-earlier");
    shown({1, 3, 2, 0});
    for (const std::vector<std::size_t>& then : {std::vector<std::size_t>{1, 2, 3, 0}, {1, 2, 0, 3}, {0, 1, 2, 3}}) {
        program.click("undo");
        shown(then);
    }
}
