// What is said while an entry is proved, and its whole screens.

#include "bench/samples.h"
#include "present/expect_text.h"
#include "present/proof_words.h"
#include "present/screen_view.h"
#include "present/touchables.h"
#include "present/view_text.h"
#include "state/sample_state.h"

namespace tubewright {
using namespace literals;
namespace {

/// Legs of 6, 4, 3 and 8 in to the outside; bend 2 the other way round, bend 3 a quarter to the right.
MeasuredRoute legs() {
    MeasuredRoute route;
    route.measured_to = TapeEdge::outside;
    route.runs = {6_in, 4_in, 3_in, 8_in};
    route.bends = {{{90}}, {{90}, Angle{180}}, {{60}, Angle{90}}};
    return route;
}

MeasuredRoute moves() {
    MeasuredRoute route;
    route.form = RouteForm::moves;
    route.moves = {{{{MoveWay::forward, 18_in}}}, {{{MoveWay::left, 3_in}}}, {{{MoveWay::up, 5_in}}}};
    return route;
}

struct Speaker {
    MeasuredRoute entered;
    Route route = route_from(entered).value();
    Unit unit = Unit::inch;
    ProofSpeech speech() const { return {{unit, 16}, Unit::inch, &entered, &route}; }
    SlipWords words(SlipKind kind, std::optional<std::size_t> bend, std::optional<std::size_t> leg = std::nullopt) const {
        for (const Slip& slip : plausible_slips({route, {4.7625}, {14}}, Unit::inch))
            if (slip.kind == kind && slip.bend == bend && slip.leg == leg) return slip_words(slip, speech());
        throw std::runtime_error("no such slip");
    }
};

/// The legs entered as above, on the page of the line; what is kept of it is answered at once.
State entered(bool proving) {
    Draft job;
    job.name = "Utility trailer brake lines";
    DraftLine line;
    line.name = "axle crossover";
    line.tube = DraftTube{{{4.7625}, {0.7112}, "stainless-304"}};
    line.bender = DraftBender{"hand-3/16"};
    line.a.fitting = line.b.fitting = "none";
    line.route = legs();
    job.lines = {line};
    Line made = line_of({1}, {});
    made.name = line.name;
    made.route = route_from(line.route).value();
    State state = touched(State{}, {BookRead{}, DraftRead{"jobs/rail.json", job}, DraftKept{"jobs/rail.json", "", made, ""}});
    return proving ? touched(state, {ProveLine{}}) : state;
}

/// The wire as it is: bend 2 goes on the same way round.
Wire truth() {
    Wire wire{route_from(legs()).value(), {4.7625}, {14}};
    wire.route.bends[1].rotation = Angle{0};
    return wire;
}

/// To the nearest sixteenth, in decimals.
State tape(State state, const Wire& wire) {
    const double inch = std::round(apart(shape_of(wire, wire.route.measured_to), state.proving->task.value().span).inch() * 16) / 16;
    std::string typed = std::to_string(inch);
    for (const char digit : typed.substr(0, typed.find('.') + 5)) state = touched(std::move(state), {Key{std::string(1, digit)}});
    return touched(std::move(state), {Next{}});
}

State tape_all(State state, const Wire& wire) {
    while (state.proving->stage == Proving::Stage::reading) state = tape(std::move(state), wire);
    return state;
}

}  // namespace

TEST_CASE("points are named by what the tape is held to") {
    Speaker by{legs()};
    CHECK(taping_words(by.speech(), {0, 3}) == "Tape tight and straight, from end A to the outside corner of bend 3.");
    CHECK(taping_words(by.speech(), {2, 4}) == "Tape tight and straight, from the outside corner of bend 2 to end B.");
    CHECK(taping_words(by.speech(), {0, 4}) == "Tape tight and straight, from end A to end B.");
    CHECK(span_name(by.speech(), {1, 4}) == "bend 1 to end B");
    by.entered.measured_to = by.route.measured_to = TapeEdge::inside;
    CHECK(taping_words(by.speech(), {0, 2}) == "Tape tight and straight, from end A to the inside corner of bend 2.");
    const Speaker centre{moves()};
    CHECK(taping_words(centre.speech(), {0, 2}) == "Tape tight and straight, from end A to bend 2, at the middle of its corner.");
    CHECK(taping_words(centre.speech(), {1, 2}) == "Tape tight and straight, from bend 1 to bend 2, at the middle of both corners.");
    CHECK(taping_words(centre.speech(), {0, 3}) == "Tape tight and straight, from end A to end B.");
}

TEST_CASE("every slip has its words") {
    const Speaker by{legs()};
    CHECK(by.words(SlipKind::bend_other_way, 1).were == "bend 2 alone turned the other way");
    CHECK(by.words(SlipKind::rest_other_way, 1).were == "bend 2 turned the other way");  // the number entered, and the rest with it
    CHECK(by.words(SlipKind::rest_other_way, 2).is == "Bend 3 turns the other way");
    CHECK(by.words(SlipKind::rest_other_way, 2).remedy == "Correct it: bend 3 the other way");
    CHECK(by.words(SlipKind::turn_mirrored, 2).is == "Bend 3 turns 90° to the left");
    CHECK(by.words(SlipKind::complement, 2).is == "Bend 3 is 30°, not 60°");
    CHECK(by.words(SlipKind::supplement, 2).remedy == "Correct it: bend 3 to 120°");
    CHECK(by.words(SlipKind::bends_swapped, 1).is == "The angles of bends 2 and 3 are swapped");
    CHECK(by.words(SlipKind::legs_swapped, std::nullopt, 1).is == "Legs 2 and 3 are swapped");
    CHECK(by.words(SlipKind::length, std::nullopt, 3).is.find("Leg 4 is ") == 0);
    CHECK(by.words(SlipKind::wrong_edge, std::nullopt).is.find("The legs were taped to the ") == 0);
    CHECK(by.words(SlipKind::mirrored, std::nullopt).remedy == "Correct it: swap left and right");
    const Speaker directions{moves()};
    CHECK(directions.words(SlipKind::move_reversed, std::nullopt, 2).is == "Move 3 goes down, not up");
    CHECK(directions.words(SlipKind::moves_swapped, std::nullopt, 1).is == "Moves 2 and 3 are in the wrong order");
    // In every form each one says something of its own.
    for (const Speaker& one : {by, directions})
        for (const Slip& slip : plausible_slips({one.route, {4.7625}, {14}}, Unit::inch)) {
            const SlipWords words = slip_words(slip, one.speech());
            CHECK_FALSE(words.is.empty());
            CHECK_FALSE(words.were.empty());
            CHECK(words.remedy.rfind("Correct it: ", 0) == 0);
        }
}

TEST_CASE("If it turned the other way this would read so much, and you read so much") {
    // A Z of 6, 4 and 3 in by its centre reads sqrt(9^2 + 4^2) = 9.85 from end to end, the U that it is sqrt(3^2 + 4^2) = 5.
    MeasuredRoute z;
    z.runs = {6_in, 4_in, 3_in};
    z.bends = {{{90}}, {{90}, Angle{180}}};
    const Speaker by{z};
    LineProof kept{wire_mark({by.route, {4.7625}, {14}}), {{{{0, 3}, 5_in}}}};
    const Proving now = proving({by.route, {4.7625}, {14}}, Unit::inch, kept);
    REQUIRE(now.proof.verdict == ProofVerdict::slip);
    const std::string said = explained(now.proof.explanations[0], now, by.speech());
    CHECK(said == "If bend 2 turned the other way, end A to end B would read 5\", and you read 5\".");
    // A reader in millimetres hears millimetres.
    Speaker metric{z};
    metric.unit = Unit::mm;
    CHECK(explained(now.proof.explanations[0], now, metric.speech()) == "If bend 2 turned the other way, end A to end B would read 127 mm, and you read 127 mm.");
}

TEST_CASE("screens of an entry being proved") {
    const auto expect_screen = [](const std::string& name, const State& state) { expect_text(name, as_text(screen_view(state))); };
    const Wire wrong = truth(), right{route_from(legs()).value(), {4.7625}, {14}};
    const State asked = entered(true), checked = tape_all(asked, right), doubted = tape_all(asked, wrong);
    expect_screen("proof-reading", touched(asked, {Key{"7"}, Key{"1/4"}}));
    expect_screen("proof-hand", checked);
    expect_screen("proof-agrees", touched(checked, {AnswerHand{checked.proving->hand->left}}));
    REQUIRE(doubted.proving->stage == Proving::Stage::hand);
    const State found = touched(doubted, {AnswerHand{doubted.proving->hand->left}});
    expect_screen("proof-slip", found);
    expect_screen("proof-again", touched(found, {TapeAgain{0}}));
    expect_screen("proof-mirrored", touched(checked, {AnswerHand{!checked.proving->hand->left}}));
    State odd = asked;
    for (const char* key : {"5", "6", "1"}) {
        if (odd.proving->stage == Proving::Stage::reading) odd = touched(odd, {Key{key}, Key{key}, Next{}});
    }
    expect_screen("proof-unexplained", odd);
    expect_screen("proof-too-few", touched(tape(asked, right), {EnoughReadings{}}));
    State metric = asked;
    metric.settings.unit = Unit::mm;
    expect_screen("proof-reading-metric", touched(metric, {Key{"2"}, Key{"1"}}));
    expect_screen("proof-on-the-draft", touched(checked, {AnswerHand{checked.proving->hand->left}, Back{}}));
}

TEST_CASE("what a reading should be is nowhere on the screen before it is taken") {
    State state = entered(true);
    const Wire wire{route_from(legs()).value(), {4.7625}, {14}};
    while (state.proving->stage == Proving::Stage::reading) {
        const Tape tape{Unit::inch, 16};
        CHECK(as_text(screen_view(state)).find(bare(state.proving->task->expected, tape)) == std::string::npos);
        state = tape_all(state, wire);
    }
}

TEST_CASE("one reading against all others is taped again before anything is corrected, and then counts") {
    // Two readings agree; the third alone is four inches off.
    State state = entered(true);
    const Wire wire{route_from(legs()).value(), {4.7625}, {14}};
    state = tape(tape(state, wire), wire);
    REQUIRE(state.proving->stage == Proving::Stage::reading);
    state = touched(state, {Key{"2"}, Next{}});
    const Proof& proof = state.proving->proof;
    REQUIRE(proof.verdict != ProofVerdict::consistent);
    CHECK(proof.alone == std::vector<std::size_t>{2});
}

}  // namespace tubewright
