// What is said while a bender is measured with bent pieces.

#include "present/expect_screen.h"
#include "present/learn_words.h"
#include "present/screen_view.h"
#include "present/view_text.h"
#include "state/piece_samples.h"

namespace tubewright {
using namespace literals;
namespace {

LearnTroubleWords trouble_words(const LearnTrouble& trouble) {
    KeptPiece piece;
    piece.id = 7;
    piece.cut = 12_in;
    piece.inks = {{"0", 4_in}, {"L", 13_in}};
    piece.angle = 90_deg;
    piece.hook_leg = piece.lever_leg = 5_in;
    KeptPiece round;
    round.id = 8;
    round.aim = half_turn;
    round.width = 2_in;
    return learn_trouble_words(trouble, {piece, round}, {Unit::inch, 32});
}

MarkMeaning meaning() {
    MarkMeaning one;
    one.mark = "L";
    one.past = {0.5_in, 0.001_in, 0.3_in, -0.4_in};
    one.past_sd = {0.02_in, 0.02_in, 0.02_in, 0.02_in};
    return one;
}

}  // namespace

TEST_CASE("a bender is measured one thing at a time, each with its picture and its way out") {
    const State first = at_learning();
    expect_screen("learn-first", first);
    State state = touched(first, {StartPiece{90_deg}});
    expect_screen("learn-cut", state);
    expect_screen("learn-cut-metric", touched(state, {SetUnit{Unit::mm}, Key{"3"}, Key{"0"}, Key{"0"}}));
    state = typed_and_taken(std::move(state), 12);
    expect_screen("learn-line", state);
    expect_screen("learn-name", touched(state, {NameMark{}, Key{"A"}}));
    state = touched(std::move(state), {PutInk{"0"}});
    expect_screen("learn-ink", state);
    state = typed_and_taken(std::move(state), 4);
    expect_screen("learn-load", state);
    expect_screen("learn-other-ink", touched(state, {OtherInk{}, PutInk{"L"}}));
    state = touched(std::move(state), {Next{}});
    expect_screen("learn-pull", state);
    state = touched(std::move(state), {Next{}, Key{"9"}, Key{"0"}});
    expect_screen("learn-angle", state);
    state = touched(std::move(state), {Next{}});
    expect_screen("learn-leg", touched(state, {Key{"4"}, Key{"5/8"}}));
    expect_screen("learn-half-turn", touched(first, {StartPiece{half_turn}}));
    expect_screen("learn-width", touched(first, {StartPiece{half_turn}, Next{}}));
}

TEST_CASE("the result says where a line lies, how good that is, what it shows, and what one more piece would bring") {
    State state = piece_bent(at_learning(), 90_deg, true);
    expect_screen("learn-result", state);
    expect_screen("learn-result-legs", touched(state, {PickLearned{0}}));
    expect_screen("learn-more", touched(state, {MorePieces{}}));
    state = half_turn_made(std::move(state));
    expect_screen("learn-result-radius", touched(state, {PickLearned{0}}));
    expect_screen("learn-result-metric", touched(state, {SetUnit{Unit::mm}, PickLearned{2}}));
    state = piece_bent(std::move(state), 45_deg, true);
    expect_screen("learn-result-told", touched(state, {PickLearned{2}}));
    const State readings = touched(state, {ShowReadings{}});
    expect_screen("learn-readings", readings);
    expect_screen("learn-readings-gap", touched(readings, {TurnPage{1}}));
    expect_screen("learn-gap", touched(readings, {ReadAgain{{state.work.pieces.begin()->second.front().id, PieceStep::crown_gap}}, Key{"0"}, Key{"."}, Key{"3"}}));
    expect_screen("card-learned", touched(state, {PutOnCard{}}));
}

TEST_CASE("a piece that opened oddly far is asked after, and a piece stands among the bends") {
    State state = typed_and_taken(touched(at_learning(), {StartPiece{90_deg}}), 12);
    state = typed_and_taken(touched(std::move(state), {PutInk{"0"}}), 4);
    state = typed_and_taken(touched(std::move(state), {Next{}, Next{}}), 76);
    // Of a radius of .578 in: the corner is (.578 + .094) tan(76/2) = .525, the arc .978 x .578 x 1.326 = .75.
    state = typed_and_taken(typed_and_taken(std::move(state), 4.5), 7.8125);
    REQUIRE(learn_page(state) == LearnPage::result);
    expect_screen("learn-asked", state);
    expect_screen("learn-asked-readings", touched(state, {ShowReadings{}}));
    state = touched(piece_bent(at_learning(), 90_deg), {Back{}, Back{}, GoTo{Screen::bends}});
    expect_screen("bends-piece", state);
    expect_screen("bend-piece", touched(state, {PickRecord{state.work.bends.at(0).check.record.id}}));
}

TEST_CASE("a slip of the tape is said with the readings to take again") {
    State state = typed_and_taken(touched(at_learning(), {StartPiece{90_deg}}), 12);
    state = typed_and_taken(touched(std::move(state), {PutInk{"0"}}), 4);
    state = typed_and_taken(touched(std::move(state), {Next{}, Next{}}), 90);
    state = typed_and_taken(typed_and_taken(std::move(state), 4.625), 9);  // an inch too long
    expect_screen("learn-trouble", state);
}

TEST_CASE("a reading that goes with no other is said, to be taken again by one touch, and not put on the card by a slip of the finger") {
    State state = half_turn_made(piece_bent(piece_bent(at_learning(), 90_deg), 90_deg));
    const KeptPiece first = state.work.pieces.begin()->second.front();
    // A quarter inch further along: both legs still make up the length, but the ink is told otherwise by the other piece.
    state = typed_and_taken(touched(state, {ReadAgain{{first.id, PieceStep::ink}}}), 4.25);
    REQUIRE(learn_page(state) == LearnPage::result);
    expect_screen("learn-odd", state);
    const ScreenView view = screen_view(state);
    CHECK(view.footer.buttons.back().held);
    for (const ButtonView& button : view.footer.buttons)
        if (button.id == "again") CHECK(learn_page(touched(state, {*button.press})) == LearnPage::again);
}

TEST_CASE("what the protractor's other scale says of 45 is asked after") {
    State state = typed_and_taken(touched(at_learning(), {StartPiece{45_deg}}), 12);
    state = typed_and_taken(touched(std::move(state), {PutInk{"0"}}), 4);
    state = touched(std::move(state), {Next{}, Next{}, Key{"1"}, Key{"3"}, Key{"4"}});
    CHECK(as_text(screen_view(state)).find("other scale of the protractor? It would be 46°") != std::string::npos);
    state = touched(std::move(state), {Key{"clear"}, Key{"4"}, Key{"4"}});
    CHECK(as_text(screen_view(state)).find("other scale") == std::string::npos);
}

TEST_CASE("where a line lies is said from the start of the bend") {
    CHECK(offset_words(5.0 / 16 * 1_in, Unit::inch) == "5/16\" past where the bend starts");
    CHECK(offset_words(-1.0 / 32 * 1_in, Unit::inch) == "1/32\" before where the bend starts");
    CHECK(offset_words(0.003_in, Unit::inch) == "where the bend starts");
    CHECK(offset_words(7.94_mm, Unit::mm) == "7.9 mm past where the bend starts");
}

TEST_CASE("how good a number is, is never said finer than it is") {
    CHECK(band_text(0.9 / 64 * 1_in, Unit::inch) == "1/64\"");
    CHECK(band_text(1.1 / 64 * 1_in, Unit::inch) == "1/32\"");
    CHECK(band_text(0.31_mm, Unit::mm) == "0.4 mm");
    CHECK(fine_band(0.0121_in, Unit::inch) == "0.013\"");
    CHECK(fine_band(0.12_mm, Unit::mm) == "0.12 mm");
}

TEST_CASE("what a line shows is told, or what would tell") {
    const Tape tape{Unit::inch, 32};
    MarkMeaning one = meaning();
    one.try_next = 45_deg;
    CHECK(meaning_words(one, tape) == "It may as well show the corner of the bend: at this angle that is the same place. A bend to 45° tells.");
    one.past[1] = 0.2_in;
    CHECK(meaning_words(one, tape) == "Whether it stays there at other angles is not known yet. A bend to 45° tells.");
    one.told = true;
    CHECK(meaning_words(one, tape) == "It stays at that place at every angle.");
    one.means = MarkMeans::far_end;
    one.past[3] = 1.0 / 32 * 1_in;
    CHECK(meaning_words(one, tape) == "It shows the far end of the bend, 1/32\" past it, and moves with the angle. A card holds lines that stay: it is left out.");
    one.none_fits = true;
    CHECK(meaning_words(one, tape) == "The pieces don't agree where this line lies: tape its inks again.");
}

TEST_CASE("every trouble says what is wrong and which reading to take again") {
    const auto steps = [](const LearnTrouble& trouble) {
        std::vector<PieceStep> all;
        for (const PieceSpot& spot : trouble_words(trouble).again) all.push_back(spot.step);
        return all;
    };
    using Steps = std::vector<PieceStep>;
    CHECK(steps(LegsDontFit{0, 10_in, 9_in, {}}) == Steps{PieceStep::hook_leg, PieceStep::lever_leg, PieceStep::angle, PieceStep::cut});
    CHECK(trouble_words(LegsDontFit{0, 10_in, 9_in, TapeEdge::inside}).to_do.find("on the inside") != std::string::npos);
    CHECK(steps(LegTooShort{0, false, 1_in, 2_in}) == Steps{PieceStep::lever_leg});
    CHECK(steps(LegTooLong{0, true, 14_in, 13_in}) == Steps{PieceStep::hook_leg, PieceStep::cut});
    CHECK(steps(AngleNotFor{0, 135_deg, 15_deg, 120_deg}) == Steps{PieceStep::angle});
    CHECK(steps(InkOffPiece{0, "L", 13_in, 12_in}) == Steps{PieceStep::ink, PieceStep::cut});
    CHECK(trouble_words(InkOffPiece{0, "L", 13_in, 12_in}).again[0].ink == 1);
    CHECK(steps(RadiusFarOff{1_in, 2_in}) == Steps{PieceStep::width});
    CHECK(trouble_words(RadiusFarOff{1_in, 2_in}).again[0].piece == 8);
    CHECK(steps(NotALength{1, PieceReading::width, 0_in}) == Steps{PieceStep::width});
    CHECK(trouble_words(AngleNotFor{0, 135_deg, 15_deg, 120_deg}).what == "Piece 1 reads 135°: nothing can be learned from that.");
    for (const LearnTrouble& trouble : std::vector<LearnTrouble>{NothingMeasured{}, CutNotALength{0, 0_in}, WidthWithLegs{0}, InkedTwice{0, "0"}, CrownGapFarOff{0, 1_in, 2_in}}) {
        CHECK_FALSE(trouble_words(trouble).what.empty());
        CHECK_FALSE(trouble_words(trouble).to_do.empty());
    }
}

}  // namespace tubewright
