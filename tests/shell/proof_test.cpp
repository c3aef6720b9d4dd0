// An entry proved by finger on the real screens, with a tape on the wire that the trailer's job describes.

#include <catch2/catch.hpp>

#include <Eigen/Geometry>
#include <cmath>

#include "shell/at_screen.h"
#include "shell/job_lines.h"

using namespace tubewright;

namespace {

/// The keys for what a tape reads, to the nearest sixteenth.
std::vector<std::string> keys_for(Length read) {
    const int sixteenths = static_cast<int>(std::lround(read.inch() * 16));
    std::vector<std::string> keys;
    for (const char digit : std::to_string(sixteenths / 16)) keys.push_back(std::string("key-") + digit);
    const char* eighths[] = {"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
    if (sixteenths % 16 / 2 > 0) keys.push_back(std::string("key-") + eighths[sixteenths % 16 / 2]);
    if (sixteenths % 2 == 1) keys.push_back("key-+1/16");
    return keys;
}

/// A person with a tape and this wire, who does what the screen asks.
struct Taper {
    AtScreen& at;
    Wire wire;

    const Proving& now() const { return *at.desk.state().proving; }
    void tape() {
        const Span span = now().task.value().span;
        CHECK_FALSE(at.screen.says("as entered"));  // what it should read is not said before it was read
        for (const std::string& key : keys_for(apart(shape_of(wire, wire.route.measured_to), span))) at.tap(key);
        at.tap({"next"});
    }
    void tape_all() {
        while (now().stage == Proving::Stage::reading) tape();
    }
    void look() {
        REQUIRE(now().stage == Proving::Stage::hand);
        const HandQuestion asked = *now().hand;
        // The wire's own hand, from its own shape: the leg past it against the plane of the two before.
        const WireShape shape = shape_of(wire, wire.route.measured_to);
        const double hand = shape.along[asked.before].dot(shape.along[asked.bend].cross(shape.along[asked.bend + 1]));
        at.tap(hand > 0 ? std::string("left") : std::string("right"));
    }
};

const std::initializer_list<const char*> brake_line{"new-job", "answer-brake", "answer-0", "answer-stainless-304", "answer-hand-3/16", "answer-flare-37-single"};

}  // namespace

TEST_CASE("the trailer's frame run of seven bends with one move up instead of down is found out, corrected and proved") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-moves"});
    at.tap({"key-1", "key-8", "way-forward", "next", "key-3", "way-left", "next", "key-2", "key-2", "way-forward", "next"});
    at.tap({"key-3", "key-1/2", "way-up", "next", "key-9", "way-forward", "next", "key-5", "way-up", "next", "key-8", "way-right", "next"});
    at.tap({"key-4", "key-1/2", "way-back", "key-4", "key-1/2", "way-down", "next", "next"});
    const Line wanted = line_in(shipped_trailer, "frame run");
    Taper person{at, wire_of(wanted)};
    const int before = at.taps;
    at.tap({"prove"});
    person.tape_all();
    if (person.now().stage == Proving::Stage::hand) person.look();
    REQUIRE(person.now().proof.verdict == ProofVerdict::slip);
    CHECK(at.screen.says("Move 6 goes down, not up"));
    CHECK(at.screen.says("and you read"));
    at.tap({"correct"});
    person.tape_all();
    if (person.now().stage == Proving::Stage::hand) person.look();
    CHECK(at.screen.says("agrees with the entry"));
    CHECK(at.taps - before < 60);
    at.tap({"next"});  // done
    CHECK(at.desk.state().looks.screen == Screen::draft);
    CHECK(at.screen.says("Entry checked with"));
    const auto file = home.path() / "jobs" / "new-job-2026-11-25.json";
    CHECK(line_in(file, "line 1").route == wanted.route);
    at.tap({"next", "line-line 1"});
    CHECK(at.screen.says("Entry checked with"));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("a shipped line is checked from its own page, the readings lie in a copy and are there after the power was cut") {
    TemporaryHome home;
    const auto copy = home.path() / "jobs" / "trailer-brakes-stainless.json";
    const Line wanted = line_in(shipped_trailer, "frame run");
    {
        AtScreen at(home, try_screens().back());
        at.open_on_shelf("job-trailer-brakes-stainless");
        at.tap({"line-frame run", "prove"});
        CHECK_FALSE(std::filesystem::exists(copy));  // nothing was taped yet
        Taper person{at, wire_of(wanted)};
        person.tape();
        CHECK(line_in(copy, "frame run").proof->taken.readings.size() == 1);
    }
    AtScreen at(home);
    at.open_on_shelf("job-trailer-brakes-stainless");
    at.tap({"line-frame run"});
    CHECK(at.screen.says("not finished"));
    at.tap({"prove"});
    Taper person{at, wire_of(wanted)};
    CHECK(person.now().readings() == 1);
    person.tape_all();
    person.look();
    CHECK(at.screen.says("agrees with the entry"));
    at.tap({"next"});
    CHECK(at.desk.state().looks.screen == Screen::line);
    CHECK(at.desk.state().job_path == copy.string());
    CHECK(at.screen.says("Entry checked with 3 readings."));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("every place out of reach leads to an end, and from there on") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-outside", "key-6", "next", "angle-90°", "key-4", "next", "angle-90°", "turn-180", "key-3", "next", "next", "prove"});
    while (at.screen.has("cant-reach")) at.tap("cant-reach");
    CHECK(at.screen.says("Nothing was taped"));
    at.tap("afresh");
    CHECK(at.screen.has("cant-reach"));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}
