// The bench apart from the bends: lists to tick, marks to lay out, the finished piece.

#include <algorithm>

#include "present/pieces.h"
#include "present/sheet_words.h"
#include "present/words.h"

namespace tubewright {
namespace {

std::string length_to_cut(const State& state) {
    const LineWork work = work_in_hand(state);
    return text(work.cut ? work.cut_length : sheet_in_hand(state)->layout->cut_length, reader_tape(state));
}

std::string heading_of(TickList list) {
    switch (list) {
        case TickList::prepare: return "Cut to";
        case TickList::finish: return "Finish";
        case TickList::hand_over: return "Prove and hand over";
    }
    return "";
}

std::string place_of(TickList list) {
    switch (list) {
        case TickList::prepare: return "prepare";
        case TickList::finish: return "finish";
        case TickList::hand_over: return "hand over";
    }
    return "";
}

std::string done_label(TickList list, std::size_t left) {
    switch (list) {
        case TickList::prepare: return "Cut, ready → mark out";
        case TickList::finish: return "Finished → hand over";
        case TickList::hand_over: return left > 0 ? "Label written: handed over" : "Handed over: done";
    }
    return "";
}

/// What a tape can prove of the finished part without a template; it is expected of the angles that were read.
std::string tape_words(const TickItem& item, const Tape& tape) {
    if (item.across) return "Tape, for the bends as measured: cut end A to cut end B straight across, " + text(*item.across, tape) + ".";
    std::string said;
    for (const TapeLeg& leg : item.legs) said += (said.empty() ? "Tape, for the bends as measured: cut ends and outside corners. " : ", ") + leg_name(leg) + ": " + text(leg.outside, tape);
    return said + ".";
}

std::string tick_words(const State& state, const TickItem& item) {
    const Tape tape = reader_tape(state);
    if (item.saved) return held_in_place_words(state);
    if (item.across || !item.legs.empty()) return tape_words(item, tape);
    if (!item.end) return item.text;
    if (item.trim.mm > 0) return "Trim " + end_name(*item.end) + ": " + text(item.trim, tape) + " off, or to the dry fit; cut square, deburr inside and outside, clean.";
    std::string words = capital(item.piece.name) + " on at " + end_name(*item.end);
    if (!item.piece.facing.empty()) words += ", " + item.piece.facing;
    return words + ".";
}

/// What to heed at this list: how this material is cut, how these ends are finished, what can hurt.
std::vector<std::string> heeded(const State& state, TickList list) {
    const Line& line = sheet_in_hand(state)->line;
    std::vector<std::string> all;
    for (const CheckItem& item : cautions_for(state)) all.push_back(item.text);
    const auto add = [&](const std::vector<std::string>& sentences) {
        for (const std::string& sentence : sentences)
            if (std::find(all.begin(), all.end(), sentence) == all.end()) all.push_back(sentence);
    };
    if (list == TickList::prepare) add(line.material.advice);
    if (list == TickList::finish) {
        add(line.a.fitting.advice);
        add(line.b.fitting.advice);
    }
    return all;
}

/// A list's pages: first those with ticks, each with one sentence that stays there, then all the sentences together, and
/// last what the label has to say of ticks that were left for later.
struct ListPages {
    Page page;
    std::size_t tick_pages, label_page;
    bool is_label() const { return page.page == label_page; }
    bool has_ticks() const { return page.page < tick_pages; }
};
constexpr std::size_t heeded_on_a_page = 4;

ListPages list_pages(const State& state, std::size_t ticks, std::size_t sentences, bool label) {
    const auto pages_for = [](std::size_t count, std::size_t each) { return (count + each - 1) / each; };
    const std::size_t tick_pages = std::max<std::size_t>(1, pages_for(ticks, ticks_on_a_page));
    const std::size_t more = sentences <= 1 ? 0 : pages_for(sentences, heeded_on_a_page);
    ListPages pages{page_of(state, tick_pages + more + (label ? 1 : 0), 1), tick_pages, tick_pages + more};
    pages.page.from = std::min(pages.page.page * ticks_on_a_page, ticks);
    pages.page.to = std::min(pages.page.from + ticks_on_a_page, ticks);
    return pages;
}

std::vector<TextView> cautions_of(const std::vector<std::string>& sentences, const ListPages& pages) {
    std::vector<TextView> said;
    if (sentences.empty()) return said;
    const std::size_t from = pages.has_ticks() ? pages.page.page % sentences.size() : (pages.page.page - pages.tick_pages) * heeded_on_a_page;
    const std::size_t to = pages.has_ticks() ? from + 1 : std::min(sentences.size(), from + heeded_on_a_page);
    for (std::size_t i = from; i < to; ++i) said.push_back({sentences[i], Tone::caution});
    return said;
}

/// The main button of a list: asks for the stick, leads through the pages, back to what is unanswered, or goes on.
ButtonView list_button(const State& state, TickList list, const Page& page, const std::vector<TickItem>& items) {
    const LineWork work = work_in_hand(state);
    if (list == TickList::prepare && !work.cut && !stick_standing(state).enough) {
        const bool known = stick_standing(state).left.has_value();
        return press_button("stick", known ? "Stick too short: choose" : "Choose the stick", GoTo{Screen::stock});
    }
    const auto open = [&](std::size_t i) { return !work.ticks.contains(items[i].id) && !is_left(work, items[i].id); };
    bool open_here = false;
    std::size_t first_open = items.size(), left = 0;
    for (std::size_t i = items.size(); i-- > 0;) {
        left += is_left(work, items[i].id) ? 1 : 0;
        if (!open(i)) continue;
        first_open = i;
        open_here = open_here || (i >= page.from && i < page.to);
    }
    const std::size_t missing = ticks_missing(state, list);
    const ButtonView done = press_button("next", done_label(list, left), Next{});
    if (open_here) return unless(done, counted(missing, "tick is missing", "ticks are missing"));
    if (page.page + 1 == page.pages && missing > 0) return press_button("more-ticks", "More to tick", page_turn(state, first_open / ticks_on_a_page));
    return through_pages(state, page, done);
}

TickView tick_view(const State& state, const TickItem& item) {
    const LineWork work = work_in_hand(state);
    TickView tick{press_button("tick-" + item.id, tick_words(state, item), Tick{item.id}), work.ticks.contains(item.id), true};
    if (!item.later.empty()) {
        tick.later = press_button("leave-" + item.id, "Later, by the fitter", LeaveForLater{item.id});
        tick.later->chosen = is_left(work, item.id);
    }
    return tick;
}

}  // namespace

void fill_ticks(const State& state, ScreenView& view, TickList list) {
    const std::vector<TickItem> items = tick_items(state, list);
    const std::vector<std::string> sentences = heeded(state, list);
    const std::vector<TextView> label = list == TickList::hand_over ? label_words(state, piece_in_hand(work_in_hand(state))) : std::vector<TextView>{};
    const ListPages pages = list_pages(state, items.size(), sentences.size(), !label.empty());
    const Page& page = pages.page;
    TicksBody body;
    body.heading = pages.has_ticks() ? heading_of(list) : pages.is_label() ? "Write this on the label" : "Keep in mind throughout";
    if (pages.has_ticks() && list == TickList::prepare) body.figure = length_to_cut(state);
    for (std::size_t i = page.from; i < page.to; ++i) body.ticks.push_back(tick_view(state, items[i]));
    body.cautions = pages.is_label() ? label : cautions_of(sentences, pages);
    for (const TickItem& item : items) body.all_ticks.push_back(tick_words(state, item));
    if (pages.has_ticks()) body.all_cautions.assign(sentences.begin(), sentences.begin() + static_cast<std::ptrdiff_t>(std::min(sentences.size(), pages.tick_pages)));
    body.pager = pager_of(state, page);
    view.header = line_header(state, place_of(list));
    view.ribbon = ribbon_of(state, false);
    view.body = std::move(body);
    view.footer = bench_footer_of(state, list_button(state, list, page, items));
    const bool taped = std::any_of(items.begin() + static_cast<std::ptrdiff_t>(page.from), items.begin() + static_cast<std::ptrdiff_t>(page.to), [](const TickItem& item) { return !item.legs.empty(); });
    if (!taped) return;
    auto& buttons = view.footer.buttons;
    std::erase_if(buttons, [](const ButtonView& button) { return button.id == "redo"; });  // room for five
    buttons.insert(buttons.end() - 1, press_button("legs", "Type tape readings", GoTo{Screen::legs}));
}

void fill_mark_out(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const Tape tape = reader_tape(state);
    const Length cut = sheet.layout->cut_length;
    MarkOutBody body;
    body.cut_label = "The tube is cut to";
    body.cut = text(cut, tape);
    body.columns = {"bend", "from A", "from B", "line"};
    std::vector<Step> steps = sheet.steps;
    std::sort(steps.begin(), steps.end(), [](const Step& a, const Step& b) { return a.bend < b.bend; });
    const Page page = page_of(state, steps.size(), marks_on_a_page);
    for (std::size_t i = page.from; i < page.to; ++i) {
        const Length from_a = mark_from_a(steps[i], cut);
        body.rows.push_back({std::to_string(steps[i].bend + 1) + ", " + text(steps[i].target, tape), text(from_a, tape), text(rest_of(cut, from_a, tape), tape), sheet.line.bender.marks[steps[i].align_to].name});
    }
    if (page.pages > 1) body.notes.push_back({"Marks " + std::to_string(page.from + 1) + " to " + std::to_string(page.to) + " of " + std::to_string(steps.size()) + ".", Tone::now});
    body.notes.push_back({"Ink a top line straight along the tube."});
    body.notes.push_back({"Ink each mark with its bend's number."});
    body.pager = pager_of(state, page);
    view.header = line_header(state, "mark out");
    view.ribbon = ribbon_of(state, true);
    view.body = std::move(body);
    ButtonView main = through_pages(state, page, press_button("next", steps.empty() ? "No bends → finish" : "Marked → first bend", Next{}));
    if (page.page + 1 < page.pages) main.label = page.to + 1 == steps.size() ? "On to mark " + std::to_string(steps.size()) : "On to marks " + std::to_string(page.to + 1) + " to " + std::to_string(std::min(page.to + marks_on_a_page, steps.size()));
    view.footer = bench_footer_of(state, std::move(main));
}

namespace {

/// What goes with the part: bends that nobody measured, and those that were kept off their target.
void add_bends_kept(const State& state, const LineWork& work, std::vector<TextView>& lines) {
    const Sheet& sheet = *sheet_in_hand(state);
    std::vector<std::string> unmeasured, under, over;
    for (std::size_t i = 0; i < work.made.size(); ++i) {
        const BendMade& made = work.made[i];
        // What a tube was saved from was to be what the job wants.
        const Line& line = work.saved && i < work.saved->made ? state.job->lines[*state.line] : sheet.line;
        const std::string name = bend_name(made.bend);
        const bool known = made.bend < line.route.bends.size();
        if (!made.measured) unmeasured.push_back(name);
        else if (made.kept_over) over.push_back(name);
        else if (known && verdict(line.route.bends[made.bend].angle, *made.measured) == Verdict::under) under.push_back(name);
    }
    if (!unmeasured.empty()) lines.push_back({"Never measured: " + piece_list(unmeasured) + ".", Tone::caution});
    if (!under.empty()) lines.push_back({"Kept under target: " + piece_list(under) + ".", Tone::caution});
    if (!over.empty()) lines.push_back({"Kept over target: " + piece_list(over) + ".", Tone::caution});
    if (work.saved) lines.push_back({"Saved: the rest was bent to make it up. It is not quite the line on the list.", Tone::caution});
}

}  // namespace

void fill_done(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    ChoiceBody body;
    body.heading = std::to_string(work.finished) + " of " + std::to_string(sheet.line.quantity) + " made.";
    body.lines.push_back({"Label it: " + sheet.line.name + ", ends A and B.", Tone::go});
    add_bends_kept(state, work, body.lines);
    if (const std::size_t left = left_for_later(work); left > 0) body.lines.push_back({counted(left, "tick is", "ticks are") + " left for the fitter: see the line's screen.", Tone::caution});
    const bool more = work.finished < sheet.line.quantity;
    ButtonView others = press_button("lines", "Other lines", GoTo{Screen::lines}), another = press_button("another", more ? "Another piece" : "One more than asked", AnotherPiece{});
    if (!more) std::swap(others, another);  // nobody makes one too many by the foot switch
    body.choices = {others, press_button("scrap", "Scrap log", GoTo{Screen::scrap})};
    if (const auto later = later_button(state)) body.choices.push_back(*later);
    view.header = line_header(state, "done");
    view.ribbon = ribbon_of(state, false);
    view.body = std::move(body);
    view.footer = bench_footer_of(state, another);
}

void fill_misfit(const State& state, ScreenView& view) {
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork work = work_in_hand(state);
    const Tape tape = reader_tape(state);
    ChoiceBody body;
    body.heading = "The job file or the bender's card has changed since this piece was begun.";
    if (misfit(sheet, work) == Misfit::cut_length)
        body.lines.push_back({"The piece is cut to " + text(work.cut_length, tape) + "; the sheet now says " + text(sheet.layout->cut_length, tape) + ".", Tone::stop});
    else if (misfit(sheet, work) == Misfit::plan) body.lines.push_back({"The cut is the same, but tube or bends are not those it was cut and marked for.", Tone::stop});
    else body.lines.push_back({"The bends made so far are not the ones now on the sheet.", Tone::stop});
    if (work.cut) {
        body.lines.push_back({"Say what becomes of it, and the line begins afresh. Or put the old job file or card back."});
        body.choices = {press_button("wrong", "What becomes of it", WentWrong{})};
    } else {
        body.lines.push_back({"No tube is cut. Hold the button to begin the line afresh."});
        ButtonView afresh = press_button("afresh", "Begin afresh", ConfirmScrap{});
        afresh.held = true;
        body.choices = {afresh};
    }
    view.header = line_header(state, "changed");
    view.body = std::move(body);
    view.footer = side_footer(state);
}

namespace {

/// The piece is good; only its marks are not.
void fill_marks_moved(const State& state, ScreenView& view) {
    if (steps_begun(*sheet_in_hand(state), work_in_hand(state)) > 0) return fill_marks_again(state, view);
    ChoiceBody body;
    body.heading = "The ink marks are for another line of the bender, or for another order.";
    body.lines = {{"Rub them out and mark out again. What is bent so far stays.", Tone::stop}, {"Or, if it is the line, choose the one they were made for."}};
    body.choices = {press_button("stance", "How the bender stands", GoTo{Screen::stance})};
    view.header = line_header(state, "mark again");
    view.body = std::move(body);
    view.footer = bench_footer_of(state, press_button("next", "Mark out again", Next{}));
}

}  // namespace

void fill_bench(const State& state, ScreenView& view) {
    const LineWork work = work_in_hand(state);
    const Misfit against = misfit(*sheet_in_hand(state), work);
    if (against == Misfit::ink) return fill_marks_moved(state, view);
    if (against != Misfit::none) return fill_misfit(state, view);
    if (const auto list = current_list(work)) return fill_ticks(state, view, *list);
    switch (work.stage) {
        case Stage::mark_out: return fill_mark_out(state, view);
        case Stage::bending: return work.move == Move::check ? fill_reading(state, view) : fill_bend(state, view);
        default: return fill_done(state, view);
    }
}

}  // namespace tubewright
