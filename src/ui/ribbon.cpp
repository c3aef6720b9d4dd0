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
    Box words, leaders, signs, tube, ticks, tape;
    float at(double share) const { return tube.min.x + static_cast<float>(share) * tube.width(); }
};

constexpr double leaders_mm = 3.6;

/// Several readings side by side: each has a line to its mark.
bool has_leaders(const RibbonView& ribbon) {
    return std::count_if(ribbon.marks.begin(), ribbon.marks.end(), [](const RibbonMark& mark) { return !mark.label.empty(); }) > 1;
}

Rows rows_of(const Ui& ui, const Box& box, const RibbonView& ribbon) {
    Box rest = box.inside(ui.px(2.4), ui.px(0.6));
    Rows rows;
    rows.words = rest.cut_top(ui.px(5.5));
    rows.leaders = rest.cut_top(has_leaders(ribbon) ? ui.px(leaders_mm) : 0);
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

/// Boxes side by side in their order, each as near to its place as the others let it be.
void push_apart(std::vector<Box>& boxes, float gap, float from, float to) {
    float limit = from;
    for (Box& box : boxes) {
        const float by = std::max(0.0f, limit - box.min.x);
        box.min.x += by;
        box.max.x += by;
        limit = box.max.x + gap;
    }
    limit = to;
    for (std::size_t i = boxes.size(); i-- > 0;) {
        const float by = std::max(0.0f, boxes[i].max.x - limit);
        boxes[i].min.x -= by;
        boxes[i].max.x -= by;
        limit = boxes[i].min.x - gap;
    }
}

/// Where the bends' numbers stand: over their bands, pushed apart where bands are narrower than numbers.
std::vector<Box> number_boxes(const Ui& ui, const Rows& rows, const RibbonView& ribbon) {
    std::vector<Box> boxes;
    for (const RibbonBend& bend : ribbon.bends) {
        const float width = std::max(ui.width_of(bend.number, TextSize::small, true) + ui.px(1.4), ui.px(3.6));
        boxes.push_back(around({(rows.at(bend.from) + rows.at(bend.to)) / 2, rows.tube.centre().y}, width, rows.tube.height()));
    }
    push_apart(boxes, ui.px(0.4), boxes.empty() ? 0 : boxes.front().min.x, rows.tube.max.x);
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

/// A pointer over the tube, and its line, which runs in from both edges of the tube and leaves the bend's number free.
void draw_pointer(Ui& ui, const Rows& rows, const RibbonMark& mark, Rgb ink) {
    const float x = rows.at(mark.at), half = ui.px(mark.now ? 2.3 : 1.6), in = ui.px(1), over = ui.px(1.4);
    for (const auto& [from, to] : {std::pair{rows.tube.min.y - over, rows.tube.min.y + in}, std::pair{rows.tube.max.y - in, rows.tube.max.y + over}}) {
        draw_rule(ui.list(), {x, from}, {x, to}, colour(ui.palette().paper), ui.px(1.3));
        draw_rule(ui.list(), {x, from}, {x, to}, colour(ink), ui.px(0.6));
    }
    ui.list().AddTriangleFilled({x - half, rows.signs.min.y}, {x + half, rows.signs.min.y}, {x, rows.signs.max.y}, colour(ink));
}

void draw_reading(Ui& ui, const Box& box, const RibbonMark& mark, Rgb ink) {
    Type type{mark.now ? TextSize::body : TextSize::small, true, ink, ui.palette().paper};
    type.wrap = false;
    type.down = Down::middle;
    ui.text(box, mark.label, type);
}

/// Marks to lay out: a reading for each that has one, all in one row, with a line from it to its mark. In the order of
/// the marks, so that no two lines cross.
void draw_marks_to_ink(Ui& ui, const Rows& rows, std::vector<RibbonMark> marks) {
    const Palette& p = ui.palette();
    std::stable_sort(marks.begin(), marks.end(), [](const RibbonMark& a, const RibbonMark& b) { return a.at < b.at; });
    std::vector<Box> boxes;
    for (const RibbonMark& mark : marks) {
        draw_pointer(ui, rows, mark, mark.label.empty() ? p.edge : p.ink);
        if (!mark.label.empty()) boxes.push_back(around({rows.at(mark.at), rows.words.centre().y}, ui.width_of(mark.label, TextSize::small, true) + 1, rows.words.height()));
    }
    push_apart(boxes, ui.px(2.6), rows.words.min.x, rows.words.max.x);
    auto box = boxes.begin();
    for (const RibbonMark& mark : marks) {
        if (mark.label.empty()) continue;
        const ImVec2 from{box->centre().x, rows.words.max.y - ui.px(0.4)}, to{rows.at(mark.at), rows.signs.min.y + ui.px(0.2)};
        ui.list().AddLine(from, to, colour(p.ink), ui.px(0.35));
        draw_reading(ui, *box, mark, p.ink);
        ++box;
    }
}

/// The tally stands in the words' row, on the side away from the mark in hand; it leaves that one's reading its room, or
/// is not there.
void draw_words(Ui& ui, const Rows& rows, const RibbonView& ribbon, const RibbonMark* now) {
    Box free = rows.words;
    const float tally = ribbon.tally.empty() ? 0 : ui.width_of(ribbon.tally, TextSize::small, false) + 1;
    const float reading = now ? ui.width_of(now->label, TextSize::body, true) + 1 : 0;
    if (tally > 0 && tally + reading + ui.px(now ? 1.5 : 0) <= free.width()) {
        const Box box = now && now->at > 0.5 ? free.cut_left(tally) : free.cut_right(tally);
        if (now && now->at > 0.5) free.cut_left(ui.px(1.5));
        else free.cut_right(ui.px(1.5));
        Type type = ui.small(ui.paper());
        type.wrap = false;
        type.down = Down::middle;
        ui.text(box, ribbon.tally, type);
    }
    if (!now) return;
    draw_pointer(ui, rows, *now, ui.palette().now);
    const float left = std::clamp(rows.at(now->at) - reading / 2, free.min.x, std::max(free.min.x, free.max.x - reading));
    draw_reading(ui, {{left, free.min.y}, {left + reading, free.max.y}}, *now, ui.palette().now);
}

}  // namespace

float ribbon_height(const Ui& ui, const RibbonView& ribbon) { return ui.px(23 + (has_leaders(ribbon) ? leaders_mm : 0)); }

void draw_ribbon(Ui& ui, const Box& box, const RibbonView& ribbon) {
    const Rows rows = rows_of(ui, box, ribbon);
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
    const bool in_hand = ribbon.marks.size() == 1 && ribbon.marks.front().now;
    draw_words(ui, rows, ribbon, in_hand ? &ribbon.marks.front() : nullptr);
    if (!in_hand) draw_marks_to_ink(ui, rows, ribbon.marks);
}

}  // namespace tubewright
