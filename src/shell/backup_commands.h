#pragma once
// The commands that back up what is the person's, and bring it back.

#include <iosfwd>
#include <string>

#include "shell/places.h"

namespace tubewright {

/// `to`: a folder for a second copy, or empty. To `out` what was written and where; to `trouble` one sentence where it is
/// refused or fails, or one for each file that is left out. The exit status is that of print.h; 1: made, but something is left out.
int back_up(const Places& places, const std::string& to, const std::string& day, std::ostream& out, std::ostream& trouble);

/// Refused while a window has the shop book open.
int restore(const Places& places, const std::string& file, const std::string& day, std::ostream& out, std::ostream& trouble);

}  // namespace tubewright
