// The order of bends: why it is so, and how to have it otherwise.

#include <algorithm>

#include "bench/spread.h"
#include "present/order_words.h"
#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// Two rows of cards; one card less in each where the arrows that turn pages stand beside them.
constexpr std::size_t cards_in_a_row = 9, cards_in_a_paged_row = 7;

const LineOrder* order_in_hand(const State& state) { return state.line && *state.line < state.orders.size() ? &state.orders[*state.line] : nullptr; }

bool is_looking(const State& state) {
    const LineOrder* order = order_in_hand(state);
    return order && order->looking && !work_in_hand(state).cut;
}

bool is_by_hand(const State& state) {
    const auto& opening = work_in_hand(state).opening;
    return !opening.empty() && opening.size() == sheet_in_hand(state)->steps.size();
}

/// In whole twentieths: a number that is read should not flicker.
std::string looked_text(const State& state) { return std::to_string(static_cast<int>(order_in_hand(state)->share * 20) * 5) + " %"; }

std::string why_closed(const State& state) {
    if (work_in_hand(state).cut) return "the tube is cut for this order";
    // An order by hand stands on the screen from the touch on; another's place is only known once it is found.
    return is_looking(state) && !is_by_hand(state) ? "looking: " + looked_text(state) + " done" : "";
}

/// Whether something is in this bend's way in the order that the cut tube keeps.
bool hits_as_it_stands(const State& state, std::size_t bend) {
    const auto& findings = sheet_in_hand(state)->findings;
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.bend == bend && std::holds_alternative<HitsAsItStands>(f.fact); });
}

/// Whether the order on the screen is the one that the verdict is about: a cut tube may go on in another.
bool is_judged(const State& state, const OrderVerdict& verdict) {
    const auto& steps = sheet_in_hand(state)->steps;
    return !work_in_hand(state).cut || std::equal(steps.begin(), steps.end(), verdict.order.begin(), verdict.order.end(), [](const Step& step, const Placing& placing) { return placing == Placing{step.bend, step.hook}; });
}

const StoppedBend* break_of(const State& state, std::size_t bend) {
    const LineOrder* order = order_in_hand(state);
    if (!order || !order->by_hand) return nullptr;
    for (const StoppedBend& stop : order->by_hand->breaks)
        if (stop.blocked.placing.bend == bend) return &stop;
    return nullptr;
}

/// Whether the search, having found no order, got no further than the place before.
bool is_beyond_reach(const State& state, std::size_t place) {
    const LineOrder* order = order_in_hand(state);
    return order && !order->by_hand && order->verdict && order->verdict->outcome == OrderVerdict::Outcome::none && place >= order->verdict->furthest.size();
}

/// The order that the cards show: the sheet's, and of a cut tube what is left in the other order that is offered.
struct ShownOrder {
    std::vector<Placing> placings;
    std::vector<std::optional<std::size_t>> against;  ///< which made bend each is turned against
    std::size_t offered_from;                         ///< as many as there are cards where nothing is offered
};

ShownOrder shown_order(const State& state) {
    ShownOrder shown;
    for (const Step& step : sheet_in_hand(state)->steps) shown.placings.push_back({step.bend, step.hook});
    shown.offered_from = shown.placings.size();
    if (shown.placings.empty()) return shown;
    if (const OtherRest* other = other_rest(state); other && other->is == OtherRest::Is::found) {
        shown.offered_from -= other->then.size();
        std::copy(other->then.begin(), other->then.end(), shown.placings.begin() + static_cast<std::ptrdiff_t>(shown.offered_from));
    }
    shown.against = turned_against(sheet_in_hand(state)->layout->part, shown.placings);
    return shown;
}

bool is_floating(const ShownOrder& shown, std::size_t place) { return place > 0 && !shown.against[place]; }

OrderCard card_of(const State& state, const ShownOrder& shown, std::size_t place) {
    const Placing& placing = shown.placings[place];
    OrderCard card;
    card.bend = placing.bend;
    card.number = std::to_string(placing.bend + 1);
    card.hook = std::string("hook ") + (placing.hook == End::A ? "A" : "B");
    if (place >= shown.offered_from) card.tone = Tone::go;
    else if (break_of(state, placing.bend) || is_beyond_reach(state, place) || hits_as_it_stands(state, placing.bend)) card.tone = Tone::stop;
    else if (is_floating(shown, place)) card.tone = Tone::caution;
    card.touch = press_button("bend-" + card.number, bend_name(placing.bend), PickBend{placing.bend});
    card.touch.chosen = state.looks.picked_bend == placing.bend;
    return card;
}

std::optional<std::size_t> place_of(const ShownOrder& shown, std::optional<std::size_t> bend) {
    for (std::size_t i = 0; i < shown.placings.size(); ++i)
        if (bend == shown.placings[i].bend) return i;
    return std::nullopt;
}

std::optional<std::size_t> picked_place(const State& state) { return place_of(shown_order(state), state.looks.picked_bend); }

/// The bend in hand; where none is, the first that can't be made, or that is made.
PictureView order_picture(const State& state) {
    const auto& steps = sheet_in_hand(state)->steps;
    std::size_t place = 0;
    while (place < steps.size() && !break_of(state, steps[place].bend) && !is_beyond_reach(state, place) && !hits_as_it_stands(state, steps[place].bend)) ++place;
    const auto picked = std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return state.looks.picked_bend == step.bend; });
    if (picked != steps.end()) place = static_cast<std::size_t>(picked - steps.begin());
    else if (place == steps.size()) place = 0;
    const Step& step = steps[place];
    const bool offered = shown_order(state).offered_from <= place;
    PictureView picture{PictureView::Kind::pulled, place, capital(bend_name(step.bend)) + " being pulled" + (offered ? ", in the old order" : ""), {}};
    picture.labels = {{Anchor::hook_end, capital(end_name(step.hook)) + ", hook"}, {Anchor::lever, "lever"}, {Anchor::after_pull, "after the pull"}};
    return picture;
}

std::string picked_words(const State& state, bool movable) {
    const auto place = picked_place(state);
    if (!place) return movable ? "Drag a bend to its place, or touch it and use the arrows." : "";
    const ShownOrder shown = shown_order(state);
    const Placing& placing = shown.placings[*place];
    return capital(bend_name(placing.bend)) + ": " + std::to_string(*place + 1) + " of " + std::to_string(shown.placings.size()) + ", " + end_name(placing.hook) + " on the hook" +
           (is_floating(shown, *place) ? ", turned by the ink line alone" : "") + ".";
}

ButtonView arrow(const State& state, const std::string& id, const std::string& label, int by) {
    const auto place = picked_place(state);
    const std::size_t last = sheet_in_hand(state)->steps.size() - 1;
    ButtonView button = press_button(id, label, MoveBend{place ? *state.looks.picked_bend : 0, by});
    if (const std::string closed = why_closed(state); !closed.empty()) return unless(button, closed);
    if (!place) return unless(button, "touch a bend first");
    return unless(button, by < 0 && *place == 0 ? "it is the first" : by > 0 && *place == last ? "it is the last" : "");
}

ButtonView first_button(const State& state) {
    const auto& opening = work_in_hand(state).opening;
    const auto place = picked_place(state);
    const bool pinned = place && opening.size() == 1 && opening.front() == *state.looks.picked_bend;
    ButtonView button = press_button("first", pinned ? "Stays first" : "Make it first", PinFirst{place ? *state.looks.picked_bend : 0});
    button.chosen = pinned;
    // In fewer words than the arrows have room for.
    if (!why_closed(state).empty()) return unless(button, work_in_hand(state).cut ? "the tube is cut" : "looking");
    return unless(button, place ? "" : "touch a bend first");
}

/// What an order by hand breaks, the picked bend's first, and what it costs.
std::vector<TextView> by_hand_notes(const State& state, const HandFacts& facts) {
    const Tape tape = reader_tape(state);
    std::vector<StoppedBend> breaks = facts.breaks;
    std::stable_partition(breaks.begin(), breaks.end(), [&](const StoppedBend& stop) { return state.looks.picked_bend == stop.blocked.placing.bend; });
    std::vector<TextView> notes;
    constexpr std::size_t most = 2;
    for (std::size_t i = 0; i < std::min(most, breaks.size()); ++i) {
        const std::size_t left = breaks.size() - most;
        const bool more = i + 1 == most && breaks.size() > most;
        notes.push_back({break_words(breaks[i], tape) + (more ? " So for " + std::to_string(left) + " more: touch " + (left == 1 ? "its card." : "their cards.") : ""), Tone::stop});
    }
    notes.push_back(cost_of_hand_order(facts, order_in_hand(state)->best_ends, tape));
    return notes;
}

}  // namespace

std::vector<TextView> order_notes(const State& state) {
    const LineOrder* order = order_in_hand(state);
    if (!order) return {};
    const Tape tape = reader_tape(state);
    if (is_looking(state)) return {{(is_by_hand(state) ? "Looking at what this order breaks: " : "Looking for the best order: ") + looked_text(state) + " done.", Tone::now}};
    if (!order->verdict || !is_judged(state, *order->verdict)) return {};
    if (order->by_hand) return by_hand_notes(state, *order->by_hand);
    std::vector<TextView> notes;
    switch (order->verdict->outcome) {
        case OrderVerdict::Outcome::not_looked: break;
        case OrderVerdict::Outcome::cancelled: notes.push_back({"You stopped the looking. This is the plain order, from the middle outward: nobody has looked whether the tube hits bender or bench.", Tone::caution}); break;
        case OrderVerdict::Outcome::found:
            if (const auto why = why_found(*order->verdict, ends_within(*sheet_in_hand(state), order->verdict->order), order->best_ends, tape)) notes.push_back(*why);
            break;
        case OrderVerdict::Outcome::none:
            for (const std::string& why : why_none(*order->verdict, tape)) notes.push_back({why, Tone::stop});
            if (notes.size() > 2) notes.resize(2);
            for (const std::string& way : ways_out_words(*order->verdict, tape))
                if (notes.size() < 4) notes.push_back({"A way out: " + way, Tone::plain});
            if (!order->verdict->every_way) notes.push_back({"Not every way out was tried to its end: there are too many orders of so many bends. There may be others.", Tone::plain});
            break;
    }
    return notes;
}

namespace {

/// What the order on the screen asks of the hands; only here, the line's own page has no room for it.
void add_on_the_way(const State& state, std::vector<TextView>& notes) {
    const LineOrder* order = order_in_hand(state);
    if (!order || is_looking(state) || !order->verdict || order->verdict->order.size() < 2 || !is_judged(state, *order->verdict)) return;
    if (order->by_hand && order->by_hand->breaks.empty()) notes.push_back({on_the_way_words(order->by_hand->on_the_way)});
    else if (!order->by_hand && order->verdict->reasons) notes.push_back({on_the_way_words(order->verdict->reasons->on_the_way)});
}

/// One button, at one place: what can be done about the looking now.
ButtonView looking_button(const State& state) {
    const LineOrder* order = order_in_hand(state);
    const LineWork work = work_in_hand(state);
    if (is_looking(state) || (work.cut && order && order->rest.looking)) return press_button("stop-looking", "Stop looking", StopLooking{});
    if (const auto reorder = reorder_button(state)) return *reorder;
    const OtherRest* other = other_rest(state);
    if (work.cut && other && other->is == OtherRest::Is::stopped) return press_button("look-again", "Look again", LookAgain{});
    if (!work.cut && order && order->verdict && order->verdict->outcome == OrderVerdict::Outcome::cancelled) return press_button("look-again", "Look again", LookAgain{});
    if (work.cut && other && other->is == OtherRest::Is::none) return unless(press_button("free-order", "Best order", FreeOrder{}), "no order works");
    const bool none = order && order->verdict && order->verdict->outcome == OrderVerdict::Outcome::none;
    return unless(press_button("free-order", "Best order", FreeOrder{}), work.opening.empty() ? (none ? "no order works" : "this is the best order") : why_closed(state));
}

}  // namespace

namespace {

/// Of a tube that is cut: what is in the way of its order, and what another order of the rest would mean.
void add_of_the_rest(const State& state, OrderBody& body) {
    const Sheet& sheet = *sheet_in_hand(state);
    const auto hit = std::find_if(sheet.findings.begin(), sheet.findings.end(), [](const Finding& f) { return std::holds_alternative<HitsAsItStands>(f.fact); });
    if (hit == sheet.findings.end()) {
        body.notes.insert(body.notes.begin(), {"The tube is cut for this order: it stays until the next piece.", Tone::plain});
        return;
    }
    std::vector<TextView> said{{sentence(*hit, {reader_tape(state), &sheet.line}), tone_of(hit->severity)}};
    for (const TextView& note : other_rest_notes(state)) said.push_back(note);
    if (const ShownOrder shown = shown_order(state); shown.offered_from < shown.placings.size()) said.push_back({"The cards show that order already.", Tone::go});
    body.notes = std::move(said);  // why the order was the best is beside the point now
    if (order_in_hand(state)->rest.looking) body.looked = order_in_hand(state)->rest.share;
}

}  // namespace

void fill_order(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    OrderBody body;
    const std::size_t count = sheet.steps.size();
    const bool paged = count > 2 * cards_in_a_row;
    body.columns = paged ? cards_in_a_paged_row : count <= cards_in_a_row ? std::max<std::size_t>(count, 5) : (count + 1) / 2;
    const Page page = page_of(state, count, paged ? 2 * cards_in_a_paged_row : 2 * cards_in_a_row);
    const ShownOrder shown = shown_order(state);
    for (std::size_t i = page.from; i < page.to; ++i) body.cards.push_back(card_of(state, shown, i));
    body.pager = pager_of(state, page);
    body.movable = why_closed(state).empty();
    body.picked = picked_words(state, body.movable);
    body.notes = order_notes(state);
    add_on_the_way(state, body.notes);
    if (work_in_hand(state).cut) add_of_the_rest(state, body);
    if (is_looking(state)) body.looked = order_in_hand(state)->share;
    view.header = line_header(state, "order of bends");
    view.footer = side_footer(state);
    if (count > 0) {
        if (sheet.layout) body.picture = order_picture(state);
        body.earlier = arrow(state, "move-earlier", "Earlier", -1);
        body.later = arrow(state, "move-later", "Later", 1);
        const ButtonView second = lever_decides(state) ? press_button("lever-moved", "The lever has moved", LeverHasMoved{}) : first_button(state);
        view.footer.buttons.insert(view.footer.buttons.begin(), {looking_button(state), second});
    }
    view.body = body;
}

}  // namespace tubewright
