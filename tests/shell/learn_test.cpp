// A bender measured by finger on the real screens, from the shelf to its card: a person with a tape, and a bender whose bend
// starts 1/16 in before line 0 of the shoe.

#include <catch2/catch.hpp>

#include <cmath>

#include "bench/learning.h"
#include "shell/at_screen.h"
#include "state/rules.h"

using namespace tubewright;

namespace {

/// The keys for what a tape reads, to the nearest thirty-second.
std::vector<std::string> keys_for(double inch) {
    const int parts = static_cast<int>(std::lround(inch * 32)), rest = parts % 32;
    std::vector<std::string> keys;
    for (const char digit : std::to_string(parts / 32)) keys.push_back(std::string("key-") + digit);
    const char* eighths[] = {"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
    if (rest / 4 > 0) keys.push_back(std::string("key-") + eighths[rest / 4]);
    if (rest % 4 / 2 == 1) keys.push_back("key-+1/16");
    if (rest % 2 == 1) keys.push_back("key-+1/32");
    return keys;
}

/// The bender as it is, and a person who does what its screens ask.
struct Person {
    AtScreen& at;
    double radius, od;  ///< finished; inches

    explicit Person(AtScreen& screen) : at(screen) {
        const Sheet& sheet = *sheet_in_hand(at.desk.state());
        radius = finished_radius(sheet.springback, sheet.line.bender.radius).inch();
        od = sheet.line.tube.od.inch();
    }
    void tape(double inch) {
        for (const std::string& key : keys_for(inch)) at.tap(key);
        at.tap({"next"});
    }
    void read(const std::string& degrees) {
        for (const char digit : degrees) at.tap(std::string("key-") + digit);
        at.tap({"next"});
    }
    /// A piece of 12 in, inked at 4: from H1 = start + (R + D/2) tan(a/2) and H2 = 12 - start - R a + the same.
    void bend(const std::string& degrees, double slip = 0) {
        const double a = std::stod(degrees) * 3.14159265358979 / 180, start = 4 - 1.0 / 16, corner = (radius + od / 2) * std::tan(a / 2);
        at.tap("bend-" + degrees);
        tape(12);
        at.tap({"line-0"});
        tape(4);
        at.tap({"next", "next"});
        read(degrees);
        tape(start + corner + slip);
        tape(12 - start - 0.978 * radius * a + corner);
    }
    void bend_back() {
        at.tap({"bend-180", "next"});
        tape(2 * radius + od);
    }
};

void open_card(AtScreen& at) {
    at.open_on_shelf("job-trailer-brakes-stainless");
    at.tap({"line-axle crossover", "stance", "card"});
}

}  // namespace

TEST_CASE("a bender is measured by finger from the shelf to its card, and the sheets go by what was learned") {
    TemporaryHome home;
    {
        AtScreen at(home);
        open_card(at);
        at.tap({"learn"});
        Person person(at);
        const int before = at.taps;
        person.bend("90");
        CHECK(at.screen.says("Put it on the card"));
        at.tap({"learned-1"});
        CHECK(at.screen.says("past where the bend"));
        at.tap({"more"});
        person.bend_back();
        CHECK(at.taps - before < 45);
        at.tap({"put-on-card"});
        CHECK(at.screen.says("Not kept yet"));
        at.tap({"keep"});
        CHECK(at.screen.says("Kept as your own card"));
        INFO(all_of(at.faults));
        CHECK(at.faults.empty());
    }
    AtScreen at(home);
    at.open_on_shelf("job-trailer-brakes-stainless");
    at.tap({"line-axle crossover"});
    // Line 0 lies 1/16 in past the start; to half of that: readings are rounded to 1/32, and the card's 0 was believed in a little.
    const Bender& bender = sheet_in_hand(at.desk.state())->line.bender;
    CHECK(bender.marks[0].name == "0");
    CHECK(bender.marks[0].offset.inch() == Approx(1.0 / 16).margin(1.0 / 32));
    CHECK(at.desk.state().own_cards.contains(bender.id));
}

TEST_CASE("the power fails between two readings: the same step is asked, and a slip of the tape is found and taken again") {
    TemporaryHome home;
    {
        AtScreen at(home, try_screens().back());
        open_card(at);
        at.tap({"learn", "bend-90"});
        Person person(at);
        person.tape(12);
        at.tap({"line-0"});
        person.tape(4);
        at.tap({"next", "next"});
        person.read("90");
        CHECK(next_step(piece_in_work(at.desk.state()).value()) == PieceStep::hook_leg);
        CHECK(at.faults.empty());
    }
    AtScreen at(home);
    at.desk.take_up_again();
    at.screen.frame();
    CHECK(at.desk.state().looks.screen == Screen::learn);
    CHECK(at.screen.says("How long is the hook leg"));
    Person person(at);
    const double corner = person.radius + person.od / 2, start = 4 - 1.0 / 16, arc = person.radius * 3.14159265358979 / 2;
    person.tape(start + corner + 1);  // an inch too many
    person.tape(12 - start - 0.978 * arc + corner);
    CHECK(at.screen.says("One of the four is misread"));
    at.tap({"again-0"});
    person.tape(start + corner);
    CHECK(at.screen.says("All readings agree"));
    at.tap({"back", "back", "back"});
    CHECK(at.desk.state().looks.screen == Screen::lines);
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("a line of one's own is named by finger, in millimetres, and nothing on the way is cut off") {
    TemporaryHome home;
    for (const TryScreen& on : {try_screens()[0], try_screens()[1]}) {
        AtScreen at(home, on);
        at.desk.act(SetUnit{Unit::mm});
        open_card(at);
        at.tap({"learn"});
        if (at.screen.has("undo") && !pieces_here(at.desk.state()).empty()) at.desk.act(DropPiece{pieces_here(at.desk.state()).front().id});
        at.screen.frame();
        at.tap({"bend-90", "key-3", "key-0", "key-0", "next", "name-line", "letter-M", "other-keys", "other-keys", "letter-2", "next"});
        CHECK(at.screen.says("It will lie") == false);
        at.tap({"key-1", "key-0", "key-0", "next", "other-ink", "line-0", "key-9", "key-5", "next", "next", "next", "key-9", "key-0", "next"});
        const auto piece = piece_in_work(at.desk.state());
        REQUIRE(piece);
        CHECK(piece->inks == std::vector<KeptInk>{{"M2", Length{100}}, {"0", Length{95}}});
        INFO(all_of(at.faults));
        CHECK(at.faults.empty());
    }
}
