#include <algorithm>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

constexpr double pad_across_mm = 3, pad_down_mm = 1, square_mm = 13, lip_mm = 1.1, later_mm = 33, later_gap_mm = 3, figure_mm = 20;
constexpr float most_aside = 0.42f;  // of the width; our choice

/// One size for all sentences of a list, whatever page they are on: the larger one where each of them has room.
TextSize sentence_size(const Ui& ui, const TicksBody& body, const Box& row) {
    const float width = row.width() - ui.px(3 * pad_across_mm + square_mm), height = row.height() - ui.px(lip_mm + 2 * pad_down_mm);
    const auto too_high = [&](const std::string& sentence) { return ui.height_of(sentence, TextSize::body, false, width) > height; };
    const bool one_is = std::any_of(body.all_ticks.begin(), body.all_ticks.end(), too_high) || std::any_of(body.ticks.begin(), body.ticks.end(), [&](const TickView& tick) { return too_high(tick.touch.label); });
    return one_is ? TextSize::small : TextSize::body;
}

/// The same for the one that stands beside the ticks.
TextSize caution_size(const Ui& ui, const TicksBody& body, const Box& side) {
    const auto too_high = [&](const std::string& sentence) { return plates_height(ui, {{sentence, Tone::caution}}, side.width(), TextSize::body) > side.height(); };
    return std::any_of(body.all_cautions.begin(), body.all_cautions.end(), too_high) ? TextSize::small : TextSize::body;
}

/// A second answer stands at the right, as a button of its own.
Box answers_off_right(const Ui& ui, const TicksBody& body, Box row) {
    if (std::none_of(body.ticks.begin(), body.ticks.end(), [](const TickView& tick) { return tick.later.has_value(); })) return row;
    row.cut_right(ui.px(later_mm + later_gap_mm));
    return row;
}

void draw_tick(const Drawing& on, const Box& box, const TickView& tick, TextSize size) {
    Ui& ui = on.ui;
    const Palette& p = ui.palette();
    const Touch touch = ui.touch(box, tick.touch, ui.px(1));
    if (touch.fired && tick.touch.press) on.actions.push_back(*tick.touch.press);
    const bool off = !tick.touch.enabled;
    const bool later = tick.later && tick.later->chosen;
    Skin skin = tick.ticked ? ui.pale(Tone::go) : later ? ui.pale(Tone::caution) : off ? ui.paper() : ui.panel();
    if (touch.down) skin.fill = mixed(skin.fill, p.now, 0.18);
    const float lip = ui.px(lip_mm);
    const Box face{box.min, {box.max.x, box.max.y - lip}};
    ui.list().AddRectFilled(box.min, box.max, colour(off ? skin.fill : skin.border), ui.px(2));
    ui.plate(face, skin, off ? 0 : ui.px(0.45), ui.px(2));
    if (off) draw_dashed_box(ui.list(), box.min, {box.max.x, box.max.y - 1}, colour(skin.border), ui.px(0.35), ui.px(1.6), ui.px(1.2));

    Box inner = face.inside(ui.px(pad_across_mm), ui.px(pad_down_mm));
    const Box left = inner.cut_left(ui.px(square_mm));
    inner.cut_left(ui.px(pad_across_mm));
    const Box square = around({left.min.x + ui.px(6), left.centre().y}, ui.px(12), ui.px(12));
    ui.list().AddRectFilled(square.min, square.max, colour(tick.ticked ? p.go : p.paper), ui.px(1.6));
    // What has to be ticked has a heavy box, what may be ticked a light one.
    ui.list().AddRect(square.min, square.max, colour(tick.ticked ? p.go : p.ink), ui.px(1.6), 0, ui.px(tick.gate ? 0.9 : 0.4));
    if (tick.ticked) draw_check(ui.list(), square.centre(), ui.px(9), colour(p.on_go), ui.px(1.7));
    if (later) draw_tone_sign(ui, square.centre(), ui.px(8), Tone::caution);

    ui.begin_label();
    Type type = size == TextSize::body ? ui.body(skin, false) : ui.small(skin, false);
    type.down = Down::middle;
    type.off = off;
    if (off && !tick.touch.why_not.empty()) {
        Type reason = ui.small(skin, true);
        reason.off = true;
        reason.down = Down::bottom;
        ui.text(inner.cut_bottom(ui.height_of(tick.touch.why_not, TextSize::small, true, inner.width())), tick.touch.why_not, reason);
    }
    ui.text(inner, tick.touch.label, type);
    ui.end_label();
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const TicksBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    const float gap = ui.px(3);
    const bool aside = !body.heading.empty() || !body.cautions.empty() || body.pager.needed;
    if (aside) {
        // Without ticks the sentences have all the width; a figure keeps what it needs to be read two steps away.
        const float pager = body.pager.needed ? pager_width(ui) - ui.px(2.5) : 0;
        const float figure = body.figure.empty() ? 0 : ui.hero_width(body.figure, cap_height::hero_least) + 2;
        // Only where it is very long the ticks need the room more.
        const bool large = figure > 0 && figure + pager <= rest.width() * most_aside;
        const float least = std::max(ui.px(60), large ? figure + pager : 0);
        Box side = rest.cut_left(body.ticks.empty() ? rest.width() : std::clamp(rest.width() * 0.36f, least, std::max(least, ui.px(110))));
        rest.cut_left(gap);
        if (body.pager.needed) {
            Box column = side.cut_left(pager_width(ui) - ui.px(5));
            draw_pager(on, column, body.pager);
            side.cut_left(ui.px(2.5));
        }
        Type type = ui.body(ui.paper(), true);
        side.cut_top(ui.px(0.8));
        const std::string heading = large || body.figure.empty() ? body.heading : body.heading + " " + body.figure;
        Box head = side.cut_top(std::min(ui.height_of(heading, TextSize::body, true, side.width()), ui.px(15)));
        ui.text(head, heading, type);
        side.cut_top(ui.px(1.5));
        if (large) {
            ui.text(side.cut_top(std::min(side.height() * 0.4f, ui.px(figure_mm))), body.figure, ui.hero(ui.paper()));
            side.cut_top(ui.px(1.5));
        }
        draw_plates(ui, side, body.cautions, caution_size(ui, body, side));
    }
    constexpr int ticks_of_page = 3;
    const int count = static_cast<int>(body.ticks.size()), places = std::max(count, ticks_of_page);
    const TextSize size = sentence_size(ui, body, answers_off_right(ui, body, rest.row(0, places, gap)));
    for (int i = 0; i < count; ++i) {
        const TickView& tick = body.ticks[static_cast<std::size_t>(i)];
        Box row = rest.row(i, places, gap);
        const Box whole = row;
        row = answers_off_right(ui, body, row);
        draw_tick(on, row, tick, size);
        // In small letters: the sign of the answer that is chosen needs the corner.
        if (tick.later) ui.press({{row.max.x + ui.px(later_gap_mm), whole.min.y}, whole.max}, *tick.later, on.actions, TextSize::small);
    }
}

}  // namespace tubewright
