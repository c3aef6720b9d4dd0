// A wire while its numbers are entered: at the left the wire and the numbers so far, at the right the pad.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "ui/bodies.h"
#include "ui/piece_drawing.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

constexpr double key_mm = 20.2, wide_key_mm = 24, keys_gap_mm = 3, step_key_mm = 20.2, remedy_mm = 39;

double key_width(const RouteBody& body) { return body.columns > 3 ? key_mm : body.columns == 2 ? 34 : body.columns == 1 ? 64 : wide_key_mm; }

/// Where the twelve sides of the clock stand, clockwise from the top: three over the middle, three under it, and
/// three at each hand, halfway between.
struct ClockPlaces {
    Box box;
    float side, gap;
    Box at(std::size_t hour) const {
        const float step = side + gap, left = box.min.x + step, across = box.max.x - side, middle = box.centre().y - side / 2;
        const auto place = [&](float x, float y) { return Box{{x, y}, {x + side, y + side}}; };
        const float over = box.min.y, under = box.max.y - side;
        switch (hour) {
            case 11: return place(left, over);
            case 0: return place(left + step, over);
            case 1: return place(left + 2 * step, over);
            case 2: return place(across, middle - step);
            case 3: return place(across, middle);
            case 4: return place(across, middle + step);
            case 5: return place(left + 2 * step, under);
            case 6: return place(left + step, under);
            case 7: return place(left, under);
            case 8: return place(box.min.x, middle + step);
            case 9: return place(box.min.x, middle);
            default: return place(box.min.x, middle - step);
        }
    }
    Box middle() const { return {{box.min.x + side + gap, box.min.y + side + gap}, {box.max.x - side - gap, box.max.y - side - gap}}; }
};

/// The leg end on, as seen from end A, with the leg before at the top, the way round that counts as right, and the
/// leg after it where it is known.
void draw_end_on(Ui& ui, const Box& box, const std::optional<Angle>& leads, bool held) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const ImVec2 c = box.centre();
    const float radius = std::min(box.width(), box.height()) / 2, pi = std::numbers::pi_v<float>;
    list.AddCircleFilled(c, radius, colour(p.panel), 64);
    list.AddCircle(c, radius, colour(held ? p.now : p.edge), 64, ui.px(held ? 0.9 : 0.35));
    for (int i = 0; i < 24; ++i) {
        const float at = static_cast<float>(i) * pi / 12, from = radius * (i % 3 == 0 ? 0.9f : 0.94f);
        list.AddLine({c.x + from * std::sin(at), c.y - from * std::cos(at)}, {c.x + radius * std::sin(at), c.y - radius * std::cos(at)}, colour(p.edge), ui.px(0.4));
    }
    const float reach = radius * 0.82f;
    draw_rod(list, c, {c.x, c.y - reach}, radius * 0.3f, p.ink, p.steel, p.steel_bright);
    if (leads) {
        const float at = static_cast<float>(leads->rad());
        draw_rod(list, c, {c.x + reach * std::sin(at), c.y - reach * std::cos(at)}, radius * 0.3f, p.ink, p.now, p.now_pale);
    } else {
        const float arc = radius * 0.66f, from = -pi * 0.3f, to = pi * 0.25f, head = ui.px(2.4);
        list.PathArcTo(c, arc, from, to, 24);
        list.PathStroke(colour(p.now), 0, ui.px(0.9));
        const ImVec2 end{c.x + arc * std::cos(to), c.y + arc * std::sin(to)}, along{-std::sin(to), std::cos(to)}, out{std::cos(to), std::sin(to)};
        list.AddTriangleFilled({end.x + along.x * head, end.y + along.y * head}, {end.x + out.x * head * 0.7f, end.y + out.y * head * 0.7f}, {end.x - out.x * head * 0.7f, end.y - out.y * head * 0.7f}, colour(p.now));
    }
    list.AddCircleFilled(c, radius * 0.25f, colour(p.steel), 40);
    list.AddCircle(c, radius * 0.25f, colour(p.ink), 40, ui.px(0.5));
    list.AddCircleFilled(c, radius * 0.12f, colour(p.ink), 40);
}

/// Where the finger is round the middle: clockwise from the top, to the nearest 15 degrees. A finger on the very
/// middle shows nothing.
std::optional<Angle> side_under(ImVec2 middle, ImVec2 finger, float least) {
    const float x = finger.x - middle.x, y = finger.y - middle.y;
    if (std::hypot(x, y) < least) return std::nullopt;
    const double deg = std::atan2(x, -y) * 180 / std::numbers::pi, snapped = std::round(deg / 15) * 15;
    return Angle{snapped < 0 ? snapped + 360 : snapped};
}

/// Whether a finger is on it.
bool turn_dial(const Drawing& on, const Box& box, const RouteBody& body) {
    if (!body.dial) return false;
    const Drag drag = on.ui.drag(box, *body.dial);
    if (!drag.down) return false;
    const auto side = side_under(box.centre(), drag.at, on.ui.px(4));
    if (side && side != body.leads) on.actions.push_back(TurnTo{*side});
    return true;
}

void draw_clock_pad(const Drawing& on, const Box& box, const RouteBody& body) {
    const ClockPlaces places{box, on.ui.px(key_mm), on.ui.px(keys_gap_mm)};
    for (std::size_t i = 0; i < std::min<std::size_t>(body.keys.size(), 12); ++i) on.ui.press(places.at(i), body.keys[i], on.actions);
    const bool held = turn_dial(on, places.middle(), body);
    draw_end_on(on.ui, places.middle(), body.leads, held);
}

void draw_step_key(const Drawing& on, const Box& box, const ButtonView& button, float way) {
    on.ui.press(box, button, on.actions);
    const ImVec2 c{box.centre().x, box.max.y - on.ui.px(4.6)};
    const float half = on.ui.px(1.9), tall = on.ui.px(2.2);
    on.ui.list().AddTriangleFilled({c.x + way * tall, c.y}, {c.x - way * tall, c.y - half}, {c.x - way * tall, c.y + half}, colour(on.ui.palette().ink));
}

void draw_strip(const Drawing& on, Box line, const RouteBody& body) {
    const float gap = on.ui.px(keys_gap_mm), arrow = on.ui.px(step_key_mm);
    if (body.earlier) {
        draw_step_key(on, line.cut_left(arrow), *body.earlier, -1);
        line.cut_left(gap);
    }
    if (body.later) {
        draw_step_key(on, line.cut_right(arrow), *body.later, 1);
        line.cut_right(gap);
    }
    if (body.remedy) {
        const float wide = std::min(on.ui.px(remedy_mm), body.cells.empty() ? line.width() : line.width() - arrow - gap);
        on.ui.press(line.cut_right(wide), *body.remedy, on.actions);
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
    if (body.clock) return ui.px(5 * key_mm + 4 * keys_gap_mm);
    const double columns = std::max(1, body.columns);
    return ui.px(columns * key_width(body) + (columns - 1) * keys_gap_mm + (body.ways.empty() ? 0 : 2 * (key_mm + 2) + 2 * keys_gap_mm));
}

void draw_pad(const Drawing& on, const Box& box, const RouteBody& body) {
    if (body.clock) return draw_clock_pad(on, box, body);
    const float gap = on.ui.px(keys_gap_mm);
    Box rest = box;
    if (!body.ways.empty()) {
        const Box ways = rest.cut_right(on.ui.px(2 * (key_mm + 2) + keys_gap_mm));
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
    if (!body.cells.empty() || body.remedy) {
        draw_strip(on, rest.cut_bottom(ui.px(key_mm)), body);
        rest.cut_bottom(ui.px(keys_gap_mm + 0.05));
    }
    finding_off_bottom(on, rest, body.lines, std::nullopt, body.picture || body.piece ? 0.6f : 1.0f);
    if (body.piece) return draw_piece(ui, rest, *body.piece);
    if (body.picture) draw_turning_picture(ui, rest, *body.picture, on.picture, on.actions);
}

}  // namespace tubewright
