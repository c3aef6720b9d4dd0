#pragma once
// The shop book's pages as rows of tables. Only for use inside store.

#include <cstdint>
#include <map>
#include <memory>
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
/// The rows of every table of book_tables(), in that order. A table is shared between copies until one of them is changed: the
/// rack's ledger only grows, and a touch that leaves it alone is not to pay for its length.
class BookRows {
public:
    BookRows() = default;
    explicit BookRows(std::size_t tables) : tables_(tables) {}
    bool empty() const { return tables_.empty(); }
    const TableRows& operator[](std::size_t table) const;
    TableRows& operator[](std::size_t table);
    void share(std::size_t table, const BookRows& from) { tables_.at(table) = from.tables_.at(table); }
    bool shares(std::size_t table, const BookRows& other) const { return tables_.at(table) == other.tables_.at(table); }
    bool operator==(const BookRows& other) const;

    std::shared_ptr<const Ledger> ledger;  ///< that the rack's rows were made of, where that is known

private:
    std::vector<std::shared_ptr<TableRows>> tables_;  // null: none
};

/// Every table; rows of a later one may point to rows of an earlier one.
const std::vector<TableShape>& book_tables();

/// `known` holds the rows of an earlier save, or none: what stands there of an undo step is taken from it.
BookRows rows_of(const Work& work, const Settings& settings, const std::vector<UndoStep>& past, const BookRows& known);
void put_settings(const Settings& settings, BookRows& rows);

/// The rows are as this program wrote them: the tables' own checks let nothing else in. Where they are
/// not, throws BookTrouble.
/// The rack's ledger is remembered in the rows.
BookPages pages_of(BookRows& rows);

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
/// And what version 4 has more: the rack's ledger. What lay on the rack before comes in; undo begins anew.
extern const char* const book_version_4;
/// And version 5: one more reading of a piece, what was read of a tube to be saved, and the log of turns and legs.
extern const char* const book_version_5;
/// And version 6: which ends go into a tee or union.
extern const char* const book_version_6;

}  // namespace tubewright
