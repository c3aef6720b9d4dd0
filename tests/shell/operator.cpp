#include "shell/operator.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "state/rules.h"

namespace tubewright {
namespace {

bool can(const std::vector<Seen>& seen, const std::string& id) {
    return std::any_of(seen.begin(), seen.end(), [&](const Seen& thing) { return thing.id == id && thing.enabled; });
}

std::optional<std::string> first_unticked(const State& state, const std::vector<Seen>& seen) {
    const auto done = work_in_hand(state).ticks;
    for (const Seen& thing : seen)
        if (thing.enabled && thing.id.rfind("tick-", 0) == 0 && !done.contains(thing.id.substr(5))) return thing.id;
    return std::nullopt;
}

std::optional<std::size_t> unfinished_line(const State& state) {
    for (std::size_t i = 0; i < state.sheets.size(); ++i) {
        const auto work = state.work.lines.find(line_key(state.job_id, state.sheets[i].line.name));
        if (work == state.work.lines.end() || work->second.stage != Stage::done || work->second.finished < state.sheets[i].line.quantity) return i;
    }
    return std::nullopt;
}

}  // namespace

std::vector<std::string> keys_for(Angle reading) {
    std::vector<std::string> keys;
    const auto spell = [&](const char* digits) {
        for (; *digits; ++digits) keys.push_back(std::string(1, *digits));
    };
    const double whole = std::floor(reading.deg), rest = reading.deg - whole;
    std::array<char, 24> text{};
    const bool quarters = rest == 0.25 || rest == 0.5 || rest == 0.75;
    std::snprintf(text.data(), text.size(), "%g", quarters ? whole : reading.deg);
    spell(text.data());
    if (quarters) keys.push_back(rest == 0.25 ? "1/4" : rest == 0.5 ? "1/2" : "3/4");
    return keys;
}

/// The next key, or the main button once all of them stand on the screen.
std::string Operator::at_keypad(const State& state) {
    const Angle reading{std::clamp((step_in_hand(state)->target + off_target_[read_]).deg, 0.0, 180.0)};
    std::string entry;
    for (const std::string& key : keys_for(reading)) {
        if (entry == state.looks.typed) return "key-" + key;
        entry = with_key(entry, key);
    }
    ++read_;
    return "next";
}

std::optional<std::string> Operator::next_touch(const State& state, const std::vector<Seen>& seen) {
    const auto turned = [&]() -> std::string {
        if (can(seen, "later")) return "later";
        return "earlier";
    };
    if (can(seen, "dismiss")) return "dismiss";
    switch (state.looks.screen) {
        case Screen::shelf: return can(seen, "job-" + job_id_) ? "job-" + job_id_ : turned();
        case Screen::lines: {
            const auto line = unfinished_line(state);
            if (!line) return std::nullopt;
            for (const Seen& thing : seen)
                if (thing.enabled && thing.id == "line-" + state.sheets[*line].line.name) return thing.id;
            return turned();
        }
        case Screen::stock:
        case Screen::stick_length:
            for (const char* id : {"new-stick", "next"})
                if (can(seen, id)) return id;
            return "back";
        default: break;
    }
    if (state.looks.screen == Screen::line && state.line && work_in_hand(state).stage == Stage::done && work_in_hand(state).finished >= sheet_in_hand(state)->line.quantity) return "back";
    if (state.looks.screen == Screen::bench && state.line && work_in_hand(state).stage == Stage::done) {
        if (work_in_hand(state).finished < sheet_in_hand(state)->line.quantity && can(seen, "another")) return "another";
        for (const char* id : {"next", "lines", "back"})
            if (can(seen, id)) return id;
    }
    if (can(seen, "key-0") && state.looks.screen == Screen::bench && readings_left() > 0) return at_keypad(state);
    if (const auto tick = state.line ? first_unticked(state, seen) : std::nullopt) return tick;
    for (const char* id : {"more-ticks", "next-page", "pass"})
        if (can(seen, id) && !can(seen, "next")) return id;
    if (can(seen, "next")) return "next";
    for (const char* id : {"stick", "pull-on", "pull-again", "keep", "new-stick", "pass", "later"})
        if (can(seen, id)) return id;
    return "back";
}

}  // namespace tubewright
