#pragma once
// One draw function for each kind of body. They decide nothing: a view says what there is.
//
// What fits on the smallest screen (217 × 135 mm): 3 rows of a list, 3 ticks of two lines, 2 findings,
// 3 facts and 3 buttons of an overview, 4 marks to lay out, 4 rows of a table, 9 choices, 16 keys,
// 4 moves.

#include "ui/parts.h"
#include "ui/picture.h"

namespace tubewright {

void draw_body(const Drawing& on, const Box& box, const ListBody& body);
void draw_body(const Drawing& on, const Box& box, const OverviewBody& body);
void draw_body(const Drawing& on, const Box& box, const TicksBody& body);
void draw_body(const Drawing& on, const Box& box, const MarkOutBody& body);
void draw_body(const Drawing& on, const Box& box, const MoveBody& body);
void draw_body(const Drawing& on, const Box& box, const KeypadBody& body);
void draw_body(const Drawing& on, const Box& box, const ChoiceBody& body);
void draw_body(const Drawing& on, const Box& box, const TableBody& body);
void draw_body(const Drawing& on, const Box& box, const SettingsBody& body);
void draw_body(const Drawing& on, const Box& box, const OrderBody& body);
void draw_body(const Drawing& on, const Box& box, const TilesBody& body);
/// All but its pad.
void draw_body(const Drawing& on, const Box& box, const RouteBody& body);

/// The pad that a number of a route is given with: at the right of the screen, as a keypad.
float pad_width(const Ui& ui, const RouteBody& body);
void draw_pad(const Drawing& on, const Box& box, const RouteBody& body);
void draw_body(const Drawing& on, const Box& box, const CardBody& body);
void draw_body(const Drawing& on, const Box& box, const PieceBody& body);

/// How wide a keypad is: it stands at the right of the screen, as high as header and footer let it.
float keypad_width(const Ui& ui, const KeypadBody& body);
/// How high the keys are that lie under the entry.
float letters_height(const Ui& ui, const KeypadBody& body);
void draw_keys(const Drawing& on, const Box& box, const KeypadBody& body);

}  // namespace tubewright
