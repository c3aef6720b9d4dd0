// What is left of a cut tube in another order: what it means for the ink, and marks that are made again on a bent tube.

#include <algorithm>
#include <cmath>

#include "present/order_words.h"
#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

/// Nearer than this to where it has to be a mark is the same mark: the width of the line. Our choice.
constexpr Length mark_width{0.3};

bool moves(const InkMove& ink) { return std::abs(ink.by.mm) > mark_width.mm; }

/// "mark 3", "marks 3, 5 and 6"; empty for none.
std::string marks_words(const std::vector<InkMove>& ink, bool that_move) {
    std::vector<std::string> numbers;
    for (const InkMove& one : ink)
        if (moves(one) == that_move) numbers.push_back(std::to_string(one.bend + 1));
    return numbers.empty() ? "" : (numbers.size() == 1 ? "mark " : "marks ") + piece_list(numbers);
}

bool is_one(const std::string& marks) { return marks.rfind("mark ", 0) == 0; }

std::string ink_words(const std::vector<InkMove>& ink) {
    const std::string again = marks_words(ink, true), stay = marks_words(ink, false);
    if (ink.empty()) return "The marks on the list will be for that order: rub out any that you have inked.";
    if (again.empty()) return "Every ink mark stays as it is.";
    std::string said = capital(again) + (is_one(again) ? " has" : " have") + " to be inked again for it; the screen says where.";
    if (!stay.empty()) said += " " + capital(stay) + (is_one(stay) ? " stays" : " stay") + " as inked.";
    return said;
}

std::string way_words(const InkMove& ink) { return ink.by > Length{} ? "end B" : "end A"; }

}  // namespace

std::vector<TextView> other_rest_notes(const State& state) {
    const OtherRest* other = other_rest(state);
    if (!other) return {};
    if (other->is == OtherRest::Is::stopped) return {{"You stopped the looking for another order of what is left.", Tone::plain}};
    if (other->is != OtherRest::Is::found) return {};
    const bool again = std::any_of(other->ink.begin(), other->ink.end(), moves);
    std::vector<TextView> notes{{ink_words(other->ink), again ? Tone::caution : Tone::plain}};
    if (lever_decides(state))
        notes.push_back({"Only if the lever has not moved yet for " + bend_name(other->now.front().bend) + ": once it has, that bend comes first.", Tone::caution});
    return notes;
}

std::optional<ButtonView> reorder_button(const State& state) {
    const OtherRest* other = other_rest(state);
    if (!other || other->is != OtherRest::Is::found) return std::nullopt;
    return press_button("reorder", "Take that order", ReorderRest{});
}

void fill_marks_again(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Tape tape = reader_tape(state);
    const std::vector<InkMove> ink = ink_moves(sheet, work.inked, work.step);
    MarkOutBody body;
    body.columns = {"mark", "from the old one", "towards", "line"};
    const Page page = page_of(state, ink.size(), marks_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) {
        const auto step = std::find_if(sheet.steps.begin(), sheet.steps.end(), [&](const Step& s) { return s.bend == ink[i].bend; });
        body.rows.push_back({std::to_string(ink[i].bend + 1), moves(ink[i]) ? moved_text(ink[i].by, tape) : "stays", moves(ink[i]) ? way_words(ink[i]) : "", sheet.line.bender.marks[step->align_to].name});
    }
    if (std::none_of(ink.begin(), ink.end(), moves)) body.notes = {{"The marks that are still needed stay as inked."}};
    else body.notes = {{"Some ink marks are not where they have to be now. Measure from each old mark, ink the new one with its number, rub out the old one.", Tone::caution},
                  {"What is bent stays."}};
    if (page.pages > 1) body.notes.push_back({"Marks " + std::to_string(page.from + 1) + " to " + std::to_string(page.to) + " of " + std::to_string(ink.size()) + ".", Tone::now});
    body.pager = pager_of(state, page);
    view.header = line_header(state, "mark again");
    view.body = std::move(body);
    view.footer = bench_footer_of(state, through_pages(state, page, press_button("next", "Marked → " + bend_name(sheet.steps[work.step].bend), Next{})));
}

}  // namespace tubewright
