#include "present/screen_view.h"

#include "present/pieces.h"

namespace tubewright {
namespace {

std::string screen_name(Screen screen) {
    switch (screen) {
        case Screen::shelf: return "shelf";
        case Screen::lines: return "lines";
        case Screen::line: return "line";
        case Screen::bench: return "bench";
        case Screen::wrong: return "wrong";
        case Screen::scrap: return "scrap";
        case Screen::settings: return "settings";
        case Screen::stance: return "stance";
        case Screen::stock: return "stock";
        case Screen::stick_length: return "stick-length";
        case Screen::order: return "order";
        case Screen::draft: return "draft";
        case Screen::ask: return "ask";
        case Screen::route: return "route";
        case Screen::word: return "word";
        case Screen::card: return "card";
        case Screen::prove: return "prove";
        case Screen::later: return "later";
        case Screen::learn: return "learn";
        case Screen::bends: return "bends";
        case Screen::bend: return "bend";
        case Screen::bends_more: return "bends-more";
        case Screen::bend_files: return "bend-files";
        case Screen::hand: return "hand";
        case Screen::legs: return "legs";
        case Screen::leg: return "leg";
        case Screen::rescue: return "rescue";
        case Screen::rescue_more: return "rescue-more";
        case Screen::rescue_read: return "rescue-read";
        case Screen::rack: return "rack";
        case Screen::rack_tube: return "rack-tube";
        case Screen::rack_piece: return "rack-piece";
        case Screen::rack_ask: return "rack-ask";
        case Screen::plan: return "plan";
        case Screen::plan_jobs: return "plan-jobs";
        case Screen::buy: return "buy";
        case Screen::joints: return "joints";
        case Screen::joint: return "joint";
        case Screen::shop_rules: return "shop-rules";
        case Screen::figures: return "figures";
        case Screen::keep_safe: return "keep-safe";
    }
    return "";
}

/// Where the work is, as a word that differs at each step; a tick or a typed digit is no step.
std::string step_word(const State& state) {
    const LineWork work = work_in_hand(state);
    std::string word = "/" + std::to_string(*state.line) + "/" + std::to_string(static_cast<int>(work.stage));
    word += "." + std::to_string(work.step) + "." + std::to_string(static_cast<int>(work.move)) + "." + std::to_string(work.pulls);
    word += "." + std::to_string(work.attempt) + "." + std::to_string(work.finished);
    if (work.last_reading) word += ".read";
    if (work.ticks.contains(finish_list_passed)) word += ".hand-over";
    return word;
}

/// The same of an entry: which question or number is in hand. What has been typed of it is no step.
std::string entry_word(const Entry& entry, const Looks& looks) {
    std::string word = "/" + std::to_string(entry.page.line) + "/" + (entry.page.ask ? std::to_string(static_cast<int>(*entry.page.ask)) : "");
    word += "." + std::to_string(static_cast<int>(entry.page.cell.what)) + "." + std::to_string(entry.page.cell.index);
    return word + (looks.keypad ? ".keypad" : "") + (looks.large_picture ? ".large" : "");
}

/// Of a proof: what is asked now, and what was changed to come there.
std::string proof_word(const State& state) {
    const Proving& now = *state.proving;
    std::string word = "/" + std::to_string(state.entry->page.line) + "/" + now.kept.wire + "." + std::to_string(now.readings()) + "." + std::to_string(now.kept.taken.out_of_reach.size());
    word += "." + std::to_string(static_cast<int>(now.stage)) + "." + std::to_string(now.kept.twice.size());
    return word + (state.looks.retake ? ".again-" + std::to_string(*state.looks.retake) : "");
}

/// Of a bender being learned: the page, and which step of which piece.
std::string learn_word(const State& state) {
    const LearnPage page = learn_page(state);
    std::string word = "/" + std::to_string(static_cast<int>(page));
    if (page != LearnPage::name) word += "/" + std::to_string(state.looks.page);  // its pages are no step
    const auto piece = piece_in_work(state);
    if (piece) word += "/" + std::to_string(piece->id) + "." + std::to_string(static_cast<int>(next_step(*piece))) + "." + std::to_string(piece->inks.size());
    if (const auto& again = state.learn->again) word += "/again-" + std::to_string(again->piece) + "." + std::to_string(static_cast<int>(again->step)) + "." + std::to_string(again->ink);
    return word + "/" + std::to_string(pieces_here(state).size());
}

bool is_of_entry(Screen screen) { return screen == Screen::draft || screen == Screen::ask || screen == Screen::route; }

std::string key_of(const State& state, Screen screen) {
    if (screen == Screen::prove) return screen_name(screen) + "/" + std::to_string(state.looks.page) + proof_word(state);
    if (screen == Screen::learn) return screen_name(screen) + learn_word(state);
    if (screen == Screen::word) return "word/" + std::to_string(static_cast<int>(*state.entry->word));  // its pages are no step
    if (is_of_entry(screen)) return screen_name(screen) + "/" + std::to_string(state.looks.page) + entry_word(*state.entry, state.looks);
    std::string key = screen_name(screen) + "/" + std::to_string(state.looks.page);
    if (sheet_in_hand(state)) key += step_word(state);
    if (screen == Screen::card && state.card) key += "/" + (state.card->solid ? std::to_string(*state.card->solid) : std::string()) + "/" + state.card->figure;
    if (state.looks.reason) key += "/reason";
    if (screen == Screen::rack_ask) key += "/" + std::to_string(static_cast<int>(*state.looks.rack_ask)) + "/" + state.looks.rack_choice;
    if (screen == Screen::rack_piece) key += "/" + std::to_string(state.looks.piece->n);
    if (screen == Screen::figures) key += "/" + std::to_string(static_cast<int>(state.looks.figures));
    if (screen == Screen::leg) key += "/" + std::to_string(state.looks.leg);
    if (is_of_rescue(screen)) key += "/" + std::to_string(work_in_hand(state).turns.size()) + "." + std::to_string(work_in_hand(state).tapes.size()) + "/" + std::to_string(state.looks.to_read);
    if (screen == Screen::bend) key += "/" + std::to_string(state.looks.record);
    return key;
}

/// The screen asked for, or the shelf where it has nothing to show.
Screen showable(const State& state) {
    switch (state.looks.screen) {
        case Screen::lines: return state.job ? Screen::lines : Screen::shelf;
        case Screen::line:
        case Screen::stance:
        case Screen::stick_length:
        case Screen::order:
        case Screen::later:
        case Screen::bends:
        case Screen::bends_more:
        case Screen::bend_files:
        case Screen::hand:
        case Screen::wrong: return sheet_in_hand(state) ? state.looks.screen : Screen::shelf;
        case Screen::legs:
        case Screen::leg: return !sheet_in_hand(state) ? Screen::shelf : state.looks.leg < legs_here(state).size() ? state.looks.screen : bar_to_start(state) == Bar::none ? Screen::bench : Screen::line;
        case Screen::learn: return sheet_in_hand(state) && state.learn && state.card ? Screen::learn : Screen::shelf;
        case Screen::bend: return !sheet_in_hand(state) ? Screen::shelf : record_in_sight(state) ? Screen::bend : Screen::bends;
        case Screen::rescue:
        case Screen::rescue_more: return !sheet_in_hand(state) ? Screen::shelf : state.rescue ? state.looks.screen : bar_to_start(state) == Bar::none ? Screen::bench : Screen::line;
        case Screen::rescue_read: return !sheet_in_hand(state) ? Screen::shelf : reading_asked(state) ? Screen::rescue_read : bar_to_start(state) == Bar::none ? Screen::bench : Screen::line;
        case Screen::card: return sheet_in_hand(state) && state.card ? Screen::card : Screen::shelf;
        case Screen::bench:
            if (!sheet_in_hand(state)) return Screen::shelf;
            return bar_to_start(state) == Bar::none ? Screen::bench : Screen::line;
        case Screen::ask: return state.entry && state.entry->page.ask ? Screen::ask : Screen::shelf;
        case Screen::word: return state.entry && state.entry->word ? Screen::word : Screen::shelf;
        case Screen::draft:
        case Screen::route: return state.entry ? state.looks.screen : Screen::shelf;
        case Screen::prove: return !state.entry ? Screen::shelf : state.proving ? Screen::prove : Screen::draft;
        case Screen::stock: return sheet_in_hand(state) ? Screen::stock : Screen::rack;
        case Screen::rack_tube: return state.looks.tube ? Screen::rack_tube : Screen::rack;
        case Screen::rack_piece: return piece_in_sight(state) ? Screen::rack_piece : Screen::rack;
        case Screen::rack_ask: return state.looks.rack_ask ? Screen::rack_ask : Screen::rack;
        default: return state.looks.screen;
    }
}

void fill(const State& state, Screen screen, ScreenView& view) {
    switch (screen) {
        case Screen::shelf: return fill_shelf(state, view);
        case Screen::lines: return fill_lines(state, view);
        case Screen::line: return fill_line(state, view);
        case Screen::bench: return fill_bench(state, view);
        case Screen::wrong: return fill_wrong(state, view);
        case Screen::scrap: return fill_scrap(state, view);
        case Screen::settings: return fill_settings(state, view);
        case Screen::stance: return fill_stance(state, view);
        case Screen::stock: return fill_stock(state, view);
        case Screen::stick_length: return fill_stick_length(state, view);
        case Screen::order: return fill_order(state, view);
        case Screen::draft: return fill_draft(state, view);
        case Screen::ask: return fill_ask(state, view);
        case Screen::route: return fill_route(state, view);
        case Screen::word: return fill_word(state, view);
        case Screen::card: return fill_card(state, view);
        case Screen::prove: return fill_proof(state, view);
        case Screen::later: return fill_later(state, view);
        case Screen::learn: return fill_learn(state, view);
        case Screen::bends: return fill_bends(state, view);
        case Screen::bend: return fill_bend_record(state, view);
        case Screen::bends_more: return fill_bends_more(state, view);
        case Screen::bend_files: return fill_bend_files(state, view);
        case Screen::hand: return fill_hand(state, view);
        case Screen::legs: return fill_legs(state, view);
        case Screen::leg: return fill_leg(state, view);
        case Screen::rescue: return fill_rescue(state, view);
        case Screen::rescue_more: return fill_rescue_more(state, view);
        case Screen::rescue_read: return fill_rescue_read(state, view);
        case Screen::rack: return fill_rack(state, view);
        case Screen::rack_tube: return fill_rack_tube(state, view);
        case Screen::rack_piece: return fill_rack_piece(state, view);
        case Screen::rack_ask: return fill_rack_ask(state, view);
        case Screen::plan: return fill_plan(state, view);
        case Screen::plan_jobs: return fill_plan_jobs(state, view);
        case Screen::buy: return fill_buy(state, view);
        case Screen::joints: return fill_joints(state, view);
        case Screen::joint: return fill_joint(state, view);
        case Screen::shop_rules: return fill_shop_rules(state, view);
        case Screen::figures: return fill_figures(state, view);
        case Screen::keep_safe: return fill_keep_safe(state, view);
    }
}

}  // namespace

ScreenView screen_view(const State& state) {
    ScreenView view;
    view.theme = state.settings.theme;
    view.notice = state.looks.notice;
    view.good_news = !view.notice.empty() && view.notice == state.looks.good_news;
    if (state.book == BookStanding::refused) {
        view.key = "refused-book";
        fill_refused_book(state, view);
        return view;
    }
    const Screen screen = showable(state);
    view.key = key_of(state, screen);
    if (screen == Screen::word) view.notice.clear();  // it waits until the word is taken: there is no room for both
    fill(state, screen, view);
    if (is_of_entry(screen) && state.looks.large_picture) enlarge_entered_picture(state, view);
    return view;
}

}  // namespace tubewright
