#include <algorithm>
#include <cmath>

#include "ui/ui.h"

namespace tubewright {
namespace {

// Where capitals begin and the baseline lies, as shares of the font size. Both families: 0.17 and 0.80.
constexpr float capitals_top = 0.17f, baseline = 0.80f;

}  // namespace

const ImFont& Ui::font(TextSize size, bool bold) const {
    switch (size) {
        case TextSize::small: return bold ? *fonts_.small_bold : *fonts_.small;
        case TextSize::body: return bold ? *fonts_.body_bold : *fonts_.body;
        case TextSize::hero: break;
    }
    return *fonts_.hero;
}

float Ui::line_height(TextSize size) const {
    switch (size) {
        case TextSize::small: return px(cap_height::small * 1.62);
        case TextSize::body: return px(cap_height::body * 1.55);
        case TextSize::hero: break;
    }
    return px(cap_height::hero * 1.45);
}

float Ui::width_of(const std::string& text, TextSize size, bool bold) const {
    const double cap = size == TextSize::small ? cap_height::small : size == TextSize::body ? cap_height::body : cap_height::hero;
    return text_width(font(size, bold), font_px(cap), text);
}

float Ui::widest_word(const std::string& text, TextSize size, bool bold) const {
    float widest = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t space = std::min(text.find(' ', at), text.size());
        widest = std::max(widest, width_of(text.substr(at, space - at), size, bold));
        at = space + 1;
    }
    return widest;
}

float Ui::height_of(const std::string& text, TextSize size, bool bold, float width) const {
    const double cap = size == TextSize::small ? cap_height::small : size == TextSize::body ? cap_height::body : cap_height::hero;
    return static_cast<float>(lines_of(font(size, bold), font_px(cap), text, width, true).lines.size()) * line_height(size);
}

Ui::Fitted Ui::at_size(const std::string& text, const ImFont& with, float size, const Box& box, bool wrap) const {
    Fitted result{lines_of(with, size, text, box.width(), wrap), size, true};
    // The pitch of lines goes with their size; one line needs no more than its own letters.
    const float cap = size * static_cast<float>(cap_share);
    const float needed = static_cast<float>(result.lines.lines.size() - 1) * cap * 1.55f + cap * 1.2f;
    result.whole = result.lines.words_whole && result.lines.widest() <= box.width() + 0.5f && needed <= box.height() + 0.5f;
    return result;
}

Ui::Fitted Ui::fitted_hero(const Box& box, const std::string& text) const {
    constexpr double step = 0.7;
    for (double cap = cap_height::hero_most; cap >= cap_height::hero_least; cap -= step) {
        const Fitted one = at_size(text, *fonts_.hero, font_px(cap), box, false);
        if (one.whole) return one;
    }
    for (double cap = cap_height::hero; cap > cap_height::hero_least; cap -= step) {
        const Fitted broken = at_size(text, *fonts_.hero, font_px(cap), box, true);
        if (broken.whole) return broken;
    }
    const Fitted least = at_size(text, *fonts_.hero, font_px(cap_height::hero_least), box, true);
    if (least.whole) return least;
    Fitted body = at_size(text, *fonts_.body_bold, font_px(cap_height::body), box, true);
    body.whole = false;
    return body;
}

Ui::Fitted Ui::fitted(const Box& box, const std::string& text, const Type& type) const {
    if (type.size == TextSize::hero) return fitted_hero(box, text);
    const Fitted small = at_size(text, font(TextSize::small, type.bold), font_px(cap_height::small), box, type.wrap);
    if (type.size == TextSize::small) return small;
    const Fitted body = at_size(text, font(TextSize::body, type.bold), font_px(cap_height::body), box, type.wrap);
    return body.whole || !type.shrink ? body : small;
}

void Ui::draw_line(const ImFont& with, float size, ImVec2 at, const TextLine& line, bool whole, const Type& type) {
    if (line.text.empty()) return;
    const ImVec2 pixel{std::round(at.x), std::round(at.y)};
    list_->AddText(&with, size, pixel, colour(type.ink), line.text.data(), line.text.data() + line.text.size());
    const Box box{{at.x, at.y + capitals_top * size}, {at.x + line.width, at.y + (baseline + 0.1f) * size}};
    texts_.push_back({line.text, box, whole, every_glyph(with, line.text), size * cap_share / (px_per_mm_ * grow_), type.ink, type.ground,
                      type.off ? least_contrast : text_contrast, owner_});
}

float Ui::text(const Box& box, const std::string& text, const Type& type) {
    if (text.empty()) return 0;
    Fitted fit = fitted(box, text, type);
    const ImFont& with = type.size == TextSize::hero && fit.whole ? *fonts_.hero
                         : type.size == TextSize::hero            ? *fonts_.body_bold
                         : fit.size > font_px(cap_height::small) + 0.5f ? font(TextSize::body, type.bold)
                                                                          : font(TextSize::small, type.bold);
    const float cap = fit.size * static_cast<float>(cap_share), pitch = cap * 1.55f;
    std::vector<TextLine>& lines = fit.lines.lines;
    if (!fit.whole) {
        const std::size_t room = static_cast<std::size_t>(std::max(0.0f, (box.height() - cap * 1.2f) / pitch)) + 1;
        const bool cut = lines.size() > room;
        if (cut) lines.resize(room);
        if (cut) lines.back().text += "…";
        for (TextLine& line : lines) {
            line.text = shortened(with, fit.size, line.text, box.width());
            line.width = text_width(with, fit.size, line.text);
        }
    }
    const float used = static_cast<float>(lines.size() - 1) * pitch + cap * 1.2f;
    float y = type.down == Down::top ? box.min.y : type.down == Down::middle ? box.centre().y - used / 2 + cap * 0.1f : box.max.y - used;
    for (const TextLine& line : lines) {
        const float free = box.width() - line.width;
        const float x = box.min.x + (type.across == Across::left ? 0 : type.across == Across::middle ? free / 2 : free);
        draw_line(with, fit.size, {x, y - capitals_top * fit.size}, line, fit.whole, type);
        y += pitch;
    }
    return static_cast<float>(lines.size()) * pitch;
}

void Ui::text_off_top(Box& box, const std::string& text, const Type& type, float after) {
    if (text.empty()) return;
    box.cut_top(this->text(box, text, type) + after);
}

}  // namespace tubewright
