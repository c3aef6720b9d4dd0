#pragma once
// What the commands that print have in common. Only for use by them.

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "bench/sheet.h"
#include "present/text.h"
#include "shell/places.h"
#include "store/library.h"

namespace tubewright {

struct JobToPrint {
    Library known;
    Job job;
};
Result<JobToPrint, Refusal> read_for_print(const Places& places, const std::string& path);

/// Of all lines, or of the one of this name. `path` names the job in a refusal.
Result<std::vector<Sheet>, Refusal> sheets_for(const JobToPrint& read, const std::string& path, const std::optional<std::string>& line);

/// What is refused is refused in one line; only what comes out all the same needs to be told of.
void tell_left_out(const Library& library, std::ostream& trouble);
/// Says the sentence, and gives the exit status of a refusal.
int refuse(const std::string& sentence, std::ostream& trouble);
/// As the screens show it until the reader chooses otherwise: half millimetres, or sixteenths of an inch.
Tape tape_for(const Job& job);
/// Made, or made but a finding says stop.
int status_of(const std::vector<Sheet>& sheets);

}  // namespace tubewright
