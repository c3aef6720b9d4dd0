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
struct Wire {
    State state;
    std::vector<Request> asked;

    Wire() {
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
    Wire wire;
    wire.act(ProveLine{});
    CHECK(wire.state.looks.screen == Screen::prove);
    while (wire.stage() == Proving::Stage::reading) wire.tape(Wire::truth());
    REQUIRE(wire.state.proving->proof.verdict == ProofVerdict::slip);
    REQUIRE(wire.stage() == Proving::Stage::hand);  // its mirror image reads the same
    const HandQuestion asked = wire.state.proving->hand.value();
    const WireShape seen = shape_of(Wire::truth(), TapeEdge::centre);
    wire.act(AnswerHand{seen.along[asked.before].dot(seen.along[asked.bend].cross(seen.along[asked.bend + 1])) > 0});
    CHECK(wire.state.proving->proof.explanations[0].slip.bend == 1);
    const std::size_t taped = wire.state.proving->readings();
    wire.act(CorrectSlip{});
    CHECK(wire.line().route.bends[1].rotation == Angle{0});
    CHECK(wire.line().proof->taken.readings.size() == taped);
    CHECK_FALSE(wire.line().unfinished);
    CHECK(wire.stage() == Proving::Stage::reading);  // one that was not there when the slip was found
    wire.tape(Wire::truth());
    CHECK(wire.stage() == Proving::Stage::verdict);
    CHECK(wire.state.proving->proof.verdict == ProofVerdict::consistent);
    CHECK(wire.state.entry_proof == ProofStanding::agrees);
    // Undo: the reading, the correction; then all that was taped, and no further.
    wire.act(Undo{});
    CHECK(wire.line().route.bends[1].rotation == Angle{0});
    wire.act(Undo{});
    CHECK(wire.line().route.bends[1].rotation == Angle{180});
    CHECK(wire.state.proving->proof.verdict == ProofVerdict::slip);
    wire.act(Redo{});
    CHECK(wire.line().route.bends[1].rotation == Angle{0});
    for (int i = 0; i < 10; ++i) wire.act(Undo{});
    CHECK_FALSE(wire.line().proof);
    CHECK(wire.state.looks.screen == Screen::prove);
    wire.act(Back{});
    CHECK(wire.state.looks.screen == Screen::draft);
}

TEST_CASE("undo at the proof never takes back what was entered before it") {
    Wire wire;
    wire.act(PickCell{{Cell::What::trim_b, 0}});
    wire.act(Key{"1"});
    wire.act(Next{});
    REQUIRE(wire.line().b.trim == 1_in);
    wire.act(ProveLine{});
    wire.act(Undo{});
    CHECK(wire.line().b.trim == 1_in);
    wire.act(Back{});
    wire.act(Undo{});
    CHECK(wire.line().b.trim == Length{});
}

TEST_CASE("a place out of reach, a reading taped once more, enough, and afresh") {
    Wire wire;
    wire.act(ProveLine{});
    const Span first = wire.state.proving->task->span;
    wire.act(CantReach{});
    CHECK(wire.state.proving->task->span != first);
    wire.tape(Wire::truth());
    const Length read = wire.line().proof->taken.readings[0].read;
    wire.act(EnoughReadings{});
    CHECK(wire.stage() == Proving::Stage::verdict);
    CHECK_FALSE(wire.state.proving->enough);
    wire.act(OneMoreReading{});
    CHECK(wire.stage() == Proving::Stage::reading);
    wire.act(TapeAgain{0});
    wire.act(Back{});  // not again after all
    CHECK_FALSE(wire.state.looks.retake);
    CHECK(wire.state.looks.screen == Screen::prove);
    wire.act(TapeAgain{0});
    wire.act(Key{"7"});
    wire.act(Next{});
    CHECK(wire.line().proof->taken.readings == std::vector<TapeReading>{{wire.line().proof->taken.readings[0].span, 7_in}});
    CHECK(wire.line().proof->twice.size() == 1);
    CHECK(read != 7_in);
    wire.act(ProveAfresh{});
    CHECK_FALSE(wire.line().proof);
    wire.act(Undo{});
    CHECK(wire.line().proof);
}

TEST_CASE("a route that is changed afterwards is unproved, and proved again when the change is taken back") {
    Wire wire;
    wire.act(ProveLine{});
    while (wire.stage() == Proving::Stage::reading) wire.tape(Wire::truth());
    wire.act(Back{});
    CHECK(wire.state.entry_proof == ProofStanding::speaks_against);
    wire.act(PickCell{{Cell::What::run, 0}});
    wire.act(Key{"7"});
    wire.act(Next{});
    CHECK(wire.state.entry_proof == ProofStanding::stale);
    CHECK(no_proof(wire.state) == NoProof::unfinished);  // the person has not said again that this is all
    wire.act(FinishLine{});
    wire.act(ProveLine{});
    CHECK(wire.state.proving->readings() == 0);
    wire.act(Back{});
    wire.act(Undo{});
    wire.act(Undo{});
    CHECK(wire.state.entry_proof == ProofStanding::speaks_against);
    // A copy was never taped.
    wire.act(Redo{});
    wire.act(Redo{});
    wire.act(CopyLine{false});
    CHECK_FALSE(wire.line().proof);
}

TEST_CASE("nothing and 0 are no reading") {
    Wire wire;
    wire.act(ProveLine{});
    wire.act(Next{});
    wire.act(Key{"0"});
    wire.act(Next{});
    CHECK(wire.state.proving->readings() == 0);
    wire.act(SetUnit{Unit::mm});
    for (const char* key : {"1", "0", "0"}) wire.act(Key{key});
    wire.act(Next{});
    CHECK(wire.line().proof->taken.readings[0].read == 100_mm);
}

TEST_CASE("of a tube that is cut nothing is proved any more, from either side") {
    Wire wire;
    wire.state.work.lines[line_key("rail", "line 1")].cut = true;
    CHECK(no_proof(wire.state) == NoProof::cut);
    wire.act(ProveLine{});
    CHECK(wire.state.looks.screen == Screen::draft);
}

TEST_CASE("from the line's page the draft is opened at that line, and Back leads there again") {
    Wire wire;
    Job job;
    job.unit = Unit::inch;
    job.lines = {line_of({5, 5}, {{90, 0}}), as_line(wire.state.entry->page.job)};
    wire.act(JobRead{"rail", "jobs/rail.json", job});
    wire.act(OpenLine{"line 1"});
    wire.asked.clear();
    wire.act(ProveLine{});
    CHECK(wire.asked == std::vector<Request>{ReadDraft{"jobs/rail.json", "line 1"}});
    wire.act(DraftRead{"jobs/rail.json", wire.state.entry->page.job, "line 1"});
    REQUIRE(wire.state.looks.screen == Screen::prove);
    CHECK(wire.line().name == "line 1");
    wire.act(Back{});  // nothing was taped: nothing to read again
    CHECK(wire.state.looks.screen == Screen::line);
    wire.act(DraftRead{"jobs/rail.json", wire.state.entry->page.job, "line 1"});
    wire.tape(Wire::truth());
    wire.asked.clear();
    wire.act(Back{});
    CHECK(wire.asked == std::vector<Request>{ReadJob{"jobs/rail.json", "line 1"}});
    const std::int64_t question = wire.state.orders[1].question;
    job.lines[1].proof = wire.line().proof;
    wire.act(JobRead{"rail", "jobs/rail.json", job, "line 1"});
    CHECK(wire.state.looks.screen == Screen::line);
    CHECK(wire.state.line == 1);
    CHECK(wire.state.proofs == std::vector<ProofStanding>{ProofStanding::none, ProofStanding::speaks_against});  // end to end alone tells
    CHECK(wire.state.orders[1].question == question);  // a reading changes no order
}
