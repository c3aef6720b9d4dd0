#include <algorithm>

#include "ui/bodies.h"
#include "ui/clock.h"

namespace tubewright {
namespace {

constexpr double line_gap_mm = 1.2, panel_pad_mm = 3.2, panel_pad_down_mm = 2.2;

/// The words of a move: what to do, the number, and under it how.
struct MoveWords {
    std::string asks, hero;
    std::vector<TextView> lines;
};

MoveWords words_of(const MoveBody& body) {
    MoveWords words{body.asks, body.hero, body.lines};
    if (body.clock && !body.clock->caption.empty()) words.lines.push_back({body.clock->caption, Tone::plain});
    return words;
}

/// What is asked stands on one line, smaller where it has to.
TextSize asks_size(const Ui& ui, const std::string& asks, float width) {
    return ui.width_of(asks, TextSize::body, false) <= width ? TextSize::body : TextSize::small;
}

float asks_height(const Ui& ui, const std::string& asks, float width) {
    return asks.empty() ? 0 : ui.height_of(asks, asks_size(ui, asks, width), false, width) + ui.px(0.6);
}

float lines_height(const Ui& ui, const std::vector<TextView>& lines, float width) {
    float needed = 0;
    for (const TextView& line : lines)
        needed += ui.height_of(line.text, TextSize::small, line.tone == Tone::stop || line.tone == Tone::now, width - (line.tone == Tone::plain ? 0 : ui.px(6)));
    return needed;
}

/// Whether all the words are seen with capitals of that many mm in the number.
bool words_fit(const Ui& ui, const MoveWords& words, float width, float height, double hero_cap) {
    const auto hero = ui.hero_height(words.hero, width, hero_cap);
    return hero && asks_height(ui, words.asks, width) + *hero + ui.px(line_gap_mm) + lines_height(ui, words.lines, width) <= height;
}

void draw_words(Ui& ui, Box box, const MoveWords& words, const Skin& skin) {
    Type asks{asks_size(ui, words.asks, box.width()), false, skin.soft, skin.fill};
    Box head = box.cut_top(asks_height(ui, words.asks, box.width()));
    ui.text(head, words.asks, asks);
    const float least = ui.hero_height(words.hero, box.width(), cap_height::hero_least).value_or(0), most = ui.px(cap_height::hero_most * (box.height() > ui.px(70) ? 3.2 : 1.7));
    const float hero = std::clamp(box.height() - lines_height(ui, words.lines, box.width()) - ui.px(line_gap_mm), least, std::max(least, most));
    Type type = ui.hero(skin);
    type.down = Down::middle;
    ui.text(box.cut_top(hero), words.hero, type);
    box.cut_top(ui.px(line_gap_mm));
    draw_lines(ui, box, words.lines, skin);
}

/// The room between picture and clock that the words have in a body of this width.
struct Shares {
    float picture = 0, clock = 0, words = 0;
};

/// How much of the width the picture gets, of the rest the clock, and how large the number is then.
struct Wish {
    float picture;
    double hero_cap;
    float clock = 0.42f;
};

Shares shares_of(const Ui& ui, const MoveBody& body, float width, float height, const Wish& wish) {
    Shares shares;
    shares.picture = body.picture ? std::min(width * wish.picture, height * 1.5f) : 0;
    const float panel = width - (shares.picture > 0 ? shares.picture + ui.px(3) : 0) - ui.px(2 * panel_pad_mm);
    if (body.clock) shares.clock = std::min(panel * wish.clock, height * 1.15f);
    shares.words = panel - (shares.clock > 0 ? shares.clock + ui.px(3) : 0);
    return shares;
}

/// From the best: a picture that is understood two steps away is worth a number a little smaller, but never
/// one that is hard to read from there.
constexpr double nearly = 11.3;
constexpr Wish wishes[]{{0.44f, cap_height::hero},       {0.40f, cap_height::hero}, {0.36f, cap_height::hero},
                        {0.40f, nearly},                 {0.36f, nearly},           {0.33f, nearly},
                        {0.33f, cap_height::hero_least}, {0.30f, nearly},           {0.33f, cap_height::hero_least, 0.36f},
                        {0.28f, cap_height::hero_least}, {0.29f, cap_height::hero_least, 0.36f},
                        {0.22f, cap_height::hero_least}};

Shares fitting_shares(const Ui& ui, const MoveBody& body, const MoveWords& words, float width, float height) {
    for (const Wish& wish : wishes) {
        const Shares shares = shares_of(ui, body, width, height, wish);
        if (words_fit(ui, words, shares.words, height - ui.px(2 * panel_pad_down_mm), wish.hero_cap)) return shares;
    }
    return shares_of(ui, body, width, height, {0, cap_height::hero_least});
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const MoveBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    moves_off_top(ui, rest, body.moves, ui.px(2));
    if (!body.buttons.empty()) {
        const int count = static_cast<int>(body.buttons.size()), columns = count > 2 ? 2 : 1, rows = (count + columns - 1) / columns;
        const Box side = rest.cut_right(ui.px(columns == 1 ? 36 : 63));
        draw_grid(on, {side.min, {side.max.x, side.min.y + std::min(side.height(), ui.px(40) * static_cast<float>(rows))}}, body.buttons, columns, ui.px(3));
        rest.cut_right(ui.px(3));
    }
    const MoveWords words = words_of(body);
    const Shares shares = fitting_shares(ui, body, words, rest.width(), rest.height());
    if (shares.picture > 0) {
        draw_picture(ui, rest.cut_left(shares.picture), *body.picture, on.picture);
        rest.cut_left(ui.px(3));
    }
    const Skin panel = ui.panel();
    const Skin skin{panel.fill, ui.palette().now, panel.ink, panel.soft};
    ui.plate(rest, skin, ui.px(1), ui.px(2.4));
    Box inner = rest.inside(ui.px(panel_pad_mm), ui.px(panel_pad_down_mm));
    if (shares.clock > 0) {
        draw_clock(ui, inner.cut_right(shares.clock), *body.clock, skin);
        inner.cut_right(ui.px(3));
    }
    draw_words(ui, inner, words, skin);
}

}  // namespace tubewright
