#pragma once
// Everything on a screen that a finger can touch.

#include <vector>

#include "present/views.h"

namespace tubewright {

inline void add(std::vector<ButtonView>& all, const std::vector<ButtonView>& more) { all.insert(all.end(), more.begin(), more.end()); }
inline void add(std::vector<ButtonView>& all, const PagerView& pager) {
    if (!pager.needed) return;
    all.push_back(pager.earlier);
    all.push_back(pager.later);
}
inline void add_body(std::vector<ButtonView>& all, const ListBody& body) {
    for (const RowView& row : body.rows) all.push_back(row.touch);
    add(all, body.pager);
}
inline void add_body(std::vector<ButtonView>& all, const OverviewBody& body) {
    add(all, body.buttons);
    add(all, body.pager);
}
inline void add_body(std::vector<ButtonView>& all, const TicksBody& body) {
    for (const TickView& tick : body.ticks) {
        all.push_back(tick.touch);
        if (tick.later) all.push_back(*tick.later);
    }
    add(all, body.pager);
}
inline void add_body(std::vector<ButtonView>& all, const MarkOutBody& body) { add(all, body.pager); }
inline void add_body(std::vector<ButtonView>& all, const MoveBody& body) { add(all, body.buttons); }
inline void add_body(std::vector<ButtonView>& all, const KeypadBody& body) { add(all, body.keys); }
inline void add_body(std::vector<ButtonView>& all, const ChoiceBody& body) { add(all, body.choices); }
inline void add_body(std::vector<ButtonView>& all, const TableBody& body) { add(all, body.pager); }
inline void add_body(std::vector<ButtonView>& all, const SettingsBody& body) {
    for (const SettingsGroup& group : body.groups) add(all, group.choices);
}

inline void add_body(std::vector<ButtonView>& all, const OrderBody& body) {
    for (const OrderCard& card : body.cards) all.push_back(card.touch);
    add(all, std::vector<ButtonView>{body.earlier, body.later});
    add(all, body.pager);
}

inline void add_body(std::vector<ButtonView>& all, const TilesBody& body) {
    for (const TileView& tile : body.tiles) all.push_back(tile.touch);
    if (body.remedy) all.push_back(*body.remedy);
}
inline void add_body(std::vector<ButtonView>& all, const RouteBody& body) {
    for (const TileView& cell : body.cells) all.push_back(cell.touch);
    for (const auto& arrow : {body.earlier, body.later})
        if (arrow) all.push_back(*arrow);
    add(all, body.keys);
    add(all, body.ways);
    if (body.dial) all.push_back(*body.dial);
    if (body.remedy) all.push_back(*body.remedy);
}
inline void add_body(std::vector<ButtonView>& all, const CardBody& body) { add_body(all, body.figures); }
inline void add_body(std::vector<ButtonView>& all, const PieceBody& body) { add_body(all, body.figures); }

inline std::vector<ButtonView> touchables(const ScreenView& view) {
    std::vector<ButtonView> all;
    std::visit([&](const auto& body) { add_body(all, body); }, view.body);
    add(all, view.footer.buttons);
    return all;
}

}  // namespace tubewright
