#pragma once
// A desk, a small screen and a finger whose taps are counted. Each screen is looked over.

#include <set>
#include <stdexcept>
#include <string>

#include "shell/desk.h"
#include "shell/temporary_home.h"
#include "ui/headless.h"

namespace tubewright {

struct AtScreen {
    Desk desk;
    HeadlessScreen screen;
    int taps = 0;
    std::set<std::string> faults;

    explicit AtScreen(const TemporaryHome& home, const TryScreen& on = try_screens().front())
        : desk(Desk::made(home.places(), one_day).value()), screen(on, [this] { return desk.view(); }, [this](const Action& action) { desk.act(action); }) {
        desk.act(ScreenIs{on.px_per_mm});
        screen.frame();
    }

    void tap(const std::string& id) {
        if (!screen.find(id).enabled) throw std::runtime_error(id + " can't be used: " + screen.find(id).why_not);
        screen.tap(id);
        ++taps;
        screen.frame();
        for (const std::string& fault : faults_of(screen.ui())) faults.insert(desk.view().key + ": " + fault);
    }
    void tap(std::initializer_list<const char*> ids) {
        for (const char* id : ids) tap(std::string(id));
    }
    /// Turns the shelf's pages to the job, which is no part of entering it.
    void open_on_shelf(const std::string& id) {
        for (int pages = 0; !screen.has(id) && pages < 30; ++pages) screen.tap("later");
        screen.tap(id);
        screen.frame();
    }
    const Entry& entry() const { return *desk.state().entry; }
};

inline std::string all_of(const std::set<std::string>& faults) {
    std::string all;
    for (const std::string& fault : faults) all += fault + "\n";
    return all;
}

}  // namespace tubewright
