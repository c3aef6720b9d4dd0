#pragma once
// The commands that print and end: the bend sheet and what speaks against a job.

#include <iosfwd>
#include <optional>
#include <string>

#include "shell/places.h"

namespace tubewright {

/// Exit statuses, as the machine form of the sheet defines them.
namespace exit_status {
inline constexpr int made = 0;
inline constexpr int stopped = 1;   ///< made, but a finding says stop
inline constexpr int refused = 2;   ///< the input was refused
inline constexpr int broken = 3;    ///< the program failed
}  // namespace exit_status

struct SheetRequest {
    std::string job;
    std::optional<std::string> line;
    bool json = false;
};

/// Only the sheet goes to `out`; to `trouble` one sentence where it is refused, else one for each of the user's own
/// files that is left out.
int print_sheet(const Places& places, const SheetRequest& request, std::ostream& out, std::ostream& trouble);
int print_check(const Places& places, const std::string& job, std::ostream& out, std::ostream& trouble);
/// The jobs there are, one in a row.
int print_shelf(const Places& places, std::ostream& out, std::ostream& trouble);

}  // namespace tubewright
