#pragma once
// What a file holds for others: the keys of one of its objects that begin with x-. They are read by nobody
// here, travel with the thing beside which they stood, and go back into the file as they were.

#include <string>
#include <vector>

namespace tubewright {

/// Both as their text stood in the file, quotes and all.
struct KeptKey {
    std::string key, value;
    bool operator==(const KeptKey&) const = default;
};
using KeptKeys = std::vector<KeptKey>;

}  // namespace tubewright
