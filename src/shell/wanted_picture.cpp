#include "shell/wanted_picture.h"

namespace tubewright {

const PictureView* picture_in(const ScreenView& view) {
    if (const auto* move = std::get_if<MoveBody>(&view.body)) return move->picture ? &*move->picture : nullptr;
    if (const auto* overview = std::get_if<OverviewBody>(&view.body)) return overview->picture ? &*overview->picture : nullptr;
    if (const auto* tiles = std::get_if<TilesBody>(&view.body)) return tiles->picture ? &*tiles->picture : nullptr;
    if (const auto* route = std::get_if<RouteBody>(&view.body)) return route->picture ? &*route->picture : nullptr;
    if (const auto* settings = std::get_if<SettingsBody>(&view.body)) return settings->picture ? &*settings->picture : nullptr;
    if (const auto* order = std::get_if<OrderBody>(&view.body)) return order->picture ? &*order->picture : nullptr;
    if (const auto* card = std::get_if<CardBody>(&view.body)) return &card->picture;
    if (const auto* keypad = std::get_if<KeypadBody>(&view.body)) return keypad->picture ? &*keypad->picture : nullptr;
    return nullptr;
}

PictureKind kind_of(PictureView::Kind kind) {
    switch (kind) {
        case PictureView::Kind::finished: return PictureKind::finished;
        case PictureView::Kind::marked: return PictureKind::marked;
        case PictureView::Kind::turned: return PictureKind::turned;
        case PictureView::Kind::pulled: return PictureKind::pulled;
        case PictureView::Kind::checked: return PictureKind::checked;
        case PictureView::Kind::card: break;  // no step of a sheet
    }
    return PictureKind::finished;
}

}  // namespace tubewright
