// Things to press stand up from the screen: they have a lip along their lower edge, and go down on it.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/signs.h"
#include "ui/ui.h"

namespace tubewright {
namespace {

constexpr double lip_mm = 1.1, label_across_mm = 2.2, label_down_mm = 1.6;

Skin button_skin(const Ui& ui, const ButtonView& button) {
    const Palette& p = ui.palette();
    if (!button.enabled) return {p.paper, p.edge, p.ink_soft, p.ink_soft};
    if (button.weight == Weight::main) return ui.strong(Tone::now);
    if (button.weight == Weight::warn) return {p.stop_pale, p.stop, p.ink, p.ink};
    if (button.chosen) return ui.pale(Tone::now);
    if (button.weight == Weight::quiet) return {p.paper, p.edge, p.ink, p.ink};
    return ui.panel();
}

/// The ring that fills while a `held` thing is pressed.
void draw_hold_ring(Ui& ui, ImVec2 centre, float radius, float share, const Skin& skin) {
    const float line = radius * 0.36f;
    ui.list().AddCircle(centre, radius, colour(mixed(skin.fill, skin.ink, 0.45)), 0, line * 0.6f);
    if (share <= 0) return;
    const float start = -std::numbers::pi_v<float> / 2;
    ui.list().PathArcTo(centre, radius, start, start + share * 2 * std::numbers::pi_v<float>, 40);
    ui.list().PathStroke(colour(skin.ink), 0, line * 1.4f);
}

void draw_face(Ui& ui, const Box& face, const Skin& skin, const ButtonView& button, float lip) {
    ImDrawList& list = ui.list();
    const float radius = ui.px(2.4);
    const Box lipped{face.min, {face.max.x, face.max.y + lip}};
    const bool heavy = button.chosen || button.weight == Weight::main || button.weight == Weight::warn;
    if (!button.enabled) {
        list.AddRectFilled(lipped.min, lipped.max, colour(skin.fill), radius);
        draw_dashed_box(list, {face.min.x + radius * 0.3f, face.min.y}, {face.max.x - radius * 0.3f, face.max.y + lip - 1}, colour(skin.border), ui.px(0.35), ui.px(1.6), ui.px(1.2));
        return;
    }
    const Rgb side = button.weight == Weight::main ? mixed(skin.border, ui.palette().ink, 0.45) : skin.border;
    const float border = ui.px(heavy ? 0.8 : 0.5);
    const Box inner = face.inside(border);
    list.AddRectFilled(lipped.min, lipped.max, colour(side), radius);
    if (side != skin.border) list.AddRectFilled(face.min, face.max, colour(skin.border), radius);
    list.AddRectFilled(inner.min, inner.max, colour(skin.fill), std::max(0.0f, radius - border));
}

}  // namespace

TextSize Ui::label_size(const Box& box, const ButtonView& button) const {
    const Box inner = Box{box.min, {box.max.x, box.max.y - px(lip_mm)}}.inside(px(label_across_mm), px(label_down_mm));
    const Type type{TextSize::body, button.weight != Weight::quiet, {}, {}};
    return fitted(inner, button.label, type).size < font_px(cap_height::body) ? TextSize::small : TextSize::body;
}

bool Ui::bare_button(const Box& box, const ButtonView& button, Box& inner, Skin& skin) {
    const Touch touched = touch(box, button, px(2));
    skin = button_skin(*this, button);
    if (touched.down) skin.fill = mixed(skin.fill, button.weight == Weight::main ? palette_.ink : palette_.now, button.weight == Weight::main ? 0.3 : 0.18);
    const float lip = px(lip_mm), sunk = touched.down ? lip * 0.8f : 0;
    const Box face{{box.min.x, box.min.y + sunk}, {box.max.x, box.max.y - lip + sunk}};
    draw_face(*this, face, skin, button, touched.down ? lip * 0.2f : lip);

    inner = face.inside(px(label_across_mm), px(label_down_mm));
    if (button.held) {
        const Box ring = inner.width() > px(44) ? inner.cut_left(px(9)) : inner.cut_top(px(8));
        draw_hold_ring(*this, ring.centre(), px(2.7), touched.held, skin);
        if (touched.held > 0) {
            const Box filled{{face.min.x, face.max.y - px(1.6)}, {face.min.x + face.width() * touched.held, face.max.y}};
            list().AddRectFilled(filled.min, filled.max, colour(skin.ink), px(0.8));
        }
    }
    if (button.chosen) draw_tone_sign(*this, {face.min.x + px(3.4), face.min.y + px(3.4)}, px(4.2), Tone::now);
    return touched.fired;
}

void Ui::end_fitted_label() {
    end_label();
    const auto& texts = drawing_->noted.texts;
    for (std::size_t i = label_from_; i < texts.size(); ++i)
        if (!texts[i].whole) label_did_not_fit();
}

bool Ui::big_button(const Box& box, const ButtonView& button, TextSize largest) {
    Box inner;
    Skin skin;
    const bool fired = bare_button(box, button, inner, skin);
    begin_label();
    Type label{largest, button.weight != Weight::quiet, skin.ink, skin.fill, Across::middle, Down::middle};
    label.off = !button.enabled;
    if (!button.enabled && !button.why_not.empty()) {
        Type reason{TextSize::small, false, skin.ink, skin.fill, Across::middle, Down::middle};
        reason.off = true;
        const float narrow = height_of(button.label, TextSize::body, true, inner.width());
        const float label_height = std::min(narrow, std::max(line_height(TextSize::small), inner.height() - height_of(button.why_not, TextSize::small, false, inner.width())));
        text(inner.cut_top(label_height), button.label, label);
        text(inner, button.why_not, reason);
    } else {
        text(inner, button.label, label);
    }
    end_fitted_label();
    return fired;
}

}  // namespace tubewright
