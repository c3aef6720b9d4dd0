#pragma once
// One value in a JSON file, with its place, read strictly: whatever does not fit throws a Refusal that
// names file and place. Only for use inside store; the doors turn it into a Result with guarded().

#include <filesystem>
#include <initializer_list>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "base/words.h"
#include "store/refusal.h"

namespace tubewright {

/// What a number may be. `over`: more than least; `under`: less than most.
struct Range {
    double least, most;
    bool over = false, under = false;
    bool holds(double value) const;
};

/// "0 to 180", and with the file's unit for a range given in mm: what a refusal allows.
std::string allowed_numbers(Range range);
std::string allowed_lengths(Range mm, Unit unit);

/// A number in a sentence, in six figures.
std::string figure(double value);

class Node {
public:
    Node(const nlohmann::json& value, const std::string& file, std::string place = "") : value_(&value), file_(&file), place_(std::move(place)) {}

    bool is_text() const;
    bool is_number() const;
    bool is_object() const;
    const std::string& place() const { return place_; }
    const std::string& file() const { return *file_; }
    [[noreturn]] void refuse(const std::string& what, const std::string& allowed) const;

    // --- of an object
    /// Refuses every other key, except those that begin with x-.
    void known_keys(std::initializer_list<const char*> names) const;
    bool has(const std::string& key) const;
    Node at(const std::string& key) const;                 ///< refuses where it is missing
    Node at(const std::string& key, const std::string& allowed) const;
    std::optional<Node> find(const std::string& key) const;

    // --- of a list
    std::vector<Node> items(std::size_t least, std::size_t most) const;

    // --- of a value
    std::string text(std::size_t longest = 200) const;     ///< one line, not empty
    std::string note() const;                              ///< may be empty
    double number(Range range) const;
    int whole(int least, int most) const;
    bool yes() const;
    Angle angle(Range degrees) const { return {number(degrees)}; }
    Length length(Unit unit, Range mm) const;              ///< given in `unit`, range in mm
    template <class T>
    T one_of(const std::vector<std::pair<std::string, T>>& choices) const {
        const std::string given = is_text() ? text() : std::string();
        for (const auto& [name, value] : choices)
            if (is_text() && name == given) return value;
        std::string names;
        for (const auto& choice : choices) names += (names.empty() ? "" : ", ") + choice.first;
        refuse_value(names);
    }
    [[noreturn]] void refuse_value(const std::string& allowed) const;  ///< "is ...", with the value as it stands

private:
    friend void check_format(const Node& root, const std::string& format);
    std::string place_of(const std::string& key) const;
    std::string as_written() const;
    const nlohmann::json* value_;
    const std::string* file_;
    std::string place_;
};

/// The unit that a file or a card is written in.
Unit unit_from(const Node& units);

/// Refuses a file of another format, or of another version than 1.
void check_format(const Node& root, const std::string& format);

/// "a, b, c"
std::string joined(const std::vector<std::string>& names);
/// For a list of the wrong length.
std::string has_entries(std::size_t count);

template <class Make>
auto guarded(const Make& make) -> Result<decltype(make()), Refusal> {
    try {
        return make();
    } catch (const Refusal& refusal) {
        return refusal;
    }
}

}  // namespace tubewright
