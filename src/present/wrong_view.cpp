// What went wrong, what is kept; nothing is written down before the held button. And a refused book.

#include "present/pieces.h"
#include "present/words.h"

namespace tubewright {
namespace {

constexpr Reason all_reasons[] = {Reason::wrong_place, Reason::wrong_way, Reason::over_bent, Reason::kinked, Reason::too_short, Reason::end_spoiled, Reason::damaged, Reason::does_not_fit, Reason::practice};

std::string offer_label(const KeptOffer& offer, const Tape& tape) {
    if (offer.id == "whole") return "Keep it whole";
    if (!offer.end) return "Keep nothing";
    return "Keep " + text(offer.kept, tape) + " at " + letter(*offer.end);
}

ChoiceBody reasons_body(bool cut) {
    ChoiceBody body;
    body.heading = "What went wrong?";
    body.lines = {cut ? TextView{"Nothing is written down before you confirm it."} : TextView{"No tube is cut yet: there is nothing to scrap.", Tone::caution}};
    for (const Reason reason : all_reasons)
        body.choices.push_back(unless(press_button("reason-" + std::to_string(static_cast<int>(reason)), reason_word(reason), ChooseReason{reason}), cut ? "" : "nothing is cut yet"));
    return body;
}

ChoiceBody kept_body(const State& state, const std::vector<KeptOffer>& offers) {
    const Tape tape = reader_tape(state);
    const Length whole = work_in_hand(state).cut_length;
    ChoiceBody body;
    body.heading = capital(reason_word(*state.looks.reason)) + ": what is kept of " + text(whole, tape) + "?";
    body.lines = {{"What is kept must be straight and sound."}};
    for (const KeptOffer& offer : offers) {
        ButtonView button = press_button("kept-" + offer.id, offer_label(offer, tape), ChooseKept{offer.id});
        button.chosen = offer.id == state.looks.kept_choice;
        if (button.chosen) body.lines.push_back({"Scrap " + text(rest_of(whole, offer.kept, tape), tape) + ", offcut " + text(offer.kept, tape) + ". The line begins again at the cut.", Tone::caution});
        body.choices.push_back(button);
    }
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
