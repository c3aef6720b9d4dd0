// A large thing to touch: a name over a value, and where words are too slow a drawing of where the tape lay.

#include <algorithm>
#include <cmath>

#include "ui/parts.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

using TileShape = TileView::Drawing;

/// A corner of tube as two rods, seen from the side, with the corner at the lower left.
struct DrawnCorner {
    ImVec2 up, corner, right;
    float round;
};

void draw_corner(Ui& ui, const DrawnCorner& at) {
    const Palette& p = ui.palette();
    draw_rod(ui.list(), at.up, at.corner, 2 * at.round, p.ink, p.steel, p.steel_bright);
    draw_rod(ui.list(), at.corner, at.right, 2 * at.round, p.ink, p.steel, p.steel_bright);
}

void draw_measure(Ui& ui, ImVec2 from, ImVec2 to) {
    const ImU32 ink = colour(ui.palette().now);
    const float end = ui.px(2), line = ui.px(0.8);
    ui.list().AddLine(from, to, ink, line);
    const bool level = std::abs(from.y - to.y) < 1;
    for (const ImVec2 at : {from, to}) ui.list().AddLine({at.x - (level ? 0 : end), at.y - (level ? end : 0)}, {at.x + (level ? 0 : end), at.y + (level ? end : 0)}, ink, line);
}

/// The tape along the lower leg: from the cut end to where the two edges, or centre lines, meet.
void draw_taped(Ui& ui, const DrawnCorner& at, TileShape drawing) {
    const float edge = drawing == TileShape::outside ? at.round : drawing == TileShape::inside ? -at.round : 0;
    const float y = at.corner.y + edge, x = at.corner.x - edge;
    draw_measure(ui, {x, y}, {at.right.x, y});
    ui.list().AddCircleFilled({x, y}, ui.px(1.3), colour(ui.palette().now));
}

void draw_ways(Ui& ui, const Box& box) {
    const ImVec2 a{box.min.x + box.width() * 0.15f, box.max.y - ui.px(2)}, b{box.min.x + box.width() * 0.6f, a.y}, c{b.x, box.min.y + ui.px(2)};
    for (const auto& [from, to] : {std::pair{a, b}, std::pair{b, c}}) {
        ui.list().AddLine(from, to, colour(ui.palette().now), ui.px(0.9));
        const ImVec2 way{to.x - from.x, to.y - from.y};
        const float length = std::max(1.0f, std::sqrt(way.x * way.x + way.y * way.y)), head = ui.px(2.6);
        const ImVec2 u{way.x / length, way.y / length};
        ui.list().AddTriangleFilled(to, {to.x - head * (u.x + 0.6f * u.y), to.y - head * (u.y - 0.6f * u.x)}, {to.x - head * (u.x - 0.6f * u.y), to.y - head * (u.y + 0.6f * u.x)}, colour(ui.palette().now));
    }
}

void draw_flat(Ui& ui, const Box& box) {
    const Palette& p = ui.palette();
    const float y = box.centre().y, round = ui.px(1.6);
    const ImVec2 a{box.min.x + box.width() * 0.2f, y - ui.px(3)}, b{box.min.x + box.width() * 0.42f, y - ui.px(3)}, c{box.min.x + box.width() * 0.58f, y + ui.px(3)}, d{box.min.x + box.width() * 0.8f, y + ui.px(3)};
    ui.list().AddLine({box.min.x + box.width() * 0.1f, y + ui.px(6.4)}, {box.max.x - box.width() * 0.1f, y + ui.px(6.4)}, colour(p.ink), ui.px(0.6));
    for (const auto& [from, to] : {std::pair{a, b}, std::pair{b, c}, std::pair{c, d}}) draw_rod(ui.list(), from, to, 2 * round, p.ink, p.steel, p.steel_bright);
}

void draw_drawing(Ui& ui, const Box& box, TileShape drawing) {
    if (drawing == TileShape::moves) return draw_ways(ui, box);
    if (drawing == TileShape::flat) return draw_flat(ui, box);
    const float round = std::min(ui.px(2.6), box.height() * 0.16f), wide = std::min(box.width() * 0.36f, box.height() * 1.1f);
    const DrawnCorner at{{box.centre().x - wide, box.min.y + round}, {box.centre().x - wide, box.max.y - 2.2f * round}, {box.centre().x + wide, box.max.y - 2.2f * round}, round};
    draw_corner(ui, at);
    if (drawing != TileShape::straights) return draw_taped(ui, at, drawing);
    draw_measure(ui, {at.corner.x + 4 * round, at.corner.y}, {at.right.x, at.corner.y});
}

}  // namespace

void draw_tile(const Drawing& on, const Box& box, const TileView& tile) {
    Ui& ui = on.ui;
    Box inner;
    Skin skin;
    const bool fired = ui.bare_button(box, tile.touch, inner, skin);
    if (fired && tile.touch.press) on.actions.push_back(*tile.touch.press);
    ui.begin_label();
    const bool off = !tile.touch.enabled;
    Type name = ui.small(skin), value{TextSize::body, true, skin.ink, skin.fill, Across::middle, Down::middle};
    name.across = Across::middle;
    name.off = value.off = off;
    const std::string& over = off && !tile.touch.why_not.empty() ? tile.touch.why_not : tile.name;
    if (tile.touch.chosen && !over.empty()) inner.min.x += ui.px(3);  // beside the sign of what is chosen
    if (!over.empty()) ui.text_off_top(inner, over, name, 0);
    if (tile.drawing != TileShape::none) {
        const float words = ui.height_of(tile.touch.label, TextSize::body, true, inner.width());
        const Box below = inner.cut_bottom(words);
        draw_drawing(ui, inner, tile.drawing);
        inner = below;
    }
    ui.text(inner, tile.touch.label, value);
    ui.end_fitted_label();
}

}  // namespace tubewright
