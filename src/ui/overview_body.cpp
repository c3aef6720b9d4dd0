#include <algorithm>
#include <tuple>

#include "ui/bodies.h"

namespace tubewright {
namespace {

constexpr double facts_down_mm = 1, least_button_mm = 20;

float names_width(const Ui& ui, const OverviewBody& body, float width) {
    float names = 0;
    for (const auto& [name, value] : body.facts) names = std::max(names, ui.width_of(name, TextSize::small, false));
    return std::min(names + ui.px(3), width * 0.42f);
}

float fact_height(const Ui& ui, const std::string& value, float width) {
    const float body = ui.height_of(value, TextSize::body, true, width);
    return body <= 2 * ui.line_height(TextSize::body) + 1 ? body : ui.height_of(value, TextSize::small, true, width) + 1;
}

float facts_height(const Ui& ui, const OverviewBody& body, float width) {
    const float names = names_width(ui, body, width);
    float height = ui.px(facts_down_mm);
    for (const auto& [name, value] : body.facts) height += fact_height(ui, value, width - names);
    return height;
}

/// What the arrows that turn the findings' pages take, with the gap beside them.
float pager_room(const Ui& ui, const OverviewBody& body) { return body.pager.needed ? pager_width(ui) : 0; }

/// As wide as what stands beside it allows: with words that are read at arm's length while the picture is a large one, with
/// smaller ones then. 0: no room for it.
float picture_width(const Ui& ui, const OverviewBody& body, const Box& box, float gap) {
    constexpr double widest_shape = 1.7;
    const auto fits = [&](float width, TextSize size) {
        const float beside = box.width() - width - gap;
        return facts_height(ui, body, beside) + plates_height(ui, body.findings, beside, size) + ui.px(1) <= box.height();
    };
    for (const auto& [largest, least, size] : {std::tuple{0.64f, 0.5f, TextSize::body}, {0.64f, 0.3f, TextSize::small}})
        for (float share = largest; share >= least; share -= 0.02f) {
            const float width = std::min(box.width() * share, box.height() * static_cast<float>(widest_shape));
            if (fits(width, size)) return width;
        }
    return 0;
}

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
        const int count = static_cast<int>(body.buttons.size()), places = std::max(count, 2);
        // Side by side where a notice leaves too little height for all of them in one column.
        const bool in_pairs = (rest.height() + gap) / static_cast<float>(places) < ui.px(least_button_mm) + gap;
        const Box column = rest.cut_right(std::clamp(rest.width() * (in_pairs ? 0.34f : 0.2f), ui.px(in_pairs ? 66 : 38), ui.px(in_pairs ? 90 : 52)));
        rest.cut_right(gap);
        const auto button = [&](int i) -> const ButtonView& { return body.buttons[static_cast<std::size_t>(i)]; };
        const auto place = [&](int i) { return in_pairs ? column.row(i / 2, (count + 1) / 2, gap).column(i % 2, 2, gap) : column.row(i, places, gap); };
        TextSize size = TextSize::body;
        for (int i = 0; i < count; ++i) size = std::min(size, ui.label_size(place(i), button(i)));
        for (int i = 0; i < count; ++i) ui.press(place(i), button(i), on.actions, size);
    }
    const float pager = pager_room(ui, body);
    if (body.picture) {
        const float width = picture_width(ui, body, {rest.min, {rest.max.x - pager, rest.max.y}}, gap);
        if (width > 0) {
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
