// What a touch changed, kept as the rows that were there before it.

#include <cassert>

#include "store/book_rows.h"

namespace tubewright {
namespace {

constexpr std::size_t cells_in_a_row = 12;
const Cell not_there{std::int64_t{0}}, there{std::int64_t{1}}, no_second_key{std::int64_t{0}};

/// Settings and undo itself are not undone.
bool is_undone(const TableShape& table) { return table.name != "settings" && table.name != "undo_step" && table.name != "undo_row"; }

Row undo_key(std::int64_t step, const TableShape& table, const Row& key) {
    return {step, table.name, key[0], key.size() > 1 ? key[1] : no_second_key};
}

Row undo_cells(const Cell& was, Row cells) {
    assert(cells.size() <= cells_in_a_row);
    cells.resize(cells_in_a_row);
    cells.insert(cells.begin(), was);
    return cells;
}

[[noreturn]] void strange() { throw BookTrouble{"holds an undo step that does not fit"}; }

void put_back(const TableShape& table, const Row& undo_key, const Row& cells, TableRows& rows) {
    const auto first_key = undo_key.begin() + 2, first_cell = cells.begin() + 1;
    const Row key(first_key, first_key + static_cast<std::ptrdiff_t>(table.keys));
    const auto width = static_cast<std::ptrdiff_t>(table.columns.size() - table.keys);
    if (cells.front() == not_there) {
        if (rows.erase(key) == 0) strange();
    } else {
        rows[key] = Row(first_cell, first_cell + width);
    }
}

}  // namespace

void add_undo_rows(std::int64_t step, const BookRows& before, const BookRows& after, TableRows& undo_rows) {
    const std::vector<TableShape>& tables = book_tables();
    for (std::size_t i = 0; i < tables.size(); ++i) {
        if (!is_undone(tables[i]) || before.shares(i, after)) continue;
        for (const auto& [key, cells] : before[i]) {
            const auto now = after[i].find(key);
            if (now == after[i].end() || now->second != cells) undo_rows[undo_key(step, tables[i], key)] = undo_cells(there, cells);
        }
        for (const auto& [key, cells] : after[i])
            if (!before[i].contains(key)) undo_rows[undo_key(step, tables[i], key)] = undo_cells(not_there, {});
    }
}

void copy_undo_rows(const TableRows& from, std::int64_t step, TableRows& to) {
    for (auto row = from.lower_bound({step}); row != from.end() && row->first.front() == Cell(step); ++row) to.insert(*row);
}

void put_undo_rows_back(const TableRows& undo_rows, std::int64_t step, BookRows& rows) {
    const std::vector<TableShape>& tables = book_tables();
    for (auto row = undo_rows.lower_bound({step}); row != undo_rows.end() && row->first.front() == Cell(step); ++row) {
        bool known = false;
        for (std::size_t i = 0; i < tables.size(); ++i) {
            if (!is_undone(tables[i]) || row->first[1] != Cell(tables[i].name)) continue;
            put_back(tables[i], row->first, row->second, rows[i]);
            known = true;
        }
        if (!known) strange();
    }
}

}  // namespace tubewright
