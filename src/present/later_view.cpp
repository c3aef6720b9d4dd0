// What is left for the fitter: the words for the label, and the list to come back to.

#include <algorithm>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// As it stands on the list now.
std::string sentence_of(const State& state, const std::string& tick) {
    const CheckItem* item = hand_over_item(state, tick);
    return item ? item->text : "No longer on the list: " + tick + ".";
}

/// In the order of the list, what is no longer on it last.
std::vector<LeftForLater> in_order(const State& state, const std::map<LeftForLater, bool>& later) {
    std::vector<LeftForLater> all;
    for (const auto& [left, done] : later) all.push_back(left);
    const auto place = [&](const LeftForLater& left) {
        const CheckItem* item = hand_over_item(state, left.tick);
        return item ? item - state.checklists.hand_over.data() : static_cast<std::ptrdiff_t>(state.checklists.hand_over.size());
    };
    std::stable_sort(all.begin(), all.end(), [&](const LeftForLater& a, const LeftForLater& b) { return std::pair(a.piece, place(a)) < std::pair(b.piece, place(b)); });
    return all;
}

/// What whoever fits the piece can't see of it: bends that were kept though they came out over, and that it was saved.
std::string what_was_kept(const State& state, const LineWork& work) {
    std::string kept;
    for (const BendMade& made : work.made)
        if (made.kept_over && made.measured) kept += (kept.empty() ? "\nKept over: " : ", ") + bend_name(made.bend) + " at " + text(*made.measured, reader_tape(state));
    return kept + (work.saved ? "\nA saved tube: see that it lies in its place without force." : "");
}

}  // namespace

std::vector<TextView> label_words(const State& state, int piece) {
    const Line& line = sheet_in_hand(state)->line;
    const LineWork work = work_in_hand(state);
    std::string to_do;
    int count = 0;
    for (const LeftForLater& left : in_order(state, work.later)) {
        if (left.piece != piece || work.later.at(left)) continue;
        const CheckItem* item = hand_over_item(state, left.tick);
        ++count;
        to_do += (count == 1 ? "" : "\n") + std::to_string(count) + ". " + capital(item && !item->later.empty() ? item->later : sentence_of(state, left.tick));
    }
    if (count == 0) return {};
    to_do += what_was_kept(state, work);
    return {{line.name + ", piece " + std::to_string(piece) + ". Not done yet, for the fitter:", Tone::caution}, {to_do}};
}

std::optional<ButtonView> later_button(const State& state) {
    const LineWork work = work_in_hand(state);
    if (work.later.empty() || work.later.begin()->first.piece > work.finished) return std::nullopt;
    const std::size_t open = left_for_later(work);
    return press_button("left-for-later", open > 0 ? std::to_string(open) + " left for later" : "All done later", GoTo{Screen::later});
}

void fill_later(const State& state, ScreenView& view) {
    const Line& line = sheet_in_hand(state)->line;
    const LineWork work = work_in_hand(state);
    std::vector<TickView> all;
    for (const LeftForLater& left : in_order(state, work.later)) {
        if (left.piece > work.finished) continue;
        const std::string piece = line.quantity > 1 || work.finished > 1 ? "Piece " + std::to_string(left.piece) + ": " : "";
        all.push_back({press_button("later-" + std::to_string(left.piece) + "-" + left.tick, piece + sentence_of(state, left.tick), TickLater{left}), work.later.at(left), true});
    }
    const std::size_t open = left_for_later(work);
    TicksBody body;
    body.heading = open > 0 ? std::to_string(open) + " left for later" : "Nothing is left to do";
    const Page page = page_of(state, all.size(), ticks_on_a_page);
    for (const TickView& tick : all) body.all_ticks.push_back(tick.touch.label);
    body.ticks.assign(all.begin() + static_cast<std::ptrdiff_t>(page.from), all.begin() + static_cast<std::ptrdiff_t>(page.to));
    if (open > 0) body.cautions = {{"Tick each once it is done on the vehicle.", Tone::caution}};
    body.pager = pager_of(state, page);
    view.header = line_header(state, "left for later");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

}  // namespace tubewright
