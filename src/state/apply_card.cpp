// The bender's card: its numbers one by one, and keeping it as one's own.

#include <algorithm>
#include <set>

#include "state/card_figures.h"
#include "state/doing.h"

namespace tubewright {
namespace {

CardEdit* card_in_hand(State& state) { return state.looks.screen == Screen::card && state.card ? &*state.card : nullptr; }

void leave_figure(State& state) {
    state.card->figure.clear();
    state.looks.typed.clear();
}

}  // namespace

void change_card(CardEdit& card, Bender next) {
    if (next == card.bender) return;
    card.past.push_back(std::move(card.bender));
    card.bender = std::move(next);
    card.kept = false;
}

/// What was changed and not kept is still there, as long as it is the same bender.
void open_card(Doing& doing) {
    State& state = doing.state;
    const Bender& bender = sheet_in_hand(state)->line.bender;
    if (state.looks.screen == Screen::card) return;
    if (!state.card || state.card->bender.id != bender.id || state.card->past.empty()) state.card = CardEdit{bender, {}, {}, {}, false, false};
    state.card->solid.reset();
    state.card->figure.clear();
}

void pick_solid(Doing& doing, std::size_t solid) {
    CardEdit* card = card_in_hand(doing.state);
    if (!card || !card->figure.empty() || solid >= card->bender.body.size()) return;
    card->solid = solid;
    doing.state.looks.page = 0;
}

void pick_figure(Doing& doing, const std::string& id) {
    CardEdit* card = card_in_hand(doing.state);
    if (!card || !card_figure(card->bender, id)) return;
    card->figure = id;
    doing.state.looks.typed.clear();
}

void press_card_key(Doing& doing, const std::string& key) {
    std::string& typed = doing.state.looks.typed;
    const bool minus = !typed.empty() && typed.front() == '-';
    const std::string number = minus ? typed.substr(1) : typed;
    const std::string sign = minus ? "-" : "";
    if (key == "sign") typed = minus ? number : "-" + number;
    else if (key == "clear" || (key == "back" && number.empty())) typed.clear();
    else typed = sign + with_key(number, key);
}

void take_figure(Doing& doing) {
    State& state = doing.state;
    CardEdit* card = card_in_hand(state);
    if (!card || card->figure.empty() || figure_bar(state) != FigureBar::none) return;
    const CardFigure figure = *card_figure(card->bender, card->figure);
    Bender next = with_figure(card->bender, figure.id, *typed_figure(state, figure));
    leave_figure(state);
    change_card(*card, std::move(next));
}

void take_shipped(Doing& doing) {
    CardEdit* card = card_in_hand(doing.state);
    if (!card || !card->figure.empty() || card->solid) return;
    const auto shipped = doing.state.shipped_cards.find(card->bender.id);
    if (shipped == doing.state.shipped_cards.end()) return;
    change_card(*card, shipped->second);
    doing.state.looks.page = 0;
}

void swing_card(Doing& doing) {
    if (CardEdit* card = card_in_hand(doing.state)) card->swung = !card->swung;
}

void undo_card(Doing& doing) {
    CardEdit* card = card_in_hand(doing.state);
    if (!card || card->past.empty()) return;
    card->bender = std::move(card->past.back());
    card->past.pop_back();
    card->kept = false;
    if (card->solid && *card->solid >= card->bender.body.size()) card->solid.reset();
    leave_figure(doing.state);
}

/// An own card with the shipped numbers would hide what later versions ship: it is laid aside instead.
void keep_card(Doing& doing) {
    const State& state = doing.state;
    const CardEdit* card = card_in_hand(doing.state);
    if (!card || !card->figure.empty() || card->past.empty()) return;
    const auto shipped = state.shipped_cards.find(card->bender.id);
    if (shipped != state.shipped_cards.end() && shipped->second == card->bender) doing.requests.push_back(DropCard{card->bender});
    else doing.requests.push_back(SaveCard{card->bender, reader_unit(state)});
}

void back_at_card(Doing& doing) {
    State& state = doing.state;
    CardEdit* card = card_in_hand(state);
    if (card && !card->figure.empty()) return leave_figure(state);
    if (!card || !card->solid) return leave_beside(state);
    card->solid.reset();
    state.looks.page = 0;
}

namespace {

/// Lines whose tube is cut and whose bender is another with this card than it was at the cut, by name.
std::set<std::string> remeasured_lines(const State& state, const Job& next) {
    std::set<std::string> names;
    for (std::size_t i = 0; i < state.sheets.size(); ++i) {
        const Line& line = state.sheets[i].line;
        const auto work = state.work.lines.find(line_key(state.job_id, line.name));
        if (work == state.work.lines.end() || !work->second.cut || work->second.stage == Stage::done) continue;
        const bool changed = std::any_of(next.lines.begin(), next.lines.end(), [&](const Line& now) { return now.name == line.name && now.bender != line.bender; });
        if (changed || state.orders[i].remeasured) names.insert(line.name);
    }
    return names;
}

}  // namespace

/// The line in hand stays in hand where the job still has it.
void card_kept(Doing& doing, const CardKept& kept) {
    State& state = doing.state;
    if (kept.own) state.own_cards.insert(kept.bender.id);
    else state.own_cards.erase(kept.bender.id);
    if (state.card && state.card->bender == kept.bender) {
        state.card->past.clear();
        state.card->kept = true;
    }
    if (!state.job || !kept.job || kept.job->lines.empty()) return;
    const std::string name = state.line && *state.line < state.job->lines.size() ? state.job->lines[*state.line].name : "";
    for (const LineOrder& order : state.orders) stop_finding(doing, order);
    const std::set<std::string> remeasured = remeasured_lines(state, *kept.job);
    state.job = kept.job;
    state.orders.assign(state.job->lines.size(), {});
    for (std::size_t i = 0; i < state.orders.size(); ++i) state.orders[i].remeasured = remeasured.contains(state.job->lines[i].name);
    state.line.reset();
    work_out_proofs(state);
    for (std::size_t i = 0; i < kept.job->lines.size(); ++i)
        if (kept.job->lines[i].name == name) state.line = i;
    work_out_springbacks(state);
    work_out_sheets(doing);
    if (!state.line && !name.empty()) show(state, Screen::lines);
}

}  // namespace tubewright
