#include "ui/header.h"

#include <algorithm>

namespace tubewright {
namespace {

constexpr double chip_pad_mm = 2, chip_gap_mm = 1.8, dot_mm = 5;
constexpr float close_lines = 1.36f;

/// How the bar is set. Where room is short the chips go on two lines first, then the place, then the
/// line's name stands over the place in small type, and last on two lines of its own.
struct Setting {
    bool chips_halved = false, place_halved = false, place_below = false, title_small = false, title_halved = false;
};
constexpr Setting settings[] = {
    {}, {true}, {true, true}, {true, false, true, true}, {true, true, false, true, true}};

float wide(const Ui& ui, const std::string& text, TextSize size, bool bold, bool halved) {
    if (text.empty()) return 0;
    // One pixel over what was measured, so that rounding never breaks a line.
    return 1 + (halved ? ui.halved_width_of(text, size, bold) : ui.width_of(text, size, bold));
}

struct Widths {
    float title = 0, place = 0;
    std::vector<float> chips;
    float all = 0;
};

Widths widths_of(const Ui& ui, const HeaderView& header, const Setting& setting) {
    Widths widths;
    widths.title = wide(ui, header.title, setting.title_small ? TextSize::small : TextSize::body, true, setting.title_halved);
    widths.place = wide(ui, header.place, TextSize::small, false, setting.place_halved);
    const float dot = header.place.empty() ? 0 : ui.px(dot_mm);
    widths.all = setting.place_below ? std::max(widths.title, widths.place) : widths.title + dot + widths.place;
    for (const std::string& chip : header.chips) {
        widths.chips.push_back(wide(ui, chip, TextSize::small, false, setting.chips_halved) + ui.px(2 * chip_pad_mm));
        widths.all += widths.chips.back() + ui.px(chip_gap_mm);
    }
    return widths;
}

/// Frames around chips of one line; rules between those of two, where a frame would touch the letters.
void draw_chips(Ui& ui, Box& inner, const HeaderView& header, const Widths& widths, bool halved, const Skin& skin) {
    Type type = ui.small(skin);
    type.pitch = close_lines;
    type.down = Down::middle;
    type.across = Across::middle;
    for (std::size_t i = header.chips.size(); i-- > 0;) {
        const Box chip = inner.cut_right(widths.chips[i]);
        if (halved) ui.list().AddLine({chip.min.x, chip.min.y + ui.px(0.6)}, {chip.min.x, chip.max.y - ui.px(0.6)}, colour(skin.border), ui.px(0.4));
        else ui.plate_edge(chip.inside(0, ui.px(0.7)), colour(skin.border), ui.px(0.3), ui.px(1.6));
        ui.text(chip.inside(ui.px(chip_pad_mm), 0), header.chips[i], type);
        inner.cut_right(ui.px(chip_gap_mm));
    }
}

}  // namespace

float header_height(const Ui& ui) { return ui.px(9.6); }

void draw_header(Ui& ui, const Box& box, const HeaderView& header) {
    const Palette& p = ui.palette();
    const Skin skin{p.bar, p.bar_edge, p.bar_ink, p.bar_ink};
    ui.list().AddRectFilled(box.min, box.max, colour(p.bar));
    Box inner = box.inside(ui.px(2.4), ui.px(0.5));
    Setting setting;
    Widths widths;
    for (const Setting& one : settings) {
        setting = one;
        widths = widths_of(ui, header, setting);
        if (widths.all <= inner.width()) break;
    }
    draw_chips(ui, inner, header, widths, setting.chips_halved, skin);
    Type title = setting.title_small ? ui.small(skin, true) : ui.body(skin, true), place = ui.small(skin);
    title.down = place.down = Down::middle;
    title.pitch = place.pitch = close_lines;
    if (setting.place_below) {
        ui.text(inner.row(0, 2, 0), header.title, title);
        ui.text(inner.row(1, 2, 0), header.place, place);
        return;
    }
    // The longest of names gives way to what is beside it, never the other way round.
    const float beside = header.place.empty() ? 0 : widths.place + ui.px(dot_mm);
    ui.text(inner.cut_left(std::min(widths.title, inner.width() - beside)), header.title, title);
    if (header.place.empty()) return;
    ui.list().AddCircleFilled(inner.cut_left(ui.px(dot_mm)).centre(), ui.px(0.7), colour(skin.ink));
    ui.text(inner, header.place, place);
}

}  // namespace tubewright
