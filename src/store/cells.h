#pragma once
// A table of cells between commas or semicolons, as spreadsheets write it (RFC 4180, and with semicolons where
// the comma is the decimal sign). Throws Refusal; only for use inside store.

#include <string>
#include <vector>

namespace tubewright {

struct CellRow {
    std::size_t line;                ///< of the text, from 1
    std::vector<std::string> cells;  ///< without the spaces around them, without their quotes
};

struct CellTable {
    char separator;         ///< ',' or ';', by what stands in the first line
    std::vector<CellRow> rows;  ///< the first one is the header; empty rows at the end are none
};

/// At most this many rows below the header, of which there has to be one.
CellTable table_from(const std::string& text, const std::string& file, std::size_t most_rows);

/// "line 3, column 2"; columns count from 0.
std::string place_in_table(const CellRow& row, std::size_t column);

}  // namespace tubewright
