#pragma once
// Any table on paper: a cut list, a buy list.

#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"
#include "present/word_table.h"

namespace tubewright {

/// The title and the heads stand on every page, no row is parted by a page's end.
std::vector<PrintedPage> table_pages(const WordTable& table, PageSize size, const Lettering& lettering);

}  // namespace tubewright
