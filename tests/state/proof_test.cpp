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
struct Shop {
    State state;
    std::vector<Request> asked;

    Shop() {
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
    Shop shop;
    shop.act(ProveLine{});
    CHECK(shop.state.looks.screen == Screen::prove);
    while (shop.stage() == Proving::Stage::reading) shop.tape(Shop::truth());
    REQUIRE(shop.state.proving->proof.verdict == ProofVerdict::slip);
    REQUIRE(shop.stage() == Proving::Stage::hand);  // its mirror image reads the same
    const HandQuestion asked = shop.state.proving->hand.value();
    const WireShape seen = shape_of(Shop::truth(), TapeEdge::centre);
    shop.act(AnswerHand{seen.along[asked.before].dot(seen.along[asked.bend].cross(seen.along[asked.bend + 1])) > 0});
    CHECK(shop.state.proving->proof.explanations[0].slip.bend == 1);
    const std::size_t taped = shop.state.proving->readings();
    shop.act(CorrectSlip{});
    CHECK(shop.line().route.bends[1].rotation == Angle{0});
    CHECK(shop.line().proof->taken.readings.size() == taped);
    CHECK_FALSE(shop.line().unfinished);
    CHECK(shop.stage() == Proving::Stage::reading);  // one that was not there when the slip was found
    shop.tape(Shop::truth());
    CHECK(shop.stage() == Proving::Stage::verdict);
    CHECK(shop.state.proving->proof.verdict == ProofVerdict::consistent);
    CHECK(shop.state.entry_proof == ProofStanding::agrees);
    // Undo: the reading, the correction; then all that was taped, and no further.
    shop.act(Undo{});
    CHECK(shop.line().route.bends[1].rotation == Angle{0});
    shop.act(Undo{});
    CHECK(shop.line().route.bends[1].rotation == Angle{180});
    CHECK(shop.state.proving->proof.verdict == ProofVerdict::slip);
    shop.act(Redo{});
    CHECK(shop.line().route.bends[1].rotation == Angle{0});
    for (int i = 0; i < 10; ++i) shop.act(Undo{});
    CHECK_FALSE(shop.line().proof);
    CHECK(shop.state.looks.screen == Screen::prove);
    shop.act(Back{});
    CHECK(shop.state.looks.screen == Screen::draft);
}

TEST_CASE("undo at the proof never takes back what was entered before it") {
    Shop shop;
    shop.act(PickCell{{Cell::What::trim_b, 0}});
    shop.act(Key{"1"});
    shop.act(Next{});
    REQUIRE(shop.line().b.trim == 1_in);
    shop.act(ProveLine{});
    shop.act(Undo{});
    CHECK(shop.line().b.trim == 1_in);
    shop.act(Back{});
    shop.act(Undo{});
    CHECK(shop.line().b.trim == Length{});
}

TEST_CASE("a place out of reach, a reading taped once more, enough, and afresh") {
    Shop shop;
    shop.act(ProveLine{});
    const Span first = shop.state.proving->task->span;
    shop.act(CantReach{});
    CHECK(shop.state.proving->task->span != first);
    shop.tape(Shop::truth());
    const Length read = shop.line().proof->taken.readings[0].read;
    shop.act(EnoughReadings{});
    CHECK(shop.stage() == Proving::Stage::verdict);
    CHECK_FALSE(shop.state.proving->enough);
    shop.act(OneMoreReading{});
    CHECK(shop.stage() == Proving::Stage::reading);
    shop.act(TapeAgain{0});
    shop.act(Back{});  // not again after all
    CHECK_FALSE(shop.state.looks.retake);
    CHECK(shop.state.looks.screen == Screen::prove);
    shop.act(TapeAgain{0});
    shop.act(Key{"7"});
    shop.act(Next{});
    CHECK(shop.line().proof->taken.readings == std::vector<TapeReading>{{shop.line().proof->taken.readings[0].span, 7_in}});
    CHECK(shop.line().proof->twice.size() == 1);
    CHECK(read != 7_in);
    shop.act(ProveAfresh{});
    CHECK_FALSE(shop.line().proof);
    shop.act(Undo{});
    CHECK(shop.line().proof);
}

TEST_CASE("a route that is changed afterwards is unproved, and proved again when the change is taken back") {
    Shop shop;
    shop.act(ProveLine{});
    while (shop.stage() == Proving::Stage::reading) shop.tape(Shop::truth());
    shop.act(Back{});
    CHECK(shop.state.entry_proof == ProofStanding::speaks_against);
    shop.act(PickCell{{Cell::What::run, 0}});
    shop.act(Key{"7"});
    shop.act(Next{});
    CHECK(shop.state.entry_proof == ProofStanding::stale);
    CHECK(no_proof(shop.state) == NoProof::unfinished);  // the person has not said again that this is all
    shop.act(FinishLine{});
    shop.act(ProveLine{});
    CHECK(shop.state.proving->readings() == 0);
    shop.act(Back{});
    shop.act(Undo{});
    shop.act(Undo{});
    CHECK(shop.state.entry_proof == ProofStanding::speaks_against);
    // A copy was never taped.
    shop.act(Redo{});
    shop.act(Redo{});
    shop.act(CopyLine{false});
    CHECK_FALSE(shop.line().proof);
}

TEST_CASE("nothing and 0 are no reading") {
    Shop shop;
    shop.act(ProveLine{});
    shop.act(Next{});
    shop.act(Key{"0"});
    shop.act(Next{});
    CHECK(shop.state.proving->readings() == 0);
    shop.act(SetUnit{Unit::mm});
    for (const char* key : {"1", "0", "0"}) shop.act(Key{key});
    shop.act(Next{});
    CHECK(shop.line().proof->taken.readings[0].read == 100_mm);
}

TEST_CASE("of a tube that is cut nothing is proved any more, from either side") {
    Shop shop;
    shop.state.work.lines[line_key("rail", "line 1")].cut = true;
    CHECK(no_proof(shop.state) == NoProof::cut);
    shop.act(ProveLine{});
    CHECK(shop.state.looks.screen == Screen::draft);
}

TEST_CASE("from the line's page the draft is opened at that line, and Back leads there again") {
    Shop shop;
    Job job;
    job.unit = Unit::inch;
    job.lines = {line_of({5, 5}, {{90, 0}}), as_line(shop.state.entry->page.job)};
    shop.act(JobRead{"rail", "jobs/rail.json", job});
    shop.act(OpenLine{"line 1"});
    shop.asked.clear();
    shop.act(ProveLine{});
    CHECK(shop.asked == std::vector<Request>{ReadDraft{"jobs/rail.json", "line 1"}});
    shop.act(DraftRead{"jobs/rail.json", shop.state.entry->page.job, "line 1"});
    REQUIRE(shop.state.looks.screen == Screen::prove);
    CHECK(shop.line().name == "line 1");
    shop.act(Back{});  // nothing was taped: nothing to read again
    CHECK(shop.state.looks.screen == Screen::line);
    shop.act(DraftRead{"jobs/rail.json", shop.state.entry->page.job, "line 1"});
    shop.tape(Shop::truth());
    shop.asked.clear();
    shop.act(Back{});
    CHECK(shop.asked == std::vector<Request>{ReadJob{"jobs/rail.json", "line 1"}});
    const std::int64_t question = shop.state.orders[1].question;
    job.lines[1].proof = shop.line().proof;
    shop.act(JobRead{"rail", "jobs/rail.json", job, "line 1"});
    CHECK(shop.state.looks.screen == Screen::line);
    CHECK(shop.state.line == 1);
    CHECK(shop.state.proofs == std::vector<ProofStanding>{ProofStanding::none, ProofStanding::speaks_against});  // end to end alone tells
    CHECK(shop.state.orders[1].question == question);  // a reading changes no order
}
