// What went wrong, what is kept; nothing is written down before the held button. And a refused book.

#include <algorithm>

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

constexpr Reason all_reasons[] = {Reason::wrong_place, Reason::wrong_way, Reason::over_bent, Reason::kinked, Reason::too_short, Reason::end_spoiled, Reason::damaged, Reason::does_not_fit, Reason::practice};

std::string offer_label(const KeptOffer& offer, const Tape& tape) {
    if (offer.id == "whole") return "Keep it whole";
    if (offer.pieces.empty()) return "Keep nothing";
    if (!offer.end) return "Keep both ends";
    return "Keep " + text(offer.pieces.front(), tape) + " at " + letter(*offer.end);
}

ChoiceBody reasons_body(bool cut) {
    ChoiceBody body;
    body.heading = "What went wrong?";
    body.lines = {cut ? TextView{"Nothing is written down before you confirm it."} : TextView{"No tube is cut yet: there is nothing to scrap.", Tone::caution}};
    for (const Reason reason : all_reasons)
        body.choices.push_back(unless(press_button("reason-" + std::to_string(static_cast<int>(reason)), reason_word(reason), ChooseReason{reason}), cut ? "" : "nothing is cut yet"));
    return body;
}

std::string offcut_words(const KeptOffer& offer, const Tape& tape) {
    if (offer.pieces.empty()) return "no offcut";
    std::string said = offer.pieces.size() > 1 ? "offcuts " : "offcut ";
    for (std::size_t i = 0; i < offer.pieces.size(); ++i) said += (i > 0 ? " and " : "") + text(offer.pieces[i], tape);
    return said;
}

/// What is asked, the answers, and what the chosen one comes to.
struct KeptQuestion {
    std::string asks;
    std::vector<ButtonView> choices;
    TextView outcome;
};

KeptQuestion kept_question(const State& state, const std::vector<KeptOffer>& offers) {
    const Tape tape = reader_tape(state);
    const Length whole = work_in_hand(state).cut_length;
    KeptQuestion question{capital(reason_word(*state.looks.reason)) + ": what is kept of " + text(whole, tape) + "?", {}, {"Say what is kept. It must be straight, sound and " + text(worth_keeping, tape) + " or longer."}};
    for (const KeptOffer& offer : offers) {
        ButtonView button = press_button("kept-" + offer.id, offer_label(offer, tape), ChooseKept{offer.id});
        button.chosen = offer.id == state.looks.kept_choice;
        if (button.chosen)
            question.outcome = {"Scrap " + text(on_tape(whole, tape) - shown_kept(offer.pieces, tape), tape) + ", " + offcut_words(offer, tape) + ". The line begins again at the cut.", Tone::caution};
        question.choices.push_back(std::move(button));
    }
    return question;
}

/// Bends as buttons, in rows that a finger's breadth fits; the one to be written down is chosen.
void add_bends(const State& state, SettingsBody& body) {
    constexpr std::size_t bends_in_a_row = 8;
    const std::optional<std::size_t> wrong = wrong_bend(state);
    std::vector<std::size_t> formed = formed_bends(state);
    std::sort(formed.begin(), formed.end());
    for (std::size_t i = 0; i < formed.size(); ++i) {
        if (i % bends_in_a_row == 0) body.groups.push_back({i == 0 ? "Which bend was the wrong one?" : "or", {}});
        ButtonView button = press_button("wrong-bend-" + std::to_string(formed[i] + 1), std::to_string(formed[i] + 1), ChooseBend{formed[i]});
        button.chosen = formed[i] == wrong;
        body.groups.back().choices.push_back(std::move(button));
    }
}

Body kept_body(const State& state, const std::vector<KeptOffer>& offers) {
    KeptQuestion question = kept_question(state, offers);
    if (!asks_which_bend(state)) {
        ChoiceBody body;
        body.heading = question.asks;
        body.lines = {question.outcome};
        body.choices = std::move(question.choices);
        return body;
    }
    SettingsBody body;
    body.groups.push_back({question.asks, std::move(question.choices)});
    add_bends(state, body);
    body.notes = {question.outcome};
    return body;
}

}  // namespace

void fill_wrong(const State& state, ScreenView& view) {
    const std::vector<KeptOffer> offers = kept_offers(state);
    view.header = line_header(state, "went wrong");
    ButtonView cancel = press_button("cancel", "Cancel", Cancel{});
    view.footer.back_id = "back";
    if (offers.empty() || !state.looks.reason) {
        view.body = reasons_body(!offers.empty());
        view.footer.buttons = {back_button()};
        return;
    }
    view.body = kept_body(state, offers);
    ButtonView confirm = unless(press_button("confirm", "Hold: write it down", ConfirmScrap{}, Weight::main), state.looks.kept_choice.empty() ? "say first what is kept" : "");
    confirm.held = true;
    view.footer.buttons = {cancel, back_button(), confirm};
}

void fill_refused_book(const State& state, ScreenView& view) {
    ChoiceBody body;
    body.heading = "The shop book can't be used.";
    body.lines = {{state.book_sentence, Tone::stop}, {state.book_in_use ? "Close the other program, then try again. Without the book nothing is remembered."
                                                                       : "It stays as it is. A fresh book is begun beside it; without one nothing is remembered."}};
    body.choices = {press_button("fresh-book", state.book_in_use ? "Try again" : "Begin a fresh book", StartFreshBook{}), press_button("no-book", "Go on without", GoOnWithoutBook{})};
    view.header = header_of(state, "Tubewright", "shop book");
    view.body = std::move(body);
}

}  // namespace tubewright
