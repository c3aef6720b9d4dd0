// What the person decides about the order of bends.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

bool has_bend(const State& state, std::size_t bend) {
    const auto& steps = sheet_in_hand(state)->steps;
    return std::any_of(steps.begin(), steps.end(), [&](const Step& step) { return step.bend == bend; });
}

/// The order can be changed while the tube is whole.
bool order_is_open(const State& state) { return state.looks.screen == Screen::order && sheet_in_hand(state) && !work_in_hand(state).cut; }

void want_opening(Doing& doing, const std::vector<std::size_t>& opening) {
    LineWork work = work_in_hand(doing.state);
    work.opening = opening;
    change_line(doing, work);
}

}  // namespace

void pin_first(Doing& doing, std::size_t bend) {
    if (!order_is_open(doing.state) || !has_bend(doing.state, bend)) return;
    const std::vector<std::size_t> pinned{bend};
    want_opening(doing, work_in_hand(doing.state).opening == pinned ? std::vector<std::size_t>{} : pinned);
}

void pick_bend(Doing& doing, std::size_t bend) {
    State& state = doing.state;
    if (state.looks.screen != Screen::order || !sheet_in_hand(state) || !has_bend(state, bend)) return;
    state.looks.picked_bend = bend;
}

void move_bend(Doing& doing, std::size_t bend, int by) {
    if (!order_is_open(doing.state) || by == 0) return;
    std::vector<std::size_t> order;
    for (const Step& step : sheet_in_hand(doing.state)->steps) order.push_back(step.bend);
    const auto found = std::find(order.begin(), order.end(), bend);
    if (found == order.end() || by < order.begin() - found || by >= order.end() - found) return;
    if (by < 0) std::rotate(found + by, found, found + 1);
    else std::rotate(found, found + 1, found + 1 + by);
    want_opening(doing, order);
    doing.state.looks.picked_bend = bend;
}

/// Of a tube that is cut. The bend in hand may be another one then; it has not been pulled, or it would count as made.
void reorder_rest(Doing& doing) {
    State& state = doing.state;
    const OtherRest* other = other_rest(state);
    if (!other || other->is != OtherRest::Is::found || state.looks.screen != Screen::order) return;
    LineWork work = work_in_hand(state);
    const std::vector<Placing>& order = state.orders[*state.line].rest.verdict->order;
    if (work.stage == Stage::bending && work.step < order.size() && work.step < work.order.size() && order[work.step] != work.order[work.step]) work.move = Move::mark;
    work.order = order;
    change_line(doing, work);
    if (bar_to_start(state) == Bar::none) show(state, Screen::bench);
}

/// Then the bend in hand is begun, and comes before all others whatever is in the way of those.
void lever_has_moved(Doing& doing) {
    State& state = doing.state;
    if (!lever_decides(state) || state.looks.screen != Screen::order) return;
    LineWork work = work_in_hand(state);
    work.pulled.insert(sheet_in_hand(state)->steps[work.step].bend);
    change_line(doing, work);
    if (bar_to_start(state) == Bar::none) show(state, Screen::bench);
}

void free_order(Doing& doing) {
    if (order_is_open(doing.state)) want_opening(doing, {});
}

}  // namespace tubewright
