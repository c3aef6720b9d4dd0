#include "store/node.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/tolerance.h"
#include "store/number_text.h"

namespace tubewright {
namespace {

/// Without a tail of zeros.
std::string to_places(double value, int places) {
    char digits[64];
    std::string text(digits, std::to_chars(digits, digits + sizeof digits, value, std::chars_format::fixed, places).ptr);
    if (places > 0) text.erase(text.find_last_not_of('0') + 1);
    if (!text.empty() && text.back() == '.') text.pop_back();
    return text;
}

double as_typed(const std::string& text) {
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

struct Bound {
    std::string text;
    bool left_out;  ///< only what lies beyond it is allowed
};

/// The bound in about four figures: the nearest that may itself be typed, else the next one inside.
template <class Allowed>
Bound rounded(double bound, bool left_out, int inward, const Allowed& allowed) {
    const double size = std::abs(bound);
    const int places = size < 10 ? 3 : size < 100 ? 2 : size < 1000 ? 1 : 0;
    const double unit = std::pow(10.0, -places), nearest = std::round(bound / unit) * unit;
    if (left_out && std::abs(nearest - bound) <= tolerance::arithmetic * size) return {to_places(nearest, places), true};
    for (const double candidate : {nearest, nearest + inward * unit}) {
        const std::string text = to_places(candidate, places);
        if (allowed(as_typed(text))) return {text, false};
    }
    return {figure(bound), left_out};
}

/// `scale`: how much of the range's unit is one of the unit that the file is written in.
std::string in_words(const Range& range, double scale, const std::string& unit) {
    const auto allowed = [&](double typed) { return range.holds(typed * scale); };
    const Bound least = rounded(range.least / scale, range.over, 1, allowed);
    const Bound most = rounded(range.most / scale, range.under, -1, allowed);
    if (!least.left_out && !most.left_out) return least.text + " to " + most.text + unit;
    return (least.left_out ? "more than " : "at least ") + least.text + " and " + (most.left_out ? "less than " : "at most ") + most.text + unit;
}

}  // namespace

std::string figure(double value) {
    char digits[32];
    return {digits, std::to_chars(digits, digits + sizeof digits, value, std::chars_format::general, 6).ptr};
}

std::string allowed_numbers(Range range) { return in_words(range, 1, ""); }

std::string allowed_lengths(Range mm, Unit unit) { return in_words(mm, mm_in(unit), unit == Unit::inch ? " in" : " mm"); }

bool Range::holds(double value) const {
    return (over ? value > least : value >= least) && (under ? value < most : value <= most);
}

bool Node::is_text() const { return value_->is_string(); }
bool Node::is_number() const { return value_->is_number(); }
bool Node::is_object() const { return value_->is_object(); }

void Node::refuse(const std::string& what, const std::string& allowed) const { throw Refusal{*file_, place_, what, allowed}; }

std::string Node::as_written() const {
    if (value_->is_object()) return "an object";
    if (value_->is_array()) return "a list";
    if (value_->is_string()) return "\"" + in_short(value_->get_ref<const std::string&>()) + "\"";
    return value_->dump();
}

void Node::refuse_value(const std::string& allowed) const { refuse("is " + as_written(), allowed); }

std::string Node::place_of(const std::string& key) const { return (place_.empty() ? "" : place_ + ".") + in_short(key); }

void Node::known_keys(std::initializer_list<const char*> names) const {
    if (!is_object()) refuse_value("an object");
    for (const auto& [key, value] : value_->items()) {
        if (key.rfind("x-", 0) == 0 || std::find(names.begin(), names.end(), key) != names.end()) continue;
        std::string allowed;
        for (const char* name : names) allowed += std::string(name) + ", ";
        throw Refusal{*file_, place_of(key), "is not a key that belongs here", allowed + "and keys that begin with x-"};
    }
}

bool Node::has(const std::string& key) const { return is_object() && value_->contains(key); }

std::optional<Node> Node::find(const std::string& key) const {
    if (!is_object()) refuse_value("an object");
    const auto found = value_->find(key);
    if (found == value_->end()) return std::nullopt;
    return Node(*found, *file_, place_of(key));
}

Node Node::at(const std::string& key, const std::string& allowed) const {
    const std::optional<Node> found = find(key);
    if (!found) throw Refusal{*file_, place_of(key), "is missing", allowed};
    return *found;
}

Node Node::at(const std::string& key) const { return at(key, "a value for " + key); }

std::vector<Node> Node::items(std::size_t least, std::size_t most) const {
    const std::string allowed = "a list of " + std::to_string(least) + " to " + std::to_string(most);
    if (!value_->is_array()) refuse_value(allowed);
    if (value_->size() < least || value_->size() > most) refuse(has_entries(value_->size()), allowed);
    std::vector<Node> nodes;
    for (std::size_t i = 0; i < value_->size(); ++i) nodes.emplace_back((*value_)[i], *file_, place_ + "[" + std::to_string(i) + "]");
    return nodes;
}

std::string Node::note() const {
    constexpr std::size_t longest = 1000;
    if (!is_text()) refuse_value("text");
    const std::string& text = value_->get_ref<const std::string&>();
    if (text.size() > longest) refuse("is too long", "text up to " + std::to_string(longest) + " bytes");
    if (std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }))
        refuse("holds a control character", "one line of text");
    return text;
}

std::string Node::text(std::size_t longest) const {
    const std::string text = note();
    if (text.find_first_not_of(' ') == std::string::npos) refuse("is empty", "some text");
    if (text.size() > longest) refuse("is too long", "text up to " + std::to_string(longest) + " bytes");
    return text;
}

double Node::number(Range range) const {
    if (!value_->is_number() || !range.holds(value_->get<double>())) refuse_value(allowed_numbers(range));
    return value_->get<double>();
}

int Node::whole(int least, int most) const {
    const Range range{static_cast<double>(least), static_cast<double>(most)};
    const bool fits = value_->is_number() && range.holds(value_->get<double>()) && std::floor(value_->get<double>()) == value_->get<double>();
    if (!fits) refuse_value("a whole number, " + allowed_numbers(range));
    return static_cast<int>(value_->get<double>());
}

bool Node::yes() const {
    if (!value_->is_boolean()) refuse_value("true or false");
    return value_->get<bool>();
}

Length Node::length(Unit unit, Range mm) const {
    const double scale = mm_in(unit);
    if (!value_->is_number() || !mm.holds(value_->get<double>() * scale)) refuse_value(allowed_lengths(mm, unit));
    return {value_->get<double>() * scale};
}

Unit unit_from(const Node& units) { return units.one_of<Unit>({{"in", Unit::inch}, {"mm", Unit::mm}}); }

void check_format(const Node& root, const std::string& format) {
    if (!root.is_object()) root.refuse_value("an object with \"format\": \"" + format + "\"");
    const Node given = root.at("format", "\"" + format + "\"");
    if (!given.is_text() || given.note() != format) given.refuse_value("\"" + format + "\"");
    const Node version = root.at("version", "1");
    if (!version.is_number()) version.refuse_value("1");
    const double number = version.value_->get<double>();
    if (number > 1) version.refuse("is " + figure(number) + ", from a newer version of the program", "1");
    if (number != 1) version.refuse_value("1");
}

std::string has_entries(std::size_t count) { return "has " + std::to_string(count) + (count == 1 ? " entry" : " entries"); }

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

}  // namespace tubewright
