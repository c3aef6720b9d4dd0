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
    shown_.reset();
}

void Ui::use(const Palette& palette) {
    if (palette_ != palette) shown_.reset();
    palette_ = palette;
}

void Ui::use_scale(double px_per_mm) {
    if (px_per_mm_ == px_per_mm) return;
    px_per_mm_ = px_per_mm;
    memory_.forget();
    shown_.reset();
}

void Ui::begin_frame(double seconds, const std::string& key) {
    seconds_ = seconds;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    const double grow = grow_for(display, px_per_mm_);
    if (grow != grow_ || memory_.is_full()) memory_.forget();
    if (grow != grow_ || display.x != display_.x || display.y != display_.y) shown_.reset();
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
    return shown_ && at_rest() && shown_->picture == picture && shown_->view == view;
}

void Ui::draw_anew(const ScreenView& view, const PictureHandle& picture) {
    if (at_rest()) {
        if (!shown_) shown_.emplace();
        shown_->view = view;
        shown_->picture = picture;
    } else {
        shown_.reset();
    }
    touchables_.clear();
    texts_.clear();
    picture_.reset();
    ruler_.reset();
    owner_.clear();
    triangles_.start();
    list().AddRectFilled({0, 0}, display_, colour(palette_.paper));
}

void Ui::end_frame() {
    triangles_.finish();
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
    touchables_.push_back({button.id, button.label, box.min, box.max, button.enabled, button.why_not, true, button.weight, button.held});
    const ImGuiIO& io = ImGui::GetIO();
    const Box hit{box.min, {box.max.x, box.max.y + reach}};
    const bool on_it = hit.holds(io.MousePos);
    if (io.MouseClicked[0] && on_it && active_.empty() && button.enabled && !guarded()) {
        active_ = button.id;
        active_since_ = seconds_;
    }
    if (active_ != button.id || !button.enabled) return {};

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
    touchables_.push_back({button.id, button.label, box.min, box.max, button.enabled, button.why_not, true, button.weight, false});
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseClicked[0] && box.holds(io.MousePos) && active_.empty() && button.enabled && !guarded()) {
        active_ = button.id;
        active_from_ = io.MousePos;
        carried_ = false;
    }
    if (active_ != button.id || !button.enabled) return {};

    Drag drag;
    drag.at = io.MousePos;
    drag.by = {io.MousePos.x - active_from_.x, io.MousePos.y - active_from_.y};
    carried_ = carried_ || std::hypot(drag.by.x, drag.by.y) > true_px(carried_from_mm);
    drag.moving = carried_;
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
