#include <algorithm>
#include <cmath>

#include "ui/ui.h"

namespace tubewright {
namespace {

// Where capitals begin and the baseline lies, as shares of the font size: (1930 - 1500) / 2430, 1930 / 2430.
constexpr float capitals_top = 0.177f, baseline = 0.794f;

/// A line with a "p" or a "g" in it, from the top of its capitals down, as a share of a capital's height.
constexpr float with_descender = 1.42f;
/// What is kept in the memory of texts, apart for every type.
enum class Measure : unsigned { width, halved_width, lines, hero_lines, fitted };
constexpr unsigned what(Measure measure, TextSize size, bool bold) {
    return static_cast<unsigned>(measure) | static_cast<unsigned>(size) << 3 | (bold ? 32u : 0u);
}
TextMeasure number(float value) {
    TextMeasure measure;
    measure.number = value;
    return measure;
}

bool descends(const std::string& text) { return text.find_first_of("gjpqyQ,;()[]") != std::string::npos; }

constexpr double cap_of(TextSize size) { return size == TextSize::small ? cap_height::small : size == TextSize::body ? cap_height::body : cap_height::hero; }

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
    return memory_.answer({what(Measure::width, size, bold), 0, 0, 0, text}, [&] { return number(text_width(font(size, bold), font_px(cap_of(size)), text)); }).number;
}

float Ui::halved_width_of(const std::string& text, TextSize size, bool bold) const {
    return memory_.answer({what(Measure::halved_width, size, bold), 0, 0, 0, text}, [&] { return number(halved_width(font(size, bold), font_px(cap_of(size)), text)); }).number;
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
    const auto lines = [&] { return number(static_cast<float>(lines_of(font(size, bold), font_px(cap_of(size)), text, width, true).lines.size())); };
    return memory_.answer({what(Measure::lines, size, bold), width, 0, 0, text}, lines).number * line_height(size);
}

float Ui::hero_width(const std::string& text, double cap_mm) const { return text_width(*fonts_.hero, font_px(cap_mm), text); }

std::optional<float> Ui::hero_height(const std::string& text, float width, double cap_mm) const {
    const auto lines = [&] {
        TextMeasure measure;
        measure.lines = lines_of(*fonts_.hero, font_px(cap_mm), text, width, true);
        return measure;
    };
    const TextLines& hero = memory_.answer({what(Measure::hero_lines, TextSize::hero, true), width, static_cast<float>(cap_mm), 0, text}, lines).lines;
    if (!hero.words_whole) return std::nullopt;
    return px(cap_mm) * (static_cast<float>(hero.lines.size() - 1) * Type{}.pitch + (descends(text) ? with_descender : 1.2f));
}

TextMeasure Ui::at_size(const std::string& text, const ImFont& with, float size, const Box& box, const Type& type) const {
    TextMeasure result{lines_of(with, size, text, box.width(), type.wrap), size, 1.2f, true};
    if (type.size == TextSize::hero && descends(text)) result.below = with_descender;
    const float cap = size * static_cast<float>(cap_share);
    const float needed = cap * (static_cast<float>(result.lines.lines.size() - 1) * type.pitch + result.below);
    result.whole = result.lines.words_whole && result.lines.widest() <= box.width() + 0.5f && needed <= box.height() + 0.5f;
    return result;
}

TextMeasure Ui::measured_hero(const Box& box, const std::string& text, Type type) const {
    constexpr double step = 0.7;
    for (double cap = cap_height::hero_most;; cap = std::max(cap - step, cap_height::hero_least)) {
        for (const bool wrap : {false, true}) {
            type.wrap = wrap;
            const TextMeasure one = at_size(text, *fonts_.hero, font_px(cap), box, type);
            if (one.whole) return one;
        }
        if (cap <= cap_height::hero_least) break;
    }
    type.wrap = true;
    TextMeasure body = at_size(text, *fonts_.body_bold, font_px(cap_height::body), box, type);
    body.whole = false;
    return body;
}

TextMeasure Ui::measured(const Box& box, const std::string& text, const Type& type) const {
    if (type.size == TextSize::hero) return measured_hero(box, text, type);
    if (type.size == TextSize::body) {
        const TextMeasure body = at_size(text, font(TextSize::body, type.bold), font_px(cap_height::body), box, type);
        if (body.whole || !type.shrink) return body;
    }
    return at_size(text, font(TextSize::small, type.bold), font_px(cap_height::small), box, type);
}

const TextMeasure& Ui::fitted(const Box& box, const std::string& text, const Type& type) const {
    const unsigned flags = what(Measure::fitted, type.size, type.bold) | (type.wrap ? 64u : 0u) | (type.shrink ? 128u : 0u);
    return memory_.answer({flags, box.width(), box.height(), type.pitch, text}, [&] { return measured(box, text, type); });
}

void Ui::draw_line(const ImFont& with, float size, ImVec2 at, const TextLine& line, bool whole, const Type& type) {
    if (line.text.empty()) return;
    const ImVec2 pixel{whole_pixel(at.x), whole_pixel(at.y)};
    list().AddText(&with, size, pixel, colour(type.ink), line.text.data(), line.text.data() + line.text.size());
    const bool deep = type.size == TextSize::hero && descends(line.text);
    const float bottom = deep ? capitals_top + with_descender * static_cast<float>(cap_share) : baseline + 0.1f;
    const Box box{{at.x, at.y + capitals_top * size}, {at.x + line.width, at.y + bottom * size}};
    drawing_->noted.texts.push_back({line.text, box, whole, line.known, size * cap_share / (px_per_mm_ * grow_), type.ink, type.ground,
                      type.off ? least_contrast : text_contrast, owner_});
}

float Ui::text(const Box& box, const std::string& text, const Type& type) {
    if (text.empty()) return 0;
    const TextMeasure& fit = fitted(box, text, type);
    const ImFont& with = type.size == TextSize::hero && fit.whole ? *fonts_.hero
                         : type.size == TextSize::hero            ? *fonts_.body_bold
                         : fit.size > font_px(cap_height::small) + 0.5f ? font(TextSize::body, type.bold)
                                                                          : font(TextSize::small, type.bold);
    const float cap = fit.size * static_cast<float>(cap_share), pitch = cap * type.pitch;
    std::vector<TextLine> cut_short;
    if (!fit.whole) {
        cut_short = fit.lines.lines;
        const std::size_t room = static_cast<std::size_t>(std::max(0.0f, (box.height() - cap * fit.below) / pitch)) + 1;
        const bool cut = cut_short.size() > room;
        if (cut) cut_short.resize(room);
        if (cut) cut_short.back().text += "…";
        for (TextLine& line : cut_short) {
            line.text = shortened(with, fit.size, line.text, box.width());
            line.width = text_width(with, fit.size, line.text);
        }
    }
    const std::vector<TextLine>& lines = fit.whole ? fit.lines.lines : cut_short;
    const float used = static_cast<float>(lines.size() - 1) * pitch + cap * fit.below;
    float y = type.down == Down::top ? box.min.y : type.down == Down::middle ? box.centre().y - used / 2 + (fit.below < with_descender ? cap * 0.1f : 0) : box.max.y - used;
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
