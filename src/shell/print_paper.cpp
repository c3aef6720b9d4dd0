#include "shell/print_paper.h"

#include <ostream>

#include "paper/gauge_pages.h"
#include "paper/pdf.h"
#include "paper/sheet_pages.h"
#include "paper/strip_pages.h"
#include "shell/pdf_file.h"
#include "shell/print.h"
#include "shell/print_parts.h"

namespace tubewright {
namespace {

std::optional<Refusal> bar_to(const PaperRequest& request) {
    if (request.what && *request.what != "sheet" && *request.what != "strip" && *request.what != "gauges")
        return Refusal{"--what", "", "is \"" + in_short(*request.what) + "\"", "sheet, strip, gauges"};
    if (request.page && *request.page != "letter" && *request.page != "a4") return Refusal{"--page", "", "is \"" + in_short(*request.page) + "\"", "letter, a4"};
    return bar_to_pdf(request.out, "--out " + in_short(request.out));
}

PageSize size_for(const PaperRequest& request, const Job& job) {
    if (request.page) return *request.page == "a4" ? PageSize::a4 : PageSize::letter;
    return job.unit == Unit::inch ? PageSize::letter : PageSize::a4;
}

void add(std::vector<PrintedPage>& all, const std::vector<PrintedPage>& more) { all.insert(all.end(), more.begin(), more.end()); }

std::vector<PrintedPage> pages_for(const PaperRequest& request, const JobToPrint& read, const std::vector<Sheet>& sheets, const Lettering& lettering) {
    const PageSize size = size_for(request, read.job);
    const Tape tape = tape_for(read.job);
    const auto asked = [&](const char* what) { return !request.what || *request.what == what; };
    std::vector<PrintedPage> pages;
    for (const Sheet& sheet : sheets) {
        if (asked("sheet")) add(pages, sheet_pages(sheet_words(read.job, sheet, read.known.checklists, tape), size, lettering));
        if (asked("strip")) add(pages, strip_pages(strip_view(sheet, tape), size, lettering));
        const GaugesView gauges = gauges_view(sheet, tape);
        if (request.what ? asked("gauges") : !gauges.gauges.empty()) add(pages, gauge_pages(gauges, size, lettering));
    }
    return pages;
}

}  // namespace

int print_paper(const Places& places, const PaperRequest& request, std::ostream& trouble) {
    if (const auto bar = bar_to(request)) return refuse(bar->sentence(), trouble);
    const auto read = read_for_print(places, request.job);
    if (!read.ok()) return refuse(read.trouble().sentence(), trouble);
    const auto sheets = sheets_for(read.value(), request.job, request.line);
    if (!sheets.ok()) return refuse(sheets.trouble().sentence(), trouble);
    const auto failed = [&](const std::string& why) {
        trouble << why << "\n";
        return exit_status::broken;
    };
    const std::optional<Lettering> letters = read_letters(places.assets);
    if (!letters) return failed("The fonts in " + (places.assets / "fonts").string() + " can't be read.");
    const Job& job = read.value().job;
    const std::vector<PrintedPage> pages = pages_for(request, read.value(), sheets.value(), *letters);
    if (const auto why = write_pdf(request.out, pdf_of(pages, size_for(request, job), *letters, job.name))) return failed(*why);
    tell_left_out(read.value().known, trouble);
    return status_of(sheets.value());
}

}  // namespace tubewright
