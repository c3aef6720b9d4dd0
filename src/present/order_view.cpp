// The order of bends: why it is so, and how to have it otherwise.

#include <cmath>

#include "present/order_words.h"
#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

constexpr std::size_t bends_on_a_page = 3;

const LineOrder* order_in_hand(const State& state) { return state.line && *state.line < state.orders.size() ? &state.orders[*state.line] : nullptr; }

std::string why_closed(const State& state) {
    if (work_in_hand(state).cut) return "the tube is cut: its order stays until the next piece";
    const LineOrder* order = order_in_hand(state);
    return order && order->looking ? "the order is being looked for" : "";
}

OrderRow row_of(const State& state, std::size_t i) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Step& step = sheet.steps[i];
    const std::string id = std::to_string(step.bend + 1), closed = why_closed(state);
    const LineWork work = work_in_hand(state);
    OrderRow row;
    row.place = std::to_string(i + 1) + ".";
    row.name = bend_name(step.bend);
    row.detail = end_name(step.hook) + " on the hook";
    if (i > 0 && !step.neighbour) {
        row.detail += ", turned by the ink line alone";
        row.tone = Tone::caution;
    }
    const LineOrder* order = order_in_hand(state);
    if (order && order->verdict && order->verdict->outcome == OrderVerdict::Outcome::none && i >= order->verdict->furthest.size()) row.tone = Tone::stop;
    const bool pinned = !work.opening.empty() && work.opening.front() == step.bend && work.opening.size() == 1;
    row.first = unless(press_button("first-" + id, pinned ? "Stays first" : "Make first", PinFirst{step.bend}), closed);
    row.first.chosen = pinned;
    row.earlier = unless(press_button("earlier-" + id, "Earlier", MoveBend{step.bend, -1}), i == 0 ? "it is the first" : closed);
    row.later = unless(press_button("later-" + id, "Later", MoveBend{step.bend, 1}), i + 1 == sheet.steps.size() ? "it is the last" : closed);
    return row;
}

}  // namespace

std::vector<TextView> order_notes(const State& state) {
    const LineOrder* order = order_in_hand(state);
    if (!order) return {};
    const Tape tape = reader_tape(state);
    if (order->looking && !work_in_hand(state).cut) return {{"Looking for the best order: " + percent(std::floor(order->share * 20) / 20) + " done.", Tone::now}};
    if (!order->verdict) return {};
    std::vector<TextView> notes;
    switch (order->verdict->outcome) {
        case OrderVerdict::Outcome::not_looked: break;
        case OrderVerdict::Outcome::cancelled: notes.push_back({"The looking was stopped. This is the plain order, from the middle outward: nobody has looked whether the tube hits bender or bench.", Tone::caution}); break;
        case OrderVerdict::Outcome::found:
            if (const std::string why = why_this_order(*order->verdict, tape); !why.empty()) notes.push_back({why, Tone::go});
            break;
        case OrderVerdict::Outcome::none:
            for (const std::string& why : why_none(*order->verdict, tape)) notes.push_back({why, Tone::stop});
            if (notes.size() > 2) notes.resize(2);
            for (const std::string& way : ways_out_words(*order->verdict, tape))
                if (notes.size() < 4) notes.push_back({"A way out: " + way, Tone::plain});
            break;
    }
    return notes;
}

void fill_order(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineOrder* order = order_in_hand(state);
    OrderBody body;
    const Page page = page_of(state, sheet.steps.size(), bends_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) body.rows.push_back(row_of(state, i));
    body.pager = pager_of(state, page);
    body.notes = order_notes(state);
    if (work_in_hand(state).cut) body.notes.insert(body.notes.begin(), {"The tube is cut for this order.", Tone::plain});
    view.header = line_header(state, "order of bends");
    view.body = body;
    view.footer = side_footer(state);
    const bool looking = order && order->looking && !work_in_hand(state).cut;
    const bool free = work_in_hand(state).opening.empty();
    view.footer.buttons.insert(view.footer.buttons.begin(),
                               looking ? press_button("stop-looking", "Stop looking", StopLooking{})
                                       : unless(press_button("free-order", "Best order", FreeOrder{}), free ? "it is the program's own order" : why_closed(state)));
}

}  // namespace tubewright
