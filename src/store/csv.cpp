#include "store/csv.h"

#include <algorithm>
#include <cassert>

namespace tubewright {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A sign, digits, and perhaps a point with more digits: nothing in it can be worked out.
bool is_plain_number(const std::string& cell) {
    const std::size_t first = cell[0] == '-' || cell[0] == '+' ? 1 : 0, point = std::min(cell.find('.'), cell.size());
    const auto digits = [&](std::size_t from, std::size_t to) { return from < to && std::all_of(cell.begin() + static_cast<std::ptrdiff_t>(from), cell.begin() + static_cast<std::ptrdiff_t>(to), is_digit); };
    return digits(first, point) && (point == cell.size() || digits(point + 1, cell.size()));
}

std::string made_plain(const std::string& cell) {
    constexpr const char* begins_a_formula = "=+-@\t\r\n";
    return !cell.empty() && std::string(begins_a_formula).find(cell[0]) != std::string::npos && !is_plain_number(cell) ? "'" + cell : cell;
}

std::string in_quotes(const std::string& cell) {
    if (cell.find_first_of(",\"\r\n") == cell.npos) return cell;
    std::string quoted = "\"";
    for (const char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + "\"";
}

std::string line_of(const std::vector<std::string>& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) line += (i ? "," : "") + in_quotes(made_plain(cells[i]));
    // Else a row with one empty cell would be no row at all.
    return (line.empty() ? "\"\"" : line) + "\r\n";
}

}  // namespace

std::string csv_text(const TextTable& table) {
    std::string text = line_of(table.header);
    for (const auto& row : table.rows) {
        assert(row.size() == table.header.size());
        text += line_of(row);
    }
    return text;
}

Result<std::filesystem::path, NotWritten> write_csv_beside(Disk& disk, const std::filesystem::path& folder, const std::string& name, const std::string& what, const TextTable& table) {
    return save_beside(disk, folder, name, ".csv", what, csv_text(table));
}

}  // namespace tubewright
