#pragma once
// The widget kit: everything that is drawn and touched goes through it. Sizes in millimetres, ids
// from records, and a note of each thing drawn, for tests and for the touch map.

#include <imgui.h>

#include <array>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "present/views.h"
#include "ui/box.h"
#include "ui/fonts.h"
#include "ui/palette.h"
#include "ui/picture_handle.h"
#include "ui/shown.h"
#include "ui/text_memory.h"
#include "ui/triangles.h"

namespace tubewright {

/// Something a finger can press, as it was drawn in this frame; pixels.
struct Touchable {
    std::string id, label;
    ImVec2 min, max;
    bool enabled = true;
    std::string why_not;
    bool label_fits = true;
    Weight weight = Weight::plain;
    bool held = false;
    float reach = 0;       ///< how far below it still counts
    Box box() const { return {min, max}; }
    Box hit() const { return {min, {max.x, max.y + reach}}; }
};

/// One line of text, as it was drawn in this frame.
struct TextDrawn {
    std::string text;
    Box box;              ///< from the top of its capitals to a little under the baseline
    bool whole = true;    ///< nothing cut off, no word broken, no smaller than its kind may be
    bool known = true;    ///< the font has every character
    double cap_mm = 0;
    Rgb ink, ground;
    double least_contrast = text_contrast;
    std::string owner;    ///< id of the button it is on; empty: none
};

enum class TextSize { small, body, hero };
enum class Across { left, middle, right };
enum class Down { top, middle, bottom };

/// How a text is set. A body text that doesn't fit becomes small, a hero takes the largest height
/// that fits, and breaks where even its least one is too wide.
struct Type {
    TextSize size = TextSize::body;
    bool bold = false;
    Rgb ink, ground;
    Across across = Across::left;
    Down down = Down::top;
    bool wrap = true;
    bool shrink = true;
    float pitch = 1.55f;   ///< from line to line, as a share of a capital's height
    bool off = false;      ///< of a thing that can't be used now; may be paler
};

/// What the finger does to a thing in this frame.
struct Touch {
    bool fired = false;    ///< do it now
    bool down = false;     ///< a finger is on it
    float held = 0;        ///< 0 to 1, how long of what it takes; for `held` things
};

/// The same with a thing that can be carried. A finger that rolls a little on it still taps.
struct Drag {
    bool tapped = false, dropped = false;  ///< do it now
    bool down = false;                     ///< a finger is on it
    bool moving = false;                   ///< it follows the finger; also in the frame in which it is dropped
    ImVec2 by{0, 0}, at{0, 0};             ///< how far it was carried; where the finger is
    ImVec2 step{0, 0};                     ///< of that in this frame
};

/// Colours of a surface and of what is written on it.
struct Skin {
    Rgb fill, border, ink, soft;
};

/// The parts of a screen, in the order in which they are painted.
enum class ScreenPart { ground, header, ribbon, body, keys, footer, notice };
inline constexpr std::size_t part_count = 7;

/// A key or a foot switch. `main` is Space and Page Down, `back` Page Up.
enum class KeyPress { main, back };

class Ui {
public:
    Ui(const Fonts& fonts, const Palette& palette, double px_per_mm);

    void use(const Fonts& fonts);
    void use(const Palette& palette);
    void use_scale(double px_per_mm);

    /// After ImGui::NewFrame(). `seconds` only ever grows; `key` is the view's: once it changes,
    /// touches and keys are ignored for 0.3 s.
    void begin_frame(double seconds, const std::string& key);
    void end_frame();
    /// What was drawn last is this view with this picture, and no finger or key does anything to it in
    /// this frame: its triangles, touchables and texts stand as they are.
    bool stands(const ScreenView& view, const PictureHandle& picture) const;
    /// Otherwise: begins to put the screen together, and says which parts look as they did. Each part that
    /// there is has to follow, in order.
    SameParts put_together(const ScreenView& view, const PictureHandle& picture);
    /// Draws a part; or, where what it is drawn from and its box are the same and no finger is at work on it,
    /// lets it stand as it was drawn last.
    template <class Draw>
    void part(ScreenPart which, const Box& box, bool same, const Draw& draw) {
        if (!keeps(which, box, same)) {
            start_part(box);
            draw();
            drawing_->triangles.finish();
        }
        painting_.add(drawing_->triangles);
    }
    /// The frame's triangles, after end_frame(); good until the next frame.
    ImDrawData* draw_data() { return painting_.data(); }
    /// Between two frames, at most once for each time it goes down. It is used up by the next frame.
    void press_key(KeyPress key) { pending_key_ = key; }
    /// More frames are wanted though nobody touches anything: something fills or waits.
    bool wants_frames() const;

    const std::vector<Touchable>& touchables() const { return joined().touchables; }
    const std::vector<TextDrawn>& texts() const { return joined().texts; }
    /// Where a picture in space was wanted in the last frame: draw it this large for the next.
    std::optional<Box> picture_rect() const { return noted(&Noted::picture); }
    void want_picture(const Box& box) { drawing_->noted.picture = box; }

    /// Where the 50 mm bar was drawn in the last frame.
    std::optional<Box> ruler_rect() const { return noted(&Noted::ruler); }
    void note_ruler(const Box& bar) { drawing_->noted.ruler = bar; }

    // --- sizes
    float px(double mm) const { return static_cast<float>(mm * px_per_mm_ * grow_); }    ///< of the layout
    float true_px(double mm) const { return static_cast<float>(mm * px_per_mm_); }       ///< as a rule measures
    double px_per_mm() const { return px_per_mm_; }
    double grow() const { return grow_; }
    Box whole_screen() const { return {{0, 0}, display_}; }

    // --- colours
    const Palette& palette() const { return palette_; }
    Skin paper() const { return {palette_.paper, palette_.edge, palette_.ink, palette_.ink_soft}; }
    Skin panel() const { return {palette_.panel, palette_.edge, palette_.ink, palette_.ink_soft}; }
    Skin pale(Tone tone) const;     ///< to write on
    Skin strong(Tone tone) const;   ///< to fill with
    Type small(const Skin& on, bool bold = false) const { return {TextSize::small, bold, on.ink, on.fill}; }
    Type body(const Skin& on, bool bold = false) const { return {TextSize::body, bold, on.ink, on.fill}; }
    Type hero(const Skin& on) const { return {TextSize::hero, true, on.ink, on.fill}; }

    // --- drawing
    ImDrawList& list() const { return drawing_->triangles.list(); }
    void plate(const Box& box, const Skin& skin, float border, float radius);
    /// A border that lies wholly inside the box.
    void plate_edge(const Box& box, ImU32 ink, float border, float radius);
    /// Draws the text inside the box and returns how much height it took.
    float text(const Box& box, const std::string& text, const Type& type);
    /// The same, and cuts that height (and `after` below it) off the top of the box.
    void text_off_top(Box& box, const std::string& text, const Type& type, float after = 0);
    float line_height(TextSize size) const;
    float width_of(const std::string& text, TextSize size, bool bold) const;
    /// Width it needs in two lines.
    float halved_width_of(const std::string& text, TextSize size, bool bold) const;
    float widest_word(const std::string& text, TextSize size, bool bold) const;
    /// Height the text takes at this size in this width.
    float height_of(const std::string& text, TextSize size, bool bold, float width) const;
    /// The same for a hero whose capitals are that many mm high; nothing where a word is too wide.
    std::optional<float> hero_height(const std::string& text, float width, double cap_mm) const;
    float hero_width(const std::string& text, double cap_mm) const;

    // --- touching
    /// Notes the thing, and says what the finger does to it. `reach` is how far below it still counts.
    Touch touch(const Box& box, const ButtonView& button, float reach);
    /// The same with a thing that can be carried.
    Drag drag(const Box& box, const ButtonView& button);
    void label_did_not_fit() { drawing_->noted.touchables.back().label_fits = false; }
    /// A button with its label, and if it doesn't work the reason inside it. True: it fired.
    bool big_button(const Box& box, const ButtonView& button, TextSize largest = TextSize::body);
    /// The same without its words: `inner` is where they go, in this skin. The caller wraps them in begin_label().
    bool bare_button(const Box& box, const ButtonView& button, Box& inner, Skin& skin);
    /// A button with its words that gives back its action.
    void press(const Box& box, const ButtonView& button, std::vector<Action>& actions, TextSize largest = TextSize::body);
    /// The size its label would have there: for buttons side by side that are to have one size.
    TextSize label_size(const Box& box, const ButtonView& button) const;
    /// The button that a key or foot switch stands for fires, if it can be used.
    bool key_fires(KeyPress key, const ButtonView& button);
    /// Texts drawn from here on belong to the thing noted last; they may lie on it.
    void begin_label() { begin_label(drawing_->noted.touchables.back().id); }
    void begin_label(const std::string& owner) {
        owner_ = owner;
        label_from_ = drawing_->noted.texts.size();
    }
    void end_label() { owner_.clear(); }
    /// The same, where the thing was noted last and one of its texts may not have fitted.
    void end_fitted_label();

private:
    const ImFont& font(TextSize size, bool bold) const;
    float font_px(double cap_mm) const { return px(cap_mm / cap_share); }
    const TextMeasure& fitted(const Box& box, const std::string& text, const Type& type) const;
    TextMeasure measured(const Box& box, const std::string& text, const Type& type) const;
    TextMeasure measured_hero(const Box& box, const std::string& text, Type type) const;
    TextMeasure at_size(const std::string& text, const ImFont& with, float size, const Box& box, const Type& type) const;
    void draw_line(const ImFont& with, float size, ImVec2 at, const TextLine& line, bool whole, const Type& type);
    bool at_rest() const;
    bool keeps(ScreenPart which, const Box& box, bool same);
    void start_part(const Box& box);
    void forget_parts();
    bool guarded() const { return seconds_ - key_since_ < touch_guard; }

    static constexpr double touch_guard = 0.3;
    static constexpr double hold_time = 0.8;
    static constexpr double carried_from_mm = 4;

    Fonts fonts_;
    Palette palette_;
    double px_per_mm_, grow_ = 1;
    ImVec2 display_{0, 0};
    double seconds_ = 0, key_since_ = -1000;
    std::optional<std::string> key_;
    std::string active_, owner_;
    std::size_t label_from_ = 0;   ///< of the texts
    double active_since_ = 0;
    ImVec2 active_from_{0, 0};
    bool carried_ = false;
    std::optional<KeyPress> pending_key_;
    /// What lies on a part of the screen.
    struct Noted {
        std::vector<Touchable> touchables;
        std::vector<TextDrawn> texts;
        std::optional<Box> picture, ruler;
    };
    struct Kept {
        bool drawn = false;     ///< good for another frame
        bool shown = false;     ///< in the frame that was put together last
        bool in_hand = false;   ///< drawn with a finger at work on it
        Box box;
        Triangles triangles;
        Noted noted;
    };
    const Noted& joined() const;
    std::optional<Box> noted(std::optional<Box> Noted::*what) const;
    bool finger_on(const Kept& part) const;

    std::array<Kept, part_count> parts_;
    Kept* drawing_ = nullptr;
    Painting<part_count> painting_;
    Shown shown_;                       ///< what the parts are of
    mutable std::optional<Noted> joined_;
    mutable TextMemory memory_;
};

constexpr ImU32 colour(Rgb rgb, double opacity = 1) { return IM_COL32(rgb.r, rgb.g, rgb.b, static_cast<int>(255 * opacity + 0.5)); }
Rgb mixed(Rgb a, Rgb b, double share_of_b);

}  // namespace tubewright
