// An entry proved with a tape, touch by touch: what is asked, what undo gives back, and what becomes of a slip.

#include <Eigen/Geometry>
#include <catch2/catch.hpp>

#include "bench/samples.h"
#include "state/rules.h"
#include "state/state.h"

using namespace tubewright;
using namespace tubewright::literals;

namespace {

Line as_line(const Draft& job) {
    Line line = line_of({1}, {});
    line.name = job.lines[0].name;
    line.route = route_from(job.lines[0].route).value();
    line.proof = job.lines[0].proof;
    return line;
}

/// A line of 6, 4, 3 and 8 in with three square bends is entered, the second the other way round against the first and
/// the third a quarter to the right; the wire goes on the same way at the second. Keeping it is answered at once.
struct ProofDesk {
    State state;
    std::vector<Request> asked;

    ProofDesk() {
        Draft job;
        job.name = "rail";
        DraftLine line;
        line.name = "line 1";
        line.tube = DraftTube{{{4.7625}, {0.7112}, "stainless-304"}};
        line.bender = DraftBender{"hand-3/16"};
        line.a.fitting = line.b.fitting = "none";
        line.route.runs = {6_in, 4_in, 3_in, 8_in};
        line.route.bends = {{{90}}, {{90}, Angle{180}}, {{90}, Angle{90}}};
        job.lines = {line};
        act(DraftRead{"jobs/rail.json", job});
    }
    void act(const Action& action) {
        StateStep step = apply(std::move(state), action);
        state = std::move(step.state);
        for (const Request& request : step.requests) {
            asked.push_back(request);
            if (const auto* kept = std::get_if<KeepDraft>(&request); kept && kept->shown) act(DraftKept{"jobs/rail.json", "", as_line(*kept->shown), ""});
        }
    }
    /// The wire as it is.
    static Wire truth() {
        Route route;
        route.runs = {6_in, 4_in, 3_in, 8_in};
        route.bends = {{{90}, {0}}, {{90}, {0}}, {{90}, {90}}};
        return {route, {4.7625}, {14}};
    }
    /// What is asked for now is taped on this wire, to the nearest sixteenth.
    void tape(const Wire& wire) {
        const double sixteenths = std::round(apart(shape_of(wire, TapeEdge::centre), state.proving->task.value().span).inch() * 16);
        const int whole = static_cast<int>(sixteenths) / 16, eighths = static_cast<int>(sixteenths) % 16 / 2;
        for (const char digit : std::to_string(whole)) act(Key{std::string(1, digit)});
        const char* keys[] = {"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
        if (eighths > 0) act(Key{keys[eighths]});
        if (static_cast<int>(sixteenths) % 2 == 1) act(Key{"+1/16"});
        act(Next{});
    }
    const DraftLine& line() const { return state.entry->line(); }
    Proving::Stage stage() const { return state.proving->stage; }
};

}  // namespace

TEST_CASE("a bend entered the wrong way round is named, corrected in one touch, and borne out by one reading more") {
    ProofDesk desk;
    desk.act(ProveLine{});
    CHECK(desk.state.looks.screen == Screen::prove);
    while (desk.stage() == Proving::Stage::reading) desk.tape(ProofDesk::truth());
    REQUIRE(desk.state.proving->proof.verdict == ProofVerdict::slip);
    REQUIRE(desk.stage() == Proving::Stage::hand);  // its mirror image reads the same
    const HandQuestion asked = desk.state.proving->hand.value();
    const WireShape seen = shape_of(ProofDesk::truth(), TapeEdge::centre);
    desk.act(AnswerHand{seen.along[asked.before].dot(seen.along[asked.bend].cross(seen.along[asked.bend + 1])) > 0});
    CHECK(desk.state.proving->proof.explanations[0].slip.bend == 1);
    const std::size_t taped = desk.state.proving->readings();
    desk.act(CorrectSlip{});
    CHECK(desk.line().route.bends[1].rotation == Angle{0});
    CHECK(desk.line().proof->taken.readings.size() == taped);
    CHECK_FALSE(desk.line().unfinished);
    CHECK(desk.stage() == Proving::Stage::reading);  // one that was not there when the slip was found
    desk.tape(ProofDesk::truth());
    CHECK(desk.stage() == Proving::Stage::verdict);
    CHECK(desk.state.proving->proof.verdict == ProofVerdict::consistent);
    CHECK(desk.state.entry_proof == ProofStanding::agrees);
    // Undo: the reading, the correction; then all that was taped, and no further.
    desk.act(Undo{});
    CHECK(desk.line().route.bends[1].rotation == Angle{0});
    desk.act(Undo{});
    CHECK(desk.line().route.bends[1].rotation == Angle{180});
    CHECK(desk.state.proving->proof.verdict == ProofVerdict::slip);
    desk.act(Redo{});
    CHECK(desk.line().route.bends[1].rotation == Angle{0});
    for (int i = 0; i < 10; ++i) desk.act(Undo{});
    CHECK_FALSE(desk.line().proof);
    CHECK(desk.state.looks.screen == Screen::prove);
    desk.act(Back{});
    CHECK(desk.state.looks.screen == Screen::draft);
}

TEST_CASE("undo at the proof never takes back what was entered before it") {
    ProofDesk desk;
    desk.act(PickCell{{Cell::What::trim_b, 0}});
    desk.act(Key{"1"});
    desk.act(Next{});
    REQUIRE(desk.line().b.trim == 1_in);
    desk.act(ProveLine{});
    desk.act(Undo{});
    CHECK(desk.line().b.trim == 1_in);
    desk.act(Back{});
    desk.act(Undo{});
    CHECK(desk.line().b.trim == Length{});
}

TEST_CASE("a place out of reach, a reading taped once more, enough, and afresh") {
    ProofDesk desk;
    desk.act(ProveLine{});
    const Span first = desk.state.proving->task->span;
    desk.act(CantReach{});
    CHECK(desk.state.proving->task->span != first);
    desk.tape(ProofDesk::truth());
    const Length read = desk.line().proof->taken.readings[0].read;
    desk.act(EnoughReadings{});
    CHECK(desk.stage() == Proving::Stage::verdict);
    CHECK_FALSE(desk.state.proving->enough);
    desk.act(OneMoreReading{});
    CHECK(desk.stage() == Proving::Stage::reading);
    desk.act(TapeAgain{0});
    desk.act(Back{});  // not again after all
    CHECK_FALSE(desk.state.looks.retake);
    CHECK(desk.state.looks.screen == Screen::prove);
    desk.act(TapeAgain{0});
    desk.act(Key{"7"});
    desk.act(Next{});
    CHECK(desk.line().proof->taken.readings == std::vector<TapeReading>{{desk.line().proof->taken.readings[0].span, 7_in}});
    CHECK(desk.line().proof->twice.size() == 1);
    CHECK(read != 7_in);
    desk.act(ProveAfresh{});
    CHECK_FALSE(desk.line().proof);
    desk.act(Undo{});
    CHECK(desk.line().proof);
}

TEST_CASE("a route that is changed afterwards is unproved, and proved again when the change is taken back") {
    ProofDesk desk;
    desk.act(ProveLine{});
    while (desk.stage() == Proving::Stage::reading) desk.tape(ProofDesk::truth());
    desk.act(Back{});
    CHECK(desk.state.entry_proof == ProofStanding::speaks_against);
    desk.act(PickCell{{Cell::What::run, 0}});
    desk.act(Key{"7"});
    desk.act(Next{});
    CHECK(desk.state.entry_proof == ProofStanding::stale);
    CHECK(no_proof(desk.state) == NoProof::unfinished);  // the person has not said again that this is all
    desk.act(FinishLine{});
    desk.act(ProveLine{});
    CHECK(desk.state.proving->readings() == 0);
    desk.act(Back{});
    desk.act(Undo{});
    desk.act(Undo{});
    CHECK(desk.state.entry_proof == ProofStanding::speaks_against);
    // A copy was never taped.
    desk.act(Redo{});
    desk.act(Redo{});
    desk.act(CopyLine{false});
    CHECK_FALSE(desk.line().proof);
}

TEST_CASE("nothing and 0 are no reading") {
    ProofDesk desk;
    desk.act(ProveLine{});
    desk.act(Next{});
    desk.act(Key{"0"});
    desk.act(Next{});
    CHECK(desk.state.proving->readings() == 0);
    desk.act(SetUnit{Unit::mm});
    for (const char* key : {"1", "0", "0"}) desk.act(Key{key});
    desk.act(Next{});
    CHECK(desk.line().proof->taken.readings[0].read == 100_mm);
}

TEST_CASE("of a tube that is cut nothing is proved any more, from either side") {
    ProofDesk desk;
    desk.state.work.lines[line_key("rail", "line 1")].cut = true;
    CHECK(no_proof(desk.state) == NoProof::cut);
    desk.act(ProveLine{});
    CHECK(desk.state.looks.screen == Screen::draft);
}

TEST_CASE("from the line's page the draft is opened at that line, and Back leads there again") {
    ProofDesk desk;
    Job job;
    job.unit = Unit::inch;
    job.lines = {line_of({5, 5}, {{90, 0}}), as_line(desk.state.entry->page.job)};
    desk.act(JobRead{"rail", "jobs/rail.json", job});
    desk.act(OpenLine{"line 1"});
    desk.asked.clear();
    desk.act(ProveLine{});
    CHECK(desk.asked == std::vector<Request>{ReadDraft{"jobs/rail.json", "line 1"}});
    desk.act(DraftRead{"jobs/rail.json", desk.state.entry->page.job, "line 1"});
    REQUIRE(desk.state.looks.screen == Screen::prove);
    CHECK(desk.line().name == "line 1");
    desk.act(Back{});  // nothing was taped: nothing to read again
    CHECK(desk.state.looks.screen == Screen::line);
    desk.act(DraftRead{"jobs/rail.json", desk.state.entry->page.job, "line 1"});
    desk.tape(ProofDesk::truth());
    desk.asked.clear();
    desk.act(Back{});
    CHECK(desk.asked == std::vector<Request>{ReadJob{"jobs/rail.json", "line 1"}});
    const std::int64_t question = desk.state.orders[1].question;
    job.lines[1].proof = desk.line().proof;
    desk.act(JobRead{"rail", "jobs/rail.json", job, "line 1"});
    CHECK(desk.state.looks.screen == Screen::line);
    CHECK(desk.state.line == 1);
    CHECK(desk.state.proofs == std::vector<ProofStanding>{ProofStanding::none, ProofStanding::speaks_against});  // end to end alone tells
    CHECK(desk.state.orders[1].question == question);  // a reading changes no order
}
