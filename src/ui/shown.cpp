#include "ui/shown.h"

#include <tuple>

namespace tubewright {
namespace {

/// Names every member, so that another one can't be forgotten here.
auto split(const KeypadBody& body) {
    const auto& [asks, entry, unit, lines, keys, columns, moves, picture, below] = body;
    return std::pair{std::tie(asks, entry, unit, lines, moves, picture, below), std::tie(keys, columns)};
}

template <class View>
bool same(View& was, const View& is) {
    if (was == is) return true;
    was = is;
    return false;
}

}  // namespace

SameParts take_in(Shown& shown, const ScreenView& view, const PictureHandle& picture) {
    SameParts out;
    ScreenView& was = shown.view;
    const bool same_picture = shown.picture == picture;
    if (!same_picture) shown.picture = picture;
    out.header = same(was.header, view.header);
    out.ribbon = same(was.ribbon, view.ribbon);
    out.footer = same(was.footer, view.footer);
    const bool same_tone = same(was.good_news, view.good_news);
    out.notice = same(was.notice, view.notice) && same_tone;
    const auto* pad_before = std::get_if<KeypadBody>(&was.body);
    const auto* pad = std::get_if<KeypadBody>(&view.body);
    if (pad_before && pad) {
        const auto before = split(*pad_before), now = split(*pad);
        out.body = before.first == now.first;
        out.keys = before.second == now.second;
    } else {
        out.body = was.body == view.body;
    }
    if (!out.body || (pad && !out.keys)) was.body = view.body;
    out.body = out.body && same_picture;
    was.key = view.key;
    was.theme = view.theme;
    return out;
}

}  // namespace tubewright
