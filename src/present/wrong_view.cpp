// What went wrong, what is kept; nothing is written down before the held button. And a refused book.

#include <algorithm>

#include "present/pieces.h"
#include "present/words.h"
#include "state/rescue_look.h"

namespace tubewright {
namespace {

constexpr Reason all_reasons[] = {Reason::wrong_place, Reason::wrong_way, Reason::over_bent, Reason::kinked, Reason::too_short, Reason::end_spoiled, Reason::damaged, Reason::does_not_fit, Reason::practice};

std::string offer_label(const KeptOffer& offer, const Tape& tape) {
    if (offer.id == "whole") return "Keep it whole";
    if (offer.pieces.empty()) return "Keep nothing";
    if (!offer.end) return "Keep both ends";
    return "Keep " + left_text(offer.pieces.front(), tape) + " at " + letter(*offer.end);
}

ChoiceBody reasons_body(const State& state, bool cut) {
    ChoiceBody body;
    body.heading = "What went wrong?";
    body.lines = {cut ? TextView{"Nothing is written down before you confirm it."} : TextView{"No tube is cut yet: there is nothing to scrap.", Tone::caution}};
    for (const Reason reason : all_reasons)
        body.choices.push_back(unless(press_button("reason-" + std::to_string(static_cast<int>(reason)), reason_word(reason), ChooseReason{reason}), cut ? "" : "nothing is cut yet"));
    if (const auto save = rescue_button(state); save && (!state.rescue || !state.rescue->found.ways.empty())) body.choices.push_back(*save);
    for (const TextView& good : still_good_notes(state)) body.lines.push_back(good);
    return body;
}

std::string offcut_words(const KeptOffer& offer, const Tape& tape) {
    if (offer.pieces.empty()) return "no offcut";
    std::string said = offer.pieces.size() > 1 ? "offcuts " : "offcut ";
    for (std::size_t i = 0; i < offer.pieces.size(); ++i) said += (i > 0 ? " and " : "") + left_text(offer.pieces[i], tape);
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
    KeptQuestion question{capital(reason_word(*state.looks.reason)) + ": what is kept of " + text(whole, tape) + "?", {}, {"Say what is kept. It must be straight, sound and " + text(state.work.rules.keep, tape) + " or longer."}};
    for (const KeptOffer& offer : offers) {
        ButtonView button = press_button("kept-" + offer.id, offer_label(offer, tape), ChooseKept{offer.id});
        button.chosen = offer.id == state.looks.kept_choice;
        if (button.chosen)
            question.outcome = {"Scrap " + text(on_tape(whole, tape) - shown_kept(offer.pieces, tape), tape) + ", " + offcut_words(offer, tape) + ". The line starts over with a new cut.", Tone::caution};
        question.choices.push_back(std::move(button));
    }
    return question;
}

/// One button for each bend, the one to be written down chosen.
SettingsGroup bend_buttons(const std::vector<std::size_t>& bends, std::size_t wrong) {
    SettingsGroup group{"Which bend was the wrong one?", {}};
    for (const std::size_t bend : bends) {
        ButtonView button = press_button("wrong-bend-" + std::to_string(bend + 1), std::to_string(bend + 1), ChooseBend{bend});
        button.chosen = bend == wrong;
        group.choices.push_back(std::move(button));
    }
    return group;
}

/// For more bends than a row of buttons holds: from one to the next.
SettingsGroup bend_stepper(const std::vector<std::size_t>& bends, std::size_t wrong) {
    const auto at = std::find(bends.begin(), bends.end(), wrong);
    const bool first = at == bends.begin(), last = at + 1 == bends.end();
    const ButtonView lower = press_button("wrong-bend-lower", first ? "a lower one" : "bend " + std::to_string(*(at - 1) + 1), ChooseBend{first ? wrong : *(at - 1)});
    const ButtonView higher = press_button("wrong-bend-higher", last ? "a higher one" : "bend " + std::to_string(*(at + 1) + 1), ChooseBend{last ? wrong : *(at + 1)});
    return {capital(bend_name(wrong)) + " was the wrong one. No, it was", {unless(lower, first ? "it is the lowest" : ""), unless(higher, last ? "it is the highest" : "")}};
}

SettingsGroup which_bend(const State& state) {
    constexpr std::size_t most_in_a_row = 9;
    std::vector<std::size_t> bends = formed_bends(state);
    std::sort(bends.begin(), bends.end());
    const std::size_t said = wrong_bend(state).value_or(bends.back());
    const std::size_t wrong = std::find(bends.begin(), bends.end(), said) == bends.end() ? bends.back() : said;
    return bends.size() > most_in_a_row ? bend_stepper(bends, wrong) : bend_buttons(bends, wrong);
}

TextView counts_as_pulled(const State& state) {
    return {capital(bend_name(*bend_being_pulled(state))) + " counts as pulled. If the lever has not moved, go back first."};
}

Body kept_body(const State& state, const std::vector<KeptOffer>& offers) {
    KeptQuestion question = kept_question(state, offers);
    if (!asks_which_bend(state)) {
        ChoiceBody body;
        body.heading = question.asks;
        body.lines = {question.outcome};
        if (bend_being_pulled(state)) body.lines.push_back(counts_as_pulled(state));
        body.choices = std::move(question.choices);
        return body;
    }
    SettingsBody body;
    body.groups.push_back({question.asks, std::move(question.choices)});
    body.groups.push_back(which_bend(state));
    body.notes = {question.outcome};
    if (bend_being_pulled(state)) body.notes.push_back(counts_as_pulled(state));
    return body;
}

}  // namespace

void fill_wrong(const State& state, ScreenView& view) {
    const std::vector<KeptOffer> offers = kept_offers(state);
    view.header = line_header(state, "went wrong");
    ButtonView cancel = press_button("cancel", "Cancel", Cancel{});
    view.footer.back_id = "back";
    if (offers.empty() || !state.looks.reason) {
        view.body = reasons_body(state, !offers.empty());
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
