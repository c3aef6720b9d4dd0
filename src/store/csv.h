#pragma once
// Tables for spreadsheets: a header and rows of text.

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/save_beside.h"

namespace tubewright {

struct TextTable {
    std::vector<std::string> header;             ///< with the unit in the name, such as length_mm
    std::vector<std::vector<std::string>> rows;  ///< each as long as the header
};

/// As RFC 4180 (Y. Shafranovich, Common Format and MIME Type for CSV Files, 2005, section 2) has it: commas between cells, CRLF
/// behind every row, quotes about a cell with a comma, a quote or a line end in it, its own quotes doubled. UTF-8, no byte order mark.
///
/// What a spreadsheet could take for a formula is made plain text: a cell that begins with = + - @, a tab or a
/// line end gets an apostrophe in front, unless it is a number such as -3.5. So such a cell does not read back as it was, by one
/// apostrophe.
std::string csv_text(const TextTable& table);

/// Writes it under the first of name.csv, name-2.csv and so on that no file has, and says where. `what` as for save_beside().
Result<std::filesystem::path, NotWritten> write_csv_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::string& what, const TextTable& table);

}  // namespace tubewright
