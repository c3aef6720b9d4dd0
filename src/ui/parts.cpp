#include "ui/parts.h"

#include <algorithm>
#include <numeric>

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

void pager_off_right(const Drawing& on, Box& box, const PagerView& pager) {
    if (!pager.needed) return;
    draw_pager(on, box.cut_right(pager_width(on.ui)), pager);
    box.cut_right(on.ui.px(3));
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

namespace {

constexpr double plate_gap_mm = 1.6, plate_pad_mm = 1.6, plate_sign_mm = 9;

/// How high each plate wants to be.
std::vector<float> plate_heights(const Ui& ui, const std::vector<TextView>& lines, float width, TextSize size) {
    std::vector<float> heights;
    for (const TextView& line : lines)
        heights.push_back(ui.height_of(line.text, size, false, width - ui.px(plate_sign_mm + plate_pad_mm)) + ui.px(2 * plate_pad_mm));
    return heights;
}

float total_of(const Ui& ui, const std::vector<float>& heights) {
    return std::accumulate(heights.begin(), heights.end(), ui.px(plate_gap_mm) * static_cast<float>(heights.size() - 1));
}

}  // namespace

float plates_height(const Ui& ui, const std::vector<TextView>& lines, float width, TextSize size) {
    return lines.empty() ? 0 : total_of(ui, plate_heights(ui, lines, width, size));
}

void draw_plates(Ui& ui, const Box& box, const std::vector<TextView>& lines, TextSize largest) {
    if (lines.empty()) return;
    const float gap = ui.px(plate_gap_mm), pad = ui.px(plate_pad_mm);
    TextSize size = largest;
    std::vector<float> heights = plate_heights(ui, lines, box.width(), size);
    if (total_of(ui, heights) > box.height()) heights = plate_heights(ui, lines, box.width(), size = TextSize::small);
    const float total = total_of(ui, heights);
    const float squeeze = total > box.height() ? (box.height() - total) / static_cast<float>(lines.size()) : 0;
    Box rest = box;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Skin skin = ui.pale(lines[i].tone);
        Box plate = rest.cut_top(heights[i] + squeeze);
        rest.cut_top(gap);
        ui.list().AddRectFilled(plate.min, plate.max, colour(skin.fill), ui.px(1.4));
        ui.list().AddRectFilled(plate.min, {plate.min.x + ui.px(1.2), plate.max.y}, colour(skin.border), ui.px(1.4), ImDrawFlags_RoundCornersLeft);
        const Box sign = plate.cut_left(ui.px(plate_sign_mm));
        draw_tone_sign(ui, {sign.centre().x + ui.px(0.5), sign.centre().y}, ui.px(5), lines[i].tone);
        Type type{size, false, skin.ink, skin.fill};
        type.down = Down::middle;
        ui.text({plate.min, {plate.max.x - pad, plate.max.y}}, lines[i].text, type);
    }
}

namespace {

constexpr double remedy_high_mm = 20.2;

}  // namespace

void finding_off_bottom(const Drawing& on, Box& box, const std::vector<TextView>& lines, const std::optional<ButtonView>& remedy, float most_share) {
    if (lines.empty()) return;
    Ui& ui = on.ui;
    const float most = box.height() * most_share;
    if (remedy) {
        on.ui.press(box.cut_bottom(ui.px(remedy_high_mm)), *remedy, on.actions);
        box.cut_bottom(ui.px(1.6));
    }
    draw_plates(ui, box.cut_bottom(std::min(plates_height(ui, lines, box.width()), most)), lines);
    box.cut_bottom(ui.px(3.05));
}

namespace {

constexpr double chip_gap_mm = 1.6, chip_pad_mm = 1.8, chip_sign_mm = 6;

float chip_width(const Ui& ui, const MoveChip& chip, bool two_lines, bool with_value) {
    const std::string value = with_value ? chip.value : "";
    const float label = ui.width_of(chip.label, TextSize::small, true), number = ui.width_of(value, TextSize::small, true);
    const float words = two_lines || value.empty() ? std::max(label, number) : label + ui.width_of("  ", TextSize::small, true) + number;
    const bool sign = chip.standing != MoveChip::Standing::coming;
    return words + ui.px(2 * chip_pad_mm + (sign ? chip_sign_mm : 0)) + 2;
}

struct ChipWidths {
    std::vector<float> widths;
    std::vector<bool> with_value;
};

/// All alike where that does; else each by what it says. Where even that is too much, what is done
/// keeps its check mark and gives up its number, the first one first.
ChipWidths chip_widths(const Ui& ui, const std::vector<MoveChip>& moves, float width, bool two_lines) {
    ChipWidths out{{}, std::vector<bool>(moves.size(), true)};
    const float room = width - ui.px(chip_gap_mm) * static_cast<float>(moves.size() - 1), each = room / static_cast<float>(moves.size());
    const auto sum = [&] {
        out.widths.clear();
        float all = 0;
        for (std::size_t i = 0; i < moves.size(); ++i) {
            out.widths.push_back(chip_width(ui, moves[i], two_lines, out.with_value[i]));
            all += out.widths.back();
        }
        return all;
    };
    float all = sum();
    for (std::size_t i = 0; i < moves.size() && all > room; ++i) {
        if (moves[i].standing != MoveChip::Standing::done) continue;
        out.with_value[i] = false;
        all = sum();
    }
    const bool alike = std::all_of(out.widths.begin(), out.widths.end(), [&](float one) { return one <= each; });
    for (float& one : out.widths) one = alike ? each : one + (room - all) / static_cast<float>(moves.size());
    return out;
}

float moves_height(const Ui& ui, const std::vector<MoveChip>& moves, float width) {
    float all = ui.px(chip_gap_mm) * static_cast<float>(moves.size() - 1);
    for (const MoveChip& chip : moves) all += chip_width(ui, chip, false, true);
    return all <= width ? ui.px(8.6) : ui.px(13.2);
}

void draw_moves(Ui& ui, const Box& box, const std::vector<MoveChip>& moves) {
    const bool tall = box.height() > ui.px(10);
    const ChipWidths widths = chip_widths(ui, moves, box.width(), tall);
    Box line = box;
    for (std::size_t i = 0; i < moves.size(); ++i) {
        MoveChip chip = moves[i];
        if (!widths.with_value[i]) chip.value.clear();
        const bool done = chip.standing == MoveChip::Standing::done, now = chip.standing == MoveChip::Standing::now;
        const Box cell = line.cut_left(widths.widths[i]);
        line.cut_left(ui.px(chip_gap_mm));
        const Skin skin = now ? ui.strong(Tone::now) : done ? ui.pale(Tone::go) : ui.paper();
        ui.list().AddRectFilled(cell.min, cell.max, colour(skin.fill), ui.px(1.6));
        if (!now && !done)
            draw_dashed_box(ui.list(), cell.min, cell.max, colour(skin.border), ui.px(0.3), ui.px(1.6), ui.px(1.2));
        Box inner = cell.inside(ui.px(chip_pad_mm), ui.px(0.8));
        if (done || now) {
            const Box sign = inner.cut_left(ui.px(chip_sign_mm));
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

}  // namespace

void moves_off_top(Ui& ui, Box& box, const std::vector<MoveChip>& moves, float after) {
    if (moves.empty()) return;
    draw_moves(ui, box.cut_top(moves_height(ui, moves, box.width())), moves);
    box.cut_top(after);
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
