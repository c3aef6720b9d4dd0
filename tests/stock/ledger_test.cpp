#include "stock/ledger.h"

#include <catch2/catch.hpp>
#include <random>

using namespace tubewright;
using namespace tubewright::literals;

namespace {

const StockTube brake{exact(4.76_mm), exact(0.71_mm), "stainless"};
const Price dollar_a_foot{{100}, exact(12_in)};

template <class Event>
std::size_t must(Ledger& ledger, int day, Event event) {
    const auto written = write(ledger, {day, std::move(event)});
    REQUIRE(written.ok());
    return written.value();
}

/// One 20 ft stick, number 1.
Ledger one_stick() {
    Ledger ledger;
    must(ledger, 1, Received{{1}, PieceKind::stick, brake, exact(240_in), "upper left", "A7", dollar_a_foot});
    return ledger;
}

template <class Trouble, class Event>
Trouble refused(Ledger& ledger, Event event) {
    const std::size_t before = ledger.entries.size();
    const auto written = write(ledger, {1, std::move(event)});
    REQUIRE_FALSE(written.ok());
    CHECK(ledger.entries.size() == before);
    REQUIRE(std::holds_alternative<Trouble>(written.trouble()));
    return std::get<Trouble>(written.trouble());
}

}  // namespace

TEST_CASE("a stick is cut, a line built, another spoiled, and every inch is accounted for") {
    // 240 in. A 30 in line and a 20 in line with a saw of 1/16 in each; the first gives up 1/2 in of trim, the second is
    // kinked and goes to the bin: 240 - 30 - 20 - 1/8 = 189 7/8 left; 29 1/2 in the line; 1/2 + 20 scrapped.
    Ledger ledger = one_stick();
    must(ledger, 2, Cut{{1}, {2}, exact(30_in), exact(0.0625_in), "front left"});
    must(ledger, 2, Cut{{1}, {3}, exact(20_in), exact(0.0625_in), "crossover"});
    must(ledger, 3, Used{{2}, exact(0.5_in), {}});
    must(ledger, 3, Scrapped{{3}, exact(20_in), "kinked"});

    const Balance balance = balances(ledger).at(brake);
    CHECK(balance.on_rack.um == 190 * 25400 - 2 * 1588);  // a 1/16 in saw, 1.5875 mm, is counted as 1588 um
    CHECK(balance.in_hand.um == 0);
    CHECK(balance.in_lines == exact(29.5_in));
    CHECK(balance.kerf.um == 2 * 1588);
    CHECK(balance.scrapped == exact(20.5_in));
    CHECK(balance.received == exact(240_in));
    CHECK(balance.holds());
    CHECK(ledger.pieces.at({1}).kind == PieceKind::offcut);

    // A dollar a foot: half an inch is 4 cents, twenty inches 1.67.
    const auto scrap = scrap_records(ledger);
    REQUIRE(scrap.size() == 2);
    CHECK(scrap[0] == ScrapRecord{3, "trimmed", brake, exact(0.5_in), {4}, "front left"});
    CHECK(scrap[1] == ScrapRecord{3, "kinked", brake, exact(20_in), {167}, "crossover"});
}

TEST_CASE("a coil gives sticks and loses what straightening costs") {
    // 25 ft of coil; 60 in straightened with 3 in of allowance: 300 - 63 = 237 in are still on the coil.
    Ledger ledger;
    must(ledger, 1, Received{{1}, PieceKind::coil, brake, exact(300_in), "hook", "C1", dollar_a_foot});
    must(ledger, 1, Straightened{{1}, {2}, exact(60_in), exact(3_in), "rack"});
    CHECK(ledger.pieces.at({1}).length == exact(237_in));
    CHECK(ledger.pieces.at({1}).kind == PieceKind::coil);
    CHECK(ledger.pieces.at({2}).kind == PieceKind::stick);
    CHECK(ledger.pieces.at({2}).lot == "C1");
    const Balance balance = balances(ledger).at(brake);
    CHECK(balance.on_rack == exact(297_in));
    CHECK(balance.scrapped == exact(3_in));
    CHECK(balance.holds());
    CHECK(refused<NotTheKind>(ledger, Straightened{{2}, {3}, exact(10_in), {}, ""}).kind == PieceKind::stick);
    CHECK(refused<NotEnoughLeft>(ledger, Straightened{{1}, {3}, exact(235_in), exact(3_in), ""}).needed == exact(238_in));
}

TEST_CASE("what can't have happened is refused, and the ledger stays as it was") {
    Ledger ledger = one_stick();
    CHECK(refused<NotEnoughLeft>(ledger, Cut{{1}, {2}, exact(240_in), exact(1_mm), "x"}).has == exact(240_in));
    CHECK(refused<NoSuchPiece>(ledger, Cut{{9}, {2}, exact(1_in), {}, "x"}).piece == PieceNumber{9});
    CHECK(refused<NumberInUse>(ledger, Cut{{1}, {1}, exact(1_in), {}, "x"}).piece == PieceNumber{1});
    CHECK(refused<NoStockLength>(ledger, Cut{{1}, {2}, {}, {}, "x"}).given.um == 0);
    CHECK(refused<NoStockLength>(ledger, Cut{{1}, {2}, exact(1_in), {-1}, "x"}).given.um == -1);
    CHECK(refused<NotThere>(ledger, Used{{1}, {}, {}}).where == Whereabouts::rack);
    CHECK(refused<NoSuchEntry>(ledger, TakenBack{5}).entry == 5);
    CHECK(balances(ledger).at(brake) == Balance{exact(240_in), exact(240_in), {}, {}, {}, {}});
}

TEST_CASE("the last cut of a piece loses only what is there to lose") {
    CHECK(kerf_lost(exact(30_in), exact(30_in), exact(1_mm)).um == 0);
    CHECK(kerf_lost({1000400}, {1000000}, exact(1_mm)).um == 400);
    CHECK(kerf_lost({1005000}, {1000000}, exact(1_mm)).um == 1000);
    Ledger ledger = one_stick();
    must(ledger, 1, Cut{{1}, {2}, exact(240_in), {}, "whole"});
    CHECK(ledger.pieces.at({1}).where == Whereabouts::gone);
    CHECK(refused<NotThere>(ledger, Cut{{1}, {3}, exact(1_in), {}, "x"}).where == Whereabouts::gone);
    CHECK(balances(ledger).at(brake).holds());
}

TEST_CASE("a length is cut for no line, one comes back whole, one is moved and told its price") {
    Ledger ledger = one_stick();
    must(ledger, 2, Cut{{1}, {2}, exact(60_in), {}, ""});  // 180 and 60, both where the stick lay
    CHECK(ledger.pieces.at({2}) == StockPiece{PieceKind::offcut, Whereabouts::rack, brake, exact(60_in), "upper left", "A7", dollar_a_foot, ""});
    must(ledger, 3, Cut{{2}, {3}, exact(20_in), {}, "crossover"});
    must(ledger, 3, PutBack{{3}, "bin 2"});
    CHECK(ledger.pieces.at({3}) == StockPiece{PieceKind::offcut, Whereabouts::rack, brake, exact(20_in), "bin 2", "A7", dollar_a_foot, ""});
    CHECK(refused<NotThere>(ledger, PutBack{{3}, ""}).where == Whereabouts::rack);
    must(ledger, 4, Moved{{3}, "bin 9"});
    must(ledger, 4, Labelled{{3}, "B1", {{240}, exact(12_in)}});
    must(ledger, 5, Scrapped{{3}, exact(10_in), "short end"});
    CHECK(ledger.pieces.at({3}).place == "bin 9");
    CHECK(scrap_records(ledger) == std::vector<ScrapRecord>{{5, "short end", brake, exact(10_in), {200}, ""}});  // ten inches at 2.40 a foot
    CHECK(balances(ledger).at(brake).holds());
    must(ledger, 6, TakenBack{ledger.entries.size() - 1});
    must(ledger, 6, TakenBack{5});
    CHECK(ledger.pieces.at({3}).lot == "A7");
    CHECK(stock_tube_of(tube_key(brake)) == brake);
    for (const char* odd : {"", "steel", "steel 4763", "steel 4763x", "steel x711", "steel 4763x71a"}) CHECK_FALSE(stock_tube_of(odd));
}

TEST_CASE("an entry is taken back by another, the later ones first") {
    Ledger ledger = one_stick();
    const std::size_t cut = must(ledger, 2, Cut{{1}, {2}, exact(30_in), exact(1_mm), "front left"});
    const std::size_t used = must(ledger, 3, Used{{2}, exact(1_in), {}});
    CHECK(refused<BuiltUpon>(ledger, TakenBack{cut}).later == used);
    must(ledger, 4, TakenBack{used});
    CHECK(ledger.pieces.at({2}).where == Whereabouts::in_hand);
    CHECK(ledger.pieces.at({2}).length == exact(30_in));
    must(ledger, 4, TakenBack{cut});
    CHECK(ledger.pieces.at({1}) == one_stick().pieces.at({1}));
    CHECK_FALSE(ledger.pieces.contains({2}));
    CHECK(scrap_records(ledger).empty());
    CHECK(balances(ledger).at(brake) == balances(one_stick()).at(brake));
    CHECK(refused<AlreadyTakenBack>(ledger, TakenBack{cut}).entry == cut);
    CHECK(refused<NumberInUse>(ledger, Cut{{1}, {2}, exact(1_in), {}, "x"}).piece == PieceNumber{2});  // a number is never used again
    CHECK(ledger.next_number() == PieceNumber{3});
    CHECK(ledger.entries.size() == 5);  // nothing is struck out
}

namespace {

/// Any action on any pieces; whether it could be done is the ledger's to say.
StockEvent random_event(std::mt19937& dice, const Ledger& ledger) {
    const auto up_to = [&](std::int64_t most) { return std::uniform_int_distribution<std::int64_t>(0, most)(dice); };
    const int last = ledger.next_number().n - 1;
    const PieceNumber fresh{last + 1};
    const PieceNumber any{last - static_cast<int>(up_to(std::min(last, 60)))};
    const auto found = ledger.pieces.find(any);
    const ExactLength has = found == ledger.pieces.end() ? ExactLength{1000} : found->second.length;
    const ExactLength some{up_to(has.um + has.um / 20)};
    switch (up_to(12)) {
        case 10: return PutBack{any, ""};
        case 11: return Moved{any, "bin"};
        case 12: return Cut{any, fresh, {some.um / 2}, {}, ""};
        case 0: return Received{fresh, static_cast<PieceKind>(up_to(2)), {{up_to(2) * 1000 + 4760}, {710}, "steel"}, {up_to(7'000'000)}, "", "", {{120}, {304'800}}};
        case 1: return Straightened{any, fresh, {some.um / 2}, {up_to(50'000)}, ""};
        case 2: case 3: case 4: return Cut{any, fresh, {some.um / 3}, {up_to(1'600)}, "line"};
        case 5: case 6: return Used{any, {up_to(30'000)}, {up_to(1'600)}};
        case 7: return Scrapped{any, up_to(1) ? has : some, "kinked"};
        default: return TakenBack{ledger.entries.empty() ? 0 : ledger.entries.size() - 1 - static_cast<std::size_t>(up_to(std::min<std::int64_t>(9, static_cast<std::int64_t>(ledger.entries.size()) - 1)))};
    }
}

bool all_hold(const Ledger& ledger) {
    for (const auto& [tube, balance] : balances(ledger))
        if (!balance.holds()) return false;
    return true;
}

}  // namespace

TEST_CASE("the rack balances after a hundred thousand actions, and a micrometre that goes astray shows") {
    std::mt19937 dice(20261129);
    Ledger ledger;
    std::size_t refusals = 0, back = 0;
    for (int i = 0; i < 100'000; ++i) {
        StockEvent event = random_event(dice, ledger);
        const bool undo = std::holds_alternative<TakenBack>(event);
        const bool done = write(ledger, {i / 100, std::move(event)}).ok();
        refusals += !done;
        back += done && undo;
        if (i % 5000 == 0) {
            INFO("after " << i << " actions");
            REQUIRE(all_hold(ledger));
        }
    }
    CHECK(all_hold(ledger));
    CHECK(refusals > 10'000);  // the dice ask for much that can't be
    CHECK(back > 2'000);
    for (const auto& [number, piece] : ledger.pieces) REQUIRE(piece.length.um >= 0);

    const auto again = ledger_of(ledger.entries);
    REQUIRE(again.ok());
    CHECK(again.value().pieces == ledger.pieces);
    CHECK(balances(again.value()) == balances(ledger));

    // Each of these is wrong, and each is found out.
    Ledger lost = ledger;
    for (auto& [number, piece] : lost.pieces)
        if (piece.where == Whereabouts::rack) {
            piece.length.um -= 1;
            break;
        }
    CHECK_FALSE(all_hold(lost));

    Ledger vanished = ledger;
    for (auto at = vanished.pieces.begin(); at != vanished.pieces.end(); ++at)
        if (at->second.length.um > 0) {
            vanished.pieces.erase(at);
            break;
        }
    CHECK_FALSE(all_hold(vanished));

    Ledger unwritten = ledger;  // a cut that was made and not written down
    for (std::size_t i = 0; i < unwritten.entries.size(); ++i)
        if (const auto* cut = std::get_if<Cut>(&unwritten.entries[i].event); cut && cut->kerf.um > 0 && !unwritten.taken_back.contains(i)) {
            std::get<Cut>(unwritten.entries[i].event).kerf = {};
            break;
        }
    CHECK_FALSE(all_hold(unwritten));
}
