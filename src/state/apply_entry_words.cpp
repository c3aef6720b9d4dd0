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

bool at_word(const State& state) { return line_is_entered(state) && state.looks.screen == Screen::word && state.entry->word; }

/// The three pages of the pad.
constexpr int small_letters = 0, capitals = 1;

}  // namespace

std::size_t longest_word(WordOf of) { return of == WordOf::line_name || of == WordOf::job_name ? 40 : 140; }

bool is_begun(const State& state, const DraftLine& line) {
    const auto knows = [&](const std::string& job) {
        const std::string key = line_key(job, line.name);
        return state.work.lines.contains(key) || state.work.joints.contains({key, End::A}) || state.work.joints.contains({key, End::B});
    };
    const std::string& path = state.entry->path;
    return std::any_of(state.shelf.begin(), state.shelf.end(), [&](const ShelfEntry& entry) { return entry.path == path && knows(entry.id); }) || knows(path);
}

WordBar bar_to_word(const State& state) {
    const Entry& entry = *state.entry;
    const std::string word = without_blanks(state.looks.typed);
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
    const std::size_t before = typed.size();
    typed = with_letter(typed, key, longest_word(*state.entry->word));
    if (typed.size() > before && state.looks.page == capitals) state.looks.page = small_letters;  // one capital begins a word
}

void take_word(Doing& doing) {
    State& state = doing.state;
    if (!at_word(state) || bar_to_word(state) != WordBar::none) return;
    EntryPage next = state.entry->page;
    word_in(next, *state.entry->word) = without_blanks(state.looks.typed);
    next.ask = Ask::about;
    state.entry->word.reset();
    change_entry(doing, std::move(next));
    show_page(state);
}

}  // namespace tubewright
