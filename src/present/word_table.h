#pragma once
// A table in finished words, for paper.

#include <string>
#include <vector>

namespace tubewright {

/// Figures stand to the right. A row that has fewer cells than there are columns has empty ones at its end; more are left out.
struct WordTable {
    struct Column { std::string head; bool figures = false; };
    std::string title;
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> notes;
};

}  // namespace tubewright
