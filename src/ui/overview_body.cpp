#include <algorithm>

#include "ui/bodies.h"

namespace tubewright {
namespace {

constexpr double facts_down_mm = 1;

float names_width(const Ui& ui, const OverviewBody& body, float width) {
    float names = 0;
    for (const auto& [name, value] : body.facts) names = std::max(names, ui.width_of(name, TextSize::small, false));
    return std::min(names + ui.px(3), width * 0.42f);
}

float fact_height(const Ui& ui, const std::string& value, float width) {
    return std::clamp(ui.height_of(value, TextSize::body, true, width), ui.line_height(TextSize::body), ui.px(14));
}

float facts_height(const Ui& ui, const OverviewBody& body, float width) {
    const float names = names_width(ui, body, width);
    float height = ui.px(facts_down_mm);
    for (const auto& [name, value] : body.facts) height += fact_height(ui, value, width - names);
    return height;
}

/// What the arrows that turn the findings' pages take, with the gap beside them.
float pager_room(const Ui& ui, const OverviewBody& body) { return body.pager.needed ? pager_width(ui) : 0; }

void draw_facts(Ui& ui, Box& box, const OverviewBody& body) {
    const float names = names_width(ui, body, box.width());
    for (const auto& [name, value] : body.facts) {
        Box line = box.cut_top(fact_height(ui, value, box.width() - names));
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
        const auto button = [&](int i) -> const ButtonView& { return body.buttons[static_cast<std::size_t>(i)]; };
        TextSize size = TextSize::body;
        for (int i = 0; i < count; ++i) size = std::min(size, ui.label_size(column.row(i, places, gap), button(i)));
        for (int i = 0; i < count; ++i) ui.press(column.row(i, places, gap), button(i), on.actions, size);
    }
    const float pager = pager_room(ui, body);
    if (body.picture) {
        // Findings need the room more than the picture does.
        const float width = std::min(rest.width() * (body.findings.empty() ? 0.5f : 0.34f), rest.height() * 1.5f);
        const float beside = rest.width() - width - gap - pager;
        const float needed = facts_height(ui, body, beside) + plates_height(ui, body.findings, beside) + ui.px(1);
        if (body.findings.empty() || needed <= rest.height()) {
            draw_picture(ui, rest.cut_left(width), *body.picture, on.picture);
            rest.cut_left(gap);
        }
    }
    if (pager > 0) {
        draw_pager(on, rest.cut_right(pager - gap), body.pager);
        rest.cut_right(gap);
    }
    rest.cut_top(ui.px(facts_down_mm));
    draw_facts(ui, rest, body);
    rest.cut_top(ui.px(1));
    draw_plates(ui, rest, body.findings);
}

}  // namespace tubewright
