#pragma once
// The real program in a real window of a virtual display: a pointer that finds things by the touch map.

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <thread>

namespace tubewright {

class Program {
public:
    Program(const std::filesystem::path& home, const std::filesystem::path& job_file)
        : Program(home, [&](const char* map) { execl(TUBEWRIGHT_PROGRAM, "tubewright", job_file.c_str(), "--home", home.c_str(), "--touch-map", map, nullptr); }) {}
    /// `run` becomes the program, which writes that touch map.
    Program(const std::filesystem::path& home, const std::function<void(const char* map)>& run) : map_(home / "touch-map.json") {
        std::filesystem::remove(map_);
        child_ = fork();
        if (child_ == 0) {
            run(map_.c_str());
            _exit(127);
        }
        wait_for([&] { return std::filesystem::exists(map_); });
    }
    ~Program() { kill_now(); }

    void kill_now() {
        if (child_ <= 0) return;
        kill(child_, SIGKILL);
        waitpid(child_, nullptr, 0);
        child_ = 0;
    }

    nlohmann::json map() const { return nlohmann::json::parse(std::ifstream(map_), nullptr, false); }
    bool has(const std::string& id) const { return !find(id).is_null(); }
    nlohmann::json find(const std::string& id) const {
        for (const nlohmann::json& thing : map())
            if (thing["id"] == id && thing["enabled"] == true) return thing;
        return nullptr;
    }

    /// Clicks it and waits until the map was written again.
    void click(const std::string& id) {
        wait_for([&] { return has(id); });
        const auto before = std::filesystem::last_write_time(map_);
        point("mousemove " + middle_of(id) + " mousedown 1 sleep 0.05 mouseup 1");
        wait_for([&] { return std::filesystem::last_write_time(map_) != before; });
    }
    /// Takes one thing and puts it down on the place of another, as slowly as a hand does.
    void drag(const std::string& id, const std::string& to) {
        wait_for([&] { return has(id) && has(to); });
        const nlohmann::json from = find(id)["px"], there = find(to)["px"];
        const auto at = [&](double share) {
            const auto between = [&](const char* place, const char* size) {
                const double a = from[place].get<double>() + from[size].get<double>() / 2, b = there[place].get<double>() + there[size].get<double>() / 2;
                return std::to_string(static_cast<int>(a + share * (b - a)));
            };
            return "mousemove " + between("x", "width") + " " + between("y", "height") + " sleep 0.15 ";
        };
        const auto before = std::filesystem::last_write_time(map_);
        point(at(0) + "mousedown 1 sleep 0.15 " + at(0.2) + at(0.6) + at(1) + at(1) + "mouseup 1");
        wait_for([&] { return std::filesystem::last_write_time(map_) != before; });
    }
    /// One key of the keypad after the other, faster than frames are drawn: no tap is lost, and none lands
    /// where the next one goes.
    void type(const std::string& digits) {
        std::string taps;
        for (const char digit : digits) {
            const std::string id = std::string("key-") + digit;
            wait_for([&] { return has(id); });
            taps += "mousemove " + middle_of(id) + " mousedown 1 mouseup 1 ";
        }
        point(taps);
    }
    void press(const std::string& key) {
        const auto before = std::filesystem::last_write_time(map_);
        point("key " + key);
        wait_for([&] { return std::filesystem::last_write_time(map_) != before; });
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
    std::string middle_of(const std::string& id) const {
        const nlohmann::json px = find(id)["px"];
        return std::to_string(static_cast<int>(px["x"].get<double>() + px["width"].get<double>() / 2)) + " " +
               std::to_string(static_cast<int>(px["y"].get<double>() + px["height"].get<double>() / 2));
    }
    static void point(const std::string& commands) { REQUIRE(std::system(("xdotool " + commands).c_str()) == 0); }

    std::filesystem::path map_;
    pid_t child_ = 0;
};

}  // namespace tubewright
