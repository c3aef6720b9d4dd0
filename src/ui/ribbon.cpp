#include "ui/ribbon.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "ui/signs.h"

namespace tubewright {
namespace {

/// The rows of the ribbon, from the top, and where the tube lies across.
struct Rows {
    Box words, signs, tube, ticks, tape;
    float at(double share) const { return tube.min.x + static_cast<float>(share) * tube.width(); }
};

Rows rows_of(const Ui& ui, const Box& box) {
    Box rest = box.inside(ui.px(2.4), ui.px(0.6));
    Rows rows;
    rows.words = rest.cut_top(ui.px(5.5));
    rows.signs = rest.cut_top(ui.px(2.9));
    Box tube = rest.cut_top(ui.px(6.6));
    tube.cut_left(ui.px(6.5));
    tube.cut_right(ui.px(6.5));
    rows.tube = tube;
    rest.cut_top(ui.px(0.5));
    rows.ticks = rest.cut_top(ui.px(2.2));
    rows.tape = rest.cut_top(ui.px(4.1));
    return rows;
}

void draw_steel(Ui& ui, const Box& tube) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    // Light from above: a bright line a third down, dark along the underside.
    const struct { float at; Rgb shade; } stops[] = {
        {0, mixed(p.steel, p.steel_deep, 0.35)}, {0.3f, p.steel_bright}, {0.62f, p.steel}, {1, p.steel_deep}};
    for (int i = 0; i < 3; ++i) {
        const ImU32 above = colour(stops[i].shade), below = colour(stops[i + 1].shade);
        list.AddRectFilledMultiColor({tube.min.x, tube.min.y + tube.height() * stops[i].at},
                                     {tube.max.x, tube.min.y + tube.height() * stops[i + 1].at}, above, above, below, below);
    }
    list.AddRect(tube.min, tube.max, colour(p.ink), ui.px(0.6), 0, ui.px(0.35));
}

void draw_waste(Ui& ui, const Rows& rows, double from, double to, bool cut_at_end) {
    if (to <= from) return;
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const Box part{{rows.at(from), rows.tube.min.y}, {rows.at(to), rows.tube.max.y}};
    list.PushClipRect(part.min, part.max, true);
    list.AddRectFilled(part.min, part.max, colour(p.paper, 0.65));
    for (float x = part.min.x - part.height(); x < part.max.x; x += ui.px(1.3))
        list.AddLine({x, part.max.y}, {x + part.height(), part.min.y}, colour(p.ink), ui.px(0.3));
    list.PopClipRect();
    const float x = cut_at_end ? part.max.x : part.min.x;
    list.AddLine({x, part.min.y - ui.px(0.9)}, {x, part.max.y + ui.px(0.9)}, colour(p.ink), ui.px(0.4));
    list.AddRect(part.min, part.max, colour(p.ink), 0, 0, ui.px(0.25));
}

/// Where the bends' numbers stand: over their bands, pushed apart where bands are narrower than numbers.
std::vector<Box> number_boxes(const Ui& ui, const Rows& rows, const RibbonView& ribbon) {
    std::vector<Box> boxes;
    for (const RibbonBend& bend : ribbon.bends) {
        const float width = std::max(ui.width_of(bend.number, TextSize::small, true) + ui.px(1.4), ui.px(3.6));
        const float centre = (rows.at(bend.from) + rows.at(bend.to)) / 2;
        Box box = around({centre, rows.tube.centre().y}, width, rows.tube.height());
        if (!boxes.empty() && box.min.x < boxes.back().max.x + ui.px(0.4)) {
            const float by = boxes.back().max.x + ui.px(0.4) - box.min.x;
            box.min.x += by;
            box.max.x += by;
        }
        boxes.push_back(box);
    }
    float limit = rows.tube.max.x;
    for (std::size_t i = boxes.size(); i-- > 0;) {
        const float by = std::max(0.0f, boxes[i].max.x - limit);
        boxes[i].min.x -= by;
        boxes[i].max.x -= by;
        limit = boxes[i].min.x - ui.px(0.4);
    }
    return boxes;
}

void draw_bend(Ui& ui, const Rows& rows, const RibbonBend& bend, Box number) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    const bool now = bend.standing == RibbonBend::Standing::now, done = bend.standing == RibbonBend::Standing::done;
    const float grow = now ? ui.px(1) : 0;
    const Box band{{rows.at(bend.from), rows.tube.min.y - grow}, {rows.at(bend.to), rows.tube.max.y + grow}};
    const bool wide = band.width() >= number.width();
    if (!wide) number = {{number.min.x, rows.tube.min.y + ui.px(0.6)}, {number.max.x, rows.tube.max.y - ui.px(0.6)}};
    const Box face = wide ? band : number;
    Skin skin = now ? ui.strong(Tone::now) : done ? ui.strong(Tone::go) : ui.panel();
    list.AddRectFilled(band.min, band.max, colour(skin.fill), ui.px(0.3));
    if (!wide && !now && !done) list.AddRect(band.min, band.max, colour(p.ink), ui.px(0.3), 0, ui.px(0.25));
    if (!wide) list.AddRectFilled(face.min, face.max, colour(skin.fill), ui.px(0.8));
    if (!now && !done) {
        skin.ink = p.ink;
        draw_dashed_box(list, face.min, face.max, colour(p.ink), ui.px(0.4), ui.px(1.1), ui.px(0.8));
    }
    if (done) draw_check(list, {(band.min.x + band.max.x) / 2, rows.signs.max.y - ui.px(1.7)}, ui.px(3), colour(p.go), ui.px(0.75));
    Type type = ui.body(skin, true);
    type.across = Across::middle;
    type.down = Down::middle;
    type.wrap = false;
    ui.text(wide ? face.inside(ui.px(0.2), 0) : face, bend.number, type);
}

void draw_tape(Ui& ui, const Rows& rows, const RibbonView& ribbon) {
    const Palette& p = ui.palette();
    const float tall[] = {1, 0.72f, 0.42f};
    float free_from = rows.tape.min.x - ui.px(5);
    for (const RibbonTick& tick : ribbon.ticks) {
        const float x = rows.at(tick.at), height = rows.ticks.height() * tall[std::clamp(tick.rank, 0, 2)];
        draw_rule(ui.list(), {x, rows.ticks.min.y}, {x, rows.ticks.min.y + height}, colour(p.ink), ui.px(tick.rank == 0 ? 0.35 : 0.22));
        if (tick.rank != 0 || tick.label.empty()) continue;
        const float width = ui.width_of(tick.label, TextSize::small, false);
        const Box label = around({x, rows.tape.centre().y}, width, rows.tape.height());
        if (label.min.x < free_from || label.max.x > rows.tape.max.x) continue;
        Type type = ui.small(ui.paper());
        type.wrap = false;
        type.down = Down::middle;
        ui.text({label.min, {label.max.x + 1, label.max.y}}, tick.label, type);
        free_from = label.max.x + ui.px(1.8);
    }
}

/// Draws pointers and lines; a reading stands over each that has room for one, the one in hand first.
void draw_marks(Ui& ui, const Rows& rows, const RibbonView& ribbon, std::vector<Box> taken) {
    std::vector<RibbonMark> marks = ribbon.marks;
    std::stable_sort(marks.begin(), marks.end(), [](const RibbonMark& a, const RibbonMark& b) { return a.now > b.now; });
    for (const RibbonMark& mark : marks) {
        const Rgb ink = mark.now ? ui.palette().now : ui.palette().ink;
        const float x = rows.at(mark.at), half = ui.px(mark.now ? 2.3 : 1.6);
        // The line runs in from both edges of the tube and leaves the bend's number free.
        const float in = ui.px(1), over = ui.px(1.4);
        for (const auto& [from, to] : {std::pair{rows.tube.min.y - over, rows.tube.min.y + in}, std::pair{rows.tube.max.y - in, rows.tube.max.y + over}}) {
            draw_rule(ui.list(), {x, from}, {x, to}, colour(ui.palette().paper), ui.px(1.3));
            draw_rule(ui.list(), {x, from}, {x, to}, colour(ink), ui.px(0.6));
        }
        ui.list().AddTriangleFilled({x - half, rows.signs.min.y}, {x + half, rows.signs.min.y}, {x, rows.signs.max.y}, colour(ink));
        const TextSize size = mark.now ? TextSize::body : TextSize::small;
        const float width = ui.width_of(mark.label, size, true);
        const float left = std::clamp(x - width / 2, rows.words.min.x, std::max(rows.words.min.x, rows.words.max.x - width));
        const Box label{{left, rows.words.min.y}, {left + width + 1, rows.words.max.y}};
        const Box kept{{label.min.x - ui.px(1.5), label.min.y}, {label.max.x + ui.px(1.5), label.max.y}};
        if (std::any_of(taken.begin(), taken.end(), [&](const Box& other) { return overlap(kept, other); })) continue;
        Type type{size, true, ink, ui.palette().paper};
        type.wrap = false;
        type.down = Down::middle;
        ui.text(label, mark.label, type);
        taken.push_back(label);
    }
}

/// The tally stands in the words' row, on the side away from the mark in hand.
Box draw_tally(Ui& ui, const Rows& rows, const RibbonView& ribbon) {
    const auto now = std::find_if(ribbon.marks.begin(), ribbon.marks.end(), [](const RibbonMark& mark) { return mark.now; });
    const bool left = now != ribbon.marks.end() && now->at > 0.5;
    const float width = std::min(ui.width_of(ribbon.tally, TextSize::small, false) + 1, rows.words.width());
    const Box box = left ? Box{rows.words.min, {rows.words.min.x + width, rows.words.max.y}}
                         : Box{{rows.words.max.x - width, rows.words.min.y}, rows.words.max};
    Type type = ui.small(ui.paper());
    type.wrap = false;
    type.down = Down::middle;
    ui.text(box, ribbon.tally, type);
    return box;
}

}  // namespace

float ribbon_height(const Ui& ui) { return ui.px(23); }

void draw_ribbon(Ui& ui, const Box& box, const RibbonView& ribbon) {
    const Rows rows = rows_of(ui, box);
    draw_steel(ui, rows.tube);
    draw_waste(ui, rows, 0, ribbon.waste_a, true);
    draw_waste(ui, rows, 1 - ribbon.waste_b, 1, false);
    const std::vector<Box> numbers = number_boxes(ui, rows, ribbon);
    for (std::size_t i = 0; i < ribbon.bends.size(); ++i) draw_bend(ui, rows, ribbon.bends[i], numbers[i]);
    Type letter = ui.body(ui.paper(), true);
    letter.down = Down::middle;
    letter.across = Across::middle;
    ui.text({{box.min.x, rows.tube.min.y}, {rows.tube.min.x, rows.tube.max.y}}, "A", letter);
    ui.text({{rows.tube.max.x, rows.tube.min.y}, {box.max.x, rows.tube.max.y}}, "B", letter);
    draw_tape(ui, rows, ribbon);
    std::vector<Box> taken;
    if (!ribbon.tally.empty()) taken.push_back(draw_tally(ui, rows, ribbon));
    draw_marks(ui, rows, ribbon, std::move(taken));
}

}  // namespace tubewright
