#include "shell/print_paper.h"

#include <catch2/catch.hpp>
#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>

#include "shell/print.h"
#include "shell/temporary_home.h"

using namespace tubewright;

namespace {

std::string bytes_in(const std::filesystem::path& path) {
    if (!std::filesystem::is_regular_file(path)) return "";
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

struct Made {
    int status;
    std::string pdf, trouble;
};

struct Bench {
    TemporaryHome home;

    std::string file(const std::string& name) const { return (home.path() / name).string(); }
    Made paper(PaperRequest request) const {
        if (request.job.empty()) request.job = TUBEWRIGHT_SOURCE_DIR "/jobs/cooler-pair.json";
        if (request.out.empty()) request.out = file("made.pdf");
        std::ostringstream trouble;
        const int status = print_paper(home.places(), request, trouble);
        return {status, bytes_in(request.out), trouble.str()};
    }
    /// As others' programs read it: pdftotext of poppler.
    std::string words() const {
        REQUIRE(std::system(("pdftotext -layout " + file("made.pdf") + " " + file("made.txt")).c_str()) == 0);
        return bytes_in(file("made.txt"));
    }
};

bool has(const std::string& text, const std::string& wanted) { return text.find(wanted) != std::string::npos; }

}  // namespace

TEST_CASE("a PDF has sheet, strip and gauges of every line, or what was asked for") {
    const Bench bench;
    CHECK(bench.paper({}).status == exit_status::made);
    const std::string all = bench.words();
    for (const char* wanted : {"Cut to", "Marking strip: left", "Angle gauges: left", "Marking strip: right", "Angle gauges: right", "44 3/4\""}) CHECK(has(all, wanted));
    CHECK_FALSE(has(all, "STOP"));
    CHECK(bench.paper({"", "", "right", "strip", "a4"}).status == exit_status::made);
    const std::string one = bench.words();
    CHECK(has(one, "Marking strip: right"));
    for (const char* other : {"left", "Angle gauges", "Cut to"}) CHECK_FALSE(has(one, other));
}

TEST_CASE("paper is letter for a job in inches, A4 for one in millimetres, or as asked for") {
    const Bench bench;
    // Letter is 612 × 792 points, A4 595.28 × 841.89: 210 and 297 mm over 25.4 times 72.
    const std::string metric = TUBEWRIGHT_SOURCE_DIR "/jobs/engine-fuel-line.json";
    const auto has_page = [](const std::string& pdf, const char* size) { return has(pdf, std::string("/MediaBox [ 0 0 ") + size); };
    CHECK(has_page(bench.paper({"", "", std::nullopt, "sheet"}).pdf, "612 792"));
    CHECK(has_page(bench.paper({metric, "", std::nullopt, "sheet"}).pdf, "595.2"));
    CHECK(has_page(bench.paper({metric, "", std::nullopt, "sheet", "letter"}).pdf, "612 792"));
    CHECK(has_page(bench.paper({"", "", std::nullopt, "strip", "letter"}).pdf, "792 612"));
}

TEST_CASE("a line that is stopped comes out as paper that says so, and as exit status 1") {
    const Bench bench;
    std::ofstream(bench.file("job.json")) << R"({"format": "tubewright-job", "version": 1, "name": "Sample", "service": "other", "units": "in",
        "tube": {"od": 0.1875, "wall": 0.028, "material": "stainless-304"}, "bender": "hand-3/16",
        "lines": [{"name": "only", "ends": {"A": {"fitting": "none"}, "B": {"fitting": "none"}},
                   "route": {"form": "legs", "legs": [6, 1.2, 6], "bends": [{"angle": 90}, {"angle": 90, "rotation": 90}]}}]})";
    for (const char* what : {"sheet", "strip", "gauges"}) {
        CHECK(bench.paper({bench.file("job.json"), "", std::nullopt, what}).status == exit_status::stopped);
        CHECK(has(bench.words(), "STOP"));
    }
}

TEST_CASE("what can't be printed is refused in one sentence, and no file is touched") {
    const Bench bench;
    std::ofstream(bench.file("job.json")) << "{\"mine\": 1}";
    struct Case {
        PaperRequest request;
        std::string said;
        int status = exit_status::refused;
    };
    const std::vector<Case> cases{
        {{"", "", std::nullopt, "gauge"}, "--what is \"gauge\"; allowed: sheet, strip, gauges."},
        {{"", "", std::nullopt, std::nullopt, "A3"}, "--page is \"A3\"; allowed: letter, a4."},
        {{"", "", "middle"}, "has no line called \"middle\"; allowed: left, right."},
        {{"", bench.file("job.json")}, "is a file that is no PDF, and is not written over"},
        {{"", bench.home.path().string()}, "is no file name"},
        {{"", bench.file("nowhere/it.pdf")}, "lies in no folder that is there"},
        {{bench.file("missing.json"), ""}, "missing.json"},
        {{bench.file("job.json"), ""}, "job.json"},
        {{"", bench.file(std::string(255, 'x'))}, "xxx", exit_status::broken},  // with ".new" too long a name for the disk
    };
    for (const Case& one : cases) {
        INFO(one.said);
        const Made made = bench.paper(one.request);
        CHECK(made.status == one.status);
        INFO(made.trouble);
        CHECK(has(made.trouble, one.said));
        CHECK(std::count(made.trouble.begin(), made.trouble.end(), '\n') == 1);
    }
    CHECK(bytes_in(bench.file("job.json")) == "{\"mine\": 1}");
    CHECK_FALSE(std::filesystem::exists(bench.file("made.pdf")));
}

TEST_CASE("an older PDF is written over") {
    const Bench bench;
    std::ofstream(bench.file("made.pdf")) << "%PDF-1.4 old";
    CHECK(bench.paper({}).status == exit_status::made);
    CHECK(bench.paper({}).pdf.size() > 10000);
}
