#pragma once
// The bend sheet of one line on paper, to be read at arm's length beside the vise.

#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"
#include "present/sheet_words.h"

namespace tubewright {

std::vector<PrintedPage> sheet_pages(const SheetWords& sheet, PageSize size, const Lettering& lettering);

}  // namespace tubewright
