// Screens that want an answer: our own keypad, a question with choices, and the settings.

#include <algorithm>
#include <cmath>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

constexpr double key_mm = 20.2, key_gap_mm = 3;

int key_rows(const KeypadBody& body) {
    const int columns = std::max(1, body.columns);
    return std::max(1, (static_cast<int>(body.keys.size()) + columns - 1) / columns);
}

int choice_columns(std::size_t count, bool narrow) {
    if (count <= 4) return narrow ? 2 : static_cast<int>(std::max<std::size_t>(count, 1));
    return static_cast<int>(count + 1) / 2;
}

}  // namespace

float keypad_width(const Ui& ui, const KeypadBody& body) {
    const double columns = std::max(1, body.columns);
    return ui.px(columns * (columns > 3 ? key_mm : 24) + (columns - 1) * key_gap_mm);
}

void draw_keys(const Drawing& on, const Box& box, const KeypadBody& body) {
    const int columns = std::max(1, body.columns), rows = key_rows(body);
    const float gap = on.ui.px(key_gap_mm);
    for (std::size_t i = 0; i < body.keys.size(); ++i) {
        const int index = static_cast<int>(i);
        on.ui.press(box.row(index / columns, rows, gap).column(index % columns, columns, gap), body.keys[i], on.actions);
    }
}

float letters_height(const Ui& ui, const KeypadBody& body) {
    const float rows = static_cast<float>(key_rows(body));
    return ui.px(key_mm) * rows + ui.px(key_gap_mm) * (rows - 1);
}

namespace {

/// What has been typed in letters: as large as it fits.
void draw_written(Ui& ui, Box rest, const KeypadBody& body) {
    ui.text_off_top(rest, body.asks, ui.small(ui.paper(), true), ui.px(0.6));
    const Skin skin{ui.palette().panel, ui.palette().now, ui.palette().ink, ui.palette().ink_soft};
    ui.plate(rest, skin, ui.px(1), ui.px(2));
    Box inner = rest.inside(ui.px(3.4), ui.px(1.6));
    if (body.entry.empty()) {
        ui.list().AddRectFilled({inner.min.x, inner.min.y}, {inner.min.x + ui.px(1), inner.max.y}, colour(ui.palette().now));
        return;
    }
    Type type = ui.body(skin, true);
    type.down = Down::middle;
    ui.text(inner, body.entry, type);
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const KeypadBody& body) {
    Ui& ui = on.ui;
    if (body.below) return draw_written(ui, box, body);
    Box rest = box;
    moves_off_top(ui, rest, body.moves, ui.px(2));
    ui.text_off_top(rest, body.asks, ui.body(ui.paper(), true), ui.px(1));
    // The entry: a sunk place with the number large in it and its unit beside it.
    const Box well = rest.cut_top(std::min(ui.px(26), ui.px(20) + std::max(0.0f, rest.height() - ui.px(50)) * 0.3f));
    const Skin skin{ui.palette().panel, ui.palette().now, ui.palette().ink, ui.palette().ink_soft};
    ui.plate(well, skin, ui.px(1), ui.px(2));
    Box inner = well.inside(ui.px(4), ui.px(1.5));
    Type unit = ui.body(skin);
    unit.down = Down::middle;
    unit.across = Across::right;
    unit.ink = skin.soft;
    if (!body.unit.empty()) {
        ui.text(inner.cut_right(std::min(ui.width_of(body.unit, TextSize::body, false) + 2, inner.width() * 0.45f)), body.unit, unit);
        inner.cut_right(ui.px(3));
    }
    if (body.entry.empty()) {
        ui.list().AddRectFilled({inner.min.x, inner.centre().y - ui.px(7)}, {inner.min.x + ui.px(1), inner.centre().y + ui.px(7)}, colour(ui.palette().now));
    } else {
        Type hero = ui.hero(skin);
        hero.down = Down::middle;
        ui.text(inner, body.entry, hero);
    }
    rest.cut_top(ui.px(2));
    draw_lines(ui, rest, body.lines, ui.paper());
    rest.cut_top(ui.px(1.5));
    const float least = ui.px(24);  // a lower one tells nothing
    if (body.picture && rest.height() >= least) draw_picture(ui, rest, *body.picture, on.picture);
}

void draw_body(const Drawing& on, const Box& box, const ChoiceBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    moves_off_top(ui, rest, body.moves, ui.px(1.6));
    const int count = static_cast<int>(body.choices.size()), columns = choice_columns(body.choices.size(), false);
    if (count > 0) {
        const int rows = (count + columns - 1) / columns;
        const float gap = ui.px(3), most = ui.px(34) * static_cast<float>(rows) + gap * static_cast<float>(rows - 1);
        const bool main = std::any_of(body.choices.begin(), body.choices.end(), [](const ButtonView& one) { return one.weight == Weight::main; });
        const float least = ui.px(main ? 30 : rows == 1 ? 25 : 20.2) * static_cast<float>(rows) + gap * static_cast<float>(rows - 1);
        const float height = std::clamp(rest.height() - ui.px(body.hero.empty() ? 30 : 44), least, most);
        draw_grid(on, rest.cut_bottom(height), body.choices, columns, gap);
        rest.cut_bottom(ui.px(1.4));
    }
    ui.text_off_top(rest, body.heading, ui.body(ui.paper(), true), ui.px(body.hero.empty() ? 0 : 0.6));
    if (!body.hero.empty()) {
        // Beside the number, what it means.
        const float width = body.lines.empty() ? rest.width() : rest.width() * 0.42f;
        Type hero = ui.hero(ui.paper());
        hero.down = Down::middle;
        ui.text(rest.cut_left(width), body.hero, hero);
        rest.cut_left(ui.px(4));
    }
    draw_lines(ui, rest, body.lines, ui.paper());
}

namespace {

void draw_ruler(Ui& ui, Box box, const SettingsBody& body) {
    const Palette& p = ui.palette();
    const float length = ui.true_px(50);
    const Box place = box.cut_left(length + ui.px(4));
    const ImVec2 start{std::round(place.min.x), place.min.y + ui.px(2)};
    const Box bar{start, {start.x + length, start.y + ui.px(7)}};
    ui.note_ruler(bar);
    // All of it inside the bar: a rule is laid on its outer edges.
    ui.list().PushClipRect(bar.min, bar.max, true);
    ui.list().AddRectFilled(bar.min, bar.max, colour(p.panel));
    for (int i = 0; i < 50; ++i) {
        if (i / 10 % 2 == 0) continue;
        ui.list().AddRectFilled({start.x + ui.true_px(i), start.y}, {start.x + ui.true_px(i + 1), start.y + bar.height() * 0.45f}, colour(p.steel));
    }
    for (int i = 1; i < 50; ++i) {
        const float tall = i % 10 == 0 ? 1.0f : i % 5 == 0 ? 0.66f : 0.4f, at = start.x + ui.true_px(i);
        ui.list().AddLine({at, bar.max.y}, {at, bar.max.y - bar.height() * tall}, colour(p.ink), i % 10 == 0 ? ui.px(0.35) : ui.px(0.2));
    }
    ui.plate_edge(bar, colour(p.ink), ui.px(0.5), 0);
    ui.list().PopClipRect();
    Type type = ui.small(ui.paper());
    type.down = Down::middle;
    ui.text({{box.min.x, box.min.y}, {box.max.x, std::min(box.max.y, box.min.y + ui.px(17))}}, body.ruler_text, type);
}

float wanted_width(const Ui& ui, const ButtonView& button) {
    return std::clamp(ui.width_of(button.label, TextSize::body, true) + ui.px(7), ui.px(20.5), ui.px(60));
}

struct Placed {
    const SettingsGroup* group;
    std::vector<float> widths;
    float x = 0, width = 0;
    int row = 0;
};

std::vector<Placed> place_groups(const Ui& ui, const std::vector<SettingsGroup>& groups, float whole) {
    std::vector<Placed> placed;
    float x = 0;
    int row = 0;
    for (const SettingsGroup& group : groups) {
        Placed here{&group, {}, 0, 0, 0};
        for (const ButtonView& choice : group.choices) {
            here.widths.push_back(wanted_width(ui, choice));
            here.width += here.widths.back() + (here.widths.size() > 1 ? ui.px(3) : 0);
        }
        if (here.width > whole) {
            const float gaps = ui.px(3) * static_cast<float>(here.widths.size() - 1);
            for (float& width : here.widths) width = (whole - gaps) / static_cast<float>(here.widths.size());
            here.width = whole;
        }
        here.width = std::max(here.width, std::min(ui.width_of(group.name, TextSize::small, true) + ui.px(1), whole));
        if (x > 0 && x + here.width > whole) {
            x = 0;
            ++row;
        }
        here.x = x;
        here.row = row;
        x += here.width + ui.px(9);
        placed.push_back(std::move(here));
    }
    return placed;
}

float small_height(const Ui& ui, const TextView& note, float width) {
    const float indent = note.tone == Tone::plain ? 0 : ui.px(6);
    return ui.height_of(note.text, TextSize::small, note.tone == Tone::stop || note.tone == Tone::now, width - indent);
}

/// Takes out those for which there is no room here, from the first of them on.
std::vector<TextView> notes_past(const Ui& ui, const Box& room, std::vector<TextView>& notes) {
    float used = 0;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        used += small_height(ui, notes[i], room.width());
        if (used <= room.height()) continue;
        const auto first = notes.begin() + static_cast<std::ptrdiff_t>(i);
        std::vector<TextView> past(first, notes.end());
        notes.erase(first, notes.end());
        return past;
    }
    return {};
}

/// The picture, as high as what stands under it lets it be.
void draw_beside(const Drawing& on, Box side, const PictureView& picture, const std::vector<TextView>& under) {
    Ui& ui = on.ui;
    float needed = under.empty() ? 0 : ui.px(2);
    for (const TextView& note : under) needed += small_height(ui, note, side.width());
    draw_picture(ui, side.cut_top(std::max(side.height() - needed, side.height() * 0.5f)), picture, on.picture);
    side.cut_top(ui.px(2));
    draw_lines(ui, side, under, ui.paper());
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const SettingsBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    Box side = rest;
    if (body.picture) {
        side = rest.cut_right(rest.width() * 0.4f);
        rest.cut_right(ui.px(3));
    }
    std::vector<TextView> notes = body.notes;
    const std::vector<Placed> placed = place_groups(ui, body.groups, rest.width());
    const int rows = placed.empty() ? 0 : placed.back().row + 1;
    const float name = ui.px(6), row_gap = ui.px(3);
    const float below = (body.ruler ? ui.px(18) : 0) + (notes.empty() || body.picture ? 0 : ui.px(7) * static_cast<float>(notes.size()));
    const float high = std::clamp((rest.height() - below - row_gap * static_cast<float>(rows)) / static_cast<float>(std::max(rows, 1)) - name, ui.px(20.2), ui.px(25));
    for (const Placed& group : placed) {
        const float top = rest.min.y + static_cast<float>(group.row) * (name + high + row_gap);
        Box line{{rest.min.x + group.x, top}, {rest.min.x + group.x + group.width, top + name + high}};
        Type type = ui.small(ui.paper(), true);
        type.wrap = false;
        ui.text({{line.min.x, line.min.y + ui.px(0.6)}, {line.max.x + 2, line.min.y + name}}, group.group->name, type);
        line.cut_top(name);
        for (std::size_t i = 0; i < group.widths.size(); ++i) {
            ui.press(line.cut_left(group.widths[i]), group.group->choices[i], on.actions);
            line.cut_left(ui.px(3));
        }
    }
    rest.cut_top(static_cast<float>(rows) * (name + high + row_gap));
    if (body.ruler) draw_ruler(ui, rest.cut_top(ui.px(18)), body);
    if (body.picture) draw_beside(on, side, *body.picture, notes_past(ui, rest, notes));
    draw_lines(ui, rest, notes, ui.paper());
}

}  // namespace tubewright
