// A wire while its numbers are entered: at the left the wire and the numbers so far, at the right the pad.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

constexpr double key_mm = 20.2, wide_key_mm = 24, gap_mm = 3, side_mm = 27.4, arrow_mm = 20.2;

double key_width(const RouteBody& body) { return body.columns > 3 ? key_mm : body.columns == 2 ? 34 : body.columns == 1 ? 64 : wide_key_mm; }

/// The sides of the clock, clockwise from the top, as places of a grid of three by three.
constexpr std::array<std::pair<int, int>, 8> clock_places{{{1, 0}, {2, 0}, {2, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}, {0, 0}}};

/// The leg end on, as seen from end A, with the leg before at the top and the way round that counts as right.
void draw_end_on(Ui& ui, const Box& box) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const ImVec2 c = box.centre();
    const float radius = std::min(box.width(), box.height()) / 2;
    list.AddCircleFilled(c, radius, colour(p.panel), 64);
    list.AddCircle(c, radius, colour(p.edge), 64, ui.px(0.35));
    draw_rod(list, c, {c.x, box.min.y}, radius * 0.36f, p.ink, p.steel, p.steel_bright);
    list.AddCircleFilled(c, radius * 0.3f, colour(p.steel), 40);
    list.AddCircle(c, radius * 0.3f, colour(p.ink), 40, ui.px(0.5));
    list.AddCircleFilled(c, radius * 0.15f, colour(p.ink), 40);
    const float pi = std::numbers::pi_v<float>, arc = radius * 0.72f, from = -pi * 0.3f, to = pi * 0.25f;
    list.PathArcTo(c, arc, from, to, 24);
    list.PathStroke(colour(p.now), 0, ui.px(0.9));
    const ImVec2 end{c.x + arc * std::cos(to), c.y + arc * std::sin(to)}, along{-std::sin(to), std::cos(to)}, out{std::cos(to), std::sin(to)};
    const float head = ui.px(2.4);
    list.AddTriangleFilled({end.x + along.x * head, end.y + along.y * head}, {end.x + out.x * head * 0.7f, end.y + out.y * head * 0.7f}, {end.x - out.x * head * 0.7f, end.y - out.y * head * 0.7f}, colour(p.now));
}

void draw_clock_pad(const Drawing& on, const Box& box, const RouteBody& body) {
    const float gap = on.ui.px(gap_mm);
    const auto place = [&](int column, int row) { return box.row(row, 3, gap).column(column, 3, gap); };
    for (std::size_t i = 0; i < std::min(body.keys.size(), clock_places.size()); ++i) on.ui.press(place(clock_places[i].first, clock_places[i].second), body.keys[i], on.actions);
    const Box middle = place(1, 1);
    draw_end_on(on.ui, {{middle.min.x, middle.min.y - gap}, middle.max});
}

void draw_arrow(const Drawing& on, const Box& box, const ButtonView& button, float way) {
    on.ui.press(box, button, on.actions);
    const ImVec2 c{box.centre().x, box.max.y - on.ui.px(4.6)};
    const float half = on.ui.px(1.9), tall = on.ui.px(2.2);
    on.ui.list().AddTriangleFilled({c.x + way * tall, c.y}, {c.x - way * tall, c.y - half}, {c.x - way * tall, c.y + half}, colour(on.ui.palette().ink));
}

void draw_strip(const Drawing& on, Box line, const RouteBody& body) {
    const float gap = on.ui.px(gap_mm), arrow = on.ui.px(arrow_mm);
    if (body.earlier) {
        draw_arrow(on, line.cut_left(arrow), *body.earlier, -1);
        line.cut_left(gap);
    }
    if (body.later) {
        draw_arrow(on, line.cut_right(arrow), *body.later, 1);
        line.cut_right(gap);
    }
    const int count = static_cast<int>(body.cells.size());
    for (int i = 0; i < count; ++i) {
        Box cell = line.column(i, count, gap);
        cell.max.x = std::min(cell.max.x, cell.min.x + on.ui.px(48));
        draw_tile(on, cell, body.cells[static_cast<std::size_t>(i)]);
    }
}

}  // namespace

float pad_width(const Ui& ui, const RouteBody& body) {
    if (body.clock) return ui.px(3 * side_mm + 2 * gap_mm);
    const double columns = std::max(1, body.columns);
    return ui.px(columns * key_width(body) + (columns - 1) * gap_mm + (body.ways.empty() ? 0 : 2 * (key_mm + 2) + 2 * gap_mm));
}

void draw_pad(const Drawing& on, const Box& box, const RouteBody& body) {
    if (body.clock) return draw_clock_pad(on, box, body);
    const float gap = on.ui.px(gap_mm);
    Box rest = box;
    if (!body.ways.empty()) {
        const Box ways = rest.cut_right(on.ui.px(2 * (key_mm + 2) + gap_mm));
        rest.cut_right(gap);
        draw_grid(on, ways, body.ways, 2, gap);
    }
    const int columns = std::max(1, body.columns), rows = std::max(1, (static_cast<int>(body.keys.size()) + columns - 1) / columns);
    for (std::size_t i = 0; i < body.keys.size(); ++i) {
        const int index = static_cast<int>(i);
        on.ui.press(rest.row(index / columns, rows, gap).column(index % columns, columns, gap), body.keys[i], on.actions);
    }
}

void draw_body(const Drawing& on, const Box& box, const RouteBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    rest.max.x -= ui.px(1);
    ui.text_off_top(rest, body.asks, ui.body(ui.paper(), true), ui.px(0.8));
    if (!body.cells.empty()) {
        draw_strip(on, rest.cut_bottom(ui.px(key_mm)), body);
        rest.cut_bottom(ui.px(2));
    }
    if (!body.lines.empty()) {
        const float wanted = plates_height(ui, body.lines, rest.width());
        draw_plates(ui, rest.cut_bottom(std::min(wanted, rest.height() * (body.picture ? 0.6f : 1.0f))), body.lines);
        rest.cut_bottom(ui.px(1.6));
    }
    if (body.picture) draw_picture(ui, rest, *body.picture, on.picture);
}

}  // namespace tubewright
