// Names and notes of a job being entered, typed in letters.

#include <algorithm>

#include "state/apply_entry.h"
#include "state/rules.h"

namespace tubewright {
namespace {

std::string& word_in(EntryPage& page, WordOf of) {
    DraftLine& line = page.job.lines[page.line];
    switch (of) {
        case WordOf::line_name: return line.name;
        case WordOf::line_note: return line.note;
        case WordOf::job_name: return page.job.name;
        case WordOf::job_note: break;
    }
    return page.job.note;
}

/// Without the blanks around it.
std::string trimmed(const std::string& typed) {
    const std::size_t first = typed.find_first_not_of(' ');
    if (first == std::string::npos) return "";
    return typed.substr(first, typed.find_last_not_of(' ') - first + 1);
}

bool at_word(const State& state) { return line_is_entered(state) && state.looks.screen == Screen::word && state.entry->word; }

/// The last letter, which may be of more than one byte in a name that came from a file.
void rub_out(std::string& typed) {
    while (!typed.empty()) {
        const bool inner = (static_cast<unsigned char>(typed.back()) & 0xC0) == 0x80;
        typed.pop_back();
        if (!inner) return;
    }
}

std::size_t letters_in(const std::string& typed) {
    return static_cast<std::size_t>(std::count_if(typed.begin(), typed.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// The three pages of the pad.
constexpr int small_letters = 0, capitals = 1;

}  // namespace

std::size_t longest_word(WordOf of) { return of == WordOf::line_name || of == WordOf::job_name ? 40 : 140; }

bool is_begun(const State& state, const DraftLine& line) {
    const auto knows = [&](const std::string& job) { return state.work.lines.contains(line_key(job, line.name)); };
    const std::string& path = state.entry->path;
    return std::any_of(state.shelf.begin(), state.shelf.end(), [&](const ShelfEntry& entry) { return entry.path == path && knows(entry.id); }) || knows(path);
}

WordBar bar_to_word(const State& state) {
    const Entry& entry = *state.entry;
    const std::string word = trimmed(state.looks.typed);
    const bool name = *entry.word == WordOf::line_name || *entry.word == WordOf::job_name;
    if (name && word.empty()) return WordBar::empty;
    if (*entry.word != WordOf::line_name || word == entry.line().name) return WordBar::none;
    if (is_begun(state, entry.line())) return WordBar::begun;
    const auto& lines = entry.page.job.lines;
    return std::any_of(lines.begin(), lines.end(), [&](const DraftLine& line) { return line.name == word; }) ? WordBar::taken : WordBar::none;
}

void ask_word(Doing& doing, WordOf of) {
    State& state = doing.state;
    if (!line_is_entered(state)) return;
    show(state, Screen::word);
    state.entry->word = of;
    state.looks.typed = word_in(state.entry->page, of);
    state.looks.page = state.looks.typed.empty() ? capitals : small_letters;
}

void press_letter(Doing& doing, const std::string& key) {
    State& state = doing.state;
    if (!at_word(state)) return;
    std::string& typed = state.looks.typed;
    if (key == "back") return rub_out(typed);
    if (key == "clear") return typed.clear();
    const bool one = key.size() == 1 ? key[0] >= ' ' && key[0] < 0x7F : letters_in(key) == 1;
    if (!one || letters_in(typed) >= longest_word(*state.entry->word)) return;
    typed += key;
    if (state.looks.page == capitals) state.looks.page = small_letters;  // one capital begins a word
}

void take_word(Doing& doing) {
    State& state = doing.state;
    if (!at_word(state) || bar_to_word(state) != WordBar::none) return;
    EntryPage next = state.entry->page;
    word_in(next, *state.entry->word) = trimmed(state.looks.typed);
    next.ask = Ask::about;
    state.entry->word.reset();
    change_entry(doing, std::move(next));
    show_page(state);
}

}  // namespace tubewright
