#include "store/points_file.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "store/cells.h"
#include "store/json_tree.h"
#include "store/limits.h"
#include "store/node.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

constexpr std::array<const char*, 3> axes{"x", "y", "z"};
constexpr std::size_t most_points = limits::most_bends + 2;
constexpr std::size_t longest_number = 60;

std::string lower(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

const char* name_of(Unit unit) { return unit == Unit::inch ? "in" : "mm"; }

struct Header {
    std::array<std::size_t, 3> columns{};  ///< of x, y and z
    std::optional<Unit> unit;
};

struct Column {
    std::size_t axis;
    std::optional<Unit> unit;
};

std::optional<Column> column_from(const std::string& cell) {
    const std::string name = lower(cell);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (name == axes[axis]) return Column{axis, std::nullopt};
        for (const Unit unit : {Unit::mm, Unit::inch})
            if (name == std::string(axes[axis]) + "_" + name_of(unit)) return Column{axis, unit};
    }
    return std::nullopt;
}

Header header_from(const CellRow& row, const std::string& file) {
    Header header;
    std::array<bool, 3> seen{};
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const std::optional<Column> column = column_from(row.cells[i]);
        if (!column) continue;
        const bool first = std::none_of(seen.begin(), seen.end(), [](bool one) { return one; });
        if (seen[column->axis]) throw Refusal{file, place_in_table(row, i), std::string("names ") + axes[column->axis] + " a second time", "each of x, y and z once"};
        if (!first && column->unit != header.unit)
            throw Refusal{file, place_in_table(row, i), "is \"" + in_short(row.cells[i]) + "\", which does not go with the columns before it", "x, y and z all in one unit"};
        seen[column->axis] = true;
        header.columns[column->axis] = i;
        header.unit = column->unit;
    }
    for (std::size_t axis = 0; axis < 3; ++axis)
        if (!seen[axis]) throw Refusal{file, "line " + std::to_string(row.line), std::string("has no column ") + axes[axis], "a header with x, y and z, or with x_mm or x_in and so on"};
    return header;
}

/// One number as it stands in its cell.
struct Figure {
    std::string digits;  ///< with a decimal point
    char sign = '\0';    ///< the decimal sign that was there: point, comma or none
    bool two_ways = false;  ///< the sign might stand before thousands too: 1,234
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t digits_from(const std::string& text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end])) ++end;
    return end - at;
}

/// sign, digits, decimal sign, digits, exponent; none where it is something else.
std::optional<Figure> figure_from(std::string text) {
    if (text.empty() || text.size() > longest_number) return std::nullopt;
    Figure figure;
    std::size_t at = text[0] == '+' || text[0] == '-';
    const std::size_t whole_at = at, whole = digits_from(text, at);
    std::size_t part = 0;
    at += whole;
    if (at < text.size() && (text[at] == '.' || text[at] == ',')) {
        figure.sign = text[at];
        text[at++] = '.';
        part = digits_from(text, at);
        at += part;
    }
    if (whole + part == 0) return std::nullopt;
    figure.two_ways = figure.sign != '\0' && whole >= 1 && whole <= 3 && text[whole_at] != '0' && part == 3 && at == text.size();
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        ++at;
        if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
        const std::size_t exponent = digits_from(text, at);
        if (exponent == 0) return std::nullopt;
        at += exponent;
    }
    if (at != text.size()) return std::nullopt;
    figure.digits = text.substr(text[0] == '+');
    return figure;
}

/// The numbers below the header, and what they have in common.
class Figures {
public:
    Figures(const CellTable& table, const Header& header, const std::string& file) : table_(table), header_(header), file_(file) {
        for (std::size_t i = 1; i < table.rows.size(); ++i) take(table.rows[i]);
        if (doubtful_ && !certain_) doubtful_->refuse(file_, "which can be read as a decimal or as thousands", "numbers that can be read one way only, such as 1.2340");
    }
    const Figure& at(std::size_t point, std::size_t axis) const { return figures_[point * 3 + axis]; }

private:
    struct Place {
        const CellRow* row;
        std::size_t column;
        [[noreturn]] void refuse(const std::string& file, const std::string& what, const std::string& allowed) const {
            throw Refusal{file, place_in_table(*row, column), "is \"" + in_short(row->cells[column]) + "\", " + what, allowed};
        }
    };

    void take(const CellRow& row) {
        const std::size_t wide = table_.rows[0].cells.size();
        for (std::size_t i = wide; i < row.cells.size(); ++i)
            if (!row.cells[i].empty()) throw Refusal{file_, place_in_table(row, i), "stands beyond the header's last column", std::to_string(wide) + " columns, as in the header"};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const std::size_t column = header_.columns[axis];
            if (column >= row.cells.size() || row.cells[column].empty())
                throw Refusal{file_, place_in_table(row, column), std::string("has no ") + axes[axis], "a number"};
            const std::optional<Figure> figure = figure_from(row.cells[column]);
            if (!figure) throw Refusal{file_, place_in_table(row, column), "is \"" + in_short(row.cells[column]) + "\"", "a number, such as -12.5"};
            look_at_sign(*figure, {&row, column});
            figures_.push_back(*figure);
        }
    }

    void look_at_sign(const Figure& figure, const Place& place) {
        if (figure.sign == '\0') return;
        if (sign_ != '\0' && figure.sign != sign_) place.refuse(file_, "with another decimal sign than the numbers before it", "decimal points throughout, or decimal commas throughout");
        sign_ = figure.sign;
        // A table between commas comes from where the point is the decimal sign.
        if (!figure.two_ways || (figure.sign == '.' && table_.separator == ',')) certain_ = true;
        else if (!doubtful_) doubtful_ = place;
    }

    const CellTable& table_;
    const Header& header_;
    const std::string& file_;
    std::vector<Figure> figures_;
    char sign_ = '\0';
    bool certain_ = false;           // some number shows that the sign is the decimal one
    std::optional<Place> doubtful_;  // the first that does not
};

Length length_from(const Figure& figure, Unit unit, const CellRow& row, std::size_t column, const std::string& file) {
    double value = 0;
    const auto [end, wrong] = std::from_chars(figure.digits.data(), figure.digits.data() + figure.digits.size(), value);
    const Range range{-limits::longest_run, limits::longest_run};
    if (wrong != std::errc{} || !range.holds(value * mm_in(unit)))
        throw Refusal{file, place_in_table(row, column), "is " + in_short(row.cells[column]), allowed_lengths(range, unit)};
    return {value * mm_in(unit)};
}

double apart_mm(const MeasuredPoint& a, const MeasuredPoint& b) {
    return (Eigen::Vector3d(a[0].mm, a[1].mm, a[2].mm) - Eigen::Vector3d(b[0].mm, b[1].mm, b[2].mm)).norm();
}

Unit agreed_unit(const Header& header, const CellRow& row, const std::string& file, std::optional<Unit> said) {
    if (!header.unit && !said) throw Refusal{file, "line 1", "does not say whether x, y and z are in or mm", "a unit given by you, or x_mm or x_in and so on in the header"};
    if (header.unit && said && *header.unit != *said) {
        const std::size_t column = *std::min_element(header.columns.begin(), header.columns.end());
        throw Refusal{file, place_in_table(row, column), "is \"" + in_short(row.cells[column]) + "\", but you gave " + name_of(*said), std::string(name_of(*header.unit)) + " for this file"};
    }
    return said ? *said : *header.unit;
}

GivenPoints points_from(const std::string& text, const std::string& file, std::optional<Unit> said) {
    const CellTable table = table_from(text, file, most_points);
    const Header header = header_from(table.rows[0], file);
    GivenPoints given{agreed_unit(header, table.rows[0], file, said), {}};
    const Figures figures(table, header, file);
    for (std::size_t i = 1; i < table.rows.size(); ++i) {
        MeasuredPoint point;
        for (std::size_t axis = 0; axis < 3; ++axis) point[axis] = length_from(figures.at(i - 1, axis), given.unit, table.rows[i], header.columns[axis], file);
        if (i > 1 && apart_mm(point, given.points.back()) < limits::points_apart)
            throw Refusal{file, "line " + std::to_string(table.rows[i].line), "is where the point before it is", "neighbouring points apart"};
        given.points.push_back(point);
    }
    if (given.points.size() < 2) throw Refusal{file, "", "holds " + std::to_string(given.points.size()) + " of the two ends", "2 to " + std::to_string(most_points) + " points"};
    return given;
}

}  // namespace

Result<std::optional<Unit>, Refusal> unit_of_points(const std::string& text, const std::string& file) {
    return guarded([&] { return header_from(table_from(text, file, most_points).rows[0], file).unit; });
}

Result<GivenPoints, Refusal> read_points_text(const std::string& text, const std::string& file, std::optional<Unit> said) {
    return guarded([&] { return points_from(text, file, said); });
}

Result<GivenPoints, Refusal> read_points(const std::filesystem::path& path, std::optional<Unit> said) {
    const auto text = guarded([&] { return bytes_of(path); });
    if (!text.ok()) return text.trouble();
    return read_points_text(text.value(), path.string(), said);
}

std::string points_text(const std::vector<MeasuredPoint>& points, Unit unit) {
    const std::string in = std::string("_") + name_of(unit);
    std::string text = "x" + in + ",y" + in + ",z" + in + "\n";
    for (const MeasuredPoint& point : points) text += typed(point[0], unit) + "," + typed(point[1], unit) + "," + typed(point[2], unit) + "\n";
    return text;
}

}  // namespace tubewright
