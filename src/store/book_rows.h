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

BookRows rows_of(const BookPages& pages);

/// The rows are as this program wrote them: the tables' own checks let nothing else in. Where they are
/// not, throws BookTrouble.
BookPages pages_of(const BookRows& rows);

/// The statements that make a book of version 1. A released one is never edited; a later version adds its own.
extern const char* const book_version_1;

}  // namespace tubewright
