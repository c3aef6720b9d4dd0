// A spoiled tube: the question, what is kept, and the entry in the scrap log. And what is on the rack.

#include <algorithm>

#include "state/doing.h"

namespace tubewright {
namespace {

bool asking(const State& state) { return state.looks.screen == Screen::wrong && sheet_in_hand(state); }

void keep_for_later(Work& work, const std::string& tube, Length length, const std::string& day) {
    if (length > Length{}) work.offcuts.push_back({work.next_id++, tube, length, day});
}

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
    for (const Length& piece : chosen->pieces) keep_for_later(work, tube, piece, state.day);
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

void new_stick(Doing& doing, Length length) {
    const Sheet* sheet = sheet_in_hand(doing.state);
    if (!sheet || !(length > Length{}) || length > longest_stick) return;
    const std::string tube = tube_key(sheet->line.tube);
    Work work = doing.state.work;
    // What is left of the old stick is not lost by taking a new one.
    const auto old = work.stick.find(tube);
    if (old != work.stick.end()) keep_for_later(work, tube, old->second, doing.state.day);
    work.stick[tube] = length;
    change_work(doing, std::move(work));
    doing.state.looks.typed.clear();
    if (doing.state.looks.screen == Screen::stick_length) leave_beside(doing.state);
    if (doing.state.looks.screen == Screen::stock && stick_standing(doing.state).enough) leave_beside(doing.state);
}

void take_offcut(Doing& doing, std::int64_t id) {
    const Sheet* sheet = sheet_in_hand(doing.state);
    if (!sheet) return;
    const auto& offcuts = doing.state.work.offcuts;
    const auto found = std::find_if(offcuts.begin(), offcuts.end(), [&](const Offcut& offcut) { return offcut.id == id && offcut.tube == tube_key(sheet->line.tube); });
    if (found == offcuts.end()) return;
    const Length length = found->length;
    Work work = doing.state.work;
    work.offcuts.erase(work.offcuts.begin() + (found - offcuts.begin()));
    Length& stick = work.stick[tube_key(sheet->line.tube)];
    keep_for_later(work, tube_key(sheet->line.tube), stick, doing.state.day);
    stick = length;
    change_work(doing, std::move(work));
    if (doing.state.looks.screen == Screen::stock && stick_standing(doing.state).enough) leave_beside(doing.state);
}

}  // namespace tubewright
