// The order of bends: cards that a finger takes to another place, and two large arrows for a hand in a glove.

#include <algorithm>
#include <cmath>

#include "ui/bodies.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

constexpr double gap_mm = 3, card_least_mm = 20.4, card_most_mm = 32, arrow_mm = 33, arrow_most_mm = 42, below_least_mm = 38;
/// On a screen that has the room the cards are larger, and a picture stands beside the words.
constexpr double roomy_from_mm = 270, roomy_card_most_mm = 46, roomy_below_mm = 84;
/// A finger that has left the cards by this much has given up.
constexpr double reach_mm = 8;

bool is_roomy(const Ui& ui, const Box& box, const OrderBody& body) { return body.picture && box.width() >= ui.px(roomy_from_mm); }

/// Where the cards lie.
struct Places {
    Box box;
    int columns, rows;
    float gap;
    Box at(std::size_t i) const { return box.row(static_cast<int>(i) / columns, rows, gap).column(static_cast<int>(i) % columns, columns, gap); }
};

Places places_of(const Ui& ui, Box& rest, const OrderBody& body) {
    const int columns = std::max(1, static_cast<int>(body.columns)), count = static_cast<int>(body.cards.size());
    const int rows = std::max(1, (count + columns - 1) / columns);
    const float gap = ui.px(gap_mm), gaps = gap * static_cast<float>(rows - 1);
    const bool roomy = is_roomy(ui, rest, body);
    const float below = ui.px(roomy ? roomy_below_mm : below_least_mm), most = ui.px(roomy ? roomy_card_most_mm : card_most_mm);
    const float each = std::clamp((rest.height() - below - gap - gaps) / static_cast<float>(rows), ui.px(card_least_mm), most);
    const Box box = rest.cut_top(each * static_cast<float>(rows) + gaps);
    rest.cut_top(gap);
    return {box, columns, rows, gap};
}

/// A card on its way: which one, and where it would be put down; nowhere while the finger is off the cards.
struct Travel {
    std::optional<std::size_t> card, to;
    std::optional<std::size_t> pressed;  ///< under the finger, not carried yet
    ImVec2 by{0, 0};
};

std::optional<std::size_t> nearest(const Ui& ui, const Places& places, std::size_t count, ImVec2 finger) {
    if (!places.box.inside(-ui.px(reach_mm)).holds(finger)) return std::nullopt;
    std::size_t best = 0;
    const auto distance = [&](std::size_t i) {
        const ImVec2 c = places.at(i).centre();
        return std::hypot(c.x - finger.x, c.y - finger.y);
    };
    for (std::size_t i = 1; i < count; ++i)
        if (distance(i) < distance(best)) best = i;
    return best;
}

Travel feel(const Drawing& on, const OrderBody& body, const Places& places) {
    Travel travel;
    for (std::size_t i = 0; i < body.cards.size(); ++i) {
        const OrderCard& card = body.cards[i];
        const Drag drag = on.ui.drag(places.at(i), card.touch);
        if (drag.tapped && card.touch.press) on.actions.push_back(*card.touch.press);
        if (drag.down) travel.pressed = i;
        if (!drag.moving || !body.movable) continue;
        travel = {i, nearest(on.ui, places, body.cards.size(), drag.at), std::nullopt, drag.by};
        if (drag.dropped && travel.to && *travel.to != i) on.actions.push_back(MoveBend{card.bend, static_cast<int>(*travel.to) - static_cast<int>(i)});
    }
    return travel;
}

/// Where the others make room: between its old place and its new one each moves over by one.
std::size_t moved_over(std::size_t i, const Travel& travel) {
    if (!travel.card || !travel.to) return i;
    if (i > *travel.card && i <= *travel.to) return i - 1;
    if (i < *travel.card && i >= *travel.to) return i + 1;
    return i;
}

/// `digits`: of the longest number on the cards, so that all are of one size.
enum class Held { no, pressed, lifted };

void draw_card(Ui& ui, const Box& box, const OrderCard& card, std::size_t digits, Held held) {
    const bool lifted = held == Held::lifted;
    Skin skin = card.tone == Tone::plain ? ui.panel() : ui.pale(card.tone);
    if (card.touch.chosen || lifted) skin.border = ui.palette().now;
    if (card.touch.chosen && card.tone == Tone::plain) skin = ui.pale(Tone::now);
    if (held == Held::pressed) skin.fill = mixed(skin.fill, ui.palette().now, 0.18);
    const float lip = ui.px(1.1), radius = ui.px(2);
    if (lifted) ui.list().AddRectFilled({box.min.x + ui.px(1), box.min.y + ui.px(1.6)}, {box.max.x + ui.px(1), box.max.y + ui.px(1.6)}, colour(ui.palette().ink, 0.35), radius);
    const Box face{box.min, {box.max.x, box.max.y - lip}};
    ui.list().AddRectFilled(box.min, box.max, colour(skin.border), radius);
    ui.plate(face, skin, ui.px(card.touch.chosen || lifted ? 0.9 : 0.45), radius);
    ui.begin_label(card.touch.id);
    Box inner = face.inside(ui.px(1.2), ui.px(0.9));
    Type word = ui.small(skin), number = ui.hero(skin);
    word.across = number.across = Across::middle;
    word.ink = skin.soft;
    word.wrap = false;
    number.down = Down::middle;
    if (box.height() > ui.px(26)) ui.text(inner.cut_top(ui.line_height(TextSize::small)), "bend", word);
    word.down = Down::bottom;
    ui.text(inner.cut_bottom(ui.line_height(TextSize::small)), card.hook, word);
    if (box.height() > ui.px(23.5)) inner.cut_top(ui.px(3));  // clear of the sign
    const float share = static_cast<float>(card.number.size()) / static_cast<float>(digits);
    ui.text(inner.inside(inner.width() * (1 - share) / 2, 0), card.number, number);
    ui.end_label();
    if (card.tone != Tone::plain) draw_tone_sign(ui, {face.max.x - ui.px(3.2), face.min.y + ui.px(3.2)}, ui.px(4.4), card.tone);
}

/// A small wedge from each card to the one that is made after it.
void draw_way(Ui& ui, const Places& places, std::size_t count) {
    for (std::size_t i = 0; i + 1 < count; ++i) {
        const Box a = places.at(i), b = places.at(i + 1);
        if (b.min.x < a.max.x) continue;  // the next row
        const ImVec2 c{(a.max.x + b.min.x) / 2, a.centre().y};
        const float half = ui.px(1.5), deep = ui.px(0.8);
        ui.list().AddTriangleFilled({c.x - deep, c.y - half}, {c.x - deep, c.y + half}, {c.x + deep, c.y}, colour(ui.palette().ink_soft));
    }
}

void draw_cards(Ui& ui, const OrderBody& body, const Places& places, const Travel& travel) {
    draw_way(ui, places, body.cards.size());
    if (travel.card) {
        const Box gap = places.at(travel.to.value_or(*travel.card)).inside(ui.px(0.6));
        draw_dashed_box(ui.list(), gap.min, gap.max, colour(ui.palette().now), ui.px(travel.to ? 0.8 : 0.4), ui.px(2), ui.px(1.4));
    }
    std::size_t digits = 1;
    for (const OrderCard& card : body.cards) digits = std::max(digits, card.number.size());
    for (std::size_t i = 0; i < body.cards.size(); ++i)
        if (i != travel.card) draw_card(ui, places.at(moved_over(i, travel)), body.cards[i], digits, i == travel.pressed ? Held::pressed : Held::no);
    if (!travel.card) return;
    const Box from = places.at(*travel.card);
    draw_card(ui, {{from.min.x + travel.by.x, from.min.y + travel.by.y}, {from.max.x + travel.by.x, from.max.y + travel.by.y}}, body.cards[*travel.card], digits, Held::lifted);
}

/// An arrow as large as the button lets it be; what can't be used says why instead.
void draw_arrow(const Drawing& on, Box box, const ButtonView& button, float way) {
    Ui& ui = on.ui;
    box.max.y = std::min(box.max.y, box.min.y + ui.px(arrow_most_mm));
    ui.press(box, button, on.actions);
    if (!button.enabled) return;
    const float deep = ui.px(4.4), half = ui.px(5.6);
    const ImVec2 c{box.centre().x, box.min.y + ui.px(8.2)};
    ui.list().AddTriangleFilled({c.x - way * deep, c.y - half}, {c.x - way * deep, c.y + half}, {c.x + way * deep, c.y}, colour(ui.palette().ink));
}

void draw_looked(Ui& ui, const Box& box, double share) {
    const Palette& p = ui.palette();
    ui.list().AddRectFilled(box.min, box.max, colour(p.tray), ui.px(1.2));
    ui.list().AddRectFilled(box.min, {box.min.x + box.width() * static_cast<float>(std::clamp(share, 0.02, 1.0)), box.max.y}, colour(p.now), ui.px(1.2));
    ui.plate_edge(box, colour(p.edge), ui.px(0.35), ui.px(1.2));
}

}  // namespace

void draw_body(const Drawing& on, const Box& box, const OrderBody& body) {
    Ui& ui = on.ui;
    Box rest = box;
    if (body.pager.needed) {
        draw_pager(on, rest.cut_right(pager_width(ui)), body.pager);
        rest.cut_right(ui.px(gap_mm));
    }
    if (!body.cards.empty()) {
        const bool roomy = is_roomy(ui, rest, body);
        const Places places = places_of(ui, rest, body);
        const Travel travel = feel(on, body, places);
        draw_arrow(on, rest.cut_left(ui.px(arrow_mm)), body.earlier, -1);
        draw_arrow(on, rest.cut_right(ui.px(arrow_mm)), body.later, 1);
        rest = rest.inside(ui.px(gap_mm), 0);
        if (roomy) {
            draw_picture(ui, rest.cut_right(rest.width() * 0.5f), *body.picture, on.picture);
            rest.cut_right(ui.px(gap_mm));
        }
        if (!body.picked.empty()) ui.text_off_top(rest, body.picked, ui.small(ui.paper(), true), ui.px(1.2));
        if (body.looked) {
            draw_looked(ui, rest.cut_top(ui.px(6)), *body.looked);
            rest.cut_top(ui.px(1.6));
        }
        draw_plates(ui, rest, body.notes);
        draw_cards(ui, body, places, travel);  // the one in hand lies over all else
        return;
    }
    draw_plates(ui, rest, body.notes);
}

}  // namespace tubewright
