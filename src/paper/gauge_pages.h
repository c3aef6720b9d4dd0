#pragma once
// Gauges for the line's angles at full size, to be cut out.

#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"
#include "present/paper_words.h"

namespace tubewright {

std::vector<PrintedPage> gauge_pages(const GaugesView& gauges, PageSize size, const Lettering& lettering);

}  // namespace tubewright
