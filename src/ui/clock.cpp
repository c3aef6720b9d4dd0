#include "ui/clock.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/signs.h"

namespace tubewright {
namespace {

using Kind = ClockHand::Kind;

constexpr double swatch_mm = 8.6;

ImVec2 toward(ImVec2 centre, double clock_deg, float reach) {
    const double turn = clock_deg * std::numbers::pi / 180;
    return {centre.x + reach * static_cast<float>(std::sin(turn)), centre.y - reach * static_cast<float>(std::cos(turn))};
}

void draw_hand(Ui& ui, ImVec2 from, ImVec2 to, Kind kind, float unit) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    switch (kind) {
        case Kind::leg: draw_rod(list, from, to, unit * 3.2f, p.ink, p.go, mixed(p.go, p.panel, 0.6)); break;
        case Kind::top_line: {
            list.AddLine(from, to, colour(p.ink), unit * 0.7f);
            list.AddCircleFilled(to, unit * 1.1f, colour(p.ink));
            break;
        }
        case Kind::swing: draw_dashes(list, from, to, colour(p.now), unit * 1.5f, unit * 2.2f, unit * 1.4f); break;
        case Kind::wrong: {
            draw_dashes(list, from, to, colour(p.stop), unit * 1.5f, unit * 1.6f, unit * 1.2f);
            const ImVec2 at{from.x + (to.x - from.x) * 0.72f, from.y + (to.y - from.y) * 0.72f};
            draw_cross(list, at, unit * 7, colour(p.stop), unit * 1.7f);
            break;
        }
    }
}

int layer(Kind kind) { return kind == Kind::swing ? 0 : kind == Kind::wrong ? 1 : kind == Kind::top_line ? 3 : 2; }

struct LegendItem {
    Box box;
    const ClockHand* hand;
};

/// What the hands mean, in as many rows as it takes, from the bottom of the box up; cut off from it.
std::vector<LegendItem> legend_off_bottom(Ui& ui, Box& box, const ClockView& clock) {
    const float pitch = ui.px(5.3), swatch = ui.px(swatch_mm), gap = ui.px(2.4);
    std::vector<LegendItem> items;
    float x = 0;
    int row = 0;
    for (const ClockHand& hand : clock.hands) {
        if (hand.label.empty()) continue;
        const float width = std::min(swatch + ui.width_of(hand.label, TextSize::small, false) + 2, box.width());
        if (x > 0 && x + width > box.width()) {
            x = 0;
            ++row;
        }
        items.push_back({{{box.min.x + x, pitch * static_cast<float>(row)}, {box.min.x + x + width, pitch * static_cast<float>(row + 1)}}, &hand});
        x += width + gap;
    }
    if (items.empty()) return items;
    const Box strip = box.cut_bottom(pitch * static_cast<float>(row + 1));
    for (LegendItem& item : items) {
        item.box.min.y += strip.min.y;
        item.box.max.y += strip.min.y;
    }
    return items;
}

/// Whether the cross of a wrong way stands where this hand's end would be.
bool is_crossed(const std::vector<ClockHand>& hands, const ClockHand& hand) {
    return std::any_of(hands.begin(), hands.end(), [&](const ClockHand& other) {
        return other.kind == Kind::wrong && std::cos((other.clock_deg - hand.clock_deg) * std::numbers::pi / 180) > 0.8;
    });
}

void draw_face(Ui& ui, ImVec2 centre, float radius, const ClockView& clock, const Skin& skin) {
    const Palette& p = ui.palette();
    ImDrawList& list = ui.list();
    list.AddCircleFilled(centre, radius, colour(p.panel), 72);
    list.AddCircle(centre, radius, colour(p.ink), 72, ui.px(0.5));
    for (int i = 0; i < 24; ++i) {
        const float in = radius - ui.px(i % 6 == 0 ? 2.4 : 1.2);
        list.AddLine(toward(centre, i * 15.0, in), toward(centre, i * 15.0, radius), colour(p.ink), ui.px(i % 6 == 0 ? 0.5 : 0.25));
    }
    std::vector<ClockHand> hands = clock.hands;
    std::stable_sort(hands.begin(), hands.end(), [](const ClockHand& a, const ClockHand& b) { return layer(a.kind) < layer(b.kind); });
    for (const ClockHand& hand : hands) {
        const float reach = radius * (hand.kind == Kind::leg ? 0.84f : hand.kind == Kind::top_line ? (is_crossed(hands, hand) ? 0.4f : 0.72f) : 0.94f);
        draw_hand(ui, toward(centre, hand.clock_deg, radius * 0.14f), toward(centre, hand.clock_deg, reach), hand.kind, radius / 18);
    }
    // The tube itself, end on.
    list.AddCircleFilled(centre, radius * 0.17f, colour(p.steel), 40);
    list.AddCircle(centre, radius * 0.17f, colour(p.ink), 40, ui.px(0.5));
    list.AddCircleFilled(centre, radius * 0.09f, colour(p.ink), 40);

    for (const auto& [clock_deg, word] : clock.rim) {
        const float half = (ui.width_of(word, TextSize::small, true) + ui.px(1.4)) / 2, tall = ui.px(5);
        // Beside the place it names, not on it: a hand that points there has to be seen whole.
        ImVec2 at = toward(centre, clock_deg, radius);
        const float clear = radius * 0.16f + ui.px(0.4);
        if (std::fabs(std::sin(clock_deg * std::numbers::pi / 180)) > 0.3) at.y -= tall / 2 + clear;
        else at.x += half + clear;
        const Box plate = around(at, half * 2, tall);
        list.AddRectFilled(plate.min, plate.max, colour(skin.fill), ui.px(1));
        Type type = ui.small(skin, true);
        type.across = Across::middle;
        type.down = Down::middle;
        type.wrap = false;
        ui.text(plate, word, type);
    }
}

}  // namespace

void draw_clock(Ui& ui, const Box& box, const ClockView& clock, const Skin& skin) {
    Box rest = box;
    for (const LegendItem& item : legend_off_bottom(ui, rest, clock)) {
        Box words = item.box;
        const Box swatch = words.cut_left(ui.px(swatch_mm));
        const float y = swatch.centre().y;
        draw_hand(ui, {swatch.min.x + ui.px(0.9), y}, {swatch.max.x - ui.px(2.6), y}, item.hand->kind, ui.px(0.62));
        Type type = ui.small(skin);
        type.down = Down::middle;
        type.wrap = false;
        ui.text(words, item.hand->label, type);
    }
    float side = 0;
    for (const auto& [clock_deg, word] : clock.rim)
        if (std::fabs(std::sin(clock_deg * std::numbers::pi / 180)) > 0.3) side = std::max(side, ui.width_of(word, TextSize::small, true) / 2 + ui.px(0.7));
    const float radius = std::min(rest.width() / 2 - side, rest.height() / 2 - ui.px(2.6));
    draw_face(ui, rest.centre(), radius, clock, skin);
}

}  // namespace tubewright
