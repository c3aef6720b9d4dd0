#include <catch2/catch.hpp>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

namespace {

/// A desk that shows one view and remembers what was asked of it.
struct Desk {
    explicit Desk(const ScreenView& shown) : view(shown) {}
    ScreenView view;
    std::vector<Action> taken;
    HeadlessScreen screen{try_screens().front(), [this] { return view; }, [this](const Action& action) { taken.push_back(action); }};
};

using Actions = std::vector<Action>;

}  // namespace

TEST_CASE("every thing that can be tapped gives its own action, once") {
    for (const Sample& one : samples()) {
        Desk desk(one.view);
        const std::vector<Touchable> things = desk.screen.ui().touchables();  // the next frame makes them anew
        for (const Touchable& thing : things) {
            if (!thing.enabled || thing.held || thing.id == "dial") continue;  // a dial is turned
            desk.taken.clear();
            desk.screen.tap(thing.id);
            INFO(one.name << ": " << thing.id);
            CHECK(desk.taken.size() == 1);
        }
    }
    Desk turn(sample("turn"));
    turn.screen.tap("next");
    turn.screen.tap("wrong");
    CHECK(turn.taken == Actions{Next{}, WentWrong{}});
}

TEST_CASE("for 0.3 s after the step changed a finger does nothing") {
    Desk desk(sample("turn"));
    desk.screen.wait(0.4);
    desk.view.key = "another step";
    desk.screen.frame();
    desk.screen.wait(0.1);
    desk.screen.tap_at_once("next");
    desk.screen.key(KeyPress::main);
    CHECK(desk.taken.empty());
    desk.screen.wait(0.3);
    desk.screen.tap_at_once("next");
    CHECK(desk.taken == Actions{Next{}});
}

TEST_CASE("a finger that was down when the step changed does nothing to the next one") {
    Desk desk(sample("turn"));
    desk.screen.wait(0.4);
    desk.screen.put_finger(desk.screen.find("next").box().centre());
    desk.view.key = "another step";
    desk.screen.wait(1);
    desk.screen.lift_finger();
    CHECK(desk.taken.empty());
}

TEST_CASE("what has to be held fires after 0.8 s, and not before") {
    Desk desk(sample("reasons"));
    desk.screen.tap("confirm");
    desk.screen.hold("confirm", 0.7);
    CHECK(desk.taken.empty());
    desk.screen.hold("confirm", 0.9);
    CHECK(desk.taken == Actions{ConfirmScrap{}});
    desk.screen.key(KeyPress::main);  // a foot can't hold it
    CHECK(desk.taken.size() == 1);
}

TEST_CASE("a finger that slides off does nothing, even when it comes back") {
    Desk desk(sample("turn"));
    desk.screen.wait(0.4);
    const ImVec2 on = desk.screen.find("next").box().centre();
    desk.screen.put_finger(on);
    desk.screen.put_finger({on.x, 10});
    desk.screen.put_finger(on);
    desk.screen.lift_finger();
    CHECK(desk.taken.empty());
}

TEST_CASE("a foot switch does what the main button does, and the other one goes back") {
    Desk desk(sample("turn"));
    desk.screen.wait(0.4);
    desk.screen.key(KeyPress::main);
    desk.screen.key(KeyPress::back);
    CHECK(desk.taken == Actions{Next{}, Back{}});
}

TEST_CASE("what can't be used does nothing and says why") {
    Desk desk(sample("ticks"));
    desk.screen.tap("next");
    desk.screen.key(KeyPress::main);
    CHECK(desk.taken.empty());
    CHECK(desk.screen.find("next").why_not == "2 ticks are missing");
    CHECK(desk.screen.says("2 ticks are missing"));
}

TEST_CASE("a name is shown letter for letter, whatever signs are in it") {
    ScreenView view = sample("shelf");
    std::get<ListBody>(view.body).rows[0].touch.label = "50% off ##2 ###x";
    Desk desk(view);
    CHECK(desk.screen.says("50% off ##2 ###x"));
    CHECK(faults_of(desk.screen.ui()) == std::vector<std::string>{});
}
