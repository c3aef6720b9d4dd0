#pragma once
// Inside present: what the screens of a line being entered share.

#include "present/pieces.h"

namespace tubewright {

std::string cell_name(const Cell& cell, RouteForm form);     ///< "leg 2", "bend 2", "turn 2", "move 3"
/// What was entered there, exactly; empty where nothing was yet.
std::string cell_value(const DraftLine& line, const Cell& cell, Unit unit);
std::string way_word(MoveWay way);
/// "Outside edge, laid flat".
std::string form_word(const MeasuredRoute& route);
std::string ask_word(Ask ask);                               ///< the question: "Which tube?"
/// The keys that a length is typed with.
void fill_length_keys(RouteBody& body, Unit unit);
HeaderView entry_header(const State& state, const std::string& place);
/// A text that a person typed, short enough for a tile.
std::string shortened(const std::string& text);
/// The number in hand of the route: where it goes on.
Cell route_cell(const Entry& entry);
/// What speaks against the line as it is entered, the worst first: one sentence, how many more there are, and
/// what one touch does about it, where something does.
struct EnteredFinding {
    std::vector<TextView> lines;  ///< none or one
    std::optional<ButtonView> remedy;
};
EnteredFinding entered_finding(const State& state);
/// Back and Undo, and Redo where something was undone; the caller adds to them.
FooterView entry_footer(const State& state);

}  // namespace tubewright
