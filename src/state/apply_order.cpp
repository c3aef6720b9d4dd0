// What the person decides about the order of bends.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

/// The order can be changed while the tube is whole.
bool order_is_open(const State& state) { return state.looks.screen == Screen::order && sheet_in_hand(state) && !work_in_hand(state).cut; }

void want_opening(Doing& doing, const std::vector<std::size_t>& opening) {
    LineWork work = work_in_hand(doing.state);
    work.opening = opening;
    change_line(doing, work);
}

}  // namespace

void pin_first(Doing& doing, std::size_t bend) {
    if (!order_is_open(doing.state)) return;
    const auto& steps = sheet_in_hand(doing.state)->steps;
    if (std::none_of(steps.begin(), steps.end(), [&](const Step& step) { return step.bend == bend; })) return;
    const std::vector<std::size_t> pinned{bend};
    want_opening(doing, work_in_hand(doing.state).opening == pinned ? std::vector<std::size_t>{} : pinned);
}

void move_bend(Doing& doing, std::size_t bend, int by) {
    if (!order_is_open(doing.state) || (by != 1 && by != -1)) return;
    std::vector<std::size_t> order;
    for (const Step& step : sheet_in_hand(doing.state)->steps) order.push_back(step.bend);
    const auto found = std::find(order.begin(), order.end(), bend);
    if (found == order.end() || (by < 0 ? found == order.begin() : found + 1 == order.end())) return;
    std::iter_swap(found, found + by);
    want_opening(doing, order);
}

void free_order(Doing& doing) {
    if (order_is_open(doing.state)) want_opening(doing, {});
}

}  // namespace tubewright
