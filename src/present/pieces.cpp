#include "present/pieces.h"

#include <algorithm>

#include "present/words.h"

namespace tubewright {

Tape reader_tape(const State& state) { return {reader_unit(state), state.settings.tape_denominator}; }

Length shown_kept(const std::vector<Length>& pieces, const Tape& tape) {
    Length sum;
    for (const Length& piece : pieces) sum += down_on_tape(piece, tape);
    return sum;
}

Length shown_scrap(const Scrap& scrap, const Tape& tape) {
    return on_tape(scrap.scrapped + scrap.kept, tape) - shown_kept({scrap.kept - scrap.second, scrap.second}, tape);
}

ButtonView press_button(const std::string& id, const std::string& label, const Action& press, Weight weight) {
    ButtonView button;
    button.id = id;
    button.label = label;
    button.press = press;
    button.weight = weight;
    return button;
}

ButtonView unless(ButtonView button, const std::string& why_not) {
    button.enabled = why_not.empty();
    button.why_not = why_not;
    return button;
}

Page page_of(const State& state, std::size_t count, std::size_t on_a_page) {
    Page page{};
    page.pages = std::max<std::size_t>(1, (count + on_a_page - 1) / on_a_page);
    page.page = std::min(static_cast<std::size_t>(std::max(0, state.looks.page)), page.pages - 1);
    page.from = page.page * on_a_page;
    page.to = std::min(count, page.from + on_a_page);
    return page;
}

Action page_turn(const State& state, std::size_t to_page) {
    return TurnPage{static_cast<int>(to_page) - state.looks.page};
}

ButtonView through_pages(const State& state, const Page& page, ButtonView main) {
    if (page.page + 1 >= page.pages) return main;
    return press_button("next-page", "On to page " + std::to_string(page.page + 2) + " of " + std::to_string(page.pages), page_turn(state, page.page + 1), main.weight);
}

PagerView pager_of(const State& state, const Page& page) {
    PagerView pager;
    pager.needed = page.pages > 1;
    pager.place = std::to_string(page.page + 1) + " of " + std::to_string(page.pages);
    const std::size_t before = page.page == 0 ? 0 : page.page - 1, after = std::min(page.page + 1, page.pages - 1);
    pager.earlier = unless(press_button("earlier", "Page before", page_turn(state, before)), page.page == 0 ? "first page" : "");
    pager.later = unless(press_button("later", "Page after", page_turn(state, after)), page.page + 1 == page.pages ? "last page" : "");
    return pager;
}

void show_page_of(const State& state, const std::vector<RowView>& rows, ListBody& body) {
    const Page page = page_of(state, rows.size(), rows_on_a_page);
    body.rows.assign(rows.begin() + static_cast<std::ptrdiff_t>(page.from), rows.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.pager = pager_of(state, page);
}

TileView tile(const std::string& id, const std::string& name, const std::string& value, const Action& press) {
    TileView made;
    made.touch = press_button(id, value, press);
    made.name = name;
    return made;
}

void show_page_of(const State& state, const std::vector<TileView>& tiles, TilesBody& body, FooterView& footer) {
    constexpr std::size_t tiles_on_a_page = 12;
    const Page page = page_of(state, tiles.size(), tiles_on_a_page);
    body.tiles.assign(tiles.begin() + static_cast<std::ptrdiff_t>(page.from), tiles.begin() + static_cast<std::ptrdiff_t>(page.to));
    body.columns = static_cast<int>(std::clamp<std::size_t>(tiles.size(), 1, 4));
    if (page.pages == 1) return;
    const PagerView pager = pager_of(state, page);
    footer.buttons.push_back(pager.earlier);
    footer.buttons.push_back(pager.later);
}

namespace {

/// Above this many letters the chips beside them have room for short words only.
constexpr std::size_t long_heading = 36;

bool is_cramped(const std::string& title, const std::string& place) { return title.size() + place.size() > long_heading; }

/// What is on a chip is for the eye in passing: sixteenths do.
Tape chip_tape(const State& state) { return {reader_unit(state), 16}; }

}  // namespace

HeaderView header_of(const State& state, const std::string& title, const std::string& place) {
    HeaderView header{title, place, {}};
    Length today;
    for (const Scrap& scrap : state.work.scrap)
        if (scrap.day == state.day) today += shown_scrap(scrap, reader_tape(state));
    const bool cramped = is_cramped(title, place);
    header.chips.push_back((cramped ? "scrap " : "scrap today ") + text(today, chip_tape(state)));
    return header;
}

HeaderView line_header(const State& state, const std::string& place) {
    const Line& line = sheet_in_hand(state)->line;
    HeaderView header = header_of(state, line.name, place);
    const StickStanding stick = stick_standing(state);
    const bool cramped = is_cramped(line.name, place);
    header.chips.insert(header.chips.begin(), stick.left ? (cramped ? "stick " : "on stick ") + left_text(*stick.left, chip_tape(state)) : "no stick yet");
    header.chips.insert(header.chips.begin(), od_text(line.tube.od, reader_tape(state)) + (cramped ? "" : " OD"));
    return header;
}

std::string bend_place(const State& state) {
    const LineWork work = work_in_hand(state);
    const std::string all = std::to_string(sheet_in_hand(state)->line.route.bends.size());
    const std::string bend = bend_name(step_in_hand(state)->bend);
    return bend + (work.made.empty() ? ", first of " + all + " to make" : ", " + std::to_string(work.made.size()) + " of " + all + " made");
}

ButtonView back_button() { return press_button("back", "Back", Back{}); }

ButtonView undo_button(const State& state) {
    const std::string why_not = undo_is_of_bench(state) ? "done at the bench" : can_undo(state) ? "" : state.past.empty() ? "nothing to undo" : "done in another job";
    return unless(press_button("undo", "Undo", Undo{}), why_not);
}

namespace {

/// Redo comes and goes, and so stands behind Back, which stays where it is.
void add_undo_back_and_redo(const State& state, FooterView& footer) {
    footer.buttons.push_back(undo_button(state));
    footer.buttons.push_back(back_button());
    footer.back_id = "back";
    if (can_redo(state)) footer.buttons.push_back(press_button("redo", "Redo", Redo{}));
}

}  // namespace

FooterView side_footer(const State& state) {
    FooterView footer;
    add_undo_back_and_redo(state, footer);
    return footer;
}

FooterView bench_footer_of(const State& state, ButtonView main) {
    FooterView footer;
    const LineWork work = work_in_hand(state);
    const std::string why_not = work.stage == Stage::done ? "this piece is made" : work.cut ? "" : "nothing is cut yet";
    footer.buttons.push_back(unless(press_button("wrong", "Went wrong", WentWrong{}, Weight::warn), why_not));
    add_undo_back_and_redo(state, footer);
    main.weight = Weight::main;
    footer.main_id = main.id;
    footer.buttons.push_back(std::move(main));
    return footer;
}

Tone tone_of(Severity severity) {
    switch (severity) {
        case Severity::stop: return Tone::stop;
        case Severity::caution: return Tone::caution;
        case Severity::note: return Tone::plain;
    }
    return Tone::plain;
}

std::string tube_words(const Line& line, const Tape& tape) {
    return size_text(line.tube, tape) + " " + (line.material.name.empty() ? line.tube.material : line.material.name);
}

std::string piece_words(const Line& line, const LineWork& work) {
    const int piece = work.finished + (work.stage == Stage::done ? 0 : 1);
    std::string said = "piece " + std::to_string(piece) + (piece > line.quantity ? ", asked " : " of ") + std::to_string(line.quantity);
    if (work.attempt > 1) said += ", try " + std::to_string(work.attempt);
    return said;
}

std::string line_standing(const Sheet& sheet, const LineWork& work) {
    if (const Misfit against = misfit(sheet, work); against != Misfit::none) return against == Misfit::ink ? "mark again" : "changed";
    const std::string made = std::to_string(work.finished) + " of " + std::to_string(sheet.line.quantity) + " made";
    switch (work.stage) {
        case Stage::done: return made;
        case Stage::finish: return "finishing";
        case Stage::bending: return bend_name(sheet.steps[work.step].bend) + " of " + std::to_string(sheet.line.route.bends.size());
        case Stage::mark_out: return "marking out";
        case Stage::prepare: break;
    }
    if (stopped(sheet)) return "can't be made";
    if (!work.ticks.empty() || work.cut) return "preparing";
    if (work.attempt > 1) return "try " + std::to_string(work.attempt);
    return work.finished > 0 ? made : "not begun";
}

}  // namespace tubewright
