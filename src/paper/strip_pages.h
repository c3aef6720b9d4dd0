#pragma once
// The strip of marks at full size, to be taped along the straight tube.

#include <vector>

#include "paper/lettering.h"
#include "paper/page.h"
#include "present/paper_words.h"

namespace tubewright {

std::vector<PrintedPage> strip_pages(const StripView& strip, PageSize size, const Lettering& lettering);

}  // namespace tubewright
