// What a finger types: digits, a point, quarters.

#include <cctype>
#include <charconv>

#include "state/rules.h"

namespace tubewright {
namespace {

constexpr std::size_t longest_entry = 9;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::optional<double> plain_number(const std::string& text) {
    if (text.empty() || (!is_digit(text.front()) && text.front() != '.')) return std::nullopt;
    double value = 0;
    const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    if (trouble != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return value;
}

std::optional<double> fraction(const std::string& text) {
    const std::size_t bar = text.find('/');
    if (bar == std::string::npos) return std::nullopt;
    const auto above = plain_number(text.substr(0, bar)), below = plain_number(text.substr(bar + 1));
    if (!above || !below || *below <= 0) return std::nullopt;
    return *above / *below;
}

/// The entry without its fraction, if it has one.
std::string whole_part(const std::string& typed) {
    const std::size_t bar = typed.find('/');
    if (bar == std::string::npos) return typed;
    const std::size_t gap = typed.find(' ');
    return gap == std::string::npos ? "" : typed.substr(0, gap);
}

}  // namespace

std::optional<double> typed_number(const std::string& typed) {
    const std::size_t gap = typed.find(' ');
    if (gap != std::string::npos) {
        const auto whole = plain_number(typed.substr(0, gap)), part = fraction(typed.substr(gap + 1));
        if (!whole || !part) return std::nullopt;
        return *whole + *part;
    }
    if (typed.find('/') != std::string::npos) return fraction(typed);
    return plain_number(typed);
}

std::string with_key(const std::string& typed, const std::string& key) {
    const bool has_fraction = typed.find('/') != std::string::npos, has_point = typed.find('.') != std::string::npos;
    if (key == "clear") return "";
    if (key == "back") {
        if (has_fraction) return whole_part(typed);
        return typed.substr(0, typed.size() - (typed.empty() ? 0 : 1));
    }
    if (key == "1/4" || key == "1/2" || key == "3/4") {
        if (has_point) return typed;
        const std::string whole = whole_part(typed);
        return whole.empty() ? key : whole + " " + key;
    }
    const bool digit = key.size() == 1 && is_digit(key[0]), point = key == ".";
    if ((!digit && !point) || has_fraction || (point && has_point) || typed.size() >= longest_entry) return typed;
    return typed == "0" && digit ? key : typed + key;
}

std::optional<Angle> typed_reading(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (!number || *number > 180) return std::nullopt;
    return Angle{*number};
}

std::optional<Length> typed_stick(const State& state) {
    const auto number = typed_number(state.looks.typed);
    if (!number) return std::nullopt;
    const Length length{reader_unit(state) == Unit::inch ? *number * 25.4 : *number};
    if (length <= Length{} || length > longest_stick) return std::nullopt;
    return length;
}

}  // namespace tubewright
