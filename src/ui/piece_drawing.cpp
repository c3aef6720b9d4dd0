#include "ui/piece_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/signs.h"

namespace tubewright {
namespace {

using Shape = PieceView::Shape;
using Taped = PieceView::Taped;

ImVec2 operator+(ImVec2 a, ImVec2 b) { return {a.x + b.x, a.y + b.y}; }
ImVec2 operator-(ImVec2 a, ImVec2 b) { return {a.x - b.x, a.y - b.y}; }
ImVec2 operator*(float by, ImVec2 a) { return {by * a.x, by * a.y}; }

constexpr double word_high_mm = 6, word_pad_mm = 1.4, block_mm = 4, block_label_gap_mm = 1.2;

ImVec2 word_size(const Ui& ui, const std::string& words) {
    return {ui.width_of(words, TextSize::small, true) + ui.px(2 * word_pad_mm) + 1, ui.px(word_high_mm)};
}

void draw_word(Ui& ui, ImVec2 centre, const std::string& words, const Skin& skin, double border_mm) {
    if (words.empty()) return;
    const ImVec2 size = word_size(ui, words);
    const Box plate = around(centre, size.x, size.y);
    ui.plate(plate, skin, ui.px(border_mm), ui.px(1.2));
    Type type = ui.small(skin, true);
    type.down = Down::middle;
    type.across = Across::middle;
    type.wrap = false;
    ui.text(plate, words, type);
}

void draw_name(Ui& ui, ImVec2 centre, const std::string& words) { draw_word(ui, centre, words, ui.paper(), 0); }

/// How far a word reaches in that direction from its middle.
float reach(const Ui& ui, const std::string& words, ImVec2 way) {
    const ImVec2 size = word_size(ui, words);
    return (std::fabs(way.x) * size.x + std::fabs(way.y) * size.y) / 2;
}

/// A dimension from place to place, drawn that far aside; its words stand on the line.
void draw_dimension(Ui& ui, ImVec2 from, ImVec2 to, ImVec2 aside, const std::string& words) {
    const Palette& p = ui.palette();
    const float off = reach(ui, words, aside) + ui.px(2);
    const ImVec2 a = from + off * aside, b = to + off * aside, beyond = (off + ui.px(2)) * aside;
    ImDrawList& list = ui.list();
    list.AddLine(from, from + beyond, colour(p.now), ui.px(0.35));
    list.AddLine(to, to + beyond, colour(p.now), ui.px(0.35));
    list.AddLine(a, b, colour(p.now), ui.px(0.9));
    const ImVec2 way = b - a;
    const float length = std::hypot(way.x, way.y), head = std::min(ui.px(3), length / 3);
    if (length > ui.px(3))
        for (const bool first : {true, false}) {
            const ImVec2 tip = first ? a : b, along = (first ? 1 : -1) / length * way, across{-along.y, along.x};
            list.AddTriangleFilled(tip, tip + head * along + (head * 0.4f) * across, tip + head * along - (head * 0.4f) * across, colour(p.now));
        }
    draw_word(ui, a + 0.5f * way, words, ui.pale(Tone::now), 0.35);
}

// --- straight

void draw_straight(Ui& ui, const Box& box, const PieceView& view) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const float thick = std::min(ui.px(9), box.height() * 0.16f), row = ui.px(word_high_mm + 1.2), y = box.centre().y + ui.px(1);
    const float left = box.min.x + thick, right = box.max.x - thick, wide = right - left;
    const auto at = [&](double share) { return left + static_cast<float>(share) * wide; };
    const float upper = y - thick * 0.7f - row * 1.5f, lower = y - thick * 0.7f - row * 0.5f;
    draw_rod(list, {left + thick / 2, y}, {right - thick / 2, y}, thick, p.ink, p.steel, p.steel_bright);
    if (!view.hook_end.empty()) draw_name(ui, {box.min.x + word_size(ui, view.hook_end).x / 2 + ui.px(1), upper}, view.hook_end);
    if (!view.lever_end.empty()) draw_name(ui, {box.max.x - word_size(ui, view.lever_end).x / 2 - ui.px(1), upper}, view.lever_end);
    if (view.bend) {
        const float from = at(view.bend->first), to = at(view.bend->second);
        list.AddRectFilled({from, y - thick / 2}, {to, y + thick / 2}, colour(mixed(p.now, p.steel_bright, 0.55)));
        draw_dashes(list, {from, y - thick * 0.7f - row}, {from, y + thick * 1.4f}, colour(p.now), ui.px(0.7), ui.px(1.6), ui.px(1.1));
        const std::string words = "the bend";
        draw_name(ui, {(from + to) / 2, upper}, words);
    }
    if (view.ink) {
        const float x = at(*view.ink);
        list.AddRectFilled({x - ui.px(0.7), y - thick * 0.65f}, {x + ui.px(0.7), y + thick * 0.65f}, colour(p.ink), ui.px(0.3));
        const float half = word_size(ui, view.ink_words).x / 2;
        draw_name(ui, {std::clamp(x, box.min.x + half, box.max.x - half), lower}, view.ink_words);
    }
    const float under = y + thick * 0.65f;
    switch (view.taped) {
        case Taped::whole: return draw_dimension(ui, {left, under}, {right, under}, {0, 1}, view.taped_words);
        case Taped::ink: return draw_dimension(ui, {left, under}, {at(view.ink.value_or(0.3)), under}, {0, 1}, view.taped_words);
        case Taped::past_start: {
            const double start = view.bend ? view.bend->first : 0.4;
            return draw_dimension(ui, {at(start), under}, {at(view.ink.value_or(start)), under}, {0, 1}, view.taped_words);
        }
        default: return;
    }
}

// --- bent

/// The bent tube: along x from its hook end, then round to the left, which is up on the screen. In pixels.
struct BentPlaces {
    float angle, leg, radius, thick;
    ImVec2 hook;

    ImVec2 along() const { return {std::cos(angle), -std::sin(angle)}; }         ///< the lever leg
    ImVec2 outside() const { return {std::sin(angle), std::cos(angle)}; }        ///< of the lever leg; of the hook leg it is down
    ImVec2 start() const { return hook + ImVec2{leg, 0}; }
    ImVec2 middle() const { return start() + ImVec2{0, -radius}; }               ///< of the arc
    ImVec2 on_arc(float turned) const { return middle() + radius * ImVec2{std::sin(turned), std::cos(turned)}; }
    ImVec2 finish() const { return on_arc(angle); }
    ImVec2 lever() const { return finish() + leg * along(); }
    ImVec2 outer_corner() const { return start() + ImVec2{(radius + thick / 2) * std::tan(angle / 2), thick / 2}; }
};

void draw_tube(Ui& ui, const BentPlaces& at) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const auto stroke = [&](float shift, float width, Rgb ink) {
        const ImVec2 out{0, 1};
        list.PathLineTo(at.hook + shift * out);
        for (int i = 0; i <= 32; ++i) {
            const float turned = at.angle * static_cast<float>(i) / 32;
            list.PathLineTo(at.middle() + (at.radius + shift) * ImVec2{std::sin(turned), std::cos(turned)});
        }
        list.PathLineTo(at.lever() + shift * at.outside());
        list.PathStroke(colour(ink), 0, width);
    };
    stroke(0, at.thick * 1.3f, p.ink);
    stroke(0, at.thick, p.steel);
    stroke(-at.thick * 0.2f, at.thick * 0.16f, p.steel_bright);
}

/// A block held along the outside of a leg, over the corner; its name beside it.
void draw_block(Ui& ui, ImVec2 corner, ImVec2 along, ImVec2 outside) {
    const Palette& p = ui.palette();
    const float thick = ui.px(block_mm);
    const ImVec2 from = corner - ui.px(9) * along, to = corner + ui.px(13) * along, deep = thick * outside;
    ui.list().AddQuadFilled(from, to, to + deep, from + deep, colour(p.caution));
    ui.list().AddQuad(from, to, to + deep, from + deep, colour(p.ink), ui.px(0.35));
    const std::string words = "block";
    draw_name(ui, corner + (thick + ui.px(block_label_gap_mm) + reach(ui, words, outside)) * outside + ui.px(5) * along, words);
}

/// The name of a lever leg that stands up has room beside it; that of a flatter one stands over its end.
bool is_upright(float angle) { return angle > 1.4f; }

/// What lies round about the tube itself, in pixels.
struct Margins {
    float left = 0, top = 0, right = 0, bottom = 0;
    void need(ImVec2 way, float by) {
        if (way.x > 0.1f) right = std::max(right, by * way.x);
        if (way.x < -0.1f) left = std::max(left, -by * way.x);
        if (way.y > 0.1f) bottom = std::max(bottom, by * way.y);
        if (way.y < -0.1f) top = std::max(top, -by * way.y);
    }
};

/// From the middle of the bend to its corner.
ImVec2 bisector(float angle) { return {std::sin(angle / 2), std::cos(angle / 2)}; }

Margins margins_of(const Ui& ui, const PieceView& view, ImVec2 outside) {
    Margins round;
    const ImVec2 down{0, 1};
    const float dimension = ui.px(4.5), block = ui.px(block_mm + block_label_gap_mm + 1);
    if (!view.hook_end.empty()) round.top = ui.px(1);
    if (!view.lever_end.empty() && !is_upright(static_cast<float>(view.angle.rad()))) round.top = ui.px(word_high_mm);
    switch (view.taped) {
        case Taped::hook_leg:
            round.need(down, 2 * reach(ui, view.taped_words, down) + dimension);
            round.need(outside, block + 2 * reach(ui, "block", outside));
            break;
        case Taped::lever_leg:
            round.need(outside, 2 * reach(ui, view.taped_words, outside) + dimension);
            round.need(down, block + 2 * reach(ui, "block", down));
            break;
        case Taped::angle:
            round.need(down, ui.px(word_high_mm + 3));
            round.right = ui.px(26);
            break;
        case Taped::crown_gap: {
            const ImVec2 out = bisector(static_cast<float>(view.angle.rad()));
            round.right = out.x * (2 * reach(ui, view.taped_words, out) + dimension);
            round.bottom = out.y * (2 * reach(ui, view.taped_words, out) + dimension);
            break;
        }
        case Taped::width: round.right = 2 * reach(ui, view.taped_words, {1, 0}) + dimension; break;
        default: break;
    }
    return round;
}

/// The largest that fits. Legs are three radii, the tube half of one: not to scale, so that all of it can be seen.
BentPlaces fitted(const Ui& ui, const Box& box, const PieceView& view) {
    const bool round = view.taped == Taped::radius;
    const float angle = static_cast<float>(view.shape == Shape::bent_back ? std::numbers::pi : view.angle.rad());
    BentPlaces unit{angle, round ? 1.1f : view.shape == Shape::bent_back ? 3.4f : 2.6f, 1, round ? 0.3f : 0.42f, {0, 0}};
    Margins margins = margins_of(ui, view, unit.outside());
    ImVec2 low{0, unit.thick / 2}, high{0, unit.thick / 2};
    const auto take = [&](ImVec2 place) {
        low = {std::min(low.x, place.x - unit.thick / 2), std::min(low.y, place.y - unit.thick / 2)};
        high = {std::max(high.x, place.x + unit.thick / 2), std::max(high.y, place.y + unit.thick / 2)};
    };
    for (const ImVec2 place : {unit.hook, unit.lever(), unit.finish(), unit.on_arc(angle / 2)}) take(place);
    if (angle > 1.6f) take(unit.on_arc(std::numbers::pi_v<float> / 2));
    else if (view.taped == Taped::hook_leg || view.taped == Taped::lever_leg || view.taped == Taped::crown_gap) high.x = std::max(high.x, unit.outer_corner().x);
    const float scale = std::min((box.width() - margins.left - margins.right) / (high.x - low.x), (box.height() - margins.top - margins.bottom) / (high.y - low.y));
    BentPlaces at = unit;
    at.leg *= scale;
    at.radius *= scale;
    at.thick *= scale;
    const float wide = (high.x - low.x) * scale + margins.left + margins.right, tall = (high.y - low.y) * scale + margins.top + margins.bottom;
    const ImVec2 corner{box.centre().x - wide / 2 + margins.left, box.centre().y - tall / 2 + margins.top};
    at.hook = corner - scale * low;
    return at;
}

void draw_angle(Ui& ui, const BentPlaces& at, const std::string& words) {
    const Palette& p = ui.palette();
    const ImVec2 corner = at.start() + ImVec2{at.radius * std::tan(at.angle / 2), 0};
    const float arm = at.leg * 0.8f;
    draw_dashes(ui.list(), corner, corner + ImVec2{arm, 0}, colour(p.now), ui.px(0.7), ui.px(2.2), ui.px(1.5));
    ui.list().PathArcTo(corner, arm * 0.75f, -at.angle, 0, 32);
    ui.list().PathStroke(colour(p.now), 0, ui.px(0.9));
    draw_word(ui, corner + ImVec2{arm * 0.75f, ui.px(word_high_mm / 2 + 2)}, words, ui.pale(Tone::now), 0.35);
}

void draw_radius(Ui& ui, const BentPlaces& at, const std::string& words) {
    const Palette& p = ui.palette();
    const ImVec2 middle = at.middle(), edge = at.on_arc(at.angle / 2);
    ui.list().AddLine(middle, edge, colour(p.now), ui.px(0.9));
    ui.list().AddCircleFilled(middle, ui.px(1.2), colour(p.now));
    ui.list().AddCircleFilled(edge, ui.px(1.2), colour(p.now));
    const ImVec2 size = word_size(ui, words);
    draw_word(ui, middle - ImVec2{size.x / 2 + ui.px(1.5), size.y / 2 + ui.px(1.5)}, words, ui.pale(Tone::now), 0.35);
}

void draw_width(Ui& ui, const BentPlaces& at, const std::string& words) {
    const Palette& p = ui.palette();
    const float half = at.thick / 2, far = at.start().x + at.radius + half;
    const ImVec2 under = at.start() + ImVec2{0, half}, over = at.finish() - ImVec2{0, half};
    for (const ImVec2 edge : {under, over}) {
        ui.list().AddLine(edge, {far, edge.y}, colour(p.now), ui.px(0.35));
        ui.list().AddCircleFilled(edge, ui.px(1.3), colour(p.now));
    }
    draw_dimension(ui, {far, over.y}, {far, under.y}, {1, 0}, words);
}

/// The outsides of the legs drawn on to their corner, and the gap from there to the tube.
void draw_crown_gap(Ui& ui, const BentPlaces& at, const std::string& words) {
    const Palette& p = ui.palette();
    const ImVec2 corner = at.outer_corner(), out = bisector(at.angle), crown = at.middle() + (at.radius + at.thick / 2) * out;
    for (const ImVec2 along : {ImVec2{-1, 0}, at.along()}) draw_dashes(ui.list(), corner, corner + (at.radius + at.leg / 2) * along, colour(p.now), ui.px(0.7), ui.px(2.2), ui.px(1.5));
    ui.list().AddLine(crown, corner, colour(p.now), ui.px(0.9));
    for (const ImVec2 edge : {crown, corner}) ui.list().AddCircleFilled(edge, ui.px(1.2), colour(p.now));
    draw_word(ui, corner + (reach(ui, words, out) + ui.px(2)) * out, words, ui.pale(Tone::now), 0.35);
}

void draw_bent(Ui& ui, const Box& box, const PieceView& view) {
    const BentPlaces at = fitted(ui, box, view);
    const ImVec2 down{0, 1}, corner = at.outer_corner();
    if (view.taped == Taped::hook_leg) draw_block(ui, corner, at.along(), at.outside());
    if (view.taped == Taped::lever_leg) draw_block(ui, corner, {-1, 0}, down);
    draw_tube(ui, at);
    switch (view.taped) {
        case Taped::hook_leg: draw_dimension(ui, at.hook + at.thick / 2 * down, corner, down, view.taped_words); break;
        case Taped::lever_leg: draw_dimension(ui, at.lever() + at.thick / 2 * at.outside(), corner, at.outside(), view.taped_words); break;
        case Taped::angle: draw_angle(ui, at, view.taped_words); break;
        case Taped::radius: draw_radius(ui, at, view.taped_words); break;
        case Taped::crown_gap: draw_crown_gap(ui, at, view.taped_words); break;
        case Taped::width: draw_width(ui, at, view.taped_words); break;
        default: break;
    }
    const ImVec2 left = word_size(ui, view.hook_end), right = word_size(ui, view.lever_end);
    draw_name(ui, {at.hook.x + left.x / 2, at.hook.y - at.thick * 0.65f - left.y / 2 - ui.px(1)}, view.hook_end);
    const ImVec2 end = at.lever() - (at.thick * 0.65f + ui.px(1)) * at.outside();
    draw_name(ui, {end.x - right.x / 2, end.y + (is_upright(at.angle) ? right.y : -right.y) / 2}, view.lever_end);
}

}  // namespace

void draw_piece(Ui& ui, const Box& box, const PieceView& view) {
    const Palette& p = ui.palette();
    Box rest = box;
    if (!view.caption.empty()) {
        const float height = ui.height_of(view.caption, TextSize::small, false, rest.width());
        ui.text(rest.cut_bottom(height + ui.px(0.5)), view.caption, ui.small(ui.paper()));
        rest.cut_bottom(ui.px(1.2));
    }
    ui.list().AddRectFilled(rest.min, rest.max, colour(p.well), ui.px(2));
    ui.list().AddRect(rest.min, rest.max, colour(p.edge), ui.px(2), 0, ui.px(0.35));
    const Box inner = rest.inside(ui.px(3), ui.px(2.4));
    if (view.shape == PieceView::Shape::straight) draw_straight(ui, inner, view);
    else draw_bent(ui, inner, view);
}

}  // namespace tubewright
