#include "paper/table_pages.h"

#include <algorithm>
#include <numeric>

#include "paper/heads.h"

namespace tubewright {
namespace {

constexpr double cell_gap_mm = 5;

/// As wide as its longest cell where that goes; else the widest columns give way until all go on the page.
std::vector<double> column_widths(const WordTable& table, double width, const Lettering& lettering) {
    std::vector<double> widths;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        double widest = lettering.width_mm(table.columns[i].head, body_bold);
        for (const std::vector<std::string>& row : table.rows)
            if (i < row.size()) widest = std::max(widest, lettering.width_mm(row[i], body));
        widths.push_back(widest);
    }
    const double room = width - cell_gap_mm * static_cast<double>(widths.size() - 1);
    std::vector<double> ordered = widths;
    std::sort(ordered.begin(), ordered.end());
    // The most that any column may have: the room that those which need less leave, in equal shares.
    double left = room, most = 0;
    for (std::size_t i = 0; i < ordered.size(); ++i) {
        most = left / static_cast<double>(ordered.size() - i);
        if (ordered[i] > most) break;
        left -= ordered[i];
        most = ordered[i];
    }
    for (double& one : widths) one = std::min(one, most);
    return widths;
}

PrintBlock table_row(const WordTable& table, const std::vector<std::string>& cells, const std::vector<double>& widths, Letters letters, const Lettering& lettering) {
    PrintBlock row;
    double x = 0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        double y = 0;
        if (i < cells.size())
            for (const std::string& line : lettering.lines(cells[i], widths[i] + 0.01, letters)) {
                const double start = table.columns[i].figures ? x + widths[i] - lettering.width_mm(line, letters) : x;
                row.drawn.push_back(Lettered{{start, y + rise_mm(letters)}, line, letters});
                y += line_mm(letters);
            }
        row.height_mm = std::max(row.height_mm, y);
        x += widths[i] + cell_gap_mm;
    }
    row.height_mm += 1.5;
    return row;
}

}  // namespace

std::vector<PrintedPage> table_pages(const WordTable& table, PageSize size, const Lettering& lettering) {
    const double width = extent_of(size, false).width_mm - 2 * margin_mm;
    PrintBlock head = title_block(lettering, table.title, false, width);
    const std::vector<double> widths = table.columns.empty() ? std::vector<double>{} : column_widths(table, width, lettering);
    std::vector<std::string> heads;
    for (const WordTable::Column& column : table.columns) heads.push_back(column.head);
    append(head, table_row(table, heads, widths, body_bold, lettering));
    head.drawn.push_back(Stroked{{{0, head.height_mm}, {width, head.height_mm}}, 0.4});
    append(head, gap(1.5));
    Flow flow(size, false, table.title, head);
    for (const std::vector<std::string>& cells : table.rows) {
        PrintBlock row = table_row(table, cells, widths, body, lettering);
        row.drawn.push_back(Stroked{{{0, row.height_mm}, {width, row.height_mm}}, 0.15, Tint::grey});
        flow.add(row, 1.5);
    }
    for (const std::string& note : table.notes) flow.add(paragraph(lettering, note, width, body), 4);
    return std::move(flow).pages();
}

}  // namespace tubewright
