#include "shell/print_paper.h"

#include <ostream>

#include "paper/gauge_pages.h"
#include "paper/pdf.h"
#include "paper/sheet_pages.h"
#include "paper/strip_pages.h"
#include "paper/table_pages.h"
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
    return usual_page(job.unit);
}

void add(std::vector<PrintedPage>& all, const std::vector<PrintedPage>& more) { all.insert(all.end(), more.begin(), more.end()); }

}  // namespace

PageSize usual_page(Unit unit) { return unit == Unit::inch ? PageSize::letter : PageSize::a4; }

std::string paper_of_lines(const Places& places, const Job& job, const std::vector<Sheet>& sheets, const Checklists& checklists, const Tape& tape, PageSize size, const std::optional<std::string>& what) {
    const std::optional<Lettering> lettering = read_letters(places.assets);
    if (!lettering) return {};
    const auto asked = [&](const char* part) { return !what || *what == part; };
    std::vector<PrintedPage> pages;
    for (const Sheet& sheet : sheets) {
        if (asked("sheet")) add(pages, sheet_pages(sheet_words(job, sheet, checklists, tape), size, *lettering));
        if (asked("strip")) add(pages, strip_pages(strip_view(sheet, tape), size, *lettering));
        const GaugesView gauges = gauges_view(sheet, tape);
        if (what ? asked("gauges") : !gauges.gauges.empty()) add(pages, gauge_pages(gauges, size, *lettering));
    }
    return pdf_of(pages, size, *lettering, job.name);
}

std::string paper_of_tables(const Places& places, const std::string& title, const std::vector<WordTable>& tables, PageSize size) {
    const std::optional<Lettering> lettering = read_letters(places.assets);
    if (!lettering) return {};
    std::vector<PrintedPage> pages;
    for (const WordTable& table : tables) add(pages, table_pages(table, size, *lettering));
    return pdf_of(pages, size, *lettering, title);
}

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
    const Job& job = read.value().job;
    const std::string pdf = paper_of_lines(places, job, sheets.value(), read.value().known.checklists, tape_for(job), size_for(request, job), request.what);
    if (pdf.empty()) return failed("The fonts in " + (places.assets / "fonts").string() + " can't be read.");
    if (const auto why = write_pdf(request.out, pdf)) return failed(*why);
    tell_left_out(read.value().known, trouble);
    return status_of(sheets.value());
}

}  // namespace tubewright
