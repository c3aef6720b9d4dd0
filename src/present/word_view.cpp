// A name or a note, typed in large letters.

#include "present/entry_pieces.h"

namespace tubewright {
namespace {

std::string asks(const State& state) {
    const Entry& entry = *state.entry;
    switch (*entry.word) {
        case WordOf::line_name: return "Name of the line";
        case WordOf::line_note: return "Note on " + shortened(entry.line().name);
        case WordOf::job_name: return "Name of the job";
        case WordOf::job_note: return "Note on the job";
    }
    return "";
}

std::string trouble(const State& state) {
    switch (bar_to_word(state)) {
        case WordBar::none: return "";
        case WordBar::empty: return "no name yet";
        case WordBar::taken: return "another line has this name";
        case WordBar::begun: return "the shop book knows it by its name";
    }
    return "";
}

}  // namespace

std::vector<ButtonView> letter_keys(int page) {
    std::vector<std::string> keys;
    if (page < 2)
        for (char letter = page == 0 ? 'a' : 'A'; letter <= (page == 0 ? 'z' : 'Z'); ++letter) keys.emplace_back(1, letter);
    else
        for (const char* key : {"1", "2", "3", "4", "5", "6", "7", "8", "9", "0", "-", "/", ".", ",", ":", "'", "\"", "(", ")", "+", "=", "&", "#", "%", "°", "×"}) keys.emplace_back(key);
    std::vector<ButtonView> buttons;
    for (const std::string& key : keys) buttons.push_back(press_button("letter-" + key, key, Key{key}));
    buttons.push_back(press_button("letter-space", "space", Key{" "}));
    return buttons;
}

FooterView letters_footer(const std::string& typed, int page) {
    const std::string why_not = typed.empty() ? "nothing there" : "";
    FooterView footer;
    footer.buttons = {back_button(), unless(press_button("rub-out", "Rub out", Key{"back"}), why_not), unless(press_button("wipe", "Wipe", Key{"clear"}), why_not),
                      press_button("other-keys", page == 0 ? "ABC" : page == 1 ? "123" : "abc", TurnPage{page < 2 ? 1 : -2})};
    footer.back_id = "back";
    return footer;
}

void fill_letters(const State& state, const std::string& asks, const std::string& why_not, ScreenView& view) {
    KeypadBody body;
    const int page = state.looks.page % 3;
    body.below = true;
    body.columns = letters_in_a_row;
    body.asks = asks;
    body.entry = state.looks.typed;
    body.keys = letter_keys(page);
    view.body = std::move(body);
    view.footer = letters_footer(state.looks.typed, page);
    view.footer.buttons.push_back(unless(press_button("next", "Take it", Next{}, Weight::main), why_not));
    view.footer.main_id = "next";
}

void fill_word(const State& state, ScreenView& view) {
    view.header = entry_header(state, state.entry->line().name);
    fill_letters(state, asks(state), trouble(state), view);
}

}  // namespace tubewright
