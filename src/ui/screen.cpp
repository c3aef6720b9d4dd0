#include "ui/screen.h"

#include <algorithm>

#include "ui/header.h"
#include "ui/ribbon.h"
#include "ui/signs.h"

namespace tubewright {
namespace {

/// The footer's buttons as wide as their words want, the main one as wide as is left. A warning one
/// stands 25 mm clear of it.
void draw_footer(const Drawing& on, const Box& box, const FooterView& footer) {
    Ui& ui = on.ui;
    const Palette& p = ui.palette();
    ui.list().AddRectFilled(box.min, box.max, colour(p.tray));
    ui.list().AddLine(box.min, {box.max.x, box.min.y}, colour(p.edge), ui.px(0.4));
    Box line = box.inside(ui.px(2.4), ui.px(1.7));
    const std::vector<ButtonView>& buttons = footer.buttons;
    const auto is_main = [](const ButtonView& button) { return button.weight == Weight::main; };
    const auto clear = [](const ButtonView& a, const ButtonView& b) {
        return (a.weight == Weight::warn && b.weight == Weight::main) || (a.weight == Weight::main && b.weight == Weight::warn);
    };
    const float gap = ui.px(6), far = ui.px(25.5);
    std::vector<float> widths;
    float gaps = 0, fixed = 0;
    bool has_main = false;
    for (std::size_t i = 0; i < buttons.size(); ++i) {
        // Its words in two lines, if they are two or more.
        const float longest = ui.widest_word(buttons[i].label, TextSize::body, true);
        const float one_line = ui.width_of(buttons[i].label, TextSize::body, true);
        widths.push_back(is_main(buttons[i]) ? 0 : std::clamp(std::max(longest, one_line * 0.58f) + ui.px(7), ui.px(buttons[i].weight == Weight::warn ? 30 : 26), ui.px(58)));
        fixed += widths.back();
        has_main = has_main || is_main(buttons[i]);
        if (i > 0) gaps += clear(buttons[i - 1], buttons[i]) ? far : gap;
    }
    const float left = line.width() - fixed - gaps, main_least = has_main ? ui.px(62) : 0;
    if (left < main_least) {
        const float scale = (fixed + left - main_least) / std::max(fixed, 1.0f);
        for (float& width : widths) width = std::max(width * scale, ui.px(25.2));
    }
    const float main_width = std::max(left, main_least);
    for (std::size_t i = 0; i < buttons.size(); ++i) {
        if (i > 0) line.cut_left(clear(buttons[i - 1], buttons[i]) ? far : gap);
        ui.press(line.cut_left(is_main(buttons[i]) ? main_width : widths[i]), buttons[i], on.actions);
    }
}

void press_keys(const Drawing& on, const FooterView& footer) {
    for (const ButtonView& button : footer.buttons) {
        const bool fires = (button.id == footer.main_id && on.ui.key_fires(KeyPress::main, button)) ||
                           (button.id == footer.back_id && on.ui.key_fires(KeyPress::back, button));
        if (!fires || !button.press) continue;
        on.actions.push_back(*button.press);
        return;
    }
}

constexpr double notice_mm = 24.2, notice_button_mm = 26, notice_narrow_mm = 130;

/// Between its edges and the words: sign, button and what lies between them.
float notice_around(const Ui& ui, float width) { return ui.px(width < ui.px(notice_narrow_mm) ? 8.8 + notice_button_mm + 8 : 8.8 + notice_button_mm + 15); }

/// Beside a wide pad there is no room for words and button next to each other.
bool notice_is_stacked(const Ui& ui, float width) { return width < ui.px(84); }

/// As high as its words in small letters want.
float notice_height(const Ui& ui, const std::string& notice, float width) {
    if (notice_is_stacked(ui, width)) return ui.height_of(notice, TextSize::small, false, width - ui.px(16.8)) + ui.px(27);
    return std::max(ui.px(notice_mm), ui.height_of(notice, TextSize::small, false, width - notice_around(ui, width)) + ui.px(4));
}

/// A plate over everything that is only looked at, with the one button that takes it away.
void draw_notice(const Drawing& on, const Box& box, const std::string& notice, Tone tone) {
    Ui& ui = on.ui;
    const Skin skin = ui.pale(tone);
    ui.list().AddRectFilled(box.min, box.max, colour(ui.palette().paper));
    const Box plate = box.inside(ui.px(1), ui.px(0.2));
    ui.plate(plate, skin, ui.px(0.8), ui.px(2));
    Box inner = plate.inside(ui.px(2.4), ui.px(0.5));
    // As high as a finger wants, and clear of what is to be touched below.
    const bool stacked = notice_is_stacked(ui, box.width());
    if (stacked) inner = {inner.min, {inner.max.x, inner.max.y - ui.px(1.6)}};
    Box button = stacked ? inner.cut_bottom(ui.px(20.1)) : inner.cut_right(ui.px(notice_button_mm));
    button.max.y = std::min(button.max.y, button.min.y + ui.px(20.1));
    if (!stacked) inner.cut_right(ui.px(3));
    const bool narrow = box.width() < ui.px(notice_narrow_mm);
    const Box sign = inner.cut_left(ui.px(narrow ? 6 : 12));
    draw_tone_sign(ui, sign.centre(), ui.px(narrow ? 5 : 8), tone);
    inner.cut_left(ui.px(narrow ? 1 : 2));
    Type type = ui.body(skin);
    type.down = Down::middle;
    ui.text(inner, notice, type);
    ButtonView read;
    read.id = "dismiss";
    read.label = "OK";
    read.press = Dismiss{};
    ui.press(button, read, on.actions);
}

struct Frame {
    Box header, ribbon, notice, body, keys, footer;
};

Frame frame_of(const Ui& ui, const ScreenView& view) {
    Frame frame;
    Box rest = ui.whole_screen();
    frame.header = rest.cut_top(header_height(ui));
    const bool tall = std::any_of(view.footer.buttons.begin(), view.footer.buttons.end(), [](const ButtonView& button) { return button.weight == Weight::main; });
    if (!view.footer.buttons.empty()) frame.footer = rest.cut_bottom(ui.px(tall ? 33.6 : 29));
    const auto* keypad = std::get_if<KeypadBody>(&view.body);
    if (keypad && keypad->below) {
        rest.cut_bottom(ui.px(1.5));
        frame.keys = rest.cut_bottom(letters_height(ui, *keypad)).inside(ui.px(2.4), 0);
    } else if (keypad) {
        // The keys stand beside the ribbon, not under it: four rows of them need the height.
        Box keys = rest.inside(ui.px(2.4), ui.px(1.4));
        const float rows = static_cast<float>(std::max<std::size_t>(1, (keypad->keys.size() + static_cast<std::size_t>(std::max(1, keypad->columns)) - 1) / static_cast<std::size_t>(std::max(1, keypad->columns))));
        frame.keys = keys.cut_right(keypad_width(ui, *keypad));
        frame.keys.max.y = std::min(frame.keys.max.y, frame.keys.min.y + rows * ui.px(32));
        rest.max.x = frame.keys.min.x;
    }
    // A notice leaves the pad where the hand expects it.
    if (const auto* route = std::get_if<RouteBody>(&view.body)) {
        frame.keys = rest.inside(ui.px(2.4), ui.px(1.4));
        frame.keys = frame.keys.cut_right(pad_width(ui, *route));
        rest.max.x = frame.keys.min.x;
    }
    if (view.ribbon) frame.ribbon = rest.cut_top(ribbon_height(ui, *view.ribbon));
    if (!view.notice.empty() && std::holds_alternative<RouteBody>(view.body)) {
        frame.notice = {ui.whole_screen().min, {rest.max.x, notice_height(ui, view.notice, rest.max.x)}};
        rest.cut_top(frame.notice.max.y - rest.min.y);
    } else if (!view.notice.empty()) {
        frame.notice = view.ribbon ? frame.ribbon : Box{ui.whole_screen().min, {rest.max.x, ui.px(24.2)}};
        if (!view.ribbon) rest.cut_top(frame.notice.max.y - rest.min.y);
    }
    frame.body = rest.inside(ui.px(2.4), 0);
    frame.body.min.y += ui.px(view.ribbon ? 0.8 : 1.6);
    frame.body.max.y -= ui.px(1.5);
    return frame;
}

}  // namespace

void draw_screen(Ui& ui, const ScreenView& view, const PictureHandle& picture, std::vector<Action>& actions) {
    if (ui.stands(view, picture)) return;
    const SameParts same = ui.put_together(view, picture);
    const Drawing on{ui, picture, actions};
    const Frame frame = frame_of(ui, view);
    const bool header_covered = !view.notice.empty() && !view.ribbon;
    if (!header_covered) ui.part(ScreenPart::header, frame.header, same.header, [&] { draw_header(ui, frame.header, view.header); });
    if (view.ribbon && view.notice.empty()) ui.part(ScreenPart::ribbon, frame.ribbon, same.ribbon, [&] { draw_ribbon(ui, frame.ribbon, *view.ribbon); });
    ui.part(ScreenPart::body, frame.body, same.body, [&] { std::visit([&](const auto& body) { draw_body(on, frame.body, body); }, view.body); });
    if (const auto* keypad = std::get_if<KeypadBody>(&view.body)) ui.part(ScreenPart::keys, frame.keys, same.keys, [&] { draw_keys(on, frame.keys, *keypad); });
    if (const auto* route = std::get_if<RouteBody>(&view.body)) ui.part(ScreenPart::keys, frame.keys, same.body, [&] { draw_pad(on, frame.keys, *route); });
    if (!view.footer.buttons.empty()) ui.part(ScreenPart::footer, frame.footer, same.footer, [&] { draw_footer(on, frame.footer, view.footer); });
    if (!view.notice.empty()) ui.part(ScreenPart::notice, frame.notice, same.notice, [&] { draw_notice(on, frame.notice, view.notice, view.good_news ? Tone::go : Tone::caution); });
    press_keys(on, view.footer);
}

}  // namespace tubewright
