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

void draw_labels(Ui& ui, const Box& picture, const std::vector<Label>& labels, std::vector<Box> taken) {
    std::vector<Box> places;
    for (const Label& label : labels) {
        const float sign = tone_of(label.what) == Tone::stop ? ui.px(5.2) : 0;
        const float around_words = ui.px(3) + sign, one_line = ui.width_of(label.text, TextSize::small, true) + around_words;
        const bool halved = one_line > picture.width();
        const float width = halved ? std::min(ui.halved_width_of(label.text, TextSize::small, true) + 1 + around_words, picture.width()) : one_line;
        const float height = ui.px(halved ? 10.4 : 6);
        places.push_back(place_for(label, width, height, picture, taken, labels, ui.px(3)));
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

}  // namespace

void draw_picture(Ui& ui, const Box& box, const PictureView& view, const PictureHandle& picture) {
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
        Box inside = box.inside(ui.px(1.5));
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
    draw_labels(ui, box.inside(ui.px(1.5)), labels, std::move(taken));
}

}  // namespace tubewright
