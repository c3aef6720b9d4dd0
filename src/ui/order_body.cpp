#include <algorithm>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

/// Place, name and end at the left; the three buttons, each wide enough for a gloved finger, at the right.
void draw_row(const Drawing& on, const Box& box, const OrderRow& row) {
    Ui& ui = on.ui;
    const Skin skin = row.tone == Tone::plain ? ui.panel() : ui.pale(row.tone);
    ui.plate(box, skin, ui.px(0.45), ui.px(2));
    Box inner = box.inside(ui.px(3), ui.px(1.2));
    const float gap = ui.px(3.2);
    const std::vector<const ButtonView*> buttons{&row.later, &row.earlier, &row.first};
    for (const ButtonView* button : buttons) {
        const float wide = std::max(ui.px(25), ui.widest_word(button->label, TextSize::body, true) + ui.px(7));
        ui.press(inner.cut_right(wide), *button, on.actions);
        inner.cut_right(gap);
    }
    if (row.tone != Tone::plain) {
        const Box sign = inner.cut_left(ui.px(8));
        draw_tone_sign(ui, {sign.min.x + ui.px(3), sign.centre().y}, ui.px(6), row.tone);
    }
    Type place = ui.body(skin, true), name = place, detail = ui.small(skin);
    place.down = name.down = Down::middle;
    detail.down = Down::bottom;
    detail.ink = skin.soft;
    const float below = std::min(ui.height_of(row.detail, TextSize::small, false, inner.width()), inner.height() * 0.6f);
    ui.text(inner.cut_bottom(below), row.detail, detail);
    ui.text(inner.cut_left(ui.width_of(row.place, TextSize::body, true) + ui.px(3)), row.place, place);
    ui.text(inner, row.name, name);
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const OrderBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    if (body.pager.needed) {
        draw_pager(on, rest.cut_right(pager_width(ui)), body.pager);
        rest.cut_right(ui.px(3));
    }
    constexpr int rows_of_page = 3;
    const int places = std::max(rows_of_page, static_cast<int>(body.rows.size()));
    const float gap = ui.px(2), least = ui.px(22.5) * static_cast<float>(places) + gap * static_cast<float>(places - 1);
    if (!body.notes.empty()) {
        const float wanted = plates_height(ui, body.notes, rest.width());
        draw_plates(ui, rest.cut_bottom(std::max(ui.px(8), std::min(wanted, rest.height() - least - ui.px(1.5)))), body.notes);
        rest.cut_bottom(ui.px(1.5));
    }
    const float height = std::min(rest.height(), ui.px(28) * static_cast<float>(places) + gap * static_cast<float>(places - 1));
    const Box rows = rest.cut_top(height);
    for (std::size_t i = 0; i < body.rows.size(); ++i) draw_row(on, rows.row(static_cast<int>(i), places, gap), body.rows[i]);
}

}  // namespace tubewright
