#pragma once
// A desk, a screen and a finger on it. Each screen that comes is looked over for faults, also as it would be in
// the other unit and the other theme.

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "shell/desk.h"
#include "shell/operator.h"
#include "shell/temporary_home.h"
#include "ui/headless.h"

namespace tubewright {

class Walk {
public:
    explicit Walk(const TryScreen& on);

    /// Touches as the person does, until nothing is left to do or `enough` is true of the state.
    void go_on(Operator& person, const std::function<bool(const State&)>& enough = {});
    void tap(const std::string& id);
    void hold(const std::string& id);
    /// The screen as it stands, in both units and both themes.
    void look_over();
    /// The same of what lies beside it: settings, stock, scrap log, and all that can be said of a spoiled tube.
    void look_beside();

    const State& state() const { return desk.state(); }
    LineWork work() const;
    bool has(const std::string& id) const { return screen.has(id); }
    std::vector<std::string> with(const std::string& beginning) const;  ///< ids of what can be touched
    std::vector<Seen> seen() const;
    /// Closes the book and reads it as the next start of the program would. The walk is over then.
    Work in_the_book();

    TemporaryHome home, elsewhere;
    Desk desk = Desk::made(home.places(), one_day).value();
    std::set<std::string> faults;
    std::size_t views = 0;    ///< that were looked over
    std::size_t labels = 0;   ///< that pointed at something in their pictures

private:
    void look_at(State state);
    void look_at_wrong(const State& asked);
    void look_at_rack(const State& here);
    void look_at_legs(const State& here);

    int looked_beside_ = 0;
    ScreenView shown_;       ///< to the onlooker, who touches nothing
    HeadlessScreen screen, onlooker_;
};

}  // namespace tubewright
