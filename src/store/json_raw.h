#pragma once
// The pieces of a JSON file that are kept as their text stood there: x- keys, and benders' whole cards.
// Only for use inside store, on a text that tree_from has taken.

#include <map>
#include <string>

#include "base/kept_keys.h"

namespace tubewright {

class RawText {
public:
    explicit RawText(const std::string& text);

    /// The x- keys of the object at this place, in the order of the file. Places are as in Node.
    KeptKeys kept(const std::string& place) const;
    /// The text of the whole card that stands at this place, whose last key is "bender".
    std::string card(const std::string& place) const;

private:
    friend class RawScanner;
    std::map<std::string, KeptKeys> kept_;
    std::map<std::string, std::string> cards_;
};

}  // namespace tubewright
