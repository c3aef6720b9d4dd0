#include "present/stock_tables.h"

#include "present/stock_words.h"

namespace tubewright {
namespace {

std::string length_cell(ExactLength length) {
    std::string rest = std::to_string(length.um % 1000);
    rest.insert(0, 3 - rest.size(), '0');
    return std::to_string(length.um / 1000) + "." + rest;
}

using Cells = std::vector<std::string>;

WordTable table_of(const std::string& title, const Cells& heads) {
    WordTable table{title, {}, {}, {}};
    for (const std::string& head : heads) table.columns.push_back({head, false});
    return table;
}

/// What tells a tube from another, and what follows.
Cells tube_cells(const StockTube& tube, const Cells& more) {
    Cells cells{tube.material, length_cell(tube.outside), length_cell(tube.wall)};
    cells.insert(cells.end(), more.begin(), more.end());
    return cells;
}

}  // namespace

std::vector<WordTable> shop_tables(const State& state) {
    const Ledger& ledger = *state.work.rack.ledger;
    WordTable scrap = table_of("scrap-" + state.day, {"material", "outside_mm", "wall_mm", "day", "reason", "length_mm", "cost", "line"});
    for (const ScrapRecord& record : scrap_records(ledger))
        scrap.rows.push_back(tube_cells(record.tube, {day_of(record.day), record.reason, length_cell(record.length), money_text(record.cost), record.line}));
    WordTable rack = table_of("rack-" + state.day, {"material", "outside_mm", "wall_mm", "piece", "kind", "length_mm", "place", "lot", "cost"});
    for (const auto& [number, piece] : ledger.pieces)
        if (piece.where == Whereabouts::rack)
            rack.rows.push_back(tube_cells(piece.tube, {std::to_string(number.n), kind_word(piece.kind), length_cell(piece.length), piece.place, piece.lot, piece.price.per.um > 0 ? money_text(cost(piece.price, piece.length)) : ""}));
    WordTable balance = table_of("balance-" + state.day, {"material", "outside_mm", "wall_mm", "received_mm", "on_rack_mm", "in_hand_mm", "in_lines_mm", "kerf_mm", "scrapped_mm"});
    for (const auto& [tube, b] : balances(ledger))
        balance.rows.push_back(tube_cells(tube, {length_cell(b.received), length_cell(b.on_rack), length_cell(b.in_hand), length_cell(b.in_lines), length_cell(b.kerf), length_cell(b.scrapped)}));
    return {scrap, rack, balance};
}

}  // namespace tubewright
