// A name or a note, typed in large letters.

#include "present/entry_pieces.h"

namespace tubewright {
namespace {

constexpr int letters_in_a_row = 9;

/// Small letters, capitals, figures: 27 keys each.
std::vector<ButtonView> letters(int page) {
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
        case WordBar::begun: return "begun at the bench under its name";
    }
    return "";
}

}  // namespace

void fill_word(const State& state, ScreenView& view) {
    KeypadBody body;
    const int page = state.looks.page % 3;
    body.below = true;
    body.columns = letters_in_a_row;
    body.asks = asks(state);
    body.entry = state.looks.typed;
    body.keys = letters(page);
    view.header = entry_header(state, state.entry->line().name);
    view.body = std::move(body);
    const bool empty = state.looks.typed.empty();
    view.footer.buttons = {back_button(), unless(press_button("rub-out", "Rub out", Key{"back"}), empty ? "nothing there" : ""), unless(press_button("wipe", "Wipe", Key{"clear"}), empty ? "nothing there" : ""),
                           press_button("other-keys", page == 0 ? "ABC" : page == 1 ? "123" : "abc", TurnPage{page < 2 ? 1 : -2})};
    view.footer.back_id = "back";
    ButtonView take = unless(press_button("next", "Take it", Next{}), trouble(state));
    take.weight = Weight::main;
    view.footer.main_id = take.id;
    view.footer.buttons.push_back(std::move(take));
}

}  // namespace tubewright
