#pragma once
// Parts that several screens share.

#include <vector>

#include "ui/ui.h"

namespace tubewright {

using Actions = std::vector<Action>;

/// What the drawing of a body has at hand.
struct PictureHandle;
struct Drawing {
    Ui& ui;
    const PictureHandle& picture;
    Actions& actions;
};

/// The two arrows, one above the other, with the page between them.
void draw_pager(const Drawing& on, const Box& box, const PagerView& pager);
float pager_width(const Ui& ui);
/// The same, where one is needed, cut off the right of the box.
void pager_off_right(const Drawing& on, Box& box, const PagerView& pager);

/// Lines of text one under the other, each with the sign of its tone; cuts them off the top.
void draw_lines(Ui& ui, Box& box, const std::vector<TextView>& lines, const Skin& skin);
/// The same, each on a plate of its own that fills its share of the box.
void draw_plates(Ui& ui, const Box& box, const std::vector<TextView>& lines, TextSize largest = TextSize::body);
/// The height they take in this width.
float plates_height(const Ui& ui, const std::vector<TextView>& lines, float width, TextSize size = TextSize::small);

/// What speaks against a line, and under it the one touch that mends it. Cut off the bottom of the box; the words
/// take at most that share of it.
void finding_off_bottom(const Drawing& on, Box& box, const std::vector<TextView>& lines, const std::optional<ButtonView>& remedy, float most_share);

/// The moves of a bend in a row, if there are any; cut off the top of the box, with `after` below them.
void moves_off_top(Ui& ui, Box& box, const std::vector<MoveChip>& moves, float after);

/// Buttons in a row or grid that fills the box; one that warns stands at least 25 mm from the main one.
void draw_grid(const Drawing& on, const Box& box, const std::vector<ButtonView>& buttons, int columns, float gap);

/// A thing to touch with the name of what it holds over its value, or a drawing.
void draw_tile(const Drawing& on, const Box& box, const TileView& tile);

}  // namespace tubewright
