#include "bench/learning.h"

#include <catch2/catch.hpp>

#include "bench/samples.h"

using namespace tubewright;
using namespace tubewright::literals;

TEST_CASE("a piece is long enough for hook, bend and lever, in whole inches or centimetres") {
    // The sample bender: hook straight 3/4, lever straight .9, furthest mark L at .5625, radius .5625. Ink at 3/4 + .5625 + 1 = 2.3: the least, 4 in,
    // is more. Cut: 4 + .5625 + 3.1416 x .5625 + .9 + 2 = 9.2: 12 in is more.
    CHECK(piece_plan(small_bender(), Unit::inch) == PiecePlan{12_in, 4_in});
    CHECK(piece_plan(small_bender(), Unit::mm) == PiecePlan{300_mm, 100_mm});
    Bender large = small_bender();
    large.radius = 3_in;
    large.hook_straight = 3_in;
    large.marks = {{"0", {}}, {"R", -2.5 * 1_in}};
    // Ink at 3 + 2.5 + 1 = 6.5, that is 7; cut 7 + 2.5 + 9.42 + .9 + 2 = 21.8, that is 22.
    CHECK(piece_plan(large, Unit::inch) == PiecePlan{22_in, 7_in});
}

TEST_CASE("the steps of a piece come in their order, whatever was read so far") {
    KeptPiece piece;
    piece.aim = {90};
    const auto now = [&] { return next_step(piece); };
    CHECK(now() == PieceStep::cut);
    piece = with_reading(piece, PieceStep::cut, 304.8);
    CHECK(now() == PieceStep::mark);
    piece.inks.push_back({"0", {}});
    CHECK(now() == PieceStep::ink);
    piece = with_reading(piece, PieceStep::ink, 101.6, 0);
    CHECK(reading_at(piece, PieceStep::ink, 0) == 101.6);
    piece.loaded = true;
    CHECK(now() == PieceStep::pull);
    piece.inks.push_back({"L", {}});  // another line is inked after all
    CHECK(now() == PieceStep::ink);
    CHECK_FALSE(reading_at(piece, PieceStep::ink, 1));
    KeptPiece round;
    round.aim = half_turn;
    CHECK(next_step(round) == PieceStep::pull);
    round.set = half_turn;
    CHECK(next_step(round) == PieceStep::width);
    CHECK(next_step(with_reading(round, PieceStep::width, 33)) == PieceStep::done);
}

TEST_CASE("a half turn says nothing of springback: nobody read how far it opened") {
    KeptPiece round;
    round.aim = half_turn;
    round.set = half_turn;
    round.width = 33_mm;
    CHECK_FALSE(bend_check(bent_piece(round), {}, "").has_value());
    KeptPiece bent = round;
    bent.aim = {90};
    bent.set = 90_deg;
    bent.angle = 87_deg;
    CHECK(bend_check(bent_piece(bent), {}, "").value().measured == 87_deg);
}

TEST_CASE("the gap at the corner can be taken of a bent piece that is measured to the end, and of no other") {
    KeptPiece piece;
    piece.aim = {90};
    CHECK_FALSE(can_add(piece, PieceStep::crown_gap));
    piece = {1, "tube", {90}, 64, 12_in, {{"0", 4_in}}, true, 90_deg, 88.5_deg, 5.1388 * 1_in, 7.6424 * 1_in, {}, {}};
    CHECK(next_step(piece) == PieceStep::done);
    CHECK(can_add(piece, PieceStep::crown_gap));
    CHECK_FALSE(can_add(piece, PieceStep::width));
    piece = with_reading(piece, PieceStep::crown_gap, 0.4549 * 25.4);
    CHECK(next_step(piece) == PieceStep::done);
    CHECK(bent_piece(piece).crown_gap == Length{0.4549 * 25.4});
    piece.aim = half_turn;
    piece.width = 2_in;
    CHECK(next_step(piece) == PieceStep::done);
    CHECK_FALSE(can_add(piece, PieceStep::crown_gap));
}

TEST_CASE("stretch goes on the card once the pieces tell it from none; what was believed before they were bent does not") {
    LearnedBender learned{};
    learned.form_radius = 1_in;
    learned.stretch = BenderBelief{}.stretch;
    learned.stretch_sd = BenderBelief{}.stretch_sd;  // .022 with .012: twice .012 is more than .022
    CHECK_FALSE(tells_stretch(learned));
    CHECK(with_learned(small_bender(), learned, Unit::inch)->stretch == small_bender().stretch);
    // Springback notes, section 6.4: one 90 with its legs, tape to 1/32 and to 1/64; with the width; four of them and the width, to 1/32.
    // Of the last 1/.0084^2 - 1/.012^2 = 7228 is the pieces' own, good to .0118, and their mean .0187 is less than twice that.
    for (const auto& [stretch, sd] : {std::pair{.0225, .0107}, std::pair{.0198, .0089}, std::pair{.0202, .0084}, std::pair{.0203, .0084}}) {
        learned.stretch = stretch;
        learned.stretch_sd = sd;
        CHECK_FALSE(tells_stretch(learned));
    }
    learned.stretch = .0180;  // springback notes, section 6.4: four bends with a rule to 1/64
    learned.stretch_sd = .0053;
    CHECK(tells_stretch(learned));
    CHECK(with_learned(small_bender(), learned, Unit::inch)->stretch == Approx(.018));
    learned.stretch_at_limit = true;
    CHECK_FALSE(tells_stretch(learned));
}

TEST_CASE("a learned number goes on the card as the card says it, and no card takes more than it may hold") {
    LearnedBender learned{};
    learned.form_radius = Length{0.56237 * 25.4};
    learned.marks = {{"L", Length{0.49951 * 25.4}, {}}, {"own", Length{-0.0312 * 25.4}, {}}};
    const Bender card = with_learned(small_bender(), learned, Unit::inch).value();
    CHECK(card.radius.mm == 0.562 * 25.4);
    CHECK(card.marks[1].offset.mm == 0.5 * 25.4);  // .49951 to the thousandth
    CHECK(card.marks[2] == small_bender().marks[2]);
    CHECK(card.marks[3] == ReferenceMark{"own", Length{-0.031 * 25.4}});
    CHECK(with_learned(small_bender(), learned, Unit::mm).value().radius == Length{14.28});  // 14.2842
    learned.form_radius = Length{0.05 * 25.4};  // under half a diameter
    CHECK_FALSE(with_learned(small_bender(), learned, Unit::inch));
    learned.form_radius = 1_in;
    for (int i = 0; i < 18; ++i) learned.marks.push_back({"m" + std::to_string(i), {}, {}});
    CHECK_FALSE(with_learned(small_bender(), learned, Unit::inch));  // 3 + 19 lines; a card file takes 20
}

TEST_CASE("nothing is learned of pieces that are not measured to the end") {
    KeptPiece begun;
    begun.aim = {90};
    begun.cut = 300_mm;
    CHECK_FALSE(learn_from(BenderBelief{}, small_bender(), {begun}));
    CHECK_FALSE(learn_from(BenderBelief{}, small_bender(), {}));
}
