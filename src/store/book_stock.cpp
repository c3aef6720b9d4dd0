// The rack's ledger in the shop book, the shop's rules and prices.
//
// event         piece     other    kind  tube  length_um   second_um  said    lot, price
// received      piece              kind  tube  length                 place   of it
// straightened  coil      stick                length      allowance  place
// cut           from      piece                length      kerf       line
// used          piece                          trimmed     kerf
// scrapped      piece                          length                 reason
// put back      piece                                                 place
// moved         piece                                                 place
// labelled      piece                                                         of it
// taken back              entry

#include "store/book_parts.h"

namespace tubewright::book {
namespace {

const std::array<const char*, 9> events{"received", "straightened", "cut", "used", "scrapped", "put back", "moved", "labelled", "taken back"};
const std::array<const char*, 3> kinds{"stick", "coil", "offcut"};

/// An entry's cells as they lie in the table.
struct Cells {
    std::int64_t piece = 0, other = 0;
    PieceKind kind = PieceKind::stick;
    std::string tube;
    std::int64_t length = 0, second = 0;
    std::string said, lot;
    std::int64_t cents = 0, per = 0;
};

Cells cells_of(const Received& e) { return {e.piece.n, 0, e.kind, tube_key(e.tube), e.length.um, 0, e.place, e.lot, e.price.money.cents, e.price.per.um}; }
Cells cells_of(const Straightened& e) { return {e.coil.n, e.stick.n, {}, "", e.length.um, e.allowance.um, e.place, "", 0, 0}; }
Cells cells_of(const Cut& e) { return {e.from.n, e.piece.n, {}, "", e.length.um, e.kerf.um, e.line, "", 0, 0}; }
Cells cells_of(const Used& e) { return {e.piece.n, 0, {}, "", e.trimmed.um, e.kerf.um, "", "", 0, 0}; }
Cells cells_of(const Scrapped& e) { return {e.piece.n, 0, {}, "", e.length.um, 0, e.reason, "", 0, 0}; }
Cells cells_of(const PutBack& e) { return {e.piece.n, 0, {}, "", 0, 0, e.place, "", 0, 0}; }
Cells cells_of(const Moved& e) { return {e.piece.n, 0, {}, "", 0, 0, e.place, "", 0, 0}; }
Cells cells_of(const Labelled& e) { return {e.piece.n, 0, {}, "", 0, 0, "", e.lot, e.price.money.cents, e.price.per.um}; }
Cells cells_of(const TakenBack& e) { return {0, static_cast<std::int64_t>(e.entry), {}, "", 0, 0, "", "", 0, 0}; }

Row row_of(const LedgerEntry& entry) {
    const Cells cells = std::visit([](const auto& event) { return cells_of(event); }, entry.event);
    return {whole(entry.day), std::string(events.at(entry.event.index())), cells.piece, cells.other, word(kinds, cells.kind), cells.tube, cells.length, cells.second, cells.said, cells.lot, cells.cents, cells.per};
}

PieceNumber piece_number(std::int64_t n) {
    if (n < 1 || n > std::numeric_limits<int>::max() - 1) strange();
    return {static_cast<int>(n)};
}

/// What can't have happened is found by writing it into a ledger; here only what no ledger could hold.
LedgerEntry entry_of(const Row& key, const Row& rest) {
    enum Event { received, straightened, cut, used_up, scrapped, put_back, moved, labelled, taken_back };
    constexpr std::int64_t longest_um = 1'000'000'000'000;
    Reader row(key, rest);
    row.number();
    const int day = row.whole();
    const auto event = row.word<Event>(events);
    Cells cells;
    cells.piece = row.number();
    cells.other = row.number();
    cells.kind = row.word<PieceKind>(kinds);
    cells.tube = row.text();
    cells.length = row.number();
    cells.second = row.number();
    cells.said = row.text();
    cells.lot = row.text();
    cells.cents = row.number();
    cells.per = row.number();
    if (cells.length < 0 || cells.length > longest_um || cells.second < 0 || cells.second > longest_um) strange();
    if (cells.cents < 0 || cells.cents > 10'000'000 || cells.per < 0 || cells.per > longest_um) strange();
    switch (event) {
        case received: {
            const auto tube = stock_tube_of(cells.tube);
            if (!tube) strange();
            return {day, Received{piece_number(cells.piece), cells.kind, *tube, {cells.length}, cells.said, cells.lot, {{cells.cents}, {cells.per}}}};
        }
        case straightened: return {day, Straightened{piece_number(cells.piece), piece_number(cells.other), {cells.length}, {cells.second}, cells.said}};
        case cut: return {day, Cut{piece_number(cells.piece), piece_number(cells.other), {cells.length}, {cells.second}, cells.said}};
        case used_up: return {day, Used{piece_number(cells.piece), {cells.length}, {cells.second}}};
        case scrapped: return {day, Scrapped{piece_number(cells.piece), {cells.length}, cells.said}};
        case put_back: return {day, PutBack{piece_number(cells.piece), cells.said}};
        case moved: return {day, Moved{piece_number(cells.piece), cells.said}};
        case labelled: return {day, Labelled{piece_number(cells.piece), cells.lot, {{cells.cents}, {cells.per}}}};
        case taken_back: break;
    }
    if (cells.other < 0) strange();
    return {day, TakenBack{static_cast<std::size_t>(cells.other)}};
}

std::shared_ptr<const Ledger> ledger_in(const TableRows& rows) {
    std::vector<LedgerEntry> entries;
    for (const auto& [key, rest] : rows) {
        if (key.front() != count(entries.size())) strange();  // one is missing
        entries.push_back(entry_of(key, rest));
    }
    auto ledger = ledger_of(entries);
    if (!ledger.ok()) strange();
    return std::make_shared<const Ledger>(std::move(ledger).value());
}

}  // namespace

void put_stock(const Work& work, const BookRows& known, BookRows& rows) {
    rows.ledger = work.rack.ledger;
    if (known.ledger == work.rack.ledger) {
        rows.share(stock_entry, known);
    } else {
        TableRows& table = rows[stock_entry];
        const std::vector<LedgerEntry>& entries = work.rack->entries;
        for (std::size_t i = 0; i < entries.size(); ++i) table.emplace_hint(table.end(), Row{count(i)}, row_of(entries[i]));
    }
    for (const auto& [tube, piece] : work.in_use) rows[stick_in_use][{tube}] = {whole(piece.n)};
    const ShopRules& rules = work.rules;
    if (rules != ShopRules{}) rows[shop_rule][{std::int64_t{1}}] = {rules.saw.mm, rules.keep.mm, rules.straighten.mm, yes(rules.practice), yes(rules.spare)};
    for (const auto& [item, money] : work.prices) rows[price][{item}] = {money.cents};
    for (const auto& [of, joint] : work.joints) rows[joint_of_end][{of.line, word(ends, of.end)}] = {word(joint_kinds, joint.kind), whole(joint.number)};
}

void read_stock(BookRows& rows, Work& work) {
    const BookRows& known = rows;
    if (!rows.ledger) rows.ledger = ledger_in(known[stock_entry]);
    work.rack.ledger = rows.ledger;
    for (const auto& [key, rest] : known[stick_in_use]) {
        Reader cells(key, rest);
        const std::string tube = cells.text();
        work.in_use[tube] = piece_number(cells.number());
    }
    for (const auto& [key, rest] : known[shop_rule]) {
        Reader cells(no_key, rest);
        work.rules.saw = cells.length();
        work.rules.keep = cells.length();
        work.rules.straighten = cells.length();
        work.rules.practice = cells.yes();
        work.rules.spare = cells.yes();
    }
    for (const auto& [key, rest] : known[price]) {
        Reader cells(key, rest);
        const std::string item = cells.text();
        work.prices[item] = {cells.number()};
    }
    for (const auto& [key, rest] : known[joint_of_end]) {
        Reader cells(key, rest);
        EndOfLine of;
        of.line = cells.text();
        of.end = cells.word<End>(ends);
        const auto kind = cells.word<JointKind>(joint_kinds);
        work.joints[of] = {kind, cells.whole()};
    }
}

}  // namespace tubewright::book
