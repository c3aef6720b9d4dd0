// A spoiled tube: the question, what is kept, and the entry in the scrap log. And what is on the rack.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

bool asking(const State& state) { return state.looks.screen == Screen::wrong && sheet_in_hand(state); }

/// A record that says more was done than an uncut tube allows: there is nothing to scrap.
bool uncut_misfit(const State& state) {
    return state.looks.screen == Screen::bench && bar_to_start(state) == Bar::none && !work_in_hand(state).cut &&
           misfit(*sheet_in_hand(state), work_in_hand(state)) != Misfit::none;
}

void start_afresh(Doing& doing) {
    const LineWork before = work_in_hand(doing.state);
    LineWork fresh = for_next_piece(before);
    fresh.attempt = before.attempt;
    change_line(doing, fresh);
    show(doing.state, Screen::bench);
}

}  // namespace

void open_question(Doing& doing) {
    const State& state = doing.state;
    if (!sheet_in_hand(state) || work_in_hand(state).stage == Stage::done) return;
    // From the line's own screen only where a finding keeps the cut piece from the bench.
    const bool stuck = state.looks.screen == Screen::line && bar_to_start(state) == Bar::stopped && work_in_hand(state).cut;
    const bool at_work = (state.looks.screen == Screen::bench || state.looks.screen == Screen::rescue) && bar_to_start(state) == Bar::none;
    if (!stuck && !at_work) return;
    show_beside(doing.state, Screen::wrong);
}

void choose_reason(Doing& doing, Reason reason) {
    if (!asking(doing.state) || kept_offers(doing.state).empty()) return;
    doing.state.looks.reason = reason;
    doing.state.looks.kept_choice.clear();
    doing.state.looks.wrong_bend.reset();
}

void choose_kept(Doing& doing, const std::string& choice) {
    if (!asking(doing.state) || !doing.state.looks.reason) return;
    for (const KeptOffer& offer : kept_offers(doing.state))
        if (offer.id == choice) doing.state.looks.kept_choice = choice;
}

void choose_bend(Doing& doing, std::size_t bend) {
    if (!asking(doing.state) || !asks_which_bend(doing.state)) return;
    const std::vector<std::size_t> formed = formed_bends(doing.state);
    if (std::find(formed.begin(), formed.end(), bend) != formed.end()) doing.state.looks.wrong_bend = bend;
}

void confirm_scrap(Doing& doing) {
    State& state = doing.state;
    if (uncut_misfit(state)) return start_afresh(doing);
    if (!asking(state) || !state.looks.reason) return;
    const std::vector<KeptOffer> offers = kept_offers(state);
    const auto chosen = std::find_if(offers.begin(), offers.end(), [&](const KeptOffer& offer) { return offer.id == state.looks.kept_choice; });
    if (chosen == offers.end()) return;
    const Sheet& sheet = *sheet_in_hand(state);
    const LineWork spoiled = work_in_hand(state);
    const std::string tube = tube_key(sheet.line.tube);
    Work work = state.work;
    work.scrap.push_back({work.next_id++, state.day, state.job->name, sheet.line.name, tube, *state.looks.reason,
                          spoiled.cut_length - chosen->kept(), chosen->kept(), wrong_bend(state), chosen->pieces.size() > 1 ? chosen->pieces[1] : Length{}});
    std::vector<ExactLength> kept;
    for (const Length& piece : chosen->pieces)
        if (exact(piece).um > 0) kept.push_back(exact(piece));
    write_spoiled(work, state.day, stock_tube(sheet.line.tube), line_key(state.job_id, sheet.line.name), kept, ledger_reason(*state.looks.reason));
    LineWork fresh = for_next_piece(spoiled);
    fresh.attempt = spoiled.attempt + 1;
    work.lines[line_key(state.job_id, sheet.line.name)] = fresh;
    change_work(doing, std::move(work));
    show(state, bar_to_start(state) == Bar::none ? Screen::bench : Screen::line);
}

void leave_question(Doing& doing, bool altogether) {
    State& state = doing.state;
    if (state.looks.screen != Screen::wrong) return;
    if (state.looks.reason && !altogether) {
        state.looks.reason.reset();
        state.looks.kept_choice.clear();
        state.looks.wrong_bend.reset();
        return;
    }
    leave_beside(state);
}

namespace {

/// Lines of that tube are cut from this length now. What was cut from before stays on the rack.
void take_in_use(Doing& doing, Work work, const Tube& tube, PieceNumber piece) {
    work.in_use[tube_key(stock_tube(tube))] = piece;
    change_work(doing, std::move(work));
    State& state = doing.state;
    state.looks.typed.clear();
    if (state.looks.screen == Screen::stick_length) leave_beside(state);
    if (state.looks.screen == Screen::stock && stick_standing(state).enough) leave_beside(state);
}

}  // namespace

void new_stick(Doing& doing, Length length) {
    const Sheet* sheet = sheet_in_hand(doing.state);
    if (!sheet || !(exact(length).um > 0) || length > longest_stick) return;
    Work work = doing.state.work;
    const PieceNumber piece = stick_taken(work, doing.state.day, stock_tube(sheet->line.tube), exact(length));
    take_in_use(doing, std::move(work), sheet->line.tube, piece);
}

void take_offcut(Doing& doing, PieceNumber piece) {
    const Sheet* sheet = sheet_in_hand(doing.state);
    if (!sheet) return;
    for (const RackLength& offcut : offcuts_of_tube(doing.state))
        if (offcut.piece == piece) return take_in_use(doing, doing.state.work, sheet->line.tube, piece);
}

}  // namespace tubewright
