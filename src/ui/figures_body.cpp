// Figures in columns: the marks to lay out, and the tables.

#include <algorithm>
#include <numeric>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

using Rows = std::vector<std::vector<std::string>>;

constexpr double cell_left_mm = 1.8, cell_right_mm = 1.2, frame_mm = 0.6, cut_pad_mm = 2.2;

/// What each column's longest text needs.
std::vector<float> needed_widths(const Ui& ui, const std::vector<std::string>& heads, const Rows& rows, TextSize size) {
    std::vector<float> widths;
    for (const std::string& head : heads) widths.push_back(ui.width_of(head, TextSize::small, false));
    for (const auto& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i >= widths.size()) widths.push_back(0);
            widths[i] = std::max(widths[i], ui.width_of(row[i], size, true));
        }
    for (float& width : widths) width += ui.px(cell_left_mm + cell_right_mm) + 2;
    return widths;
}

float total_of(const std::vector<float>& widths) { return std::accumulate(widths.begin(), widths.end(), 0.0f); }

/// How wide the figures are in their larger size.
float figures_width(const Ui& ui, const std::vector<std::string>& heads, const Rows& rows) {
    return total_of(needed_widths(ui, heads, rows, TextSize::body)) + ui.px(2 * frame_mm);
}

void draw_figures(Ui& ui, const Box& box, const std::vector<std::string>& heads, const Rows& rows, int places, const std::vector<std::size_t>& row_heads = {}) {
    const Skin skin = ui.panel();
    ui.plate(box, skin, ui.px(0.35), ui.px(2));
    Box rest = box.inside(ui.px(frame_mm), ui.px(0.8));
    // All figures in one size, so that none looks more important than the others.
    TextSize size = TextSize::body;
    std::vector<float> widths = needed_widths(ui, heads, rows, size);
    if (total_of(widths) > rest.width()) widths = needed_widths(ui, heads, rows, size = TextSize::small);
    const float spare = (rest.width() - total_of(widths)) / static_cast<float>(std::max<std::size_t>(widths.size(), 1));
    for (float& width : widths) width += spare;
    const auto draw_cells = [&](const Box& line, const std::vector<std::string>& cells, Type type) {
        float x = line.min.x;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            ui.text({{x + ui.px(cell_left_mm), line.min.y}, {x + widths[i] - ui.px(cell_right_mm), line.max.y}}, cells[i], type);
            x += widths[i];
        }
    };
    Type head = ui.small(skin), cell{size, true, skin.ink, skin.fill};
    head.ink = ui.palette().ink_soft;
    head.down = cell.down = Down::middle;
    head.wrap = false;
    const Box whole = rest, top = rest.cut_top(ui.px(7));
    draw_cells(top, heads, head);
    ui.list().AddLine({rest.min.x, rest.min.y}, {rest.max.x, rest.min.y}, colour(skin.border), ui.px(0.5));
    rest.cut_top(ui.px(0.5));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Box line = rest.row(static_cast<int>(i), places, 0);
        const bool heads_others = std::find(row_heads.begin(), row_heads.end(), i) != row_heads.end();
        const bool tinted = row_heads.empty() ? i % 2 == 1 : heads_others;
        if (tinted) ui.list().AddRectFilled(line.min, line.max, colour(ui.palette().paper));
        if (heads_others) ui.list().AddLine({line.min.x, line.min.y}, {line.max.x, line.min.y}, colour(skin.border), ui.px(0.5));
        cell.ground = tinted ? ui.palette().paper : skin.fill;
        draw_cells(line, rows[i], cell);
    }
    // Numbers of two columns may stand close; a rule keeps them from being read as one.
    float x = whole.min.x;
    for (std::size_t i = 0; i + 1 < widths.size(); ++i) {
        x += widths[i];
        draw_rule(ui.list(), {x, whole.min.y}, {x, whole.max.y}, colour(mixed(skin.border, skin.fill, 0.5)), ui.px(0.25));
    }
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const MarkOutBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    if (body.pager.needed) {
        draw_pager(on, rest.cut_right(pager_width(ui) - ui.px(4)), body.pager);
        rest.cut_right(ui.px(2.5));
    }
    Rows rows;
    for (const MarkRow& row : body.rows) rows.push_back({row.bend, row.from_a, row.from_b, row.align});
    // The figures come first; the length to cut keeps what it needs to be read two steps away.
    const float least = std::max(ui.px(58), body.cut.empty() ? 0 : ui.hero_width(body.cut, cap_height::hero_least) + ui.px(2 * cut_pad_mm) + 2);
    Box side = rest.cut_left(std::clamp(rest.width() - figures_width(ui, body.columns, rows) - ui.px(3), least, std::max(least, ui.px(130))));
    rest.cut_left(ui.px(3));
    draw_figures(ui, rest, body.columns, rows, std::max(4, static_cast<int>(rows.size())));

    const float cut_height = std::min(side.height() * 0.52f, ui.px(40));
    const Box plate = side.cut_top(body.cut.empty() ? 0 : cut_height);
    if (!body.cut.empty()) {
        const Skin skin = ui.pale(Tone::now);
        ui.plate(plate, skin, ui.px(0.8), ui.px(2));
        Box inner = plate.inside(ui.px(cut_pad_mm), ui.px(2));
        ui.text_off_top(inner, body.cut_label, ui.body(skin), ui.px(0.5));
        Type hero = ui.hero(skin);
        hero.down = Down::middle;
        ui.text(inner, body.cut, hero);
    }
    side.cut_top(ui.px(2.5));
    draw_lines(ui, side, body.notes, ui.paper());
}

void draw_body(const Drawing& on, const Box& box, const TableBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    if (!body.heading.empty()) {
        Type type = ui.body(ui.paper(), true);
        type.down = Down::middle;
        ui.text(rest.cut_top(ui.px(8)), body.heading, type);
    }
    pager_off_right(on, rest, body.pager);
    if (!body.totals.empty()) {
        float needed = 0;
        for (const TextView& line : body.totals) needed += ui.height_of(line.text, TextSize::body, false, rest.width() - ui.px(6));
        Box totals = rest.cut_bottom(std::min(needed, rest.height() * 0.36f));
        draw_lines(ui, totals, body.totals, ui.paper());
        rest.cut_bottom(ui.px(2));
    }
    const int places = std::max(4, static_cast<int>(body.rows.size()));
    const float tallest = ui.px(9) + ui.px(18) * static_cast<float>(places);
    draw_figures(ui, rest.cut_top(std::min(rest.height(), tallest)), body.columns, body.rows, places, body.heads);
}

}  // namespace tubewright
