#include "shell/print_paper.h"

#include <fstream>
#include <iterator>
#include <ostream>

#include "paper/gauge_pages.h"
#include "paper/pdf.h"
#include "paper/sheet_pages.h"
#include "paper/strip_pages.h"
#include "shell/print.h"
#include "shell/print_parts.h"
#include "store/save.h"

namespace tubewright {
namespace {

std::string bytes_of(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

FontBytes font_bytes(const std::filesystem::path& folder) {
    return {bytes_of(folder / "B612-Regular.otf"), bytes_of(folder / "B612-Bold.otf"), bytes_of(folder / "DejaVuSans.ttf"), bytes_of(folder / "DejaVuSans-Bold.ttf")};
}

/// Nothing but an older PDF is written over: a job named by a slip of the hand stays.
std::optional<Refusal> bar_to_file(const std::filesystem::path& path) {
    namespace fs = std::filesystem;
    std::error_code ignored;
    const auto refused = [&](const std::string& what) { return Refusal{"--out " + in_short(path.string()), "", what, "the name of a PDF file in a folder that is there"}; };
    if (path.empty() || fs::is_directory(path, ignored)) return refused("is no file name");
    if (!path.parent_path().empty() && !fs::is_directory(path.parent_path(), ignored)) return refused("lies in no folder that is there");
    if (!is_taken(path)) return std::nullopt;
    std::ifstream in(path, std::ios::binary);
    std::string start(5, ' ');
    in.read(start.data(), static_cast<std::streamsize>(start.size()));
    if (start != "%PDF-") return refused("is a file that is no PDF, and is not written over");
    return std::nullopt;
}

std::optional<Refusal> bar_to(const PaperRequest& request) {
    if (request.what && *request.what != "sheet" && *request.what != "strip" && *request.what != "gauges")
        return Refusal{"--what", "", "is \"" + in_short(*request.what) + "\"", "sheet, strip, gauges"};
    if (request.page && *request.page != "letter" && *request.page != "a4") return Refusal{"--page", "", "is \"" + in_short(*request.page) + "\"", "letter, a4"};
    return bar_to_file(request.out);
}

PageSize size_for(const PaperRequest& request, const Job& job) {
    if (request.page) return *request.page == "a4" ? PageSize::a4 : PageSize::letter;
    return job.unit == Unit::inch ? PageSize::letter : PageSize::a4;
}

void add(std::vector<PrintedPage>& all, const std::vector<PrintedPage>& more) { all.insert(all.end(), more.begin(), more.end()); }

std::vector<PrintedPage> pages_for(const PaperRequest& request, const ReadJob& read, const std::vector<Sheet>& sheets, const Lettering& lettering) {
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

int broken(const std::string& sentence, std::ostream& trouble) {
    trouble << sentence << "\n";
    return exit_status::broken;
}

}  // namespace

int print_paper(const Places& places, const PaperRequest& request, std::ostream& trouble) {
    if (const auto bar = bar_to(request)) return refuse(bar->sentence(), trouble);
    const auto read = read_for_print(places, request.job);
    if (!read.ok()) return refuse(read.trouble().sentence(), trouble);
    const auto sheets = sheets_for(read.value(), request.job, request.line);
    if (!sheets.ok()) return refuse(sheets.trouble().sentence(), trouble);
    const auto lettering = Lettering::of(font_bytes(places.assets / "fonts"));
    if (!lettering.ok()) return broken("The fonts in " + (places.assets / "fonts").string() + " can't be read.", trouble);
    tell_left_out(read.value().known, trouble);
    const std::vector<PrintedPage> pages = pages_for(request, read.value(), sheets.value(), lettering.value());
    const std::string pdf = pdf_of(pages, size_for(request, read.value().job), lettering.value(), read.value().job.name);
    if (pdf.empty()) return broken("The PDF could not be made.", trouble);
    RealDisk disk;
    if (const auto saved = save_whole(disk, request.out, pdf); !saved.ok()) return broken(sentence(saved.trouble()), trouble);
    return status_of(sheets.value());
}

}  // namespace tubewright
