#include "shell/print_parts.h"

#include <algorithm>
#include <ostream>

#include "bench/ordered.h"
#include "shell/print.h"
#include "state/work.h"
#include "store/job_file.h"

namespace tubewright {

Result<JobToPrint, Refusal> read_for_print(const Places& places, const std::string& path) {
    auto library = read_library(places.assets, places.home);
    if (!library.ok()) return library.trouble();
    auto job = read_job(path, library.value());
    if (!job.ok()) return job.trouble();
    return JobToPrint{std::move(library).value(), std::move(job).value()};
}

Result<std::vector<Sheet>, Refusal> sheets_for(const JobToPrint& read, const std::string& path, const std::optional<std::string>& line) {
    std::vector<Sheet> sheets;
    std::string names;
    for (const Line& one : read.job.lines) {
        names += (names.empty() ? "" : ", ") + one.name;
        if (!line || one.name == *line) sheets.push_back(ordered_sheet(one, {}, read.known.benders));
    }
    if (sheets.empty()) return Refusal{path, "lines", "has no line called \"" + in_short(*line) + "\"", names};
    return sheets;
}

void tell_left_out(const Library& library, std::ostream& trouble) {
    for (const LeftOut& file : library.left_out) trouble << file.sentence() << "\n";
}

int refuse(const std::string& sentence, std::ostream& trouble) {
    trouble << sentence << "\n";
    return exit_status::refused;
}

Tape tape_for(const Job& job) { return {job.unit, Settings{}.tape_denominator}; }

int status_of(const std::vector<Sheet>& sheets) {
    return std::any_of(sheets.begin(), sheets.end(), stopped) ? exit_status::stopped : exit_status::made;
}

}  // namespace tubewright
