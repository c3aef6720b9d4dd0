// A card of the order of bends under the finger: carried to another place, put back, or only touched.

#include <catch2/catch.hpp>
#include <cmath>
#include <optional>

#include "ui/headless.h"
#include "ui/samples.h"

using namespace tubewright;

namespace {

/// Shows the sample of 18 cards, bend 18 first, two rows of nine; remembers what was asked of it.
struct Cards {
    explicit Cards(bool movable = true) : view(sample("order")) {
        std::get<OrderBody>(view.body).movable = movable;
        screen.wait(0.4);
    }
    ScreenView view;
    std::vector<Action> taken;
    HeadlessScreen screen{try_screens().front(), [this] { return view; }, [this](const Action& action) { taken.push_back(action); }};

    ImVec2 middle(const std::string& id) { return screen.find(id).box().centre(); }
    /// Down on the one, in some steps to a place, and there it stays.
    void carry(const std::string& id, ImVec2 to) {
        const ImVec2 from = middle(id);
        for (int step = 0; step <= 8; ++step) {
            const float share = static_cast<float>(step) / 8;
            screen.put_finger({from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share});
        }
    }
    /// Where the number of a card is drawn.
    std::optional<ImVec2> drawn(const std::string& number) {
        for (const TextDrawn& text : screen.ui().texts())
            if (text.text == number && text.owner == "bend-" + number) return text.box.centre();
        return std::nullopt;
    }
};

using Actions = std::vector<Action>;

}  // namespace

TEST_CASE("a card carried to another place is one move, and none before the finger lifts") {
    Cards cards;
    cards.carry("bend-16", cards.middle("bend-12"));  // from the third place to the seventh
    CHECK(cards.taken.empty());
    cards.screen.lift_finger();
    CHECK(cards.taken == Actions{MoveBend{15, 4}});
    cards.taken.clear();
    cards.carry("bend-3", cards.middle("bend-17"));  // from the second row to the second place
    cards.screen.lift_finger();
    CHECK(cards.taken == Actions{MoveBend{2, -14}});
}

TEST_CASE("the card follows the finger, and the others make room") {
    Cards cards;
    const ImVec2 start = *cards.drawn("16"), next = *cards.drawn("15"), far = *cards.drawn("10"), to = cards.middle("bend-12");
    cards.carry("bend-16", to);
    const ImVec2 on_its_way = *cards.drawn("16");
    CHECK(on_its_way.x - start.x == Approx(to.x - cards.middle("bend-16").x).margin(1));
    CHECK(cards.drawn("15")->x == Approx(start.x).margin(1));  // moved over to where the carried one was
    CHECK(cards.drawn("10")->x == Approx(far.x).margin(0.1));  // beyond the gap nothing moves
    cards.screen.put_finger({to.x, 10});  // off the cards: the gap closes
    CHECK(cards.drawn("15")->x == Approx(next.x).margin(0.1));
    cards.screen.lift_finger();
    CHECK(cards.drawn("16")->x == Approx(start.x).margin(0.1));
}

TEST_CASE("a card let go off the cards, or on its own place, stays where it was") {
    Cards cards;
    const float bottom = cards.screen.ui().whole_screen().max.y;
    for (const ImVec2 off : {ImVec2{cards.middle("bend-12").x, 5}, ImVec2{cards.middle("bend-12").x, bottom - 5}}) {
        cards.carry("bend-16", off);
        cards.screen.lift_finger();
        CHECK(cards.taken.empty());
    }
    cards.carry("bend-16", cards.middle("bend-12"));
    cards.screen.put_finger(cards.middle("bend-16"));
    cards.screen.lift_finger();
    CHECK(cards.taken.empty());  // nor does it count as a touch
}

TEST_CASE("a short touch picks the card, also with a finger that rolls a little") {
    Cards cards;
    cards.screen.tap("bend-9");
    CHECK(cards.taken == Actions{PickBend{8}});
    cards.taken.clear();
    const ImVec2 on = cards.middle("bend-9");
    cards.screen.put_finger(on);
    cards.screen.put_finger({on.x + static_cast<float>(3 * cards.screen.ui().px_per_mm()), on.y});
    cards.screen.lift_finger();
    CHECK(cards.taken == Actions{PickBend{8}});
}

TEST_CASE("while the order stands fast a card is picked, and does not follow") {
    Cards cards(false);
    const ImVec2 start = *cards.drawn("16");
    cards.carry("bend-16", cards.middle("bend-12"));
    CHECK(cards.drawn("16")->x == Approx(start.x).margin(0.1));
    cards.screen.lift_finger();
    CHECK(cards.taken.empty());
    cards.screen.tap("bend-16");
    CHECK(cards.taken == Actions{PickBend{15}});
}

TEST_CASE("a card in hand when the screen changes is let go of") {
    Cards cards;
    cards.carry("bend-16", cards.middle("bend-12"));
    cards.view.key = "another screen";
    cards.screen.frame();
    cards.screen.lift_finger();
    CHECK(cards.taken.empty());
}

TEST_CASE("eighteen cards lie on the screen at once, each at least 20 mm") {
    for (const TryScreen& size : try_screens()) {
        const ScreenView view = sample("order");
        HeadlessScreen screen(size, [&] { return view; }, [](const Action&) {});
        int cards = 0;
        for (const Touchable& thing : screen.ui().touchables()) {
            if (thing.id.rfind("bend-", 0) != 0) continue;
            ++cards;
            INFO(size.name() << " " << thing.id);
            CHECK(thing.box().width() >= 20 * size.px_per_mm - 0.34);
            CHECK(thing.box().height() >= 20 * size.px_per_mm - 0.34);
        }
        CHECK(cards == 18);
    }
}

namespace {

/// One sample of a line being entered under the finger.
struct AtEntry {
    explicit AtEntry(const std::string& name) : view(sample(name)) { screen.wait(0.4); }
    ScreenView view;
    std::vector<Action> taken;
    HeadlessScreen screen{try_screens().front(), [this] { return view; }, [this](const Action& action) { taken.push_back(action); }};
    float mm(double length) const { return static_cast<float>(length * screen.ui().px_per_mm()); }
};

}  // namespace

TEST_CASE("a finger drawn over the line's picture turns it with the finger, a short touch enlarges it") {
    AtEntry at("leg-pad");
    const ImVec2 from = at.screen.find("picture").box().centre();
    for (int step = 0; step <= 10; ++step) at.screen.put_finger({from.x + at.mm(2 * step), from.y + at.mm(step)});
    at.screen.lift_finger();
    double over = 0, round = 0;
    for (const Action& action : at.taken) {
        REQUIRE(std::holds_alternative<TurnPicture>(action));
        over += std::get<TurnPicture>(action).over.deg;
        round += std::get<TurnPicture>(action).round.deg;
    }
    // To the right by 20 mm less the 4 that are still a touch: the near side goes right, so the eyes go left.
    CHECK(round < -25);
    CHECK(round > -45);
    CHECK(over > 10);  // downward: more from above
    CHECK(over < 25);
    at.taken.clear();
    at.screen.tap("picture");
    CHECK(at.taken == Actions{EnlargePicture{}});
    at.taken.clear();
    at.screen.tap("straight-on");
    CHECK(at.taken == Actions{StraightOn{}});
}

TEST_CASE("the clock's middle says where the finger is round it, to 15 degrees, and nothing on its very middle") {
    AtEntry at("turn-pad");
    const ImVec2 c = at.screen.find("dial").box().centre();
    const auto shown = [&](float x, float y) {
        at.taken.clear();
        at.screen.put_finger({c.x + x, c.y + y});
        at.screen.lift_finger();
        return at.taken.empty() ? std::optional<Action>() : std::optional(at.taken.back());
    };
    CHECK(shown(0, -at.mm(15)) == Action{TurnTo{{0}}});
    CHECK(shown(at.mm(15), at.mm(1)) == Action{TurnTo{{90}}});
    CHECK(shown(at.mm(0.5), at.mm(15)) == Action{TurnTo{{180}}});
    CHECK(shown(-at.mm(12), -at.mm(12)) == Action{TurnTo{{315}}});
    CHECK_FALSE(shown(at.mm(1), at.mm(1)));
    CHECK_FALSE(shown(at.mm(10), -at.mm(10)));  // 45 is what it shows already
    // Turned on the way round: each new side is told once.
    at.taken.clear();
    for (int deg = 0; deg <= 90; deg += 5) {
        const float a = static_cast<float>(deg) * 3.14159265f / 180;
        at.screen.put_finger({c.x + at.mm(15) * std::sin(a), c.y - at.mm(15) * std::cos(a)});
    }
    at.screen.lift_finger();
    CHECK(at.taken.size() >= 5);
    CHECK(at.taken.back() == Action{TurnTo{{90}}});
}
