#include "shell/print.h"

#include <algorithm>
#include <ostream>

#include "bench/ordered.h"
#include "present/check_text.h"
#include "present/sheet_text.h"
#include "present/words.h"
#include "state/work.h"
#include "store/job_file.h"
#include "store/library.h"
#include "store/sheet_file.h"
#include "store/shelf.h"

namespace tubewright {
namespace {

struct Read {
    Library known;
    Job job;
};

Result<Read, Refusal> read(const Places& places, const std::string& path) {
    auto library = read_library(places.assets, places.home);
    if (!library.ok()) return library.trouble();
    auto job = read_job(path, library.value());
    if (!job.ok()) return job.trouble();
    return Read{std::move(library).value(), std::move(job).value()};
}

/// What is refused is refused in one line; only what comes out all the same needs to be told of.
void tell_left_out(const Library& library, std::ostream& trouble) {
    for (const LeftOut& file : library.left_out) trouble << file.sentence() << "\n";
}

int refuse(const std::string& sentence, std::ostream& trouble) {
    trouble << sentence << "\n";
    return exit_status::refused;
}

Refusal no_such_line(const SheetRequest& request, const Job& job) {
    std::string names;
    for (const Line& line : job.lines) names += (names.empty() ? "" : ", ") + line.name;
    return {request.job, "lines", "has no line called \"" + in_short(*request.line) + "\"", names};
}

std::vector<std::string> messages(const Sheet& sheet, Unit unit) {
    std::vector<std::string> all;
    for (const Finding& finding : sheet.findings) all.push_back(finding_message(finding, sheet, unit));
    return all;
}

/// As the screens show it until the reader chooses otherwise: half millimetres, or sixteenths of an inch.
Tape tape_for(const Job& job) { return {job.unit, Settings{}.tape_denominator}; }

std::string as_json(const Job& job, const std::vector<Sheet>& sheets) {
    if (sheets.size() == 1) return sheet_json(job, sheets.front(), messages(sheets.front(), job.unit));
    std::vector<std::vector<std::string>> all;
    for (const Sheet& sheet : sheets) all.push_back(messages(sheet, job.unit));
    return sheets_json(job, sheets, all);
}

int status_of(const std::vector<Sheet>& sheets) {
    return std::any_of(sheets.begin(), sheets.end(), stopped) ? exit_status::stopped : exit_status::made;
}

int said(std::ostream& out, std::ostream& trouble, int status) {
    out.flush();
    if (out) return status;
    trouble << "The output could not be written.\n";
    return exit_status::broken;
}

}  // namespace

int print_sheet(const Places& places, const SheetRequest& request, std::ostream& out, std::ostream& trouble) {
    const auto got = read(places, request.job);
    if (!got.ok()) return refuse(got.trouble().sentence(), trouble);
    const Job& job = got.value().job;
    std::vector<Sheet> sheets;
    for (const Line& line : job.lines)
        if (!request.line || line.name == *request.line) sheets.push_back(ordered_sheet(line, {}, got.value().known.benders));
    if (sheets.empty()) return refuse(no_such_line(request, job).sentence(), trouble);
    tell_left_out(got.value().known, trouble);
    if (request.json) {
        std::string text = as_json(job, sheets);
        if (text.empty() || text.back() != '\n') text += '\n';
        out << text;
    } else {
        for (std::size_t i = 0; i < sheets.size(); ++i)
            out << (i > 0 ? "\n\n" : "") << sheet_text(job, sheets[i], got.value().known.checklists, tape_for(job));
    }
    return said(out, trouble, status_of(sheets));
}

int print_check(const Places& places, const std::string& path, std::ostream& out, std::ostream& trouble) {
    const auto got = read(places, path);
    if (!got.ok()) return refuse(got.trouble().sentence(), trouble);
    tell_left_out(got.value().known, trouble);
    std::vector<Sheet> sheets;
    for (const Line& line : got.value().job.lines) sheets.push_back(ordered_sheet(line, {}, got.value().known.benders));
    out << check_text(got.value().job, sheets, tape_for(got.value().job));
    return said(out, trouble, status_of(sheets));
}

int print_shelf(const Places& places, std::ostream& out, std::ostream& trouble) {
    const auto library = read_library(places.assets, places.home);
    if (!library.ok()) return refuse(library.trouble().sentence(), trouble);
    tell_left_out(library.value(), trouble);
    for (const FoundJob& job : read_shelf(places.jobs, places.home / "jobs", library.value())) {
        out << job.name << "\n  " << job.path << "\n";
        if (!job.trouble.empty()) out << "  " << job.trouble << "\n";
    }
    return said(out, trouble, exit_status::made);
}

}  // namespace tubewright
