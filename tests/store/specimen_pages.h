#pragma once
// What stands in tests/specimens/book-version-1.sqlite, book-version-4.sqlite and book-version-5.sqlite.

#include "store/shop_book.h"

namespace tubewright {

inline BookPages specimen_pages() {
    BookPages pages;
    LineWork line;
    line.stage = Stage::bending;
    line.ticks = {"prepare-straighten", "slide-A-nut"};
    line.step = 2;
    line.move = Move::check;
    line.pull_again = Angle{91.25};
    line.last_reading = Angle{88.5};
    line.pulls = 2;
    line.made = {{3, {93.21999999999999}, 1, Angle{90}, false}, {1, {47.5}, 2, std::nullopt, true}};
    line.cut = true;
    line.cut_length = {1064.4123456789};
    line.plan = "stainless-304 4763x711; 16002 18246 0 9000; 30000 31122 27000 4500";
    line.inked = "15510 29508";
    line.pulled = {1, 2, 3};
    line.order = {{3, End::A}, {1, End::B}, {2, End::A}};
    line.opening = {3};
    line.attempt = 2;
    line.finished = 1;
    pages.work.lines = {{"trailer/axle crossover", line}, {"trailer/left wheel", {}}};
    pages.work.scrap = {{1, "2026-11-24", "trailer", "axle crossover", "tube a", Reason::over_bent, {700.5}, {363.9}, 4, {120.25}},
                        {2, "2026-11-25", "trailer", "left wheel", "tube a", Reason::practice, {300}, {0}, std::nullopt}};
    pages.work.used = {{"2026-11-24", {{"tube a", {1031.587}}}}, {"2026-11-25", {{"tube a", {412.75}}, {"tube b", {300}}}}};
    pages.work.benders = {{"hand-3/16", {SetUp{HookHand::right, Swing::up}, "L"}}, {"hand-6", {std::nullopt, ""}}};
    pages.work.next_id = 4;
    pages.settings = {Unit::mm, 32, Theme::dark, 5.866141732283465};
    // Its stick and offcut are of a "tube a", which is no tube's key, and its two steps of undo are of the rack as it was kept then: both
    // are left behind.
    return pages;
}

inline BookPages specimen_pages_4() {
    BookPages pages = specimen_pages();
    Work& work = pages.work;
    pages.past = {{7, "trailer", work}};
    LineWork& line = work.lines["trailer/axle crossover"];
    line.laid_growth = 0.0451;
    line.pulled_with = Springback{0.0467, Angle{1.125}};
    line.doubted = Angle{87.5};
    line.later = {{{1, "leak-test"}, true}, {{2, "flush"}, false}};
    line.saved = SavedPlan{{{{{100.5}, End::A, Angle{270}, Angle{90}}, {{301.25}, End::B, Angle{45.5}, Angle{30}}}, {1064.41}, {9}, {9.5}, {14.9}, 0.01}, 1};
    LoggedBend bend;
    bend.check.record = {4, "2026-11-28", RecordStanding::confirmed, true};
    bend.check.with = {"hand-3/16", {{4.7625}, {0.7112}, "stainless-304"}};
    bend.check.lot = "2026-11-28";
    bend.check.target = Angle{90};
    bend.check.set = Angle{93};
    bend.check.measured = Angle{87};
    bend.of = {"trailer", "axle crossover", 1, 2, 3};
    work.bends = {bend};
    work.lots = {{"stainless-304 4763x711", "2026-11-28"}};
    KeptPiece piece;
    piece.id = 5;
    piece.tube = "stainless-304 4763x711";
    piece.aim = Angle{90};
    piece.tape = 64;
    piece.cut = Length{304.8};
    piece.inks = {{"0", Length{101.6}}, {"L", std::nullopt}};
    piece.loaded = true;
    piece.set = Angle{90};
    piece.angle = Angle{86.5};
    piece.hook_leg = Length{120.25};
    work.pieces = {{"hand-3/16", {piece}}};
    const StockTube tube{{4763}, {711}, "stainless-304"};
    Ledger ledger;
    const StockEvent events[] = {Received{{1}, PieceKind::stick, tube, {6'096'000}, "left rack", "B7", {{2400}, {6'096'000}}}, Cut{{1}, {2}, {1'064'412}, {1'000}, "trailer/axle crossover"}, Scrapped{{2}, {1'064'412}, "kinked"}, Moved{{1}, "bench"}};
    for (const StockEvent& event : events)
        if (!write(ledger, {20785, event}).ok()) return {};
    work.rack.ledger = std::make_shared<const Ledger>(std::move(ledger));
    work.in_use = {{"stainless-304 4763x711", {1}}};
    work.rules = {Length{1.5}, Length{150}, Length{40}, true, true};
    work.prices = {{"nut", {45}}};
    work.next_id = 8;
    return pages;
}

inline BookPages specimen_pages_5() {
    BookPages pages = specimen_pages_4();
    Work& work = pages.work;
    pages.past = {{8, "trailer", work}};
    work.pieces["hand-3/16"][0].crown_gap = Length{11.5};
    LineWork& line = work.lines["trailer/axle crossover"];
    line.turns = {{3, 1, Angle{91.5}}};
    line.tapes = {{{{2, 5}, {412.75}}, 2}};
    LoggedTurn turn;
    turn.check = {{8, "2026-11-29", RecordStanding::counted, false}, TurnedBy::neighbour, Angle{90}, Angle{91.5}};
    turn.of = {"trailer", "axle crossover", 1, 2, 3};
    turn.against = 1;
    work.turn_log = {turn};
    LoggedLeg leg;
    leg.check = {{9, "2026-11-29", RecordStanding::asked, true}, 2, {301.5}, {312.75}};
    leg.of = {"trailer", "axle crossover", 1, 2, 3};
    leg.after = 1;
    work.leg_log = {leg};
    work.next_id = 10;
    return pages;
}

}  // namespace tubewright
