// What a finger types: digits, a point, fractions of an inch.

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <numeric>

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

/// The fraction that a key stands for: "3/8", and "+1/16", which comes on top of what is there.
struct FractionKey {
    double size;
    bool on_top;
};
std::optional<FractionKey> fraction_key(const std::string& key) {
    const bool on_top = !key.empty() && key.front() == '+';
    const auto size = fraction(on_top ? key.substr(1) : key);
    if (!size || *size >= 1) return std::nullopt;
    return FractionKey{*size, on_top};
}

/// So many wholes and 64ths in lowest terms: "8 13/16", "1/2", "9".
std::string in_lowest_terms(int whole, int sixty_fourths) {
    whole += sixty_fourths / 64;
    sixty_fourths %= 64;
    if (sixty_fourths == 0) return std::to_string(whole);
    const int shared = std::gcd(sixty_fourths, 64);
    const std::string part = std::to_string(sixty_fourths / shared) + "/" + std::to_string(64 / shared);
    return whole == 0 ? part : std::to_string(whole) + " " + part;
}

std::string with_fraction(const std::string& typed, const FractionKey& key) {
    const double before = typed_number(typed).value_or(0), whole = std::floor(before);
    if (before > 1e8) return typed;
    const double part = (key.on_top ? before - whole : 0) + key.size;
    return in_lowest_terms(static_cast<int>(whole), static_cast<int>(std::lround(part * 64)));
}

std::size_t letters_in(const std::string& typed) {
    return static_cast<std::size_t>(std::count_if(typed.begin(), typed.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// Without the last letter, which may be of more than one byte in a name that came from a file.
std::string rubbed_out(std::string typed) {
    while (!typed.empty()) {
        const bool inner = (static_cast<unsigned char>(typed.back()) & 0xC0) == 0x80;
        typed.pop_back();
        if (!inner) break;
    }
    return typed;
}

}  // namespace

std::string with_letter(const std::string& typed, const std::string& key, std::size_t longest) {
    if (key == "back") return rubbed_out(typed);
    if (key == "clear") return "";
    const bool one = key.size() == 1 ? key[0] >= ' ' && key[0] < 0x7F : letters_in(key) == 1;
    return !one || letters_in(typed) >= longest ? typed : typed + key;
}

std::string without_blanks(const std::string& typed) {
    const std::size_t first = typed.find_first_not_of(' ');
    if (first == std::string::npos) return "";
    return typed.substr(first, typed.find_last_not_of(' ') - first + 1);
}

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
    if (const auto part = fraction_key(key)) return has_point ? typed : with_fraction(typed, *part);
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
