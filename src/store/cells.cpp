#include "store/cells.h"

#include <algorithm>

#include "store/json_tree.h"
#include "store/refusal.h"

namespace tubewright {
namespace {

constexpr std::size_t most_columns = 100;
constexpr const char* table_text = "a table in UTF-8 text, its cells between commas or semicolons";

std::string trimmed(const std::string& text) {
    const std::size_t from = text.find_first_not_of(" \t"), to = text.find_last_not_of(" \t");
    return from == std::string::npos ? "" : text.substr(from, to - from + 1);
}

bool ends_line(char c) { return c == '\n' || c == '\r'; }

class TableReader {
public:
    TableReader(const std::string& text, const std::string& file) : text_(text), file_(file) {
        if (text_.rfind("\xEF\xBB\xBF", 0) == 0) at_ = 3;
        separator_ = first_line_has(';') ? ';' : ',';
    }

    char separator() const { return separator_; }
    bool more() const { return at_ < text_.size(); }

    CellRow row() {
        row_ = {line_, {}};
        do {
            if (row_.cells.size() == most_columns) throw Refusal{file_, "line " + std::to_string(line_), "has more than 100 columns", "up to 100 columns"};
            row_.cells.push_back(cell());
        } while (takes_separator());
        take_line_end();
        return std::move(row_);
    }

private:
    char here() const { return at_ < text_.size() ? text_[at_] : '\n'; }

    bool first_line_has(char wanted) const {
        bool quoted = false;
        for (std::size_t i = at_; i < text_.size() && (quoted || !ends_line(text_[i])); ++i) {
            if (text_[i] == '"') quoted = !quoted;
            if (text_[i] == wanted && !quoted) return true;
        }
        return false;
    }

    bool takes_separator() {
        if (!more() || here() != separator_) return false;
        ++at_;
        return true;
    }

    void take_line_end() {
        if (!more()) return;
        at_ += here() == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n' ? 2 : 1;
        ++line_;
    }

    void pass_spaces() {
        while (here() == ' ' || here() == '\t') ++at_;
    }

    std::string cell() {
        pass_spaces();
        if (more() && here() == '"') return quoted_cell();
        std::string text;
        while (here() != separator_ && !ends_line(here())) text += text_[at_++];
        return trimmed(text);
    }

    /// A quote inside is written twice; a line end may stand inside.
    std::string quoted_cell() {
        std::string text;
        ++at_;
        while (true) {
            if (!more()) refuse("has a quote that is not closed", "quotes in pairs");
            const char c = text_[at_++];
            if (c == '"') {
                if (!more() || text_[at_] != '"') break;
                ++at_;
            }
            if (c == '\n') ++line_;
            text += c;
        }
        pass_spaces();
        if (here() != separator_ && !ends_line(here())) refuse("goes on after its closing quote", "a separator or the line's end there");
        return trimmed(text);
    }

    [[noreturn]] void refuse(const std::string& what, const std::string& allowed) const {
        throw Refusal{file_, place_in_table(row_, row_.cells.size()), what, allowed};
    }

    const std::string& text_;
    const std::string& file_;
    char separator_ = ',';
    std::size_t at_ = 0, line_ = 1;
    CellRow row_;
};

bool is_blank(const CellRow& row) {
    return std::all_of(row.cells.begin(), row.cells.end(), [](const std::string& cell) { return cell.empty(); });
}

}  // namespace

std::string place_in_table(const CellRow& row, std::size_t column) {
    return "line " + std::to_string(row.line) + ", column " + std::to_string(column + 1);
}

CellTable table_from(const std::string& text, const std::string& file, std::size_t most_rows) {
    check_text(text, file, table_text);
    TableReader reader(text, file);
    CellTable table{reader.separator(), {}};
    std::size_t blank = 0;
    while (reader.more()) {
        CellRow row = reader.row();
        if (is_blank(row)) {
            if (blank == 0) blank = row.line;
            continue;
        }
        if (blank > 0) throw Refusal{file, "line " + std::to_string(blank), "is empty and rows follow", "rows one after the other"};
        if (table.rows.size() == most_rows + 1) throw Refusal{file, "line " + std::to_string(row.line), "is one row too many", "up to " + std::to_string(most_rows) + " rows below the header"};
        table.rows.push_back(std::move(row));
    }
    if (table.rows.empty()) throw Refusal{file, "", "is empty", table_text};
    return table;
}

}  // namespace tubewright
