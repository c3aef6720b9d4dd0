#include <algorithm>

#include "ui/bodies.h"

namespace tubewright {
namespace {

void draw_facts(Ui& ui, Box& box, const OverviewBody& body) {
    float names = 0;
    for (const auto& [name, value] : body.facts) names = std::max(names, ui.width_of(name, TextSize::small, false));
    names = std::min(names + ui.px(3), box.width() * 0.42f);
    for (const auto& [name, value] : body.facts) {
        const float height = std::max(ui.height_of(value, TextSize::body, true, box.width() - names), ui.line_height(TextSize::body));
        Box line = box.cut_top(std::min(height, ui.px(14)));
        Type small = ui.small(ui.paper()), strong = ui.body(ui.paper(), true);
        small.ink = ui.palette().ink_soft;
        // Both on one baseline: the smaller one starts lower by what its capitals are lower.
        Box left = line.cut_left(names);
        left.min.y += ui.px(cap_height::body - cap_height::small);
        ui.text({left.min, {left.max.x - ui.px(1.5), left.max.y + ui.px(2)}}, name, small);
        ui.text(line, value, strong);
    }
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const OverviewBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    const float gap = ui.px(3);
    if (!body.buttons.empty()) {
        const Box column = rest.cut_right(std::clamp(rest.width() * 0.2f, ui.px(38), ui.px(52)));
        rest.cut_right(gap);
        const int count = static_cast<int>(body.buttons.size()), places = std::max(count, 2);
        for (int i = 0; i < count; ++i) ui.press(column.row(i, places, gap), body.buttons[static_cast<std::size_t>(i)], on.actions);
    }
    if (body.picture) {
        // Findings need the room more than the picture does.
        const float share = body.findings.empty() ? 0.5f : 0.34f;
        const float width = std::min(rest.width() * share, rest.height() * 1.5f);
        draw_picture(ui, rest.cut_left(width), *body.picture, on.picture);
        rest.cut_left(gap);
    }
    rest.cut_top(ui.px(0.6));
    draw_facts(ui, rest, body);
    rest.cut_top(ui.px(1.2));
    if (body.findings.empty()) return;
    if (body.pager.needed) {
        Box column = rest.cut_right(pager_width(ui) - ui.px(5));
        draw_pager(on, column.cut_bottom(std::min(column.height(), ui.px(52))), body.pager);
        rest.cut_right(ui.px(2));
    }
    draw_plates(ui, rest, body.findings);
}

}  // namespace tubewright
