#pragma once
// Any table on paper: a cut list, a buy list.

#include <string>
#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"

namespace tubewright {

struct PaperColumn {
    std::string head;
    bool to_the_right = false;  ///< as figures stand under each other
};

/// Finished words. A row that has fewer cells than there are columns has empty ones at its end; more are left out.
struct PaperTable {
    std::string title;
    std::vector<PaperColumn> columns;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> notes;  ///< under the table
};

/// The title and the heads stand on every page, no row is parted by a page's end.
std::vector<PrintedPage> table_pages(const PaperTable& table, PageSize size, const Lettering& lettering);

}  // namespace tubewright
