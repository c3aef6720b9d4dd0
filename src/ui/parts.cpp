#include "ui/parts.h"

#include <algorithm>

#include "ui/signs.h"

namespace tubewright {

float pager_width(const Ui& ui) { return ui.px(27); }

void draw_pager(const Drawing& on, const Box& box, const PagerView& pager) {
    Ui& ui = on.ui;
    Box inner = box;
    const float place = ui.line_height(TextSize::small) * 1.15f;
    const float each = std::min((inner.height() - place) / 2, ui.px(30));
    const auto arrow = [&](const Box& where, const ButtonView& button, float up) {
        // The wedge stands where the label would be; a button that can't be used says why instead.
        if (!button.enabled) {
            ui.press(where, button, on.actions);
            return;
        }
        ButtonView wedge = button;
        ui.press(where, wedge, on.actions);
        const ImVec2 c{where.centre().x, up < 0 ? where.min.y + ui.px(4.2) : where.max.y - ui.px(5.4)};
        const float half = ui.px(3.4), tall = ui.px(1.9) * up;
        ui.list().AddTriangleFilled({c.x - half, c.y - tall}, {c.x + half, c.y - tall}, {c.x, c.y + tall}, colour(ui.palette().ink));
    };
    arrow(inner.cut_top(each), pager.earlier, -1);
    arrow(inner.cut_bottom(each), pager.later, 1);
    Type type = ui.small(ui.paper());
    type.across = Across::middle;
    type.down = Down::middle;
    ui.text(inner, pager.place, type);
}

void draw_lines(Ui& ui, Box& box, const std::vector<TextView>& lines, const Skin& skin) {
    // All of them in one size: the larger one where all fit.
    const auto indent = [&](const TextView& line) { return line.tone == Tone::plain ? 0.0f : ui.px(6); };
    float needed = 0;
    for (const TextView& line : lines) needed += ui.height_of(line.text, TextSize::body, false, box.width() - indent(line));
    const TextSize size = needed <= box.height() ? TextSize::body : TextSize::small;
    for (const TextView& line : lines) {
        Box rest = box;
        const float pitch = ui.line_height(size);
        if (line.tone != Tone::plain) {
            const Box sign = rest.cut_left(ui.px(6));
            draw_tone_sign(ui, {sign.min.x + ui.px(2.3), sign.min.y + pitch * 0.34f}, ui.px(4.2), line.tone);
        }
        Type type{size, line.tone == Tone::stop || line.tone == Tone::now, skin.ink, skin.fill};
        type.shrink = false;
        box.cut_top(ui.text(rest, line.text, type));
    }
}

void draw_plates(Ui& ui, const Box& box, const std::vector<TextView>& lines) {
    if (lines.empty()) return;
    const float gap = ui.px(1.6), pad = ui.px(1.8);
    const float text_width = box.width() - ui.px(9) - pad;
    // Each gets room by how much it says; what is left over is shared.
    std::vector<float> heights;
    float total = gap * static_cast<float>(lines.size() - 1);
    for (const TextView& line : lines) {
        heights.push_back(ui.height_of(line.text, TextSize::body, false, text_width) + 2 * pad);
        total += heights.back();
    }
    TextSize size = TextSize::body;
    if (total > box.height()) {
        size = TextSize::small;
        total = gap * static_cast<float>(lines.size() - 1);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            heights[i] = ui.height_of(lines[i].text, TextSize::small, false, text_width) + 2 * pad;
            total += heights[i];
        }
    }
    const float squeeze = total > box.height() ? (box.height() - total) / static_cast<float>(lines.size()) : 0;
    Box rest = box;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Skin skin = ui.pale(lines[i].tone);
        Box plate = rest.cut_top(heights[i] + squeeze);
        rest.cut_top(gap);
        ui.list().AddRectFilled(plate.min, plate.max, colour(skin.fill), ui.px(1.4));
        ui.list().AddRectFilled(plate.min, {plate.min.x + ui.px(1.2), plate.max.y}, colour(skin.border), ui.px(1.4), ImDrawFlags_RoundCornersLeft);
        const Box sign = plate.cut_left(ui.px(9));
        draw_tone_sign(ui, {sign.centre().x + ui.px(0.5), sign.centre().y}, ui.px(5), lines[i].tone);
        Type type{size, false, skin.ink, skin.fill};
        type.down = Down::middle;
        ui.text({plate.min, {plate.max.x - pad, plate.max.y}}, lines[i].text, type);
    }
}

float moves_height(const Ui& ui, const std::vector<MoveChip>& moves, float width) {
    if (moves.empty()) return 0;
    const float each = width / static_cast<float>(moves.size()) - ui.px(12);
    const auto one_line = [&](const MoveChip& chip) { return ui.width_of(chip.label + "  " + chip.value, TextSize::small, true) <= each; };
    return std::all_of(moves.begin(), moves.end(), one_line) ? ui.px(8.6) : ui.px(13.2);
}

void draw_moves(Ui& ui, const Box& box, const std::vector<MoveChip>& moves) {
    const int count = static_cast<int>(moves.size());
    const bool tall = box.height() > ui.px(10);
    for (int i = 0; i < count; ++i) {
        const MoveChip& chip = moves[static_cast<std::size_t>(i)];
        const bool done = chip.standing == MoveChip::Standing::done, now = chip.standing == MoveChip::Standing::now;
        Box cell = box.column(i, count, ui.px(1.6));
        const Skin skin = now ? ui.strong(Tone::now) : done ? ui.pale(Tone::go) : ui.paper();
        ui.list().AddRectFilled(cell.min, cell.max, colour(skin.fill), ui.px(1.6));
        if (!now && !done)
            draw_dashed_box(ui.list(), cell.min, cell.max, colour(skin.border), ui.px(0.3), ui.px(1.6), ui.px(1.2));
        Box inner = cell.inside(ui.px(1.8), ui.px(0.8));
        if (done || now) {
            const Box sign = inner.cut_left(ui.px(6));
            if (done) draw_tone_sign(ui, {sign.min.x + ui.px(2.3), sign.centre().y}, ui.px(4.4), Tone::go);
            if (now) {
                const ImVec2 c{sign.min.x + ui.px(2), sign.centre().y};
                ui.list().AddTriangleFilled({c.x - ui.px(1.4), c.y - ui.px(2.1)}, {c.x - ui.px(1.4), c.y + ui.px(2.1)}, {c.x + ui.px(2), c.y}, colour(skin.ink));
            }
        }
        Type label = ui.small(skin, now), value = ui.small(skin, true);
        label.wrap = value.wrap = false;
        label.down = value.down = Down::middle;
        if (tall) {
            ui.text(chip.value.empty() ? inner : inner.row(0, 2, 0), chip.label, label);
            ui.text(inner.row(1, 2, 0), chip.value, value);
        } else {
            ui.text(inner, chip.label, label);
            inner.cut_left(ui.width_of(chip.label + "  ", TextSize::small, now));
            ui.text(inner, chip.value, value);
        }
    }
}

void draw_grid(const Drawing& on, const Box& box, const std::vector<ButtonView>& buttons, int columns, float gap) {
    if (buttons.empty()) return;
    const int count = static_cast<int>(buttons.size()), rows = (count + columns - 1) / columns;
    const auto weight = [&](int i) { return buttons[static_cast<std::size_t>(i)].weight; };
    for (int row = 0; row < rows; ++row) {
        Box line = box.row(row, rows, gap);
        const int first = row * columns, last = std::min(first + columns, count);
        // The last row keeps the columns of the others, so that things stay where the hand expects them.
        const int cells = rows > 1 ? columns : last - first;
        float extra = 0;
        const auto apart = [&](int i) {
            return i + 1 < last && ((weight(i) == Weight::warn && weight(i + 1) == Weight::main) || (weight(i) == Weight::main && weight(i + 1) == Weight::warn));
        };
        for (int i = first; i < last; ++i) extra += apart(i) ? on.ui.px(25) - gap : 0;
        const float each = (line.width() - extra - gap * static_cast<float>(cells - 1)) / static_cast<float>(cells);
        for (int i = first; i < last; ++i) {
            on.ui.press(line.cut_left(each), buttons[static_cast<std::size_t>(i)], on.actions);
            line.cut_left(apart(i) ? on.ui.px(25) : gap);
        }
    }
}

}  // namespace tubewright
