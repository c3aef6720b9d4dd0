#pragma once
// Pages as a PDF. The same pages give the same bytes: no date stands in them.

#include <string>
#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"

namespace tubewright {

/// `title` is what a viewer shows for the whole. At full size, each page with its number at the foot.
std::string pdf_of(const std::vector<PrintedPage>& pages, PageSize size, const Lettering& lettering, const std::string& title);

}  // namespace tubewright
