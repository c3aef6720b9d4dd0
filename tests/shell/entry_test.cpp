// Lines entered by finger on the real screens, each number where it was read off the tape, and read back from the disk.

#include <catch2/catch.hpp>

#include <fstream>
#include <iostream>

#include "shell/at_screen.h"
#include "shell/job_lines.h"
#include "store/draft_file.h"

using namespace tubewright;

namespace {

constexpr const char* new_job_file = "new-job-2026-11-25";

std::filesystem::path own_job(const TemporaryHome& home) { return home.path() / "jobs" / (std::string(new_job_file) + ".json"); }

/// Route, ends, tube and bender; the names differ.
void check_same_line(const Line& entered, const Line& wanted) {
    CHECK(entered.route == wanted.route);
    CHECK(entered.a == wanted.a);
    CHECK(entered.b == wanted.b);
    // The library says the size in mm, the file in inches: the last bit may differ.
    CHECK(entered.tube.od.mm == Approx(wanted.tube.od.mm).epsilon(1e-12));
    CHECK(entered.tube.wall.mm == Approx(wanted.tube.wall.mm).epsilon(1e-12));
    CHECK(entered.tube.material == wanted.tube.material);
    CHECK(entered.bender == wanted.bender);
    CHECK(entered.material == wanted.material);
    CHECK(entered.service == wanted.service);
}

const std::initializer_list<const char*> brake_line{"new-job", "answer-brake", "answer-0", "answer-stainless-304", "answer-hand-3/16", "answer-flare-37-single"};

}  // namespace

TEST_CASE("a line of two bends is entered in at most 25 taps") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-outside"});
    at.tap({"key-5", "key-1/2", "next", "angle-90°"});
    at.tap({"key-6", "key-1/4", "next", "angle-60°", "turn-90"});
    at.tap({"key-9", "next", "next"});
    std::cout << "2 bends: " << at.taps << " taps\n";
    CHECK(at.taps <= 25);
    const Line line = line_in(own_job(home), "line 1");
    CHECK(line.route == Route{RouteForm::legs, TapeEdge::outside, {{5.5 * 25.4}, {6.25 * 25.4}, {9 * 25.4}}, {{{90}, {0}}, {{60}, {90}}}});
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("the trailer's frame run of seven bends is entered in its own numbers in at most 70 taps") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-moves"});
    at.tap({"key-1", "key-8", "way-forward", "next", "key-3", "way-left", "next", "key-2", "key-2", "way-forward", "next"});
    at.tap({"key-3", "key-1/2", "way-up", "next", "key-9", "way-forward", "next", "key-5", "way-down", "next", "key-8", "way-right", "next"});
    at.tap({"key-4", "key-1/2", "way-back", "key-4", "key-1/2", "way-down", "next", "next"});
    at.tap({"trim-B", "key-1/2", "next"});
    std::cout << "7 bends: " << at.taps << " taps\n";
    CHECK(at.taps <= 70);
    check_same_line(line_in(own_job(home), "line 1"), line_in(shipped_trailer, "frame run"));
    at.tap({"next"});  // and to the bench
    CHECK(at.desk.state().looks.screen == Screen::lines);
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("undo leads touch by touch back to the first question, on the disk too, and redo forward again") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-centre", "key-5", "next", "angle-90°", "key-4", "next"});
    const Draft whole = read_draft(own_job(home), shipped_library()).value();
    int back = 0;
    while (at.screen.find("undo").enabled && back < 100) {
        at.tap("undo");
        ++back;
    }
    CHECK(back == 9);  // service, tube, material, bender, ends, form, leg, bend, leg
    CHECK(at.entry().page.ask == Ask::service);
    CHECK_FALSE(read_draft(own_job(home), shipped_library()).value().tube);
    while (at.screen.has("redo")) at.tap("redo");
    CHECK(read_draft(own_job(home), shipped_library()).value() == whole);
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("after the power was cut in the middle of a wire the shelf has it, and entering goes on where it was") {
    TemporaryHome home;
    {
        AtScreen before(home);
        before.tap(brake_line);
        before.tap({"answer-legs-inside", "key-5", "key-5/8", "key-+1/16", "next", "angle-45°"});
    }
    AtScreen at(home);
    CHECK(at.desk.state().looks.screen == Screen::shelf);
    at.open_on_shelf(std::string("job-") + new_job_file);
    CHECK(at.desk.state().looks.screen == Screen::draft);
    at.tap({"next"});
    CHECK(at.entry().page.cell == Cell{Cell::What::run, 1});
    at.tap({"key-7", "next", "next"});
    const Line line = line_in(own_job(home), "line 1");
    CHECK(line.route == Route{RouteForm::legs, TapeEdge::inside, {{5.6875 * 25.4}, {7 * 25.4}}, {{{45}, {0}}}});
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("a shipped job is changed in a copy of one's own") {
    TemporaryHome home;
    AtScreen at(home);
    at.open_on_shelf("job-trailer-brakes-stainless");
    at.tap({"change-job"});
    CHECK_FALSE(std::filesystem::exists(home.path() / "jobs" / "trailer-brakes-stainless.json"));  // only looked at
    at.tap({"trim-A", "key-2", "next"});
    const auto copy = home.path() / "jobs" / "trailer-brakes-stainless.json";
    CHECK(line_in(copy, "actuator to frame").a.trim == Length{50.8});
    CHECK(line_in(shipped_trailer, "actuator to frame").a.trim == Length{});
    CHECK(line_in(copy, "frame run") == line_in(shipped_trailer, "frame run"));
}

TEST_CASE("a line is copied in the mirror, and taken out again by a long touch only") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-outside", "key-5", "next", "angle-90°", "key-6", "next", "angle-60°", "turn-90", "key-9", "next", "next"});
    at.tap({"lines", "copy-mirror"});
    CHECK(line_in(own_job(home), "line 1").route.bends[1].rotation == Angle{90});
    CHECK(line_in(own_job(home), "line 2").route.bends[1].rotation == Angle{-90});
    at.tap({"lines", "take-out"});
    CHECK(at.entry().page.job.lines.size() == 2);
    at.screen.hold("take-out", 1.0);
    CHECK(at.entry().page.job.lines.size() == 1);
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("names, pieces, a note and tube of one's own size by finger alone") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap({"new-job", "answer-brake"});
    while (!at.screen.has("other-size")) at.tap("more");
    at.tap({"other-size", "key-.", "key-1", "key-9", "next", "key-.", "key-0", "key-2", "key-8", "next", "answer-stainless-304"});
    while (!at.screen.has("answer-flare-37-single")) at.tap(at.screen.has("answer-hand-3/16") ? "answer-hand-3/16" : "more");
    at.tap({"answer-flare-37-single", "answer-legs-outside", "key-5", "next", "angle-90°", "key-6", "next", "next"});
    at.tap({"about", "line-name", "wipe", "letter-r", "letter-e", "letter-a", "letter-r", "letter-space", "other-keys", "other-keys", "letter-2", "next"});
    at.tap({"pieces", "key-4", "next", "job-name", "wipe", "other-keys", "letter-V", "letter-a", "letter-n", "next", "line-note", "letter-N", "letter-o", "next", "back"});
    const Draft job = read_draft(own_job(home), shipped_library()).value();
    CHECK(job.name == "Van");
    CHECK(job.lines[0].name == "rear 2");
    CHECK(job.lines[0].quantity == 4);
    CHECK(job.lines[0].note == "No");
    CHECK(job.tube->tube.od.inch() == Approx(0.19));
    CHECK(job.tube->tube.wall.inch() == Approx(0.028));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("what is wrong with a leg is mended by one touch, where it is said") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-centre", "key-6", "next", "angle-90°", "key-1", "next", "angle-90°", "turn-180", "key-6", "next"});
    REQUIRE(at.screen.has("remedy"));
    at.tap({"remedy"});
    CHECK_FALSE(at.screen.has("remedy"));
    CHECK(at.entry().line().route.runs[1].mm > 25.4);
    at.tap({"undo"});
    CHECK(at.entry().line().route.runs[1] == Length{25.4});
    CHECK(at.screen.has("remedy"));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("a line's points are written beside what is there, read in again as another line, and put right by keypad") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-centre", "key-6", "next", "angle-90°", "key-4", "next", "next"});
    at.tap({"about", "write-points", "dismiss", "write-points", "dismiss", "back"});
    CHECK(std::filesystem::exists(home.path() / "points" / "new-job-2026-11-25-line-1.csv"));
    CHECK(std::filesystem::exists(home.path() / "points" / "new-job-2026-11-25-line-1-2.csv"));
    std::ofstream(home.path() / "points" / "torn.csv") << "x,y\n1,2\n";
    at.tap({"lines", "from-file", "answer-file-torn.csv"});
    CHECK(at.screen.says("torn.csv, line 1 has no column z"));
    at.tap({"dismiss", "answer-file-new-job-2026-11-25-line-1.csv"});
    CHECK_FALSE(at.screen.find("answer-mm").enabled);  // the table says inches
    at.tap({"answer-in", "next", "route", "next"});
    CHECK(at.entry().line().route.form == RouteForm::points);
    const Line first = line_in(own_job(home), "line 1"), second = line_in(own_job(home), "line 2");
    REQUIRE(second.route.runs.size() == first.route.runs.size());
    for (std::size_t i = 0; i < first.route.runs.size(); ++i) CHECK(second.route.runs[i].mm == Approx(first.route.runs[i].mm));
    at.tap({"route", "cell-9", "key-5", "next"});
    CHECK(at.entry().line().route.points[2][2].inch() == Approx(5));
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("the picture is turned and enlarged beside the numbers, and nothing of the line changes by it") {
    TemporaryHome home;
    AtScreen at(home);
    at.tap(brake_line);
    at.tap({"answer-legs-outside", "key-5", "next", "angle-90°", "key-6", "next"});
    const Draft before = at.entry().page.job;
    at.screen.wait(0.4);
    const ImVec2 from = at.screen.find("picture").box().centre();
    for (int i = 0; i < 10; ++i) at.screen.put_finger({from.x + static_cast<float>(8 * i), from.y});
    at.screen.lift_finger();
    at.screen.frame();
    CHECK(at.entry().orbit);
    at.tap({"picture", "straight-on", "next", "other"});
    CHECK_FALSE(at.entry().orbit);
    CHECK(at.entry().page.job == before);
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}

TEST_CASE("a notice leaves the pad in its place") {
    TemporaryHome home;
    AtScreen at(home);
    at.open_on_shelf("job-trailer-brakes-stainless");
    at.tap({"change-job", "lines", "line-2", "route", "cells-before"});
    const ImVec2 before = at.screen.find("way-up").box().min;
    at.tap({"key-9", "way-up"});  // the first change makes a copy of one's own, and says so
    REQUIRE(at.screen.has("dismiss"));
    CHECK(at.screen.find("way-up").box().min.x == before.x);
    CHECK(at.screen.find("way-up").box().min.y == before.y);
    at.tap({"key-8", "way-up"});
    at.tap({"dismiss"});
    INFO(all_of(at.faults));
    CHECK(at.faults.empty());
}
