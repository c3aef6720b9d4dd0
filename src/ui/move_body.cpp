#include <algorithm>

#include "ui/bodies.h"
#include "ui/clock.h"

namespace tubewright {
namespace {

/// What to do, as large as there is room for, and under it how.
void draw_words(Ui& ui, Box box, const MoveBody& body, const Skin& skin) {
    Type asks = ui.body(skin);
    asks.ink = ui.palette().ink_soft;
    ui.text_off_top(box, body.asks, asks, ui.px(1));
    std::vector<TextView> lines = body.lines;
    if (body.clock && !body.clock->caption.empty()) lines.push_back({body.clock->caption, Tone::plain});
    float needed = 0;
    for (const TextView& line : lines)
        needed += ui.height_of(line.text, TextSize::small, line.tone == Tone::stop || line.tone == Tone::now, box.width() - (line.tone == Tone::plain ? 0 : ui.px(6)));
    const float hero_least = ui.px(cap_height::hero_least * 1.3);
    const float hero = std::clamp(box.height() - needed - ui.px(1.5), hero_least, ui.px(cap_height::hero_most * (box.height() > ui.px(70) ? 3.2 : 1.7)));
    Box top = box.cut_top(std::min(hero, box.height()));
    Type type = ui.hero(skin);
    type.down = Down::middle;
    ui.text(top, body.hero, type);
    box.cut_top(ui.px(1.5));
    draw_lines(ui, box, lines, skin);
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const MoveBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    const float gap = ui.px(2.5);
    if (!body.moves.empty()) {
        draw_moves(ui, rest.cut_top(moves_height(ui, body.moves, rest.width())), body.moves);
        rest.cut_top(gap);
    }
    if (!body.buttons.empty()) {
        const int count = static_cast<int>(body.buttons.size()), columns = count > 2 ? 2 : 1, rows = (count + columns - 1) / columns;
        const Box side = rest.cut_right(ui.px(columns == 1 ? 36 : 63));
        draw_grid(on, {side.min, {side.max.x, side.min.y + std::min(side.height(), ui.px(40) * static_cast<float>(rows))}}, body.buttons, columns, ui.px(3));
        rest.cut_right(ui.px(3));
    }
    const bool room_for_picture = body.picture && rest.width() > ui.px(body.clock ? 170 : 140);
    if (room_for_picture) {
        const float width = std::min(rest.width() * (body.clock ? 0.36f : 0.44f), rest.height() * 1.5f);
        draw_picture(ui, rest.cut_left(width), *body.picture, on.picture);
        rest.cut_left(ui.px(3));
    }
    const Skin panel = ui.panel();
    const Skin skin{panel.fill, ui.palette().now, panel.ink, panel.soft};
    ui.plate(rest, skin, ui.px(1), ui.px(2.4));
    Box inner = rest.inside(ui.px(4), ui.px(2.8));
    if (body.clock) {
        const float width = std::min(inner.width() * 0.46f, inner.height() * 1.3f);
        draw_clock(ui, inner.cut_right(width), *body.clock, skin);
        inner.cut_right(ui.px(3));
    }
    draw_words(ui, inner, body, skin);
}

}  // namespace tubewright
