#include "store/bender_file.h"

#include "desk.h"

namespace tubewright {
namespace {

const std::string card_file = (source_dir / "tests/specimens/bender-version-1.json").string();
std::string card() { return bytes_in(card_file); }

std::string card_sentence(const std::string& text) {
    const auto read = read_bender_text(text, "card.json");
    return read.ok() ? "was taken" : read.trouble().sentence();
}

}  // namespace

TEST_CASE("the card of the format's description, version 1, reads as it is written") {
    const auto read = read_bender(card_file);
    if (!read.ok()) FAIL(read.trouble().sentence());
    const Bender& bender = read.value();
    CHECK(bender.id == "hand-3/16");
    CHECK(bender.name == "3/16 hand bender");
    CHECK(bender.tube_od.mm == Approx(4.7625));
    CHECK(bender.radius.mm == Approx(14.2875));       // 0.5625 x 25.4
    CHECK(bender.max_angle == Angle{180});
    CHECK(bender.stretch == 0);
    REQUIRE(bender.marks.size() == 3);
    CHECK(bender.marks[2].name == "R");
    CHECK(bender.marks[2].offset.mm == Approx(8.15594));  // 0.3211 x 25.4
    CHECK(bender.hook_straight.mm == Approx(19.05));
    CHECK(bender.lever_straight.mm == Approx(22.86));
    CHECK(bender.set_up == SetUp{HookHand::left, Swing::away});
    CHECK(usual_mark(bender) == 0);
}

TEST_CASE("the shipped card for 3/16 is that of the format's description, and has a body") {
    const auto shipped = read_bender(source_dir / "assets/benders/hand-3-16.json"), specimen = read_bender(card_file);
    REQUIRE(shipped.ok());
    REQUIRE(specimen.ok());
    Bender bare = shipped.value();
    bare.body.clear();
    CHECK(bare == specimen.value());
    CHECK(shipped.value().body.size() == 8);
}

TEST_CASE("the solids of a card's body are read in its unit and stand as they say") {
    const auto read = read_bender_text(with(card(), "\"body\": [ ]", R"("body": [
        { "name": "base plate", "stands": "fixed", "box": { "from": [-1, 0.5, -2], "to": [1, 0, -1] } },
        { "name": "handle", "stands": "lever", "cylinder": { "from": [1, 0, 0], "to": [9, -1, 0], "radius": 0.25 } },
        { "name": "bench top", "stands": "bench", "half_space": { "at": [0, 0, -6], "into": [0, 0, -1] }, "x-seen": "here" } ])"), "card.json");
    if (!read.ok()) FAIL(read.trouble().sentence());
    const std::vector<Solid>& body = read.value().body;
    REQUIRE(body.size() == 3);
    CHECK(body[0] == Solid{"base plate", Stands::fixed, Block{{-25.4, 12.7, -50.8}, {25.4, 0, -25.4}}});
    CHECK(body[1] == Solid{"handle", Stands::lever, Cylinder{{25.4, 0, 0}, {9 * 25.4, -25.4, 0}, Length{6.35}}});
    CHECK(body[2] == Solid{"bench top", Stands::bench, HalfSpace{{0, 0, 6 * -25.4}, {0, 0, -1}}});
}

TEST_CASE("a solid that does not fit is refused with place, what and allowed") {
    const auto said = [](const std::string& solid) { return card_sentence(with(card(), "\"body\": [ ]", "\"body\": [ { \"name\": \"post\", \"stands\": \"fixed\", " + solid + " } ]")); };
    const std::string head = "card.json, body[0]";
    CHECK(said(R"("box": { "from": [0, 0, 0], "to": [1, 1, 1] })") == "was taken");
    CHECK(said(R"("ball": 3)") == head + ".ball is not a key that belongs here; allowed: name, stands, box, cylinder, half_space, and keys that begin with x-.");
    CHECK(said(R"("x-shape": 3)") == head + " does not have one shape; allowed: one of box, cylinder, half_space.");
    CHECK(said(R"("box": { "from": [0, 0, 0], "to": [1, 1, 1] }, "half_space": { "at": [0, 0, 0], "into": [0, 0, 1] })") == head + " does not have one shape; allowed: one of box, cylinder, half_space.");
    CHECK(said(R"("box": { "from": [0, 0, 0], "to": [1, 0, 1] })") == head + ".box.to lies level with from; allowed: the opposite corner of the box.");
    CHECK(said(R"("box": { "from": [0, 0], "to": [1, 1, 1] })") == head + ".box.from has 2 entries; allowed: a list of 3 to 3.");
    CHECK(said(R"("box": { "from": [0, 0, "0"], "to": [1, 1, 1] })") == head + ".box.from[2] is \"0\"; allowed: -393.7 to 393.7 in.");
    CHECK(said(R"("cylinder": { "from": [0, 0, 0], "to": [0, 0, 0], "radius": 1 })") == head + ".cylinder.to is the same place as from; allowed: the middle of the other end.");
    CHECK(said(R"("cylinder": { "from": [0, 0, 0], "to": [0, 0, 1], "radius": 0 })") == head + ".cylinder.radius is 0; allowed: more than 0 and at most 393.7 in.");
    CHECK(said(R"("half_space": { "at": [0, 0, 0], "into": [0, 0, 0] })") == head + ".half_space.into points nowhere; allowed: a direction into the material.");
    CHECK(card_sentence(with(card(), "\"body\": [ ]", R"("body": [ { "name": "post", "stands": "still", "box": { "from": [0, 0, 0], "to": [1, 1, 1] } } ])")) ==
          head + ".stands is \"still\"; allowed: fixed, lever, bench.");
}

TEST_CASE("a card may name the mark it is usually used with, and stand in another way") {
    std::string text = with(card(), "\"body\": [ ]", "\"preferred_mark\": \"L\", \"body\": [ ]");
    text = with(text, "\"left\", \"swing\": \"away\"", "\"right\", \"swing\": \"down\"");
    const auto read = read_bender_text(text, "card.json");
    REQUIRE(read.ok());
    CHECK(usual_mark(read.value()) == 1);
    CHECK(read.value().set_up == SetUp{HookHand::right, Swing::down});
}

TEST_CASE("a card that does not fit is refused with file, place, what and allowed") {
    struct Row { const char *was, *is, *says; };
    for (const Row& row : {
             Row{"\"radius\": 0.5625", "\"radius\": 0.09375", "card.json, radius is 0.09375; allowed: 0.094 to 9.374 in."},
             Row{"\"radius\": 0.5625", "\"radius\": \"0.5625\"", "card.json, radius is \"0.5625\"; allowed: 0.094 to 9.374 in."},
             Row{"\"radius\": 0.5625,", "", "card.json, radius is missing; allowed: a value for radius."},
             Row{"\"max_angle\": 180", "\"max_angle\": 361", "card.json, max_angle is 361; allowed: more than 0 and at most 360."},
             Row{"\"stretch\": 0.0", "\"stretch\": 0.6", "card.json, stretch is 0.6; allowed: -0.1 to 0.5."},
             Row{"{ \"name\": \"0\", \"offset\": 0.0 }, { \"name\": \"L\", \"offset\": 0.5625 }, { \"name\": \"R\", \"offset\": 0.3211 }", "",
                 "card.json, marks has 0 entries; allowed: a list of 1 to 20."},
             Row{"\"name\": \"R\"", "\"name\": \"L\"", "card.json, marks[2].name is the name of two marks; allowed: a name for each mark."},
             Row{"\"hook_straight\": 0.75", "\"hook_straight\": -1", "card.json, hook_straight is -1; allowed: 0 to 39.37 in."},
             Row{"\"left\"", "\"middle\"", "card.json, set_up.hook is \"middle\"; allowed: left, right."},
             Row{"\"away\"", "7", "card.json, set_up.swing is 7; allowed: away, toward, up, down."},
             Row{"\"body\": [ ]", "\"body\": [ ], \"preferred_mark\": \"Q\"", "card.json, preferred_mark is \"Q\"; allowed: 0, L, R."},
             Row{"\"body\": [ ]", "\"body\": 3", "card.json, body is 3; allowed: a list of 0 to 200."},
             Row{"\"body\": [ ]", "\"weight\": 3", "card.json, weight is not a key that belongs here; allowed: format, version, id, name, units, tube_od, radius, max_angle, stretch, marks, "
                 "preferred_mark, hook_straight, lever_straight, set_up, body, and keys that begin with x-."},
             Row{"\"units\": \"in\"", "\"units\": \"cm\"", "card.json, units is \"cm\"; allowed: in, mm."},
             Row{"tubewright-bender", "tubewright-job", "card.json, format is \"tubewright-job\"; allowed: \"tubewright-bender\"."},
             Row{"\"version\": 1", "\"version\": 2", "card.json, version is 2, from a newer version of the program; allowed: 1."},
         })
        CHECK(card_sentence(with(card(), row.was, row.is)) == row.says);
}

TEST_CASE("a bad card inside a job is named at its place there") {
    const std::string bad = with(card(), "\"max_angle\": 180", "\"max_angle\": 0");
    CHECK(sentence_of(with(example_job, "\"hand-3/16\"", bad)) == "job.json, bender.max_angle is 0; allowed: more than 0 and at most 360.");
}

}  // namespace tubewright
