#pragma once
// The shop book's pages as rows of tables. Only for use inside store.

#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "store/shop_book.h"

namespace tubewright {

/// One cell. Lengths are in mm, angles in degrees, as the column's name says.
using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;
using Row = std::vector<Cell>;

struct TableShape {
    std::string name;
    std::vector<std::string> columns;  ///< the key's first
    std::size_t keys;                  ///< how many of them make the key
};

/// Rows by key.
using TableRows = std::map<Row, Row>;
/// One for each of book_tables(), in that order.
using BookRows = std::vector<TableRows>;

/// Every table; rows of a later one may point to rows of an earlier one.
const std::vector<TableShape>& book_tables();

/// `known` holds the rows of an earlier save, or none: what stands there of an undo step is taken from it.
BookRows rows_of(const Work& work, const Settings& settings, const std::vector<UndoStep>& past, const BookRows& known);
void put_settings(const Settings& settings, BookRows& rows);

/// The rows are as this program wrote them: the tables' own checks let nothing else in. Where they are
/// not, throws BookTrouble.
BookPages pages_of(const BookRows& rows);

// --- undo: for each touch the rows that it changed, as they were before it
/// Adds what makes `before` out of `after`, as rows of the table undo_row.
void add_undo_rows(std::int64_t step, const BookRows& before, const BookRows& after, TableRows& undo_rows);
void copy_undo_rows(const TableRows& from, std::int64_t step, TableRows& to);
/// Makes of the rows after a step those before it. Throws BookTrouble where they do not fit.
void put_undo_rows_back(const TableRows& undo_rows, std::int64_t step, BookRows& rows);

/// The statements that make a book of version 1. A released one is never edited; a later version adds its own.
extern const char* const book_version_1;
/// And those that add the pieces a bender is learned from.
extern const char* const book_pieces;
/// What version 2 has more: the log of bends.
extern const char* const book_version_2;

}  // namespace tubewright
