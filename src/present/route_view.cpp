// The numbers of a wire as they are entered: one in hand, those around it, and what its number is given with.

#include <algorithm>
#include <cmath>

#include "present/entry_pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

using What = Cell::What;

bool is_angle(const Cell& cell) { return cell.what == What::angle || cell.what == What::turn; }

/// Whether there are keys for the number in hand, rather than choices.
bool has_keys(const State& state) { return !is_angle(state.entry->page.cell) || state.looks.keypad; }

std::vector<ButtonView> keys_of(const std::vector<std::string>& names) {
    std::vector<ButtonView> keys;
    for (const std::string& name : names) keys.push_back(press_button("key-" + name, name, Key{name}));
    return keys;
}

void fill_number_keys(const State& state, RouteBody& body) {
    const Cell& cell = state.entry->page.cell;
    const bool inch = state.entry->page.job.unit == Unit::inch && !is_angle(cell) && cell.what != What::pieces;
    if (!inch) {
        body.columns = 3;
        body.keys = keys_of({"7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0"});
        if (is_angle(cell)) body.keys.push_back(press_button("key-1/2", "1/2", Key{"1/2"}));
        else if (axis_of(cell)) body.keys.push_back(press_button("key-sign", "+ / −", Key{"sign"}));
        else body.keys.push_back(press_button("key-clear", "clear", Key{"clear"}));
        return;
    }
    if (cell.what == What::move) {
        body.columns = 4;
        body.keys = keys_of({"7", "8", "9", "1/4", "4", "5", "6", "1/2", "1", "2", "3", "3/4", ".", "0", "+1/8", "+1/16"});
        return;
    }
    fill_length_keys(body, Unit::inch);
    if (axis_of(cell)) body.keys[17] = press_button("key-sign", "+ / −", Key{"sign"});
}

/// A side of the clock, clockwise from the top, where the leg before lies, as seen from end A looking along the leg.
std::string side_words(Angle clockwise) {
    const Angle turn = wrapped(clockwise);
    if (turn == Angle{0}) return "same way";
    if (turn == Angle{180}) return "other way";
    return turn.deg < 0 ? exact(-turn) + " left" : exact(turn) + " right";
}

/// The entry as it reads now: with its unit where it is a number.
std::string typed_words(const State& state) {
    const Cell& cell = state.entry->page.cell;
    if (cell.what == What::turn && !state.looks.keypad) return side_words(Angle{typed_number(state.looks.typed).value_or(0)});
    if (is_angle(cell)) return state.looks.typed + "°";
    if (cell.what == What::pieces) return state.looks.typed + (state.looks.typed == "1" ? " piece" : " pieces");
    return state.looks.typed + (state.entry->page.job.unit == Unit::inch ? "\"" : " mm");
}

void fill_angle_buttons(const State& state, RouteBody& body) {
    const MeasuredRoute& route = state.entry->line().route;
    const Cell& cell = state.entry->page.cell;
    body.columns = 2;
    for (const double deg : {15.0, 22.5, 30.0, 45.0, 60.0, 90.0, 135.0}) {
        ButtonView button = press_button("angle-" + exact(Angle{deg}), text(Angle{deg}, {state.entry->page.job.unit, 16}), GiveAngle{{deg}});
        button.chosen = has_value(route, cell) && route.bends[cell.index].angle == Angle{deg};
        body.keys.push_back(std::move(button));
    }
    body.keys.push_back(press_button("other", "other", Key{"keypad"}));
}

void fill_turn_buttons(const State& state, RouteBody& body) {
    const MeasuredRoute& route = state.entry->line().route;
    const Cell& cell = state.entry->page.cell;
    const bool flat = state.entry->page.flat;
    body.clock = !flat;
    body.columns = 1;
    const std::optional<Angle> taken = has_value(route, cell) ? std::optional(wrapped(*route.bends[cell.index].rotation)) : std::nullopt;
    for (int deg = 0; deg < 360; deg += 30) {
        if (flat && deg != 0 && deg != 180) continue;
        const Angle side{static_cast<double>(deg)};
        ButtonView button = press_button("turn-" + std::to_string(deg), flat ? (deg == 0 ? "Same way round" : "Other way") : side_words(side), GiveAngle{wrapped(side)});
        button.chosen = taken == wrapped(side);
        body.keys.push_back(std::move(button));
    }
    if (!flat) {
        const auto shown = typed_number(state.looks.typed);
        body.leads = shown ? std::optional(Angle{*shown}) : taken;
        body.dial = press_button("dial", "", TurnTo{{0}});
    }
    if (flat) body.keys.push_back(press_button("other", "not flat here", Key{"keypad"}));
}

void fill_ways(const State& state, RouteBody& body) {
    const bool typed = typed_run(state).has_value();
    for (const MoveWay way : {MoveWay::up, MoveWay::forward, MoveWay::left, MoveWay::right, MoveWay::down, MoveWay::back})
        body.ways.push_back(unless(press_button("way-" + way_word(way), way_word(way), GiveWay{way}), typed ? "" : "how far?"));
}

std::string corner(std::size_t bend, std::size_t bends_known, bool closed) {
    if (bend < bends_known) return "bend " + std::to_string(bend + 1);
    return closed ? "end B" : "bend " + std::to_string(bend + 1) + " or end B";
}

std::string run_question(const State& state) {
    const DraftLine& line = state.entry->line();
    const MeasuredRoute& route = line.route;
    const std::size_t i = state.entry->page.cell.index;
    const std::string from = i == 0 ? "end A" : "bend " + std::to_string(i);
    std::string asks = capital(cell_name({What::run, i}, route.form)) + ": " + from + " to " + corner(i, route.bends.size(), !line.unfinished);
    if (route.form == RouteForm::straights) return asks + ", only what is straight";
    return asks + (route.measured_to == TapeEdge::outside ? ", tape on the outside" : route.measured_to == TapeEdge::inside ? ", tape on the inside" : ", along the centre");
}

std::string question(const State& state) {
    const Cell& cell = state.entry->page.cell;
    const std::string number = std::to_string(cell.index + 1);
    switch (cell.what) {
        case What::run: return run_question(state);
        case What::angle: return "Bend " + number + ": how far does the tube leave its line?";
        case What::turn:
            if (state.looks.keypad) return "Turn " + number + ": how far round clockwise, seen from end A?";
            if (state.entry->page.flat) return "Bend " + number + ": which way round, against bend " + std::to_string(cell.index) + "?";
            return "Look from end A along leg " + number + ", leg " + std::to_string(cell.index) + " at the top: where does leg " + std::to_string(cell.index + 2) + " go?";
        case What::move: return "Move " + number + ": how far, and which way?";
        case What::x:
        case What::y:
        case What::z: {
            const std::size_t points = state.entry->line().route.points.size();
            const bool last = cell.index + 1 >= points, end = cell.index + 1 == points && !state.entry->line().unfinished;
            const std::string which = cell.index == 0 ? "End A" : "Point " + std::to_string(cell.index) + (end ? ", end B" : last ? ", a corner or end B" : ", a corner");
            return which + ": its " + (cell.what == What::x ? "x" : cell.what == What::y ? "y" : "z") + ", on the tube's centre line";
        }
        case What::trim_a: return "Extra at end A, to be cut off after fitting up";
        case What::trim_b: return "Extra at end B, to be cut off after fitting up";
        case What::pieces: return "How many pieces of " + shortened(state.entry->line().name) + "?";
        case What::od: return "Your own tube: how thick across the outside?";
        case What::wall: return "Your own tube: how thick is its wall?";
    }
    return "";
}

/// How many numbers stand beside the pad.
std::size_t cells_beside(const RouteBody& body) {
    if (!body.ways.empty() || body.remedy) return 1;
    return body.columns == 5 || body.clock ? 2 : 3;
}

/// All cells; of a point that is not whole yet also those that are typed already.
std::vector<Cell> cells_beside_hand(const MeasuredRoute& route, const Cell& now) {
    std::vector<Cell> cells = cells_of(route);
    if (axis_of(now) && now.index == route.points.size() && now.what != What::x) {
        cells.push_back({What::y, now.index});
        if (now.what == What::z) cells.push_back(now);
    }
    return cells;
}

/// What stands in a cell: of a point that is not whole yet what was typed of it.
std::string value_beside(const State& state, const Cell& cell) {
    const Entry& entry = *state.entry;
    const auto axis = axis_of(cell);
    if (axis && cell.index == entry.line().route.points.size()) {
        if (*axis >= entry.page.point.size()) return "";
        const std::string said = exact(entry.page.point[*axis], entry.page.job.unit);
        return entry.page.job.unit == Unit::mm ? said.substr(0, said.find(' ')) : said;
    }
    return cell_value(entry.line(), cell, entry.page.job.unit);
}

std::string way_typed(const State& state) { return state.looks.typed.empty() ? "?" : typed_words(state); }

void fill_cells(const State& state, RouteBody& body) {
    const DraftLine& line = state.entry->line();
    const Cell& now = state.entry->page.cell;
    if (stands_alone(now)) {
        if (!state.looks.typed.empty()) {
            body.cells.push_back({press_button("typed", typed_words(state), PickCell{now}), cell_name(now, line.route.form)});
            body.cells.back().touch.chosen = true;
        }
        return;
    }
    const std::vector<Cell> cells = cells_beside_hand(line.route, now);
    const std::size_t hand = static_cast<std::size_t>(std::find(cells.begin(), cells.end(), now) - cells.begin());
    const std::size_t room = cells_beside(body), end = std::min(cells.size(), hand + (hand + 1 < cells.size() && room > 1 ? 2 : 1)), begin = end > room ? end - room : 0;
    for (std::size_t i = begin; i < end && i < cells.size(); ++i) {
        TileView tile{press_button("cell-" + std::to_string(i + 1), value_beside(state, cells[i]), PickCell{cells[i]}), cell_name(cells[i], line.route.form)};
        tile.touch.chosen = i == hand;
        if (i == hand && !state.looks.typed.empty()) tile.touch.label = way_typed(state);
        if (tile.touch.label.empty()) tile.touch.label = "?";
        body.cells.push_back(std::move(tile));
    }
    if (begin > 0) body.earlier = press_button("cells-before", "before", PickCell{cells[hand == begin ? hand - 1 : begin - 1]});
    if (end < cells.size() && has_value(line.route, cells[end])) body.later = press_button("cells-after", "after", PickCell{cells[end]});
}

/// Why what is typed can't be taken.
std::string typed_trouble(const State& state) {
    const Entry& entry = *state.entry;
    const Cell& cell = entry.page.cell;
    const MeasuredRoute& route = entry.line().route;
    if (axis_of(cell)) {
        const auto place = typed_run(state);
        if (!place) return state.looks.typed.empty() ? "nothing typed yet" : "no number yet";
        if (takes_coordinate(route, entry.page.point, cell, *place)) return "";
        return std::abs(place->mm) > 100000 ? "too far away" : "the next corner is there already";
    }
    const auto number = typed_number(state.looks.typed);
    if (!number) return state.looks.typed.empty() ? "nothing typed yet" : "no number yet";
    if (cell.what == What::pieces) return typed_pieces(state) ? "" : "a whole number, 1 to " + std::to_string(most_pieces);
    if (is_angle(cell)) return takes(route, cell, Angle{*number}) ? "" : *number > 0 ? "no bend has so much" : "a bend has more than 0°";
    const auto length = typed_run(state);
    if (cell.what == What::od) return length && takes_diameter(*length) ? "" : *number > 0 ? "tube is 0.5 to 100 mm thick" : "it has to be more than 0";
    if (cell.what == What::wall) {
        const auto& tube = entry.line().tube ? entry.line().tube : entry.page.job.tube;
        return length && tube && takes_wall(tube->tube.od, *length) ? "" : *number > 0 ? "less than half the diameter, at least 0.05 mm" : "it has to be more than 0";
    }
    if (trimmed_end(cell)) return length && *length <= longest_trim ? "" : "too long";
    return length && takes(route, cell, *length) ? "" : *number > 0 ? "too long" : "it has to be more than 0";
}

ButtonView finish_button(const State& state) {
    const Entry& entry = *state.entry;
    const std::string why_not = can_finish(state) ? "" : is_angle(entry.page.cell) ? "choose above" : "type the number";
    return unless(press_button("next", "That is end B: finished", FinishLine{}), why_not);
}

ButtonView main_button(const State& state) {
    const Entry& entry = *state.entry;
    const Cell& cell = entry.page.cell;
    if (cell.what == What::move) {
        if (!state.looks.typed.empty()) return unless(press_button("next", way_typed(state), Next{}), "which way?");
        if (has_value(entry.line().route, cell)) return press_button("next", "Next move", Next{});
        return finish_button(state);
    }
    if (state.looks.typed.empty() && !stands_alone(cell)) return finish_button(state);
    return unless(press_button("next", "Take " + typed_words(state), Next{}), typed_trouble(state));
}

/// What else can be done with the number in hand.
std::optional<ButtonView> more_of(const State& state) {
    const Entry& entry = *state.entry;
    const Cell& cell = entry.page.cell;
    const MeasuredRoute& route = entry.line().route;
    if (cell.what == What::turn && !state.looks.keypad && !entry.page.flat) return press_button("other", "Another turn", Key{"keypad"});
    if (!has_value(route, cell)) return std::nullopt;
    if (cell.what == What::move && state.looks.typed.empty() && route.moves.size() > 1) return press_button("move-out", "Take the move out", TakeCellOut{});
    if (axis_of(cell) && state.looks.typed.empty() && route.points.size() > 2) return press_button("point-out", "Take the point out", TakeCellOut{});
    if (cell.what == What::angle) return press_button("bend-out", "Take the bend out", TakeBendOut{cell.index});
    const auto typed = typed_run(state);
    if (cell.what == What::run && typed && typed->mm > 0 && *typed < route.runs[cell.index]) return press_button("split", "A bend there", SplitLeg{});
    return std::nullopt;
}

}  // namespace

void fill_route(const State& state, ScreenView& view) {
    RouteBody body;
    const Cell& cell = state.entry->page.cell;
    body.asks = question(state);
    if (has_keys(state)) fill_number_keys(state, body);
    else if (cell.what == What::angle) fill_angle_buttons(state, body);
    else fill_turn_buttons(state, body);
    if (cell.what == What::move) fill_ways(state, body);
    body.picture = entered_picture(state);
    EnteredFinding finding = entered_finding(state);
    body.lines = std::move(finding.lines);
    body.remedy = std::move(finding.remedy);
    if (!state.looks.notice.empty()) {  // first things first: the pad stays, and one thing is told at a time
        body.lines.clear();
        body.remedy.reset();
    }
    fill_cells(state, body);
    view.header = entry_header(state, state.entry->line().name);
    view.body = std::move(body);
    view.footer = entry_footer(state);
    if (!state.looks.typed.empty()) view.footer.buttons[1] = press_button("key-back", "Rub out", Key{has_keys(state) ? "back" : "clear"});
    if (axis_of(cell) && state.looks.typed.empty() && cell.index + 1 < state.entry->line().route.points.size()) view.footer.buttons.push_back(press_button("point-in", "Point after it", PutPointIn{}));
    if (const auto more = more_of(state)) view.footer.buttons.push_back(*more);
    ButtonView main = main_button(state);
    main.weight = Weight::main;
    view.footer.main_id = main.id;
    view.footer.buttons.push_back(std::move(main));
}

}  // namespace tubewright
