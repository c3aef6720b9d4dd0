#pragma once
// What stands in tests/specimens/book-version-1.sqlite.

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

}  // namespace tubewright
