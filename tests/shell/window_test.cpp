// The real program in a real window, walked by a real pointer; things are found by its touch map. Runs under
// a virtual display.

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <thread>

using nlohmann::json;

namespace {

namespace fs = std::filesystem;

class Program {
public:
    explicit Program(const fs::path& home) : map_(home / "touch-map.json") {
        fs::remove(map_);
        child_ = fork();
        if (child_ == 0) {
            execl(TUBEWRIGHT_PROGRAM, "tubewright", TUBEWRIGHT_SOURCE_DIR "/jobs/engine-fuel-line.json", "--home", home.c_str(), "--touch-map", map_.c_str(), nullptr);
            _exit(127);
        }
        wait_for([&] { return fs::exists(map_); });
    }
    ~Program() { kill_now(); }

    void kill_now() {
        if (child_ <= 0) return;
        kill(child_, SIGKILL);
        waitpid(child_, nullptr, 0);
        child_ = 0;
    }

    json map() const { return json::parse(std::ifstream(map_), nullptr, false); }
    bool has(const std::string& id) const { return !find(id).is_null(); }
    json find(const std::string& id) const {
        for (const json& thing : map())
            if (thing["id"] == id && thing["enabled"] == true) return thing;
        return nullptr;
    }

    /// Clicks it and waits until the map was written again.
    void click(const std::string& id) {
        wait_for([&] { return has(id); });
        const json px = find(id)["px"];
        const auto before = fs::last_write_time(map_);
        const std::string at = std::to_string(static_cast<int>(px["x"].get<double>() + px["width"].get<double>() / 2)) + " " +
                               std::to_string(static_cast<int>(px["y"].get<double>() + px["height"].get<double>() / 2));
        REQUIRE(std::system(("xdotool mousemove " + at + " mousedown 1 sleep 0.05 mouseup 1").c_str()) == 0);
        wait_for([&] { return fs::last_write_time(map_) != before; });
    }
    void press(const std::string& key) {
        const auto before = fs::last_write_time(map_);
        REQUIRE(std::system(("xdotool key " + key).c_str()) == 0);
        wait_for([&] { return fs::last_write_time(map_) != before; });
    }

    template <class Ready>
    void wait_for(const Ready& ready) {
        const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(60);
        while (!ready()) {
            if (std::chrono::steady_clock::now() > end) FAIL("waited for a minute; on the screen: " << map().dump());
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
        }
    }

private:
    fs::path map_;
    pid_t child_ = 0;
};

struct Home {
    fs::path path;
    Home() {
        std::string name = (fs::temp_directory_path() / "tubewright-window-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()));
        path = name;
    }
    ~Home() { fs::remove_all(path); }
};

std::vector<std::string> with(const Program& program, const std::string& beginning) {
    std::vector<std::string> ids;
    for (const json& thing : program.map())
        if (thing["enabled"] == true && thing["id"].get<std::string>().rfind(beginning, 0) == 0) ids.push_back(thing["id"]);
    return ids;
}

std::vector<std::string> labels(const Program& program) {
    std::vector<std::string> all;
    for (const json& thing : program.map()) all.push_back(thing["id"].get<std::string>() + ": " + thing["label"].get<std::string>());
    return all;
}

/// From the job's lines to the bench of its first line.
void to_the_bench(Program& program) {
    program.click(with(program, "line-").at(0));
    
    program.click("next");
}

/// Takes a stick, ticks the list page by page, and goes on to the marks.
void through_the_list(Program& program) {
    if (program.has("stick")) {
        program.click("stick");
        program.click("new-stick");
    }
    for (int pages = 0; pages < 10; ++pages) {
        for (const std::string& id : with(program, "tick-")) program.click(id);
        if (program.has("next")) break;
        program.click("more-ticks");
    }
    program.click("next");
    program.wait_for([&] { return with(program, "tick-").empty(); });
}

}  // namespace

TEST_CASE("a real window: from the job to the bends by pointer, killed, and back at the same place") {
    Home home;
    std::vector<std::string> before;
    {
        Program program(home.path);
        to_the_bench(program);
        through_the_list(program);
        program.click("next");   // marked out, or marked
        program.press("space");  // the foot switch goes on
        program.press("Page_Up");  // and back
        program.press("Next");   // Page Down goes on again
        before = labels(program);
        program.kill_now();
    }
    Program again(home.path);
    CHECK(labels(again) == before);
    for (const json& thing : again.map()) {
        INFO(thing.dump());
        CHECK(thing["mm"]["height"].get<double>() >= 19.9);
        CHECK(thing["px"]["x"].get<double>() >= 0);
        CHECK(thing["px"]["x"].get<double>() + thing["px"]["width"].get<double>() <= 1280.5);
        CHECK(thing["px"]["y"].get<double>() + thing["px"]["height"].get<double>() <= 800.5);
    }
}
