#include "ui/ui.h"

#include <algorithm>
#include <cmath>

namespace tubewright {

Rgb mixed(Rgb a, Rgb b, double share_of_b) {
    const auto part = [&](std::uint8_t one, std::uint8_t other) {
        return static_cast<std::uint8_t>(std::lround(one + (other - one) * share_of_b));
    };
    return {part(a.r, b.r), part(a.g, b.g), part(a.b, b.b)};
}

Ui::Ui(const Fonts& fonts, const Palette& palette, double px_per_mm) : fonts_(fonts), palette_(palette), px_per_mm_(px_per_mm) {}

void Ui::use(const Fonts& fonts) {
    fonts_ = fonts;
    memory_.forget();
    forget_parts();
}

void Ui::use(const Palette& palette) {
    if (palette_ != palette) forget_parts();
    palette_ = palette;
}

void Ui::use_scale(double px_per_mm) {
    if (px_per_mm_ == px_per_mm) return;
    px_per_mm_ = px_per_mm;
    memory_.forget();
    forget_parts();
}

void Ui::begin_frame(double seconds, const std::string& key) {
    seconds_ = seconds;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    const double grow = grow_for(display, px_per_mm_);
    if (grow != grow_ || memory_.is_full()) memory_.forget();
    if (grow != grow_ || display.x != display_.x || display.y != display_.y) forget_parts();
    display_ = display;
    grow_ = grow;
    // A finger that is still down belongs to the screen it came down on.
    if (key_ && *key_ != key) {
        active_.clear();
        key_since_ = seconds;
    }
    key_ = key;
}

/// A thing changes its looks, or does something, only while a finger is down or in the frame in which it lifts.
bool Ui::at_rest() const {
    const ImGuiIO& io = ImGui::GetIO();
    return active_.empty() && !pending_key_ && !io.MouseDown[0] && !io.MouseReleased[0];
}

bool Ui::stands(const ScreenView& view, const PictureHandle& picture) const {
    if (!parts_[0].drawn || !at_rest() || !(shown_.picture == picture) || !(shown_.view == view)) return false;
    return std::none_of(parts_.begin(), parts_.end(), [](const Kept& part) { return part.shown && part.in_hand; });
}

void Ui::forget_parts() {
    for (Kept& part : parts_) part.drawn = false;
}

SameParts Ui::put_together(const ScreenView& view, const PictureHandle& picture) {
    const SameParts same = take_in(shown_, view, picture);
    for (Kept& part : parts_) {
        part.drawn = part.drawn && part.shown;  // what was hidden may have changed meanwhile
        part.shown = false;
    }
    joined_.reset();
    owner_.clear();
    painting_.start();
    part(ScreenPart::ground, whole_screen(), true, [&] { list().AddRectFilled({0, 0}, display_, colour(palette_.paper)); });
    return same;
}

/// In this frame, or in the one in which it was drawn: then it has to be drawn without.
bool Ui::finger_on(const Kept& part) const {
    if (part.in_hand) return true;
    const ImGuiIO& io = ImGui::GetIO();
    return std::any_of(part.noted.touchables.begin(), part.noted.touchables.end(), [&](const Touchable& thing) {
        return thing.id == active_ || (io.MouseClicked[0] && thing.hit().holds(io.MousePos));
    });
}

bool Ui::keeps(ScreenPart which, const Box& box, bool same) {
    drawing_ = &parts_[static_cast<std::size_t>(which)];
    drawing_->shown = true;
    const auto equal = [](ImVec2 a, ImVec2 b) { return a.x == b.x && a.y == b.y; };
    return same && drawing_->drawn && equal(box.min, drawing_->box.min) && equal(box.max, drawing_->box.max) && !finger_on(*drawing_);
}

void Ui::start_part(const Box& box) {
    drawing_->drawn = true;
    drawing_->in_hand = false;
    drawing_->box = box;
    Noted& noted = drawing_->noted;
    noted.touchables.clear();
    noted.texts.clear();
    noted.picture.reset();
    noted.ruler.reset();
    drawing_->triangles.start();
}

const Ui::Noted& Ui::joined() const {
    if (joined_) return *joined_;
    joined_.emplace();
    for (const Kept& part : parts_) {
        if (!part.shown) continue;
        joined_->touchables.insert(joined_->touchables.end(), part.noted.touchables.begin(), part.noted.touchables.end());
        joined_->texts.insert(joined_->texts.end(), part.noted.texts.begin(), part.noted.texts.end());
    }
    return *joined_;
}

std::optional<Box> Ui::noted(std::optional<Box> Noted::*what) const {
    for (const Kept& part : parts_)
        if (part.shown && part.noted.*what) return part.noted.*what;
    return std::nullopt;
}

void Ui::end_frame() {
    painting_.finish();
    pending_key_.reset();
    if (!ImGui::GetIO().MouseDown[0]) active_.clear();
}

bool Ui::wants_frames() const { return !active_.empty(); }

Skin Ui::pale(Tone tone) const {
    const Palette& p = palette_;
    switch (tone) {
        case Tone::go: return {p.go_pale, p.go, p.ink, p.ink};
        case Tone::now: return {p.now_pale, p.now, p.ink, p.ink};
        case Tone::caution: return {p.caution_pale, p.caution, p.ink, p.ink};
        case Tone::stop: return {p.stop_pale, p.stop, p.ink, p.ink};
        case Tone::plain: break;
    }
    return panel();
}

Skin Ui::strong(Tone tone) const {
    const Palette& p = palette_;
    switch (tone) {
        case Tone::go: return {p.go, p.go, p.on_go, p.on_go};
        case Tone::now: return {p.now, p.now, p.on_now, p.on_now};
        case Tone::caution: return {p.caution, p.caution, p.on_caution, p.on_caution};
        case Tone::stop: return {p.stop, p.stop, p.on_stop, p.on_stop};
        case Tone::plain: break;
    }
    return {p.ink, p.ink, p.panel, p.panel};
}

void Ui::plate(const Box& box, const Skin& skin, float border, float radius) {
    if (border > 0) list().AddRectFilled(box.min, box.max, colour(skin.border), radius);
    const Box face = box.inside(std::max(0.0f, border));
    list().AddRectFilled(face.min, face.max, colour(skin.fill), std::max(0.0f, radius - border));
}

void Ui::plate_edge(const Box& box, ImU32 ink, float border, float radius) {
    const Box line = box.inside(border / 2);
    list().AddRect(line.min, line.max, ink, std::max(0.0f, radius - border / 2), 0, border);
}

Touch Ui::touch(const Box& box, const ButtonView& button, float reach) {
    drawing_->noted.touchables.push_back({button.id, button.label, box.min, box.max, button.enabled, button.why_not, true, button.weight, button.held, reach});
    const ImGuiIO& io = ImGui::GetIO();
    const bool on_it = drawing_->noted.touchables.back().hit().holds(io.MousePos);
    if (io.MouseClicked[0] && on_it && active_.empty() && button.enabled && !guarded()) {
        active_ = button.id;
        active_since_ = seconds_;
    }
    if (active_ != button.id || !button.enabled) return {};

    drawing_->in_hand = true;
    Touch touch;
    touch.down = on_it;
    if (io.MouseDown[0] && !on_it) active_.clear();  // slid off: nothing happens, and nothing comes back
    if (button.held) {
        touch.held = on_it ? static_cast<float>(std::min(1.0, (seconds_ - active_since_) / hold_time)) : 0;
        touch.fired = on_it && io.MouseDown[0] && touch.held >= 1;
    } else {
        touch.fired = on_it && io.MouseReleased[0];
    }
    if (touch.fired) active_.clear();
    return touch;
}

Drag Ui::drag(const Box& box, const ButtonView& button) {
    drawing_->noted.touchables.push_back({button.id, button.label, box.min, box.max, button.enabled, button.why_not, true, button.weight, false});
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseClicked[0] && box.holds(io.MousePos) && active_.empty() && button.enabled && !guarded()) {
        active_ = button.id;
        active_from_ = io.MousePos;
        carried_ = false;
    }
    if (active_ != button.id || !button.enabled) return {};

    drawing_->in_hand = true;
    Drag drag;
    drag.down = true;
    drag.at = io.MousePos;
    drag.by = {io.MousePos.x - active_from_.x, io.MousePos.y - active_from_.y};
    carried_ = carried_ || std::hypot(drag.by.x, drag.by.y) > true_px(carried_from_mm);
    drag.moving = carried_;
    if (carried_) drag.step = io.MouseDelta;
    drag.dropped = carried_ && io.MouseReleased[0];
    drag.tapped = !carried_ && io.MouseReleased[0];
    if (io.MouseReleased[0]) active_.clear();
    return drag;
}

bool Ui::key_fires(KeyPress key, const ButtonView& button) {
    // What has to be held, or spoils something, is never done by a foot.
    return pending_key_ == key && !guarded() && button.enabled && !button.held && button.weight != Weight::warn;
}

void Ui::press(const Box& box, const ButtonView& button, std::vector<Action>& actions, TextSize largest) {
    if (big_button(box, button, largest) && button.press) actions.push_back(*button.press);
}

}  // namespace tubewright
