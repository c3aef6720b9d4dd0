#pragma once
// What every kind of page has at its top and foot. Only for use inside paper.

#include "base/words.h"
#include "paper/flow.h"

namespace tubewright {

/// `stopped`: in large letters that nothing may be made by this.
PrintBlock title_block(const Lettering& lettering, const std::string& title, bool stopped, double width_mm);
/// The bar that tells whether the printer kept to full size.
PrintBlock check_bar_block(const Lettering& lettering, Unit unit, double width_mm);
/// The banner alone.
PrintBlock stop_block(const Lettering& lettering, double width_mm);

}  // namespace tubewright
