#include "shell/print.h"

#include <ostream>

#include "present/check_text.h"
#include "present/sheet_text.h"
#include "present/words.h"
#include "shell/print_parts.h"
#include "store/library.h"
#include "store/sheet_file.h"
#include "store/shelf.h"

namespace tubewright {
namespace {

std::vector<std::string> messages(const Sheet& sheet, Unit unit) {
    std::vector<std::string> all;
    for (const Finding& finding : sheet.findings) all.push_back(finding_message(finding, sheet, unit));
    return all;
}

std::string as_json(const Job& job, const std::vector<Sheet>& sheets) {
    if (sheets.size() == 1) return sheet_json(job, sheets.front(), messages(sheets.front(), job.unit));
    std::vector<std::vector<std::string>> all;
    for (const Sheet& sheet : sheets) all.push_back(messages(sheet, job.unit));
    return sheets_json(job, sheets, all);
}

int said(std::ostream& out, std::ostream& trouble, int status) {
    out.flush();
    if (out) return status;
    trouble << "The output could not be written.\n";
    return exit_status::broken;
}

}  // namespace

int print_sheet(const Places& places, const SheetRequest& request, std::ostream& out, std::ostream& trouble) {
    const auto got = read_for_print(places, request.job);
    if (!got.ok()) return refuse(got.trouble().sentence(), trouble);
    const Job& job = got.value().job;
    const auto found = sheets_for(got.value(), request.job, request.line);
    if (!found.ok()) return refuse(found.trouble().sentence(), trouble);
    const std::vector<Sheet>& sheets = found.value();
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
    const auto got = read_for_print(places, path);
    if (!got.ok()) return refuse(got.trouble().sentence(), trouble);
    tell_left_out(got.value().known, trouble);
    const auto sheets = sheets_for(got.value(), path, std::nullopt);
    if (!sheets.ok()) return refuse(sheets.trouble().sentence(), trouble);
    out << check_text(got.value().job, sheets.value(), tape_for(got.value().job));
    return said(out, trouble, status_of(sheets.value()));
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
