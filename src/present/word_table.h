#pragma once
// A table in finished words, for paper.

#include <string>
#include <vector>

namespace tubewright {

/// Figures stand to the right.
struct WordTable {
    struct Column { std::string head; bool figures; };
    std::string title;
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> notes;
};

}  // namespace tubewright
