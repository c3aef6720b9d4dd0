#include <catch2/catch.hpp>

#include "present/check_text.h"
#include "present/rescue_words.h"
#include "present/words.h"
#include "state/sample_state.h"

namespace tubewright {
namespace {

const Speech inch_speech{{Unit::inch, 16}, nullptr};

std::vector<Fact> every_fact() {
    return {NoRoomInBender{1, true, inches(0.5), inches(0.75), 0, std::nullopt},
            CornersOverlap{0, 1, std::nullopt, inches(0.5)},
            EndTooShort{End::B, 2, inches(1), inches(1.25)},
            AngleBeyondBender{0, {185}, {175}, {180}},
            RadiusTooTight{inches(0.5), inches(0.5625), true},
            WallTooHeavy{End::A, inches(0.049), inches(0.035)},
            HitsItself{1, 4, inches(-0.1), true},
            LongerThanStick{inches(250), inches(240)},
            DegenerateCorner{0, {175}},
            TrappedPieces{0, End::A, {"Tube nut", "Sleeve"}},
            WrongGroove{inches(0.25), inches(0.1875)},
            MarkOffStraight{0, "L"},
            NoBend{},
            SmallAngle{1, {10}},
            SingleFlareOnBrake{End::A},
            NoOrderPossible{3, 5, End::A, inches(0.375), "bench top"},
            OrderNotLooked{false},
            HitsAsItStands{0, {11, End::A}, {Obstacle::When::swept, 0, std::nullopt, 0, {45}, inches(1.5)}, "bench top", std::nullopt},
            LookedAgain{}};
}

}  // namespace

TEST_CASE("every fact says what is wrong with the numbers, and what to do") {
    REQUIRE(every_fact().size() == std::variant_size_v<Fact>);
    for (std::size_t i = 0; i < every_fact().size(); ++i) {
        const Fact fact = every_fact()[i];
        INFO("fact " << i);
        REQUIRE(fact.index() == i);
        const Words said = words(fact, inch_speech);
        CHECK_FALSE(said.what.empty());
        CHECK(said.to_do.back() == '.');
        for (const char* empty_word : {"error", "invalid", "failed"}) CHECK((said.what + said.to_do).find(empty_word) == std::string::npos);
        CHECK(sentence({Severity::stop, "code", std::nullopt, fact}, inch_speech).size() <= 160);
    }
}

TEST_CASE("a straight too short to grip: two numbers, the place, and the missing piece") {
    // 3/4 wanted, 1/2 there: 1/4 is missing.
    const Words said = words(NoRoomInBender{1, true, inches(0.5), inches(0.75), 0, std::nullopt}, inch_speech);
    CHECK(said.what == "the straight next to bend 1 is 1/2\", the bender's hook side needs 3/4\"");
    CHECK(said.where == "bend 2");
    CHECK(said.to_do == "Lengthen it by 1/4\", or take another bender.");
    const Words metric = words(NoRoomInBender{1, false, Length{10}, Length{25.5}, std::nullopt, End::B}, {{Unit::mm, 16}, nullptr});
    CHECK(metric.what == "the straight at end B is 10 mm, the bender's lever side needs 25.5 mm");
    CHECK(metric.to_do == "Lengthen it by 15.5 mm, or leave more trim there.");
}

TEST_CASE("a straight of less than nothing is said as an overlap, never as a length below zero") {
    // The corners want 3/4 more than there is.
    CHECK(words(NoRoomInBender{1, true, inches(-0.75), inches(0.75), 0, std::nullopt}, inch_speech).what ==
          "the corners next to bend 1 overlap by 3/4\", the bender's hook side needs 3/4\"");
    CHECK(words(EndTooShort{End::A, 0, inches(-0.75), inches(1)}, inch_speech).what == "the corners up to bend 1 overlap by 3/4\", flare, nut and sleeve need 1\"");
}

TEST_CASE("what is slid on counts into what the bender needs, and is said") {
    CHECK(words(NoRoomInBender{1, true, inches(1), inches(1.75), std::nullopt, End::A, true}, inch_speech).what ==
          "the straight at end A is 1\", the bender's hook side and the pieces slid on need 1 3/4\"");
}

TEST_CASE("what the tube hits as the bender stands now, and how it could stand") {
    const Obstacle obstacle{Obstacle::When::swept, 0, std::nullopt, 0, {45}, inches(0.5)};
    const Finding finding{Severity::stop, "hits-as-it-stands", 2, HitsAsItStands{0, {2, End::A}, obstacle, "bench top", SetUp{HookHand::left, Swing::away}}};
    CHECK(sentence(finding, inch_speech) == "As the bender stands, bend 3 would hit the bench top by 1/2\", with the lever at 45°. Stand the bender with the hook on your left, the lever swung away from you.");
}

TEST_CASE("what the tube hits by a card that was changed after the cut") {
    const Obstacle obstacle{Obstacle::When::swept, 0, std::nullopt, 0, {45}, inches(0.5)};
    const Finding finding{Severity::caution, "hits-as-it-stands", 2, HitsAsItStands{0, {2, End::A}, obstacle, "bench top", std::nullopt, true}};
    CHECK(sentence(finding, inch_speech) == "By the bender's new measures, which came after the cut, bend 3 would hit the bench top by 1/2\", with the lever at 45°. No stance is free of it: go slowly, stop before they touch.");
}

namespace {

Words words_of_rest(OtherRest::Is is, const std::vector<Placing>& now, const std::vector<Placing>& then, std::optional<SetUp> stance = {}, std::optional<SetUp> free = {}) {
    const Obstacle obstacle{Obstacle::When::swept, 0, std::nullopt, 0, {45}, inches(0.5)};
    return words(HitsAsItStands{0, {2, End::A}, obstacle, "bench top", free, false, OtherRest{is, now, then, {}, stance}}, inch_speech);
}

}  // namespace

TEST_CASE("another order of what is left is told by what changes: one bend sooner, another end on the hook, else the whole row") {
    const Placing three{2, End::A}, four{3, End::A}, five{4, End::A};
    using Is = OtherRest::Is;
    CHECK(words_of_rest(Is::found, {three, four, five}, {five, three, four}).to_do == "Make bend 5 before bend 3: nothing is in the way then.");
    CHECK(words_of_rest(Is::found, {three, four, five}, {three, five, four}).to_do == "Make bend 5 before bend 4: nothing is in the way then.");
    CHECK(words_of_rest(Is::found, {three, four}, {three, {3, End::B}}).to_do == "Make bend 4 with end B on the hook: nothing is in the way then.");
    CHECK(words_of_rest(Is::found, {three, four, five}, {five, four, three}).to_do == "Make what is left in the order bend 5, 4 and 3: nothing is in the way then.");
    CHECK(words_of_rest(Is::found, {three, four}, {four, three}, {}, SetUp{HookHand::left, Swing::away}).to_do ==
          "Stand the bender with the hook on your left, the lever swung away from you. Or make bend 4 before bend 3: nothing is in the way then.");
    CHECK(words_of_rest(Is::looking, {}, {}).to_do == "No stance is free of it: go slowly, stop before they touch. Looking whether what is left goes in another order.");
    CHECK(words_of_rest(Is::none, {}, {}, SetUp{HookHand::right, Swing::up}).to_do == "Stand the bender with the hook on your right, the lever swung up: then what is left goes in another order.");
    CHECK(words_of_rest(Is::none, {}, {}).to_do == "No other order and no stance is free of it: go slowly, stop before they touch, or say that it went wrong.");
}

TEST_CASE("what is missing is rounded up on the tape: whoever gives so much has given enough, or is told that it is the least") {
    // 0.9 wanted, 0.36 there: 0.54 is missing, a little over 1/2 and under 9/16.
    NoRoomInBender fact{1, true, inches(0.36), inches(0.9), 0, std::nullopt};
    CHECK(words(fact, inch_speech).to_do == "Lengthen it by 9/16\", or take another bender.");
    fact.no_order = true;
    CHECK(words(fact, inch_speech).to_do == "Lengthen it by at least 9/16\", or take another bender.");
    fact.enough = inches(0.75);
    CHECK(words(fact, inch_speech).to_do == "Lengthen it by 3/4\", or take another bender.");
}

TEST_CASE("what only comes too near is not said to be hit, and how near is said") {
    // handling_room is 1 mm: 0.039 in, 1/16 on this tape.
    CHECK(words(NoOrderPossible{1, 2, End::A, Length{0.2}, "vise"}, inch_speech).what == "no order of bends works; after 1 bend it would come nearer than 1/16\" to the vise");
    CHECK(words(NoOrderPossible{1, 2, End::A, Length{0.2}, "vise"}, {{Unit::mm, 16}, nullptr}).what == "no order of bends works; after 1 bend it would come nearer than 1 mm to the vise");
    CHECK(words(NoOrderPossible{0, 2, End::A, inches(0.375), ""}, inch_speech).what == "no order of bends works: it would hit the tube itself by 3/8\"");
}

TEST_CASE("where not every way out was tried to its end it is said, with a way and without one") {
    NoOrderPossible fact{1, 2, End::A, inches(0.375), "bench top"};
    CHECK(words(fact, inch_speech).to_do == "Look at the order of bends for a way out.");
    fact.every_way = false;
    CHECK(words(fact, inch_speech).to_do == "No way out was found. Not every way was tried.");
    fact.ways = {LongerStraight{1, inches(0.5)}};
    CHECK(words(fact, inch_speech).to_do.rfind("A way out: ", 0) == 0);
    CHECK(words(fact, inch_speech).to_do.find("Not every way was tried.") != std::string::npos);
}

TEST_CASE("a bend with no order says which straight is short and by how much; finer where the tape would show none") {
    NoOrderPossible fact{1, 2, End::A, std::nullopt, "", {}, StraightShort{false, inches(0.5), inches(0.9)}};
    CHECK(words(fact, inch_speech).what == "no order of bends works; after 1 bend it would have 1/2\" of straight on the lever side and needs 7/8\"");
    fact.short_of->has = inches(0.89);
    CHECK(words(fact, inch_speech).what == "no order of bends works; after 1 bend it would have 0.890\" of straight on the lever side and needs 0.900\"");
    fact.short_of.reset();
    CHECK(words(fact, inch_speech).what == "no order of bends works; after 1 bend it would have no straight place for its ink mark");
}

TEST_CASE("stretches that come too close are named as the person counts them") {
    // 2k is the straight after bend k, 2k - 1 is bend k: 1 is bend 1, 4 is the straight after bend 2.
    CHECK(words(HitsItself{1, 4, {}, true}, inch_speech).where == "bend 1 and the straight after bend 2");
    CHECK(words(HitsItself{0, 5, {}, true}, inch_speech).where == "the straight at end A and bend 3");
}

TEST_CASE("one sentence for the machine form of the sheet") {
    const Sheet sheet = bend_sheet(sample_job().lines[2]);
    REQUIRE(stopped(sheet));
    const std::string message = finding_message(sheet.findings[0], sheet, Unit::inch);
    CHECK(message.rfind("Bend 1 and bend 2: no straight is left between them, ", 0) == 0);
}

TEST_CASE("a job's findings are listed line by line with their codes, and counted") {
    std::vector<Sheet> sheets;
    for (const Line& line : sample_job().lines) sheets.push_back(bend_sheet(line));
    const std::string said = check_text(sample_job(), sheets, {Unit::inch, 16});
    CHECK(said.find("stop [corners-overlap] Bend 1 and bend 2") != std::string::npos);
    CHECK(said.find("left rear, cut to ") != std::string::npos);
    CHECK(said.find("nothing found") != std::string::npos);
    CHECK(said.find("3 of 4 lines can be made as they stand.") != std::string::npos);
}

TEST_CASE("a check says what the tube allows, and where no limit of the flare's wall is known") {
    Job job = sample_job();
    job.lines.resize(1);
    Line& line = job.lines[0];
    line.tube.od = inches(0.1875);
    line.bender.radius = inches(0.5625);
    for (LineEnd* end : {&line.a, &line.b}) {
        end->fitting.flared = true;
        end->fitting.heaviest_wall = std::nullopt;
    }
    line.b.fitting.heaviest_wall = inches(0.028);
    const auto checked = [&](const Tape& tape) { return check_text(job, {bend_sheet(line)}, tape); };
    // FAA-H-8083-30, chapter 7: dash 3 is 3/16 in; 75 % of 0.1875 in is 0.1406. 0.1875 / (2 * 0.5625) is a sixth.
    const std::string said = checked({Unit::inch, 16});
    CHECK(said.find("  3/16\" OD (dash 3): the outside of its bends is stretched by 16.7 %, no bend may be flatter than 0.141\" (75 % of the diameter)\n") != std::string::npos);
    const std::string unknown = ": how heavy a wall this flare takes is not known here. Ask the maker of the flaring tool.\n";
    CHECK(said.find("[no-wall-limit] End A" + unknown) != std::string::npos);
    CHECK(said.find("[no-wall-limit] End B") == std::string::npos);
    CHECK(said.find("nothing found") == std::string::npos);
    line.a.fitting.flared = false;
    CHECK(checked({Unit::inch, 16}).find("no-wall-limit") == std::string::npos);
    line.tube.od = Length{4.75};  // no whole sixteenth: no dash number
    CHECK(checked({Unit::mm, 16}).find("  4.75 mm OD: the outside") != std::string::npos);
    line.route.bends.clear();
    line.route.runs.resize(1);
    CHECK(checked({Unit::mm, 16}).find("flatter") == std::string::npos);
}

TEST_CASE("days and names in the middle of a sentence") {
    CHECK(day_word("2026-11-05") == "5 Nov");
    CHECK(day_word("someday") == "someday");
    CHECK(day_word("2026-13-05") == "2026-13-05");
    CHECK(piece_list({"Tube nut", "Sleeve"}) == "tube nut and sleeve");
    CHECK(piece_list({"AN nut"}) == "AN nut");
    CHECK(capital("end A") == "End A");
}

TEST_CASE("what saves a tube in bench words, and every limit that bars it") {
    const Sheet sheet = bend_sheet(sample_job().lines[0]);  // 90, and 45 a quarter round from it
    const Tape sixteenths{Unit::inch, 16}, mm{Unit::mm, 16};
    const auto change = [&](RescueNumber number, std::size_t bend, double by, const Tape& tape) {
        const bool is_angle = number == RescueNumber::angle || number == RescueNumber::turn;
        return change_words({number, bend, End::B, {is_angle ? by : 0}, {is_angle ? 0 : by}}, sheet, tape);
    };
    CHECK(change(RescueNumber::angle, 1, -1.5, sixteenths) == "Bend 2: to 43 1/2° instead of 45°");
    CHECK(change(RescueNumber::mark, 1, 25.4 / 16, sixteenths) == "Move mark 2 by 1/16\" towards B");
    CHECK(change(RescueNumber::mark, 1, -25.4 / 64, sixteenths) == "Move mark 2 by 1/64\" towards A");  // finer than the tape
    CHECK(change(RescueNumber::mark, 1, -4.4, mm) == "Move mark 2 by 4.5 mm towards A");               // as its own screen says it
    CHECK(change(RescueNumber::cut_off, 0, 25.4 / 8, sixteenths) == "Cut 1/8\" more off end B");
    CHECK(change(RescueNumber::cut_off, 0, -3, mm) == "Cut 3 mm less off end B");
    // Made after bend 1, bend 2 stands a quarter round from it; made before it, it is turned by the top line, a quarter as well.
    CHECK(change(RescueNumber::turn, 1, 2, sixteenths) == "Turn bend 2 by 2° more");
    CHECK(change(RescueNumber::turn, 1, -2, sixteenths) == "Turn bend 2 by 2° less");

    RescueWay way;
    for (const std::size_t bend : {0u, 1u}) {
        way.changes.push_back({RescueNumber::angle, bend, End::A, {1}, {}});
        way.changes.push_back({RescueNumber::turn, bend, End::A, {1}, {}});
    }
    CHECK(way_words(way, sheet, sixteenths) == "4 numbers change: the angles of bends 1 and 2, the turns of bends 1 and 2");

    CHECK(off_words({{inches(1.0 / 32), {1}}, {{}, {0.1}}, {}}, sixteenths) == "A 1/32\" and 1°, B as wanted");
    CHECK(end_words(End::A, {inches(1.0 / 32), {1}}, sixteenths) == "A 1/32\" and 1° off");
    CHECK(end_words(End::B, {{}, {0.1}}, sixteenths) == "B as wanted");
    CHECK(round_words({90}, sixteenths) == "90° to the right");
    CHECK(round_words({-88.4}, sixteenths) == "88 1/2° to the left");
    CHECK(round_words({270}, mm) == "90° to the left");
    CHECK(round_words({0.1}, mm) == "the same way round");
    CHECK(round_words({-179.9}, mm) == "the other way round");
    Rescue found;
    found.nearest = {{inches(0.25), {3}}, {inches(0.25), {}}, {}};
    found.bar_bend = 1, found.bar_end = End::A, found.lacking = inches(0.125);
    const std::vector<std::pair<RescueBar, std::string>> said{
        {RescueBar::nothing_left, "No bend is still to come that could make it up."},
        {RescueBar::out_of_reach, "The bends still to come can't make it up: at the best A 1/4\" and 3°, B 1/4\" would be off."},
        {RescueBar::bender_angle, "Bend 2 would have to go past 180°, where the bender stops."},
        {RescueBar::straight, "Too little straight tube at bend 2: 1/8\" is missing."},
        {RescueBar::length, "The tube is too short at end A: 1/8\" is missing."},
        {RescueBar::in_the_way, "The bends still to come could make it up, but the tube would hit the bender or itself, or a mark would lie on a bend."}};
    for (const auto& [bar, words] : said) {
        found.bar = bar;
        CHECK(bar_words(found, sheet, sixteenths) == words);
    }

    const std::vector<Sheet> sheets{sheet, bend_sheet(sample_job().lines[1])};
    const StillGood good{{{1, true, 0, {}, {}}}, {{End::B, inches(9.5), {1}}}};
    const std::vector<TextView> notes = good_for_words(good, sheets, sixteenths);
    REQUIRE(notes.size() == 2);
    CHECK(notes[0].text == "It would still make left rear: what is bent is its bend 1 on, ends A and B changed over.");
    CHECK(notes[1].text == "The straight 9 1/2\" at end B is enough for left rear.");
    CHECK(good_for_words({}, sheets, sixteenths).empty());
}

}  // namespace tubewright
