#pragma once
// Why a file was not taken: four facts, and the one sentence they make.

#include <string>

namespace tubewright {

struct Refusal {
    std::string file;
    std::string place;    ///< such as lines[0].route.bends[2].angle, or line 3; empty: the whole file
    std::string what;     ///< goes on after the place: "is missing", "is 400"
    std::string allowed;
    bool operator==(const Refusal&) const = default;

    /// On one line, whatever the file holds.
    std::string sentence() const;
};

/// A few words out of a file, fit for a sentence: no line ends or other controls, not endless.
std::string in_short(const std::string& text);

}  // namespace tubewright
