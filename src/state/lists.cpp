// Which sentences are to be ticked for the line in hand.

#include <algorithm>

#include "state/rules.h"

namespace tubewright {
namespace {

template <class T>
bool for_all_or_has(const std::vector<T>& wanted, const T& one) {
    return wanted.empty() || std::find(wanted.begin(), wanted.end(), one) != wanted.end();
}

bool concerns(const CheckItem& item, Service service, const Line& line) {
    return for_all_or_has(item.services, service) && for_all_or_has(item.materials, line.material.id) &&
           (for_all_or_has(item.fittings, line.a.fitting.id) || for_all_or_has(item.fittings, line.b.fitting.id));
}

const char* prefix(TickList list) {
    switch (list) {
        case TickList::prepare: return "prepare-";
        case TickList::finish: return "finish-";
        case TickList::hand_over: return "hand-over-";
    }
    return "";
}

const std::vector<CheckItem>& sentences(const Checklists& lists, TickList list) {
    if (list == TickList::prepare) return lists.prepare;
    return list == TickList::finish ? lists.finish : lists.hand_over;
}

/// First of all on the finish list: the part is measured before it leaves the bench.
void add_tape_checks(const Sheet& sheet, const LineWork& work, std::vector<TickItem>& items) {
    if (!sheet.layout || sheet.steps.empty()) return;
    constexpr std::size_t legs_in_a_tick = 3;  // more would not be read in one go
    std::vector<TickItem> checks;
    const AsMeasured measured = measured_angles(sheet, work);
    const std::vector<TapeLeg> legs = tape_legs(sheet, measured);
    for (std::size_t i = 0; i < legs.size(); i += legs_in_a_tick) {
        TickItem check{"tape-" + std::to_string(i / legs_in_a_tick + 1), "", std::nullopt, {}, {}, std::nullopt, {}};
        for (std::size_t k = i; k < std::min(legs.size(), i + legs_in_a_tick); ++k) check.legs.push_back(legs[k]);
        checks.push_back(std::move(check));
    }
    checks.push_back({"tape-across", "", std::nullopt, {}, {}, straight_across(sheet, measured), {}});
    items.insert(items.begin(), checks.begin(), checks.end());
}

/// A tube that was saved is not quite the one that was wanted: it is held in its place before an end is cut or flared.
void add_held_in_place(std::vector<TickItem>& items) {
    TickItem held{prefix(TickList::finish) + std::string("held-in-place"), "", std::nullopt, {}, {}, std::nullopt, {}};
    held.saved = true;
    items.insert(items.begin(), std::move(held));
}

/// After the dry fit, before anything else is done to the ends; nothing is cut off an end that has no trim.
void add_trims(const Line& line, std::vector<TickItem>& items) {
    std::vector<TickItem> trims;
    for (const End end : {End::A, End::B})
        if (line.end(end).trim.mm > 0) trims.push_back({std::string("trim-") + letter(end), "", end, {}, {}, std::nullopt, line.end(end).trim});
    const auto fitted = std::find_if(items.begin(), items.end(), [](const TickItem& item) { return item.id == prefix(TickList::finish) + std::string("dry-fit"); });
    items.insert(fitted == items.end() ? items.begin() : fitted + 1, trims.begin(), trims.end());
}

std::vector<CheckItem> of_them(const std::vector<CheckItem>& items, Service service, const Line& line) {
    std::vector<CheckItem> found;
    for (const CheckItem& item : items)
        if (concerns(item, service, line)) found.push_back(item);
    return found;
}

}  // namespace

std::optional<TickList> current_list(const LineWork& work) {
    if (work.stage == Stage::prepare) return TickList::prepare;
    if (work.stage != Stage::finish) return std::nullopt;
    return work.ticks.contains(finish_list_passed) ? TickList::hand_over : TickList::finish;
}

std::vector<TickItem> tick_items(const State& state, TickList list) {
    const Sheet* sheet = sheet_in_hand(state);
    if (!sheet) return {};
    std::vector<TickItem> items;
    for (const CheckItem& item : sentences(state.checklists, list))
        if (concerns(item, state.job->service, sheet->line)) items.push_back({prefix(list) + item.id, item.text, std::nullopt, {}, {}, std::nullopt, {}, list == TickList::hand_over ? item.later : ""});
    if (list == TickList::finish) {
        if (work_in_hand(state).saved) add_held_in_place(items);
        add_trims(sheet->line, items);
        add_tape_checks(*sheet, work_in_hand(state), items);
    }
    if (list != TickList::prepare) return items;
    // Every loose piece goes on here: no flare and no bend has been made yet that would keep it off.
    for (const End end : {End::A, End::B})
        for (const SlideOn& piece : sheet->line.end(end).fitting.slide_on)
            items.push_back({std::string("slide-") + letter(end) + "-" + piece.id, "", end, piece, {}, std::nullopt, {}});
    return items;
}

std::vector<CheckItem> cautions_for(const Checklists& lists, Service service, const Line& line) {
    return of_them(lists.cautions, service, line);
}

std::vector<CheckItem> hand_over_for(const Checklists& lists, Service service, const Line& line) {
    return of_them(lists.hand_over, service, line);
}

std::vector<CheckItem> cautions_for(const State& state) {
    const Sheet* sheet = sheet_in_hand(state);
    return sheet ? cautions_for(state.checklists, state.job->service, sheet->line) : std::vector<CheckItem>{};
}

std::size_t ticks_missing(const State& state, TickList list) {
    if (!sheet_in_hand(state)) return 0;
    const LineWork work = work_in_hand(state);
    const std::vector<TickItem> items = tick_items(state, list);
    return static_cast<std::size_t>(std::count_if(items.begin(), items.end(), [&](const TickItem& item) { return !work.ticks.contains(item.id) && !is_left(work, item.id); }));
}

int piece_in_hand(const LineWork& work) { return work.finished + (work.stage == Stage::done ? 0 : 1); }

bool is_left(const LineWork& work, const std::string& tick) {
    const auto found = work.later.find({piece_in_hand(work), tick});
    return found != work.later.end() && !found->second;
}

const CheckItem* hand_over_item(const State& state, const std::string& tick) {
    for (const CheckItem& item : state.checklists.hand_over)
        if (prefix(TickList::hand_over) + item.id == tick) return &item;
    return nullptr;
}

std::size_t left_for_later(const LineWork& work) {
    return static_cast<std::size_t>(std::count_if(work.later.begin(), work.later.end(), [&](const auto& left) { return left.first.piece <= work.finished && !left.second; }));
}

LineWork for_next_piece(const LineWork& work) {
    LineWork fresh;
    fresh.finished = work.finished;
    fresh.opening = work.opening;  // wanted of the line, whatever becomes of the piece
    for (const auto& [left, done] : work.later)
        if (left.piece <= work.finished) fresh.later[left] = done;
    return fresh;
}

}  // namespace tubewright
