#include <algorithm>

#include "ui/bodies.h"

namespace tubewright {
namespace {

/// The picture with what speaks against the line under it.
void draw_side(const Drawing& on, Box box, const TilesBody& body) {
    Ui& ui = on.ui;
    finding_off_bottom(on, box, body.notes, body.remedy, body.picture ? 0.62f : 1.0f);
    if (body.picture) draw_turning_picture(ui, box, *body.picture, on.picture, on.actions);
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const TilesBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    const float gap = ui.px(3);
    if (!body.heading.empty()) ui.text_off_top(rest, body.heading, ui.body(ui.paper(), true), ui.px(1));
    if (body.tiles.empty()) return draw_side(on, rest, body);
    if (body.picture || !body.notes.empty()) {
        draw_side(on, rest.cut_left(rest.width() * 0.27f), body);
        rest.cut_left(gap);
    }
    const int count = static_cast<int>(body.tiles.size()), columns = std::max(1, body.columns), rows = std::max(1, (count + columns - 1) / columns);
    const float most = ui.px(48) * static_cast<float>(rows) + gap * static_cast<float>(rows - 1);
    const Box grid = rest.cut_top(std::min(rest.height(), most));
    for (int i = 0; i < count; ++i) draw_tile(on, grid.row(i / columns, rows, gap).column(i % columns, columns, gap), body.tiles[static_cast<std::size_t>(i)]);
}

}  // namespace tubewright
