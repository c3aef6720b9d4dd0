#pragma once
// The command that makes a PDF of a job: bend sheets, strips of marks, angle gauges.

#include <iosfwd>
#include <optional>
#include <string>

#include "shell/places.h"

namespace tubewright {

struct PaperRequest {
    std::string job, out;
    std::optional<std::string> line;
    std::optional<std::string> what;  ///< sheet, strip or gauges; else all three
    std::optional<std::string> page;  ///< letter or a4; else letter for a job in inches, a4 for one in mm
};

/// Writes the file whole or not at all, over an older PDF only. To `trouble` one sentence where it is refused or fails, else
/// one for each of the user's own files that is left out.
int print_paper(const Places& places, const PaperRequest& request, std::ostream& trouble);

}  // namespace tubewright
