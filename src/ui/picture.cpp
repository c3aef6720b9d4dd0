#include "ui/picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "ui/signs.h"

namespace tubewright {
namespace {

struct Label {
    ImVec2 anchor;
    std::string text;
    Anchor what;
};

/// A place near the anchor, inside the picture and clear of what is already there. Tries all around,
/// further and further out; the least crowded wins where nothing is free.
Box place_for(const Label& label, float width, float height, const Box& picture, const std::vector<Box>& taken, const std::vector<Label>& all, float step) {
    Box best;
    float best_cost = std::numeric_limits<float>::max();
    const std::array<ImVec2, 8> ways{ImVec2{0, -1}, {0.8f, -0.8f}, {-0.8f, -0.8f}, {1, 0}, {-1, 0}, {0.8f, 0.8f}, {-0.8f, 0.8f}, {0, 1}};
    for (int ring = 1; ring <= 8; ++ring) {
        for (const ImVec2 way : ways) {
            const float out = step * static_cast<float>(ring);
            ImVec2 centre{label.anchor.x + way.x * (out + width / 2), label.anchor.y + way.y * (out + height / 2)};
            centre.x = std::clamp(centre.x, picture.min.x + width / 2, std::max(picture.min.x + width / 2, picture.max.x - width / 2));
            centre.y = std::clamp(centre.y, picture.min.y + height / 2, std::max(picture.min.y + height / 2, picture.max.y - height / 2));
            const Box here = around(centre, width, height), wider = around(centre, width + step, height + step * 0.6f);
            float cost = static_cast<float>(ring);
            for (const Box& other : taken) cost += overlap(wider, other) ? 1000.0f : 0;
            for (const Label& other : all) cost += wider.holds(other.anchor) ? 100.0f : 0;
            if (cost >= best_cost) continue;
            best = here;
            best_cost = cost;
        }
    }
    return best;
}

Tone tone_of(Anchor what) {
    switch (what) {
        case Anchor::after_pull:
        case Anchor::mark: return Tone::now;
        case Anchor::wrong_way: return Tone::stop;
        default: return Tone::plain;
    }
}

/// The arrows have to be seen too, not only their middles.
bool is_gauge(Anchor what) { return what == Anchor::gauge_1 || what == Anchor::gauge_2 || what == Anchor::gauge_3; }

void draw_labels(Ui& ui, const Box& picture, const std::vector<Label>& labels, std::vector<Box> taken) {
    std::vector<Box> places;
    for (const Label& label : labels) {
        const float sign = tone_of(label.what) == Tone::stop ? ui.px(5.2) : 0;
        const float around_words = ui.px(3) + sign, one_line = ui.width_of(label.text, TextSize::small, true) + around_words;
        const bool halved = one_line > picture.width();
        const float width = halved ? std::min(ui.halved_width_of(label.text, TextSize::small, true) + 1 + around_words, picture.width()) : one_line;
        const float height = ui.px(halved ? 10.4 : 6);
        places.push_back(place_for(label, width, height, picture, taken, labels, ui.px(is_gauge(label.what) ? 8 : 3)));
        taken.push_back(places.back());
    }
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const Skin skin = ui.pale(tone_of(labels[i].what));
        const ImVec2 end{std::clamp(labels[i].anchor.x, places[i].min.x, places[i].max.x), std::clamp(labels[i].anchor.y, places[i].min.y, places[i].max.y)};
        ui.list().AddLine(end, labels[i].anchor, colour(skin.fill), ui.px(1));
        ui.list().AddLine(end, labels[i].anchor, colour(skin.border), ui.px(0.4));
        ui.list().AddCircleFilled(labels[i].anchor, ui.px(0.9), colour(skin.border));
    }
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const Tone tone = tone_of(labels[i].what);
        const Skin skin = ui.pale(tone);
        ui.plate(places[i], skin, ui.px(0.35), ui.px(1.2));
        Box inner = places[i].inside(ui.px(1.4), 0);
        if (tone == Tone::stop) draw_cross(ui.list(), {inner.cut_left(ui.px(5)).min.x + ui.px(1.8), inner.centre().y}, ui.px(2.8), colour(skin.border), ui.px(0.7));
        Type type = ui.small(skin, true);
        type.down = Down::middle;
        ui.text({inner.min, {inner.max.x + 1, inner.max.y}}, labels[i].text, type);
    }
}

/// Side by side as far as they go, then on the next line. Without `draw`, only the height they take.
float lay_legend(Ui& ui, const Box& box, const PictureView& view, bool draw) {
    const float side = ui.px(4), line = ui.px(6.2), between = ui.px(4);
    ImVec2 at = box.min;
    for (const auto& [swatch, words] : view.legend) {
        const float wide = side + ui.px(1.5) + ui.width_of(words, TextSize::small, false) + 1;
        if (at.x > box.min.x && at.x + wide > box.max.x) at = {box.min.x, at.y + line};
        if (draw) {
            const float top = at.y + (line - side) / 2;
            ui.list().AddRectFilled({at.x, top}, {at.x + side, top + side}, colour(swatch_colour(ui.palette(), swatch)), ui.px(0.8));
            ui.list().AddRect({at.x, top}, {at.x + side, top + side}, colour(ui.palette().ink), ui.px(0.8), 0, ui.px(0.35));
            Type type = ui.small(ui.paper());
            type.down = Down::middle;
            ui.text({{at.x + side + ui.px(1.5), at.y}, {at.x + wide, at.y + line}}, words, type);
        }
        at.x += wide + between;
    }
    return view.legend.empty() ? 0 : at.y + line - box.min.y;
}

}  // namespace

Rgb swatch_colour(const Palette& p, Swatch swatch) {
    const bool dark = contrast(p.paper, Rgb{255, 255, 255}) > contrast(p.paper, Rgb{0, 0, 0});
    switch (swatch) {
        case Swatch::stands: return dark ? mixed(p.steel, p.steel_bright, 0.3) : mixed(p.steel_deep, p.ink, 0.3);
        case Swatch::swings: return dark ? mixed(p.caution, p.caution_pale, 0.15) : mixed(p.caution_pale, p.caution, 0.25);
        case Swatch::on_bench: return dark ? mixed(p.steel_deep, p.steel, 0.5) : mixed(p.well, p.edge, 0.25);
        case Swatch::picked: return dark ? mixed(p.now, p.now_pale, 0.2) : mixed(p.now, Rgb{255, 255, 255}, 0.25);
    }
    return p.steel;
}

namespace {

/// `clear`: what of the box labels may stand on.
void draw_picture_clear(Ui& ui, const Box& whole, const PictureView& view, const PictureHandle& picture, const Box& clear) {
    Box box = whole;
    if (!view.legend.empty()) {
        const float height = lay_legend(ui, whole, view, false);
        lay_legend(ui, box.cut_bottom(height), view, true);
        box.cut_bottom(ui.px(1));
    }
    ui.want_picture(box);
    const Palette& p = ui.palette();
    const float radius = ui.px(2);
    if (picture.texture)
        ui.list().AddImageRounded(picture.texture, box.min, box.max, picture.uv_min, picture.uv_max, IM_COL32_WHITE, radius);
    else
        ui.list().AddRectFilled(box.min, box.max, colour(p.well), radius);
    ui.list().AddRect(box.min, box.max, colour(p.edge), radius, 0, ui.px(0.35));

    std::vector<Box> taken;
    if (!view.caption.empty()) {
        Box inside = clear.inside(ui.px(1.5));
        const float width = std::min(ui.width_of(view.caption, TextSize::small, false) + ui.px(3), inside.width());
        const float height = ui.height_of(view.caption, TextSize::small, false, width - ui.px(2.5)) + ui.px(1);
        const Box plate{inside.min, {inside.min.x + width, inside.min.y + height}};
        Skin skin = ui.paper();
        ui.plate(plate, skin, 0, ui.px(1.2));
        Type type = ui.small(skin);
        type.down = Down::middle;
        ui.text(plate.inside(ui.px(1.2), 0), view.caption, type);
        taken.push_back(plate);
    }
    std::vector<Label> labels;
    for (const auto& [anchor, words] : view.labels) {
        const auto found = picture.anchors.find(anchor);
        if (found == picture.anchors.end()) continue;
        labels.push_back({{box.min.x + found->second.x * box.width(), box.min.y + found->second.y * box.height()}, words, anchor});
    }
    draw_labels(ui, clear.inside(ui.px(1.5)), labels, std::move(taken));
}

/// A finger that goes across the width of the picture on a tablet turns it about half round.
constexpr double degrees_per_mm = 2.0;
constexpr double button_mm = 20.2, button_wide_mm = 24.5, button_gap_mm = 3.05;

}  // namespace

void draw_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture) {
    Box clear = box;
    if (!view.legend.empty()) clear.cut_bottom(lay_legend(ui, box, view, false) + ui.px(1));
    draw_picture_clear(ui, box, view, picture, clear);
}

void draw_turning_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture, std::vector<Action>& actions) {
    const float side = ui.px(button_mm);
    if (!view.grip || box.height() < side || box.width() < side + ui.px(button_gap_mm + button_wide_mm)) return draw_picture(ui, box, view, picture);
    Box turned = box;
    Box beside;
    if (view.straight_on) {
        beside = turned.cut_right(ui.px(button_wide_mm));
        turned.cut_right(ui.px(button_gap_mm));
    }
    const ButtonView& grip = *view.grip;
    const Drag drag = ui.drag(turned, grip);
    if (drag.tapped && grip.press) actions.push_back(*grip.press);
    if (drag.moving && (drag.step.x != 0 || drag.step.y != 0)) {
        const double per_pixel = degrees_per_mm / ui.true_px(1);
        actions.push_back(TurnPicture{{drag.step.y * per_pixel}, {-drag.step.x * per_pixel}});
    }
    ui.begin_label(grip.id);
    draw_picture_clear(ui, box, view, picture, turned);
    ui.end_label();
    if (drag.down) ui.plate_edge(turned, colour(ui.palette().now), ui.px(0.9), ui.px(2));
    if (view.straight_on) ui.press({{beside.min.x, beside.max.y - side}, beside.max}, *view.straight_on, actions);
}

}  // namespace tubewright
